/**
 * What do keys do on Trace and Compare to look at other runs, and at several?
 */
import { describe, expect, it } from 'vitest';
import { partingOf } from '../../../src/measure/parting.js';
import { currentRow, shownRows } from '../../../src/tui/bench/rows.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { cursorS, spanInSight, wholeSpan } from '../../../src/tui/bench/time-acts.js';
import {
  afterKeys,
  afterKeysSettled,
  afterTyping,
  rankedState,
  runOf,
  someState,
  withLooks,
} from './some-state.js';

/** Trace of wool over the kerb, 4 s. */
const found = afterKeys(afterTyping(afterKeys(rankedState(), '/'), 'wool'), 'return');
const wool = afterKeysSettled(found, 'l return');
const { tape } = runOf('wool', 'kerb');
const { tickS } = tape;

const shown = ({ view, work }: BenchState) =>
  `${view.profiles.join('+')}/${work!.trials[view.trial]!.key.scenario}`;
describe('another run', () => {
  const order = shownRows(rankedState()).map(({ name }) => name);

  it('of the same scenario comes with the next profile of the table, round and round', () => {
    let state = afterKeysSettled(rankedState(), 'l l return');
    const seen = [...order, order[0]].map(() => {
      const name = shown(state);
      state = afterKeysSettled(state, 'j');
      return name;
    });
    expect(seen).toEqual([...order, order[0]].map((name) => `${name}/level`));
    expect(shown(afterKeysSettled(rankedState(), 'l l return pageup'))).toBe(`${order.at(-1)}/level`);
  });

  it('of the same profile comes with the next scenario, at its peak', () => {
    const state = afterKeys(wool, 'home z down');
    expect(shown(state)).toBe('wool/level');
    expect(state.playhead).toMatchObject({ timeS: null, span: null });
    expect(shown(afterKeysSettled(wool, 'down down'))).toBe('wool/kerb');
    expect(shown(afterKeysSettled(wool, 'up'))).toBe('wool/level');
  });

  it('comes from either end where a filter hides the one in front', () => {
    const hidden = {
      ...wool,
      rank: { ...wool.rank, filter: 'l' },
      view: { ...wool.view, profiles: ['none'] },
    };
    const rows = shownRows(hidden).map(({ name }) => name);
    expect(afterKeys(hidden, 'j').view.profiles).toEqual(rows.slice(0, 1));
    expect(afterKeys(hidden, 'k').view.profiles).toEqual(rows.slice(-1));
  });

  it('keeps the moment that was wanted past a shorter run', () => {
    expect(runOf('silk', 'kerb').tape.length).toBeLessThan(tape.length);
    const late = afterKeys(afterKeysSettled(rankedState(), 'l return'), 'end');
    const silk = afterKeysSettled(late, 'k');
    expect(shown(silk)).toBe('silk/kerb');
    expect(cursorS(silk)).toBe(wholeSpan(silk)!.toS);
    expect(cursorS(silk)).toBeLessThan(cursorS(late));
    expect(cursorS(afterKeysSettled(silk, 'j'))).toBe(cursorS(late));
  });

  it('brings what is in sight into itself', () => {
    const late = afterKeys(wool, 'end z z z');
    const silk = withLooks(afterKeys({ ...late, rank: { ...late.rank, filter: 'silk' } }, 'j'));
    const span = spanInSight(silk)!;
    expect(shown(silk)).toBe('silk/kerb');
    expect(span.toS).toBeLessThanOrEqual(wholeSpan(silk)!.toS);
    expect(span.fromS).toBeGreaterThanOrEqual(0);
    expect(span.toS).toBeGreaterThan(span.fromS);
  });

  it('passed by two quick keys still begins at its peak', () => {
    const quick = withLooks(afterKeys({ ...rankedState() }, 'return j j'));
    expect(quick.playhead.timeS).toBeNull();
    expect(cursorS(quick)).toBeGreaterThan(0);
  });

  it('is one of a row that is not computed yet as well', () => {
    const bare = someState();
    const state = afterKeys({ ...rankedState(), rows: rankedState().rows.slice(0, 1) }, 'home return j j');
    expect(bare.work!.plan.profiles.map(({ name }) => name)).toContain(state.view.profiles[0]);
    expect(state.screen).toBe('trace');
  });
});

describe('Compare', () => {
  const both = afterKeysSettled(rankedState(), 'l space end space c');
  const tapes = both.looks.map((look) => look!.tape);
  const partS = partingOf(tapes, both.looks[0]!.window.bandRad)?.timeS ?? null;

  it('begins where the profiles part', () => {
    expect(partS).not.toBeNull();
    expect(cursorS(both)).toBe(partS);
    expect(cursorS(afterKeys(both, 'home d'))).toBe(partS);
  });

  it('waits for all of its runs', () => {
    const half = { ...both, looks: [both.looks[0]!, null] };
    expect(afterKeys(half, 'home d').playhead.timeS).toBe(0);
    expect(afterKeys(half, 'd').notice).toBeNull();
  });

  it('says so where they never part', () => {
    const alike = afterKeysSettled(rankedState(), 'l l space space c');
    expect(alike.notice).toBeNull();
    expect(afterKeys(alike, 'd').notice?.text).toBe('the profiles do not part in this scenario');
  });

  it('reads time on the longest run', () => {
    const lengths = tapes.map(({ length }) => length);
    expect(Math.min(...lengths)).toBeLessThan(Math.max(...lengths));
    expect(cursorS(afterKeys(both, 'end'))).toBeCloseTo((Math.max(...lengths) - 1) * tickS, 9);
  });

  it('goes through the scenarios', () => {
    expect(shown(afterKeysSettled(both, 'down'))).toBe(`${both.view.profiles.join('+')}/level`);
  });
});

describe('in words', () => {
  it('is said until it is drawn again, on the next screen too', () => {
    const state = afterKeys(wool, 't');
    expect(state.view.inWords).toBe(true);
    expect(afterKeys(state, 'escape return').view.inWords).toBe(true);
    expect(afterKeys(state, 't').view.inWords).toBe(false);
    expect(currentRow(afterKeys(state, 'escape'))?.name).toBe('wool');
  });
});
