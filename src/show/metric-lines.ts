/**
 * Every metric of one run with its unit, in words, for the lines below a plot.
 */
import type { Metrics } from '../measure/metrics.js';
import { CEILINGS } from '../simulate/tape.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import type { Paint } from './colour.js';
import {
  angleText,
  currentText,
  numberText,
  settlingText,
  shareText,
  stretchText,
  timeText,
  torqueText,
  voltageText,
} from './quantities.js';
import { table } from './table.js';

const UNKNOWN = 'not known';

/** The metrics as rows of name and value. */
export function metricRows(metrics: Metrics): [string, string][] {
  const or = <T>(value: T | null, text: (value: T) => string) => (value === null ? UNKNOWN : text(value));
  const percent = (value: number) => `${numberText(value, 'percent')} %`;
  const applies = metrics.kind !== 'ride';
  return [
    ['measured', `${timeText(metrics.measuredS)} of ${timeText(metrics.windowS)}`],
    [
      'peak pitch, nose down / up',
      `${angleText(metrics.peakNoseDownRad)} / ${angleText(metrics.peakNoseUpRad)}`,
    ],
    ...(metrics.kind === 'step'
      ? ([
          ['overshoot of the step', or(metrics.overshootPercent, percent)],
          ['rise time, 10 to 90 %', or(metrics.riseTimeS, timeText)],
        ] as [string, string][])
      : []),
    ...(metrics.kind === 'disturbance'
      ? ([['rebound after the disturbance', or(metrics.reboundPercent, percent)]] as [string, string][])
      : []),
    ...(applies ? ([['settling time', settlingText(metrics.settlingTimeS)]] as [string, string][]) : []),
    ['ticks cut by a ceiling', `${shareText(metrics.saturationShare)}${ceilingShares(metrics)}`],
    ['longest cut on end', stretchText(metrics.longestSaturationS)],
    ['least headroom', or(metrics.leastHeadroomShare, shareText)],
    [
      'pitch rate above 3 Hz, rms',
      `${numberText(metrics.pitchRateActivityRadPerS * DEG_PER_RAD, 'angularRateDegPerS')} deg/s`,
    ],
    ['movement of the request', `${numberText(metrics.commandActivityAPerS, 'commandAPerS')} A/s`],
    ["rider's torque, rms", torqueText(metrics.riderTorqueRmsNm)],
    ['one foot light', timeText(metrics.oneFootLightS)],
    ['current, peak / rms', `${currentText(metrics.peakCurrentA)} / ${currentText(metrics.rmsCurrentA)}`],
    ['energy out of the pack', `${numberText(metrics.packEnergyJ / 3600, 'energyWh')} Wh`],
    ['least pack voltage', or(metrics.leastPackV, voltageText)],
    [
      'feet, vertical, weighted Wk',
      `${numberText(metrics.weightedFeetAccelerationMPerS2, 'accelerationMPerS2')} m/s² rms`,
    ],
  ];
}

function ceilingShares({ saturationByCeiling }: Metrics): string {
  const met = CEILINGS.flatMap((ceiling) =>
    ceiling !== 'none' && saturationByCeiling[ceiling] > 0
      ? [`${ceiling} ${shareText(saturationByCeiling[ceiling])}`]
      : [],
  );
  return met.length === 0 ? '' : ` (${met.join(', ')})`;
}

/** The metrics as lines of text. */
export function metricLines(metrics: Metrics, { paint, width }: { paint: Paint; width: number }): string[] {
  return table({
    columns: [
      { header: 'metric', align: 'left' },
      { header: 'value', align: 'left', shrinks: true },
    ],
    rows: metricRows(metrics),
    paint,
    maxWidth: width,
  });
}
