/**
 * Which view of the shortlist has to be computed, of which profile and through which sheet, and what is shown until then?
 */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../../src/show/colour.js';
import { previewed } from '../../../src/tui/bench/hear-shortlist.js';
import { shelved } from '../../../src/tui/bench/hear.js';
import { isSameWish, previewNow, previewWish } from '../../../src/tui/bench/shortlist-items.js';
import { previewLines } from '../../../src/tui/bench/shortlist-text.js';
import { previewText } from '../../../src/tui/bench/shortlist-words.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { KEPT, withKept, withPreview } from '../draw/drawn-shortlist.js';
import { afterKeys, rankedState } from './some-state.js';

const kept = withKept(rankedState());
const open = afterKeys(kept, 'L');
const textOf = (state: BenchState) =>
  previewLines(state, createPaint('none')).join(' ').replaceAll(/\s+/g, ' ');

describe('what has to be computed', () => {
  const sheet = afterKeys(open, 'c down return');
  const plan = afterKeys(open, 'v v v');

  it('is the sheet once one is chosen, and the plan, of the one under the cursor', () => {
    expect([previewWish(kept), previewWish(open), previewWish(afterKeys(open, 'v v'))]).toEqual([
      null,
      null,
      null,
    ]);
    expect(textOf(afterKeys(open, 'v v'))).toMatch(/^c chooses the sheet of the controller in front of you/);
    expect(sheet.shortlist).toMatchObject({ view: 'sheet', sheet: 'slab' });
    expect(previewWish(sheet)).toMatchObject({ kind: 'sheet', kept: KEPT[0], sheet: { name: 'slab' } });
    expect(previewWish(afterKeys(plan, 'down'))).toMatchObject({ kind: 'plan', kept: KEPT[1] });
  });

  it('is the same whatever its rider says of it, and another for other numbers, sheets and scenarios', () => {
    const wish = previewWish(plan);
    const noted = { ...KEPT[0]!.value, note: 'Calm' };
    const again = shelved(plan, { ...plan.files, kept: [{ name: 'evening-one', value: noted }] });
    expect(isSameWish(wish, previewWish(again))).toBe(true);
    expect(isSameWish(wish, previewWish(afterKeys(plan, 'down')))).toBe(false);
    const other = shelved(plan, { ...plan.files, kept: [{ name: 'evening-one', value: KEPT[2]!.value }] });
    expect(isSameWish(wish, previewWish(other))).toBe(false);
    const sheets = sheet.files.sheet.map((one) => ({ ...one }));
    expect(
      isSameWish(previewWish(sheet), previewWish(shelved(sheet, { ...sheet.files, sheet: sheets }))),
    ).toBe(false);
    expect(isSameWish(previewWish(sheet), wish)).toBe(false);
  });

  it('is told while it is computed, shown when it is, and not taken for that of another', () => {
    expect([previewText(sheet), previewText(open)]).toEqual(['simulating', '']);
    const wish = previewWish(sheet)!;
    const on = previewed(sheet, wish, { done: 12, all: 60 });
    expect(previewText(on)).toBe('simulating: 12 of 60 runs');
    expect(textOf(on)).toContain('simulating: 12 of 60 runs.');
    const done = withPreview(on);
    expect(previewText(done)).toBe('simulated');
    expect(textOf(done)).toMatch(/evening-one through the controller sheet slab/);
    expect(previewNow(afterKeys(done, 'down'))).toBeNull();
    expect(previewed(afterKeys(done, 'down'), wish, { done: 1 })).toEqual(afterKeys(done, 'down'));
    expect(previewNow(afterKeys(done, 'down up'))).not.toBeNull();
    expect(textOf(withPreview(plan))).toMatch(/^First ride with evening-one: board/);
  });

  it('says why it cannot be', () => {
    const problem = {
      file: '',
      line: null,
      column: null,
      key: 'scenario',
      expected: 'the name of a scenario',
      received: "'bump'",
    };
    const failed = previewed(sheet, previewWish(sheet)!, { problems: [problem] });
    expect(textOf(failed)).toMatch(/^! .*expected the name of a scenario, received 'bump'/);
    expect(previewText(failed)).toBe('not simulated');
  });

  it('is told where there is no sheet, or the chosen one is gone', () => {
    const none = shelved(open, { ...open.files, sheet: [] });
    expect(afterKeys(none, 'c').notice?.text).toBe('sheet: there is no controller sheet in profiles/sheets');
    expect(textOf(afterKeys(none, 'v v'))).toMatch(/^There is no controller sheet in profiles\/sheets/);
    const gone = shelved(sheet, { ...sheet.files, sheet: sheet.files.sheet.slice(0, 1) });
    expect(textOf(gone)).toMatch(/^The sheet slab is no longer there\. c chooses/);
  });

  it('is by the last whole version of a damaged sheet, which is said, and no list to type is written', () => {
    const problem = {
      file: 'profiles/sheets/slab.yaml',
      line: 3,
      column: 1,
      key: 'rows',
      expected: 'rows',
      received: 'none',
    };
    const damaged = withPreview(shelved(sheet, { ...sheet.files, problems: [problem] }));
    expect(textOf(damaged)).toMatch(
      /^! profiles\/sheets\/slab\.yaml:3:1 rows: .* last whole version of this sheet: .* evening-one through/,
    );
    const refused = afterKeys(damaged, 'x return');
    expect(refused.errands).toEqual([]);
    expect(refused.notice?.text).toBe('the file of this sheet is damaged: mend it first');
    const other = shelved(sheet, {
      ...sheet.files,
      problems: [{ ...problem, file: 'profiles/sheets/brick.yaml' }],
    });
    expect(textOf(withPreview(other))).toMatch(/^evening-one through/);
  });

  it('can be chosen one at a time alone', () => {
    const list = afterKeys(open, 'c');
    expect(afterKeys(list, 'space').notice?.text).toBe(
      'mark: one sheet at a time; take the one under the cursor',
    );
    expect(afterKeys(list, 'escape').shortlist).toMatchObject({ sheet: null, view: 'summary' });
  });
});
