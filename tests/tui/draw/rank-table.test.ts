/** The table of the Rank screen: the ranked numbers, the strip whole as long as it can be, the cursor always in sight. */
import { describe, expect, it } from 'vitest';
import { textWidth } from '../../../src/show/fit-text.js';
import { numberText } from '../../../src/show/quantities.js';
import { rankAreas } from '../../../src/tui/draw/areas.js';
import { panelRows } from '../../../src/tui/draw/panel.js';
import { tableRows } from '../../../src/tui/draw/table.js';
import { rankedResults } from '../../../src/tui/bench/rows.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { afterKeys, drawnState, type Wanted } from './drawn-state.js';

const names = (count: number, stem: string) =>
  Array.from({ length: count }, (_, index) => `${stem}-${String(index + 1).padStart(3, '0')}`);

const drawn = (state: BenchState) => tableRows(state, rankAreas(state).table);
const at = (columns: number, rows: number, wanted: Partial<Wanted> = {}) =>
  drawnState({ size: { columns, rows }, ...wanted });

describe('the table', () => {
  it('shows rank, falls and score of every result, best first', () => {
    const state = at(120, 40);
    const told = drawn(state)
      .slice(1)
      .map((row) => row.replace('▸', ' ').trim().split(/\s+/));
    const expected = rankedResults(state).map(({ name, failures, cells, score }, index) => [
      String(index + 1),
      name,
      `${failures}/${cells.length}`,
      numberText(score, 'ratio'),
    ]);
    expect(told.map(([rank, name, _strip, falls, score]) => [rank, name, falls, score])).toEqual(expected);
  });

  it('has the sign of every scenario: composed, marginal, failed, by shape', () => {
    const rows = drawn(at(80, 24)).map((row) => row.match(/[●◐✗]{4}/)?.[0]);
    expect(rows).toEqual([undefined, '●●●●', '●●●●', '●◐●●', '●●●✗', '✗●●●']);
  });

  it.each([
    [80, 15],
    [60, 15],
    [40, 15],
    [80, 50],
    [100, 60],
  ])('at %i columns keeps a strip of %i whole', (columns, count) => {
    const state = at(columns, 24, { scenarios: names(count, 'scenario') });
    for (const row of drawn(state).slice(1)) {
      expect(row).toMatch(new RegExp(`[●◐✗]{${count}}`));
      expect(textWidth(row)).toBeLessThanOrEqual(columns);
    }
  });

  it('moves a strip that is too long along with the scenario under the cursor, whose name it tells', () => {
    const first = at(60, 24, { scenarios: names(60, 'scenario') });
    for (let state = afterKeys(first, 'right'), column = 0; column < 60; column++) {
      const [header = '', row = ''] = drawn(state);
      const caret = Array.from(header).indexOf('▾');
      expect(header).toContain(`scenario-${String(column + 1).padStart(3, '0')}`);
      expect(Array.from(row)[caret]).toMatch(/[●◐✗]/);
      expect(textWidth(header)).toBeLessThanOrEqual(60);
      state = afterKeys(state, 'right');
    }
  });

  it.each([24, 30, 60])('keeps the row under the cursor in sight among 200 at %i rows', (rows) => {
    let state = at(80, rows, { profiles: names(200, 'profile') });
    const seen = new Set<string>();
    for (let step = 0; step < 30; step++) {
      const marked = drawn(state).filter((row) => row.startsWith('▸'));
      expect(marked).toHaveLength(1);
      seen.add(marked[0]!);
      state = afterKeys(state, 'pagedown');
    }
    expect(seen.size).toBe(21);
  });

  it('stands still sideways while a person scrolls', () => {
    const first = at(100, 24, { profiles: [...names(100, 'p'), 'a-profile-with-a-longer-name'] });
    const headers = ['home', 'pagedown', 'end'].map((key) => drawn(afterKeys(first, key))[0]);
    expect(new Set(headers).size).toBe(1);
  });

  it('leaves the scores of rows that are not computed empty, with a dot for each run to come', () => {
    const rows = drawn(at(80, 24, { computed: 3 }));
    expect(rows.slice(4).map((row) => row.trim())).toEqual(['shaky-one  ····', 'weak-one   ····']);
  });
});

describe('the panel', () => {
  const told = (state: BenchState) => panelRows(state, rankAreas(state).panel).join(' ').replace(/\s+/g, ' ');
  const wide = { columns: 200, rows: 60 };

  it('says which profile to try first', () => {
    expect(told(drawnState({ size: wide }))).toContain(
      'plain-one is 1st of 5, the one to try first: upright in all 4 runs.',
    );
  });

  it('says to try none where every one falls in every run', () => {
    const text = told(drawnState({ size: wide, allFall: true }));
    expect(text).toContain('1st of 5, but try none of these: every one falls in every run.');
    expect(text).not.toContain('try first');
  });

  it('promises no place before all rows are there', () => {
    expect(told(drawnState({ size: wide, computed: 2 }))).toContain('plain-one is 1st so far:');
  });

  it('names the scenarios in which a profile falls', () => {
    expect(told(afterKeys(drawnState({ size: wide }), 'end'))).toContain(
      'weak-one is 5th of 5: falls in 1 of 4 runs, in kerb.',
    );
    const many = drawnState({ size: wide, scenarios: names(60, 'scenario') });
    expect(told(afterKeys(many, 'end'))).toContain(
      'falls in 15 of 60 runs, in scenario-001, scenario-005, scenario-009, scenario-013 and 11 more.',
    );
  });

  it('lists the worst scenarios where not all have room, and else all in the order of the strip', () => {
    const many = afterKeys(
      drawnState({ size: { columns: 100, rows: 30 }, scenarios: names(60, 's') }),
      'end',
    );
    const listed = (state: BenchState) =>
      panelRows(state, rankAreas(state).panel).flatMap((row) => row.match(/^[●◐✗] s-\d+/) ?? []);
    expect(listed(many).length).toBeGreaterThan(3);
    expect(listed(many).every((row) => row.startsWith('✗'))).toBe(true);
    const under = listed(afterKeys(many, 'left', 'left', 'left'));
    expect(under.some((row) => row.endsWith('s-058'))).toBe(true);
    expect(under).toEqual(under.toSorted((a, b) => a.slice(2).localeCompare(b.slice(2))));
  });

  it('has a sentence beside its plot, and says what a simulation is worth where there is room', () => {
    const text = told(drawnState({ size: wide }));
    expect(text).toContain('Pitch peaks nose down 3.3° 0.20 s after the kerb');
    expect(text).toContain('it proves nothing about the machine');
  });
});
