/** Does what is said of a way out come from its numbers, and is nothing promised where nothing helped? */
import { describe, expect, it } from 'vitest';
import type { WayFound } from '../../src/explain/ways-out.js';
import { waysSentences } from '../../src/show/why-ways.js';
import { cellOf, fallOf, resultOf } from '../explain/made-results.js';

const cells = (count: number) => Array.from({ length: count }, () => resultOf(cellOf('hill', {})).cells[0]!);
const slower: WayFound = { lever: 'speed', unit: 'km/h', now: 34, helpsFrom: 29, helpsTo: 3, alsoFells: [] };
const cellsInSeries: WayFound = {
  lever: 'cells in series',
  unit: '',
  now: 15,
  helpsFrom: 18,
  helpsTo: 30,
  alsoFells: [],
};
const said = (ways: WayFound[], count = 1, isUnderReference = false) =>
  waysSentences({ cause: 'voltage ceiling', isUnderReference, cells: cells(count), ways });

describe('a way out', () => {
  it('is said with its size and what is there now', () => {
    expect(said([slower])).toEqual(['Simulated: hill with kim stays up at 3 to 29 km/h (now 34 km/h).']);
    expect(said([{ ...slower, helpsFrom: 27 }])[0]).toContain('at 3 to 27 km/h');
  });

  it('that hurts when it goes too far is said as a range', () => {
    expect(said([{ ...slower, helpsFrom: 7, helpsTo: 4 }])[0]).toContain('stays up at 4 to 7 km/h (now 34');
    expect(said([{ ...slower, helpsFrom: 7, helpsTo: 7 }])[0]).toContain('stays up at 7 km/h (now 34');
  });

  it('that fells something else says so', () => {
    const alsoFells = [resultOf(fallOf('bump', 2)).cells[0]!];
    expect(said([{ ...slower, alsoFells }])[0]).toContain('(now 34 km/h, but then bump with kim falls)');
  });

  it('that changes the machine leaves that to qualified people', () => {
    const [first, caution] = said([cellsInSeries, slower], 3, true);
    expect(first).toBe(
      'Simulated: hill with kim and 2 more stay up under the reference set with 18 to 30 cells in series (now 15); ' +
        'or at 3 to 29 km/h (now 34 km/h).',
    );
    expect(caution).toMatch(/qualified people/);
    expect(said([slower])).toHaveLength(1);
  });

  it('is not promised where nothing helped', () => {
    const none = { helpsFrom: null, helpsTo: null };
    expect(
      said([
        { ...cellsInSeries, ...none },
        { ...slower, ...none },
      ]),
    ).toEqual([
      'Nor does anything else that was simulated keep hill with kim up: cells in series and speed.',
    ]);
    expect(said([{ ...cellsInSeries, ...none }, slower])[0]).not.toContain('cells');
    expect(said([], 1)).toEqual([]);
    expect(said([slower], 0)).toEqual([]);
  });

  it('in stiffness of the legs is said in kN/m', () => {
    const legs: WayFound = {
      lever: 'stiffness of the legs',
      unit: 'N/m',
      now: 40_000,
      helpsFrom: 36_000,
      helpsTo: 14_000,
      alsoFells: [],
    };
    expect(said([legs])[0]).toContain('with knees bent, legs as stiff as 14 to 36 kN/m (now 40 kN/m)');
  });
});
