/** Can the list be typed from, does every flag stand below it, and is nothing typed from a sheet that is refused? */
import { describe, expect, it } from 'vitest';
import { ontoSheet } from '../../src/quantity/onto-sheet.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { CAUTIONS } from '../../src/show/cautions.js';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { sheetLines } from '../../src/show/sheet-lines.js';
import type { SheetView } from '../../src/show/sheet-view.js';
import { sheetWith, type RawRow } from '../quantity/valid-sheet.js';

const ROWS: RawRow[] = [
  { label: 'Hold', quantity: 'proportionalAPerDeg', unit: 'limit/rad', decimals: 3 },
  { label: 'Calm', quantity: 'rateAPerDegPerS', unit: 'A/(deg/s)', step: 0.5, note: 'In steps.' },
  { label: 'Memory', quantity: 'blendTimeS', unit: 'kept share T/(T+dt)', decimals: 6 },
  { label: 'Stop', quantity: 'brakeCeilingA', unit: 'A', decimals: 0, greatest: 30 },
  { label: 'Go', quantity: 'driveCeilingA', unit: 'A', decimals: 0, whenLeftOut: 99 },
  { label: 'Filter', quantity: 'gyroLowPassHz', unit: 'Hz', decimals: 0 },
];

const profile = profileSchema.parse({
  summary: 'A profile for tests',
  gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2 },
  shaping: {
    blendTimeS: 4,
    brakeCeilingA: 40,
    headroomLift: { belowPercent: 45, upToDeg: 12, rateDegPerS: 2 },
  },
});

function viewOf(parts: Partial<SheetView> = {}, rows: readonly RawRow[] = ROWS): SheetView {
  const sheet = sheetWith(rows, { currentLimitA: 80, loopRateHz: 800 });
  return {
    name: 'evening',
    sheetName: 'slab',
    sheet,
    onto: ontoSheet(sheet, profile),
    numbers: '7k2m-q9dx',
    typedHash: 'q9dx-7k2m',
    runs: 60,
    proven: { failures: 0, score: 0.3371 },
    typed: { failures: 0, score: 0.3404 },
    scoreRatio: 1.0098,
    newFalls: [],
    worst: 'soft-grass with kim, pack at 30 %: settles only after 2.61 s',
    alone: [],
    provenLoopRateHz: 800,
    hasLowerLimit: false,
    notAsKept: null,
    refused: false,
    deserves: true,
    ...parts,
  };
}

const fall = { scenario: 'hill', rider: 'kim', chargePercent: 20, seed: 1, ending: 'nose strike', atS: 3.2 };

const lines = (view: SheetView, width = 80) =>
  sheetLines(view, { width, symbols: 'ascii', paint: createPaint('none') });
const text = (view: SheetView) => lines(view, 10_000).join('\n');

/** The rows between the two headings, as label and value. */
function columns(view: SheetView): [string, string][] {
  const all = lines(view);
  const from = all.findIndex((line) => line.startsWith('To type')) + 2;
  return all.slice(from, all.indexOf('', from)).map((line) => {
    const [, label, value] = /^ {2}(.*?) {2,}(\S+)$/.exec(line)!;
    return [label!, value!];
  });
}

describe('the two columns', () => {
  it('have a label and what is typed, in the order of the sheet, flags beside the label only', () => {
    expect(columns(viewOf())).toEqual([
      ['Hold [1]', '14.324'],
      ['Calm [2, 3]', '1.0'],
      ['Memory [4]', '0.999688'],
      ['Stop [5]', '30'],
      ['Go [6]', '99'],
    ]);
  });

  it('have footnotes below them: what rounding and limits changed, in our units', () => {
    expect(text(viewOf())).toContain(
      [
        '[1] Rounded, by less than 0.1 %.',
        '[2] Rounded from 1.2: 1 A/(deg/s), the profile has 1.2 A/(deg/s).',
        '[3] In steps.',
        '[4] Rounded from 0.9996876: 4.0052 s, the profile has 4 s.',
        '[5] The controller takes no 40; 30 is 30 A, the profile has 40 A.',
        '[6] The profile has none of it, and this is what means none.',
        'Nothing to type, as the profile has none of it; see that it is off: Filter.',
      ].join('\n'),
    );
  });
});

