/**
 * What stands on the screen after an errand that could not be done?
 */
import { describe, expect, it } from 'vitest';
import { refusedErrand, resized } from '../../../src/tui/bench/hear.js';
import type { BenchState, Errand } from '../../../src/tui/bench/state.js';
import { screenRows } from '../../../src/tui/draw/screen-rows.js';
import { afterKeys, afterTyping, rankedState } from './some-state.js';

const PROBLEM = {
  file: 'nofolder/foo.csv',
  line: null,
  column: null,
  key: '',
  expected: 'a path in a folder that exists',
  received: 'no folder nofolder',
};
const sent = (state: BenchState): { state: BenchState; errand: Errand } => ({
  state: { ...state, errands: [] },
  errand: state.errands[0]!,
});
const refused = (state: BenchState) => {
  const { state: now, errand } = sent(state);
  return refusedErrand(now, errand, [PROBLEM]);
};
const exporting = () => afterKeys(afterTyping(afterKeys(rankedState(), 'x'), 'nofolder/foo.csv'), 'return');
const saving = () => afterKeys(afterTyping(afterKeys(rankedState(), 'e right escape w'), 'linen'), 'return');

describe('a refused file name', () => {
  it('stays in its line, and what is typed next belongs to it', () => {
    const state = refused(exporting());
    expect(state.entry).toEqual({ purpose: 'export', text: 'nofolder/foo.csv', isOffered: false });
    expect(state.notice?.text).toContain('expected a path in a folder that exists');
    const retried = afterTyping(afterKeys(state, 'ctrl+u'), 'foo');
    expect(retried).toMatchObject({ overlay: null, entry: { text: 'foo' }, choices: state.choices });
  });

  it.each([
    [80, 24],
    [100, 30],
    [40, 10],
  ])('is to be seen together with what is wrong at %i x %i', (columns, rows) => {
    const drawn = screenRows(resized(refused(exporting()), { columns, rows }));
    expect(drawn).toHaveLength(rows);
    expect(drawn.at(-1)).toMatch(/^write .*foo\.csv_/);
    expect(drawn.slice(-3, -1).join('\n')).toContain('! nofolder/foo.csv: expected a path');
  });

  it('of a profile that is saved stays too, with the cursor on that profile', () => {
    const before = saving();
    const state = refused(afterKeys(before, 'end'));
    expect(state.entry).toEqual({ purpose: 'save', text: 'linen', isOffered: false });
    const from = before.errands[0]!.kind === 'save' ? before.errands[0]!.from : '';
    expect(state.rank.cursor).toBe(from);
    expect(afterKeys(state, 'backspace return').errands).toEqual([{ kind: 'save', from, name: 'line' }]);
  });

  it.each(['return', '/', 'b', '?'])('is told alone where meanwhile %j opened something else', (key) => {
    const meanwhile = afterKeys(exporting(), key);
    const state = refused(meanwhile);
    expect(state).toMatchObject({ entry: meanwhile.entry, overlay: meanwhile.overlay });
    expect(state.notice?.text).toContain('expected a path');
  });

  it('that is no name stays as it did', () => {
    const state = afterKeys(
      afterTyping(afterKeys(rankedState(), 'e right escape w'), 'Not a name'),
      'return',
    );
    expect(state.entry?.text).toBe('Not a name');
    const drawn = screenRows(resized(state, { columns: 80, rows: 24 }));
    expect(drawn.at(-1)).toContain('Not a name_');
    expect(drawn.slice(-3, -1).join(' ')).toContain('expected a name of lower-case letters');
  });
});
