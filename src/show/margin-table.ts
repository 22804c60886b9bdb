/**
 * The margins as a table: one column a steady ride, one row a quantity. Where the columns do not fit side by side there are
 * several tables, one below the other.
 */
import { hasMargins } from '../linear/growth.js';
import type { Paint } from './colour.js';
import { textWidth } from './fit-text.js';
import { GLYPHS, type SymbolSet } from './glyphs.js';
import {
  degreesText,
  delayText,
  factorText,
  hzText,
  gradeText,
  moversOf,
  paceText,
  radPerSText,
  stateOf,
  type MarginPoint,
  type SeenPoint,
} from './margin-view.js';
import { writable } from './plot-frame.js';
import type { SpeedUnit } from './quantities.js';
import { table } from './table.js';

/** How margins are to be shown. */
export interface MarginOptions {
  width: number;
  symbols: SymbolSet;
  paint: Paint;
  speedUnit: SpeedUnit;
}

/** So many parts are named in a cell. */
const NAMED_MOVERS = 2;

/** Stands where there is none. */
const NONE = 'none';

/** A row: its name and what stands in it; `ofMargins`: only where the loop holds. */
interface Row {
  label: string;
  ofMargins?: true;
  text: (point: SeenPoint) => string;
}

const MARGIN_ROWS: readonly Row[] = [
  {
    label: 'gain may rise to',
    text: ({ report: { margins } }) =>
      Number.isFinite(margins.gainUp.value) ? factorText(margins.gainUp.value) : NONE,
  },
  {
    label: 'gain may fall to',
    text: ({ report: { margins } }) =>
      margins.gainDown.value > 0 ? factorText(margins.gainDown.value) : NONE,
  },
  {
    label: 'phase to spare',
    text: ({ report: { margins } }) =>
      Number.isFinite(margins.phaseRad.value) ? degreesText(margins.phaseRad.value) : NONE,
  },
  {
    label: 'delay to spare',
    text: ({ report: { margins } }) =>
      Number.isFinite(margins.delayS.value) ? delayText(margins.delayS.value) : NONE,
  },
  {
    label: 'together: gain from',
    text: ({ report: { allowedByDisk } }) => factorText(allowedByDisk.gainDown),
  },
  {
    label: '  gain to',
    text: ({ report: { allowedByDisk } }) =>
      Number.isFinite(allowedByDisk.gainUp) ? factorText(allowedByDisk.gainUp) : NONE,
  },
  { label: '  phase', text: ({ report }) => degreesText(report.allowedByDisk.phaseRad) },
  { label: 'sensitivity peak', text: ({ report }) => report.margins.sensitivityPeak.value.toFixed(2) },
  {
    label: '  at',
    text: ({ report: { margins } }) => radPerSText(margins.sensitivityPeak.radPerS ?? 0),
  },
];

const motionRows = (index: number, label: string): Row[] => {
  const of = (point: SeenPoint) => point.report.modes[index];
  const row = (name: string, text: (mode: NonNullable<ReturnType<typeof of>>) => string): Row => ({
    label: name,
    text: (point) => {
      const mode = of(point);
      return mode === undefined ? NONE : text(mode);
    },
  });
  return [
    row(label, (mode) => moversOf(mode).slice(0, NAMED_MOVERS).join(', ')),
    row('  frequency', ({ frequencyHz }) => hzText(frequencyHz)),
    row('  damping ratio', ({ dampingRatio }) => dampingRatio.toFixed(2)),
  ];
};

const FEEL_ROWS: readonly Row[] = [
  {
    label: 'stiffness at 0.1 Hz',
    text: ({ report }) => `${report.deckStiffnessNmPerDeg.at01Hz.toFixed(1)} Nm/deg`,
  },
  {
    label: 'stiffness at 1 Hz',
    text: ({ report }) => `${report.deckStiffnessNmPerDeg.at1Hz.toFixed(1)} Nm/deg`,
  },
  { label: 'foot: m/s2 per Nm', text: ({ report }) => report.footPath.gainAt1Hz.toFixed(3) },
  {
    label: '  comes, at 1 Hz',
    text: ({ report: { footPath } }) =>
      `${delayText(Math.abs(footPath.delayAt1HzS))} ${footPath.delayAt1HzS < 0 ? 'ahead' : 'late'}`,
  },
  {
    label: '  up to',
    text: ({ report: { footPath } }) =>
      footPath.bandwidthHz === null ? 'not found' : hzText(footPath.bandwidthHz),
  },
  { label: 'gyro noise, request', text: ({ report }) => `${report.gyroNoiseA.toFixed(2)} A rms` },
];

const ROWS: readonly Row[] = [
  { label: 'pitch loop', text: stateOf },
  ...MARGIN_ROWS.map((row): Row => ({ ...row, ofMargins: true })),
  ...motionRows(0, 'least damped motion'),
  ...motionRows(1, 'the next'),
  ...FEEL_ROWS,
];

/** What stands in a row for a ride. */
function cellText({ text, ofMargins }: Row, point: MarginPoint): string {
  const { report } = point;
  if (report === null) return '-';
  const seen = { ...point, report };
  return ofMargins && !hasMargins(stateOf(seen)) ? '-' : text(seen);
}

/** Columns between two of a table. */
const GAP = 2;

/** The tables, a free line between them. */
export function marginTables(points: readonly MarginPoint[], options: MarginOptions): string[] {
  const { width, symbols, paint, speedUnit } = options;
  const glyphs = GLYPHS[symbols];
  const labelWidth = Math.max(...ROWS.map(({ label }) => textWidth(label)));
  const columns = points.map((point) => {
    const name = paceText(point, speedUnit);
    const road = gradeText(point);
    const [first, ...rest] = ROWS.map((row) => writable(cellText(row, point), glyphs));
    return { name, texts: [road, point.report === null ? 'cut' : first!, ...rest] };
  });
  const widest = Math.max(...columns.flatMap(({ name, texts }) => [name, ...texts].map(textWidth)));
  const perTable = Math.max(1, Math.floor((width - labelWidth) / (widest + GAP)));
  const starts = columns.map((_, index) => index).filter((index) => index % perTable === 0);
  return starts.flatMap((start) => {
    const shown = columns.slice(start, start + perTable);
    const lines = table({
      columns: [
        { header: '' },
        ...shown.map(({ name }) => ({ header: name, align: 'right' as const, fullWidth: widest })),
      ],
      rows: ['road', ...ROWS.map(({ label }) => label)].map((label, row) => [
        label,
        ...shown.map(({ texts }) => texts[row] ?? ''),
      ]),
      paint,
      maxWidth: width,
      ellipsis: glyphs.ellipsis,
    });
    return start === 0 ? lines : ['', ...lines];
  });
}