describe('beside them', () => {
  it('whether it deserves its rank, with numbers', () => {
    expect(text(viewOf())).toContain(
      'Typed like this it still deserves its rank. Simulated in the same 60 runs as it was proven in: 0 fall (0 as proven), ' +
        'score 0.340 (0.337), 1.01 times.',
    );
    const spoiled = viewOf({
      deserves: false,
      newFalls: [fall],
      typed: { failures: 1, score: 1.2 },
      scoreRatio: 3.56,
    });
    expect(text(spoiled)).toContain('it does NOT deserve its rank: 1 run newly falls');
    expect(text(spoiled)).toContain('Newly falls: hill with kim, pack at 20 %: nose strike after 3.20 s.');
    expect(text(viewOf({ deserves: false, scoreRatio: 1.3 }))).toContain(
      'NOT deserve its rank: it rides worse.',
    );
  });

  it('which change costs it, under the name of the controller', () => {
    const alone = [
      { key: 'rateAPerDegPerS', newFalls: 1, scoreRatio: 3 },
      { key: 'upToDeg', newFalls: 0, scoreRatio: 1.4 },
      { key: 'loopRateHz', newFalls: 0, scoreRatio: 1.3 },
      { key: 'blendTimeS', newFalls: 0, scoreRatio: 1.001 },
    ];
    expect(text(viewOf({ alone, newFalls: [fall] }))).toContain(
      'Each change by itself, the dearest first: Calm (rate gain): 1 run newly falls; no headroom lift: 1.40 times the score; ' +
        'the loop rate of 800 Hz: 1.30 times the score.',
    );
    const together = alone.map((one) => ({ ...one, newFalls: 0 }));
    expect(text(viewOf({ alone: together, newFalls: [fall] }))).toContain('it is all of them together');
  });

  it('what has no place, another loop rate, and a proof that came out otherwise', () => {
    const said = text(viewOf({ provenLoopRateHz: 1000, hasLowerLimit: true, notAsKept: 'other scenarios' }));
    expect(said).toContain(
      'The controller gets no headroom lift (12 deg): it was simulated with a nose that does not rise',
    );
    expect(said).toContain(
      "Proven at a loop rate of 1000 Hz, as the board's file has it; the sheet says 800 Hz",
    );
    expect(said).toContain("The controller's limit of 80 A is below the board's, and was simulated.");
    expect(said).toContain('The scenarios of this folder are not those that it was kept with');
  });

  it('how to check what was typed, number by number', () => {
    const said = text(viewOf());
    expect(said).toContain('  Hold 14.324: times 1.3963 is 20 A/deg, proportional gain');
    expect(said).toContain('  Calm 1.0: times 1 is 1 A/(deg/s), rate gain');
    expect(said).toContain('T = dt x typed / (1 - typed), dt = 1/800 s: 4.0052 s, blend time');
    expect(said).toContain('  Go 99: no drive ceiling');
    expect(said).toContain('The pitch that the controller shows must grow, the current must go to plus');
  });

  it('cautions and both hashes', () => {
    for (const caution of CAUTIONS) expect(text(viewOf())).toContain(caution);
    expect(text(viewOf())).toContain('Numbers as proven 7k2m-q9dx, as typed q9dx-7k2m.');
    expect(text(viewOf())).not.toMatch(/\bsafe/i);
  });
});

describe('a refused sheet', () => {
  const rows = ROWS.map((row) => (row.label === 'Hold' ? { ...row, sign: 'minus' } : row));
  const view = viewOf(
    { refused: true, deserves: false, newFalls: [fall], typed: { failures: 60, score: 9 } },
    rows,
  );

  it('has nothing to type: when and how it falls, and where it contradicts itself', () => {
    const said = text(view);
    expect(said).toContain(
      'Refused: with the signs of slab it falls in 60 of 60 runs of the simulation (0 as proven).',
    );
    expect(said).toContain('The soonest: hill with kim, pack at 20 %: nose strike after 3.20 s.');
    expect(said).toContain('but asks for the other sign at Hold (minus)');
    expect(said).not.toContain('-14.324');
    expect(said).not.toContain('To type');
  });
});

it('stays inside eighty columns, and a rider reads plain text whatever the sheet holds', () => {
  const long = 'A label as long as a label may ever be, x';
  const rows = ROWS.map((row, index) => ({ ...row, label: `${index}${long.slice(0, 39)}` }));
  for (const view of [viewOf(), viewOf({}, rows), viewOf({ refused: true, newFalls: [fall] })]) {
    for (const line of lines(view)) expect(textWidth(line), line).toBeLessThanOrEqual(80);
  }
});
