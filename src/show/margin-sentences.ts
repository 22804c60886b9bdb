/**
 * What do the margins say in plain words? Which is smallest, what that means for somebody who builds, and how they stand to
 * published guidance.
 */
import type { Margin, Margins } from '../linear/margins.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import {
  degreesText,
  delayText,
  factorText,
  heldPoints,
  listed,
  pointName,
  radPerSText,
  type MarginView,
  type SeenPoint,
} from './margin-view.js';
import type { SpeedUnit } from './quantities.js';

/** Published guidance: gain and phase from the page of `margin`, sensitivity from the book that Octave's control package cites. */
export const GUIDANCE = {
  leastGainFactor: 3,
  leastPhaseDeg: 30,
  gainAndPhaseSource: 'MathWorks, page of margin: gain margins of 3 or more with 30 to 60° of phase',
  mostSensitivity: 2,
  sensitivitySource: 'Åström and Hägglund, PID Controllers, 1995: 1.3 to 2',
} as const;

interface Found {
  point: SeenPoint;
  margin: Margin;
}

/** The ride in which a margin is smallest, by a size of it; null where no ride has one. */
function smallest(
  held: readonly SeenPoint[],
  { of, size }: { of: (margins: Margins) => Margin; size: (value: number) => number },
): Found | null {
  const found = held
    .map((point) => ({ point, margin: of(point.report.margins) }))
    .filter(({ margin }) => margin.radPerS !== null && Number.isFinite(size(margin.value)));
  const [least] = found.toSorted((a, b) => size(a.margin.value) - size(b.margin.value));
  return least ?? null;
}

/** The smallest margins, and what they mean for somebody who builds. */
export function smallestSentences({ points, loopRateHz }: MarginView, unit: SpeedUnit): string[] {
  const held = heldPoints(points);
  if (held.length === 0) return [];
  const lost = ({ point, margin }: Found) =>
    `it is lost (${pointName(point, unit)}, at ${radPerSText(margin.radPerS!)})`;
  const none = (what: string) => `No ${what} that loses the loop was found.`;
  const delay = smallest(held, { of: ({ delayS }) => delayS, size: (value) => value });
  const up = smallest(held, { of: ({ gainUp }) => gainUp, size: (value) => value });
  const down = smallest(held, { of: ({ gainDown }) => gainDown, size: (value) => 1 / value });
  return [
    delay === null
      ? none('delay')
      : `Least delay to spare: ${delayText(delay.margin.value)}. With so much more, ` +
        `${ticksText(delay.margin.value, loopRateHz)}, ${lost(delay)}. ` +
        'A slower loop or one more filter spends it.',
    up === null
      ? none('rise of gain')
      : `Least room upwards: with ${factorText(up.margin.value)} the gain ${lost(up)}. ` +
        'Higher gains, a stronger motor or a lighter deck spend it.',
    down === null
      ? none('fall of gain')
      : `Least room downwards: with ${factorText(down.margin.value)} the gain ${lost(down)}. ` +
        'Lower gains or a weaker motor spend it.',
  ];
}

/** A delay as whole ticks that fit into it. */
function ticksText(delayS: number, loopRateHz: number): string {
  const ticks = Math.floor(delayS * loopRateHz);
  const rate = `at ${loopRateHz} Hz`;
  if (ticks === 0) return `less than a tick ${rate}`;
  return `about ${ticks} tick${ticks === 1 ? '' : 's'} ${rate}`;
}

/** How the margins stand to published guidance, the source beside. */
export function guidanceSentences({ points }: MarginView, unit: SpeedUnit): string[] {
  const held = heldPoints(points);
  if (held.length === 0) return [];
  const { leastGainFactor, leastPhaseDeg, mostSensitivity } = GUIDANCE;
  const told = (misses: readonly (string | null)[]) => {
    const missed = misses.filter((miss) => miss !== null);
    return missed.length === 0 ? 'met' : `not met: ${missed.join('; ')}`;
  };
  const tight = held.map((point) => {
    const { gainUp, gainDown, phaseRad } = point.report.margins;
    const short = [
      ...(gainUp.value < leastGainFactor ? [factorText(gainUp.value)] : []),
      ...(gainDown.value * leastGainFactor > 1 ? [factorText(gainDown.value)] : []),
      ...(phaseRad.value * DEG_PER_RAD < leastPhaseDeg ? [degreesText(phaseRad.value)] : []),
    ];
    return short.length === 0 ? null : `${pointName(point, unit)} has ${listed(short)}`;
  });
  const peaked = held.map((point) => {
    const { value, radPerS } = point.report.margins.sensitivityPeak;
    if (value <= mostSensitivity) return null;
    return `${pointName(point, unit)} has ${value.toFixed(1)} at ${radPerSText(radPerS ?? 0)}`;
  });
  return [
    `Gain and phase, ${told(tight)} (${GUIDANCE.gainAndPhaseSource}).`,
    `Sensitivity peak, ${told(peaked)} (${GUIDANCE.sensitivitySource}; less is more cautious).`,
  ];
}
