/**
 * Can a person read the ranking: which first, why not the others, and no line too wide?
 */
import { describe, expect, it } from 'vitest';
import { profileResult, type CellResult } from '../../src/measure/profile-result.js';
import { COST_NAMES, weightsWith } from '../../src/measure/scales.js';
import type { RowOrder } from '../../src/measure/row-order.js';
import { checkLine } from '../../src/show/check-line.js';
import { createPaint } from '../../src/show/colour.js';
import { rankLines, type RankView } from '../../src/show/rank-table.js';
import { cellPhrase } from '../../src/show/worst-sentences.js';
import { CALM } from '../measure/some-metrics.js';

const WEIGHTS = weightsWith();

function cell(scenario: string, parts: Partial<CellResult> = {}): CellResult {
  return {
    scenario,
    rider: 'kim',
    chargePercent: 80,
    seed: 1,
    outcome: { kind: 'upright', atS: 8 },
    eventReached: true,
    metrics: {
      ...CALM,
      kind: 'disturbance',
      windowS: 6,
      measuredS: 6,
      calm: true,
      settlingTimeS: 1,
      reboundPercent: 20,
    },
    ...parts,
  };
}

const FALLEN = { outcome: { kind: 'nose strike', atS: 2.5 } } as const;

function viewOf(profiles: Record<string, CellResult[]>): RankView {
  return {
    board: 'pebble',
    riders: ['kim'],
    seedCount: 1,
    scenarios: ['kerb', 'hill'],
    weights: WEIGHTS,
    profiles: Object.entries(profiles).map(([name, cells]) =>
      profileResult({ name, summary: `${name} in words.` }, cells, WEIGHTS),
    ),
  };
}

const shown = (view: RankView, width = 100, ascii = true) =>
  rankLines(view, { width, ascii, paint: createPaint('none') });

describe('the ranked table', () => {
  const view = viewOf({ wool: [cell('kerb'), cell('hill')], silk: [cell('kerb', FALLEN), cell('hill')] });

  it('shows one sign a scenario, and what failed', () => {
    const rows = shown(view);
    expect(rows.find((row) => row.startsWith('1'))).toMatch(/^1\s+wool\s+oo\s+0\/2/);
    expect(rows.find((row) => row.startsWith('2'))).toMatch(/^2\s+silk\s+xo\s+1\/2/);
  });

  it('says which to try first, why not the others, and the caution', () => {
    const text = shown(view).join(' ');
    expect(text).toContain('Try first: wool, upright in all 2 runs. wool in words.');
    expect(text).toContain(
      'silk: falls in 1 of 2 runs; kerb: nose strike at 2.50 s; upright but worst in hill',
    );
    expect(text).toContain('helmet, wrist and knee protection');
    expect(text.toLowerCase()).not.toMatch(/\bsafe/);
  });

  it('recommends none when every run of every profile falls', () => {
    const fallen = viewOf({ silk: [cell('kerb', FALLEN), cell('hill', FALLEN)] });
    expect(shown(fallen).join(' ')).toContain('Try none of these');
  });

  it.each([40, 60, 80, 120])('keeps to %i columns', (width) => {
    for (const row of [...shown(view, width, true), ...shown(view, width, false)]) {
      expect(row.length).toBeLessThanOrEqual(width);
    }
  });

  it('marks a mean that holds runs which did not settle', () => {
    const restless = cell('hill', {
      metrics: { ...CALM, kind: 'disturbance', windowS: 6, measuredS: 6, settlingTimeS: null },
    });
    const rows = shown(viewOf({ wool: [cell('kerb'), restless] }));
    expect(rows.find((row) => row.startsWith('1'))).toContain('> 3.5 s');
  });
});

describe('rows in another order than that of rank', () => {
  const profiles = { wool: [cell('kerb'), cell('hill')], silk: [cell('kerb', FALLEN), cell('hill')] };
  const byName: RankView = { ...viewOf(profiles), order: { by: 'profile', reversed: false } };

  it('keep their rank, and the advice keeps the best', () => {
    const rows = shown(byName);
    const header = rows.findIndex((row) => row.startsWith('#'));
    expect(rows[header]).toMatch(/^#\s+profile \^\s/);
    expect(rows[header + 1]).toMatch(/^2\s+silk/);
    expect(rows[header + 2]).toMatch(/^1\s+wool/);
    expect(rows.join(' ')).toContain('Try first: wool');
    expect(rows.join(' ')).toContain('Rows by profile, a first; # is the rank.');
  });

  it('show the column and the way round with a sign', () => {
    const header = (order: RowOrder, ascii: boolean) =>
      shown({ ...viewOf(profiles), order }, 100, ascii).find((row) => row.startsWith('#'));
    expect(header({ by: 'rank', reversed: false }, false)).not.toMatch(/[▴▾]/);
    expect(header({ by: 'rank', reversed: true }, false)).toMatch(/^# ▾/);
    expect(header({ by: 'cut', reversed: false }, false)).toMatch(/cut ▴$/);
    expect(header({ by: 'cut', reversed: true }, false)).toMatch(/cut ▾$/);
    expect(header({ by: 'score', reversed: true }, true)).toMatch(/score v/);
  });

  it.each([40, 60, 80])('keep to %i columns', (width) => {
    for (const row of [...shown(byName, width, true), ...shown(byName, width, false)]) {
      expect(row.length).toBeLessThanOrEqual(width);
    }
  });
});

describe('the sentence about the check', () => {
  const options = { width: 200, ascii: true, paint: createPaint('none') };

  it('does not claim a check that there was none of', () => {
    expect(checkLine('missing', options).join(' ')).toBe(
      'The quick solver was not checked against odex here.',
    );
    expect(checkLine(null, options).join(' ')).toContain('made with the reference solver');
  });
});

describe('the phrase of a cell', () => {
  it.each(COST_NAMES)('has words with a number for %s', (name) => {
    const only = weightsWith(Object.fromEntries(COST_NAMES.map((other) => [other, other === name ? 1 : 0])));
    const { worst } = profileResult({ name: 'wool', summary: '' }, [cell('kerb')], only);
    const phrase = cellPhrase(worst, only);
    expect(phrase).toMatch(/\d|level|no headroom/);
    expect(phrase).not.toMatch(/NaN|undefined|null/);
  });

  it('tells of an event that never came', () => {
    const { worst } = profileResult(
      { name: 'wool', summary: '' },
      [cell('kerb', { eventReached: false })],
      WEIGHTS,
    );
    expect(worst.failed).toBe(true);
    expect(cellPhrase(worst, WEIGHTS)).toContain('never came to the event');
  });
});
