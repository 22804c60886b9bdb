/**
 * What do keys do on the Rank screen?
 */
import { describe, expect, it } from 'vitest';
import { ROW_ORDERS } from '../../../src/measure/row-order.js';
import { currentCell, currentRow, shownRows, wishesOf } from '../../../src/tui/bench/rows.js';
import { comparedProfiles } from '../../../src/tui/bench/rank-acts.js';
import { afterKeys, afterTyping, rankedState, runOf, someShelf, someState, withRows } from './some-state.js';

const names = (state: ReturnType<typeof rankedState>) => shownRows(state).map(({ name }) => name);
const [best, second, last] = names(rankedState()) as [string, string, string];

describe('the rows', () => {
  it('stand in the order of rank, those not computed behind them', () => {
    expect(last).toBe('silk');
    const state = rankedState();
    const partly = {
      ...state,
      rows: state.rows.map((row) => (row.name === best ? { ...row, result: null } : row)),
    };
    expect(shownRows(partly).map(({ name, rank }) => [name, rank])).toEqual([
      [second, 1],
      [last, 2],
      [best, null],
    ]);
  });

  it('are all there before anything is computed', () => {
    const rows = shownRows(someState());
    expect(rows.map(({ name, result, rank }) => ({ name, result, rank }))).toEqual(
      ['felt', 'silk', 'wool'].map((name) => ({ name, result: null, rank: null })),
    );
  });

  it.each([
    ['wo', ['wool']],
    ['WOOL', ['wool']],
    ['uphill', ['felt']],
    ['for tests', [best, second, last].filter((name) => name !== 'felt')],
    ['nothing like it', []],
  ])('filtered by %j are %j', (text, left) => {
    expect(names(afterKeys(afterTyping(afterKeys(rankedState(), '/'), text), 'return'))).toEqual(left);
  });
});

describe('the cursor', () => {
  it.each([
    ['', best],
    ['down', second],
    ['j j', last],
    ['j j j', last],
    ['down up', best],
    ['j k k', best],
    ['end', last],
    ['end home', best],
    ['pagedown', last],
    ['pagedown pageup', best],
  ])('after %j is on %s', (keys, name) => {
    expect(currentRow(afterKeys(rankedState(), keys))?.name).toBe(name);
  });

  it('stays on its profile when the order changes', () => {
    const state = afterKeys(rankedState(), 'j');
    expect(currentRow(afterKeys(state, 'R s s'))?.name).toBe(second);
  });

  it('goes to the first row while a filter hides its own, and comes back', () => {
    const state = afterTyping(afterKeys(rankedState(), 'end /'), 'wool');
    expect(currentRow(state)?.name).toBe('wool');
    expect(currentRow(afterKeys(state, 'escape'))?.name).toBe(last);
    expect(currentRow(afterKeys(state, 'return escape'))?.name).toBe(last);
  });

  it.each([
    ['', null],
    ['right', 0],
    ['l l', 1],
    ['l l l', null],
    ['left', 1],
    ['h h h', null],
    ['l h', null],
  ])('after %j stands on scenario %s of the strip', (keys, column) => {
    expect(afterKeys(rankedState(), keys).rank.column).toBe(column);
  });

  it('chooses the run that is shown: the worst one, or the one of its scenario', () => {
    const state = rankedState();
    const row = currentRow(state)!;
    expect(currentCell(state, row)).toBe(row.result!.worst);
    for (const [keys, scenario] of [
      ['l', 'kerb'],
      ['l l', 'level'],
    ] as const) {
      const there = afterKeys(state, keys);
      expect(currentCell(there, row)?.scenario).toBe(scenario);
      expect(wishesOf(there).map(({ profile, trial }) => [profile.name, trial.key.scenario])).toEqual([
        [best, scenario],
      ]);
    }
  });

  it('finds nothing to stand on where nothing can be ranked', () => {
    const state = someState();
    const bare = { ...state, work: null };
    for (const keys of ['down', 'end', 'right', 'left', 'space', 'e', 'return', 'c', 's', 'w', 'x']) {
      const next = afterKeys(bare, keys);
      expect(next.rank).toMatchObject({ cursor: null, column: null, picked: [] });
      expect(next.screen).toBe('rank');
    }
  });
});

describe('the order', () => {
  it('goes through every column and comes round, either way', () => {
    let state = rankedState();
    const seen = ROW_ORDERS.map(() => (state = afterKeys(state, 's')).rank.order.by);
    expect(seen).toEqual([...ROW_ORDERS.slice(1), ROW_ORDERS[0]]);
    expect(afterKeys(state, 'S').rank.order.by).toBe(ROW_ORDERS.at(-1));
  });

  it('turns round, and straight again with another column', () => {
    const turned = afterKeys(rankedState(), 'R');
    expect(names(turned)).toEqual([last, second, best]);
    expect(afterKeys(turned, 's').rank.order.reversed).toBe(false);
    expect(names(afterKeys(turned, 'R'))).toEqual([best, second, last]);
  });
});

describe('picking', () => {
  it.each([
    ['space', [best]],
    ['space space', [best, second]],
    ['space up space', []],
    ['end space space', []],
  ])('%j leaves %j picked', (keys, picked) => {
    expect(afterKeys(rankedState(), keys).rank.picked).toEqual(picked);
  });

  it('takes the row under the cursor to a single pick', () => {
    expect(comparedProfiles(afterKeys(rankedState(), 'space'))).toEqual([best, second]);
    expect(comparedProfiles(afterKeys(rankedState(), 'space up'))).toEqual([best]);
  });

  it.each([
    ['c', 'pick two to four'],
    ['space up c', 'pick two to four'],
  ])('%j says that it cannot compare', (keys, said) => {
    const state = afterKeys(rankedState(), keys);
    expect(state.screen).toBe('rank');
    expect(state.notice?.text).toContain(said);
  });

  it('refuses more than four', () => {
    const [one] = someShelf().profile;
    const profile = ['a', 'b', 'c', 'd', 'e'].map((name) => ({ ...one!, name }));
    const state = afterKeys(someState({ shelf: someShelf({ profile }) }), 'space space space space');
    expect(afterKeys(state, 'c').screen).toBe('compare');
    const five = afterKeys(state, 'space c');
    expect(five.screen).toBe('rank');
    expect(five.notice?.text).toContain('5 are picked');
  });
});

describe('opening', () => {
  it('a run shows the profile and scenario under the cursor, at the peak, whole', () => {
    const state = afterKeys(rankedState(), 'j l l return');
    expect(state).toMatchObject({ screen: 'trace', behind: ['rank'], looks: [] });
    expect(state.view.profiles).toEqual([second]);
    expect(state.work!.trials[state.view.trial]!.key.scenario).toBe('level');
    expect(state.playhead).toMatchObject({ timeS: null, playing: false, span: null });
  });

  it('a run is refused until its row is computed', () => {
    const state = afterKeys(someState(), 'return');
    expect(state.screen).toBe('rank');
    expect(state.notice?.text).toBe('look: this row is not computed yet');
    expect(afterKeys(withRows(someState()), 'return').screen).toBe('trace');
  });

  it('a comparison shows the picked ones and comes back to them', () => {
    const state = afterKeys(rankedState(), 'space space c');
    expect(state).toMatchObject({ screen: 'compare', view: { profiles: [best, second] } });
    const back = afterKeys(state, 'escape');
    expect(back).toMatchObject({ screen: 'rank', behind: [], rank: { picked: [best, second] } });
  });

  it('a run is left for the row that was looked at last', () => {
    const state = afterKeys(rankedState(), 'return j q');
    expect(state.screen).toBe('rank');
    expect(currentRow(state)?.name).toBe(second);
  });

  it('wants the runs of the screen, profile by profile', () => {
    const wishes = wishesOf(afterKeys(rankedState(), 'l l space space c'));
    expect(wishes.map(({ profile, trial }) => `${profile.name}/${trial.key.scenario}`)).toEqual([
      `${best}/level`,
      `${second}/level`,
    ]);
    expect(runOf(best, 'level').wish.trial).toEqual(wishes[0]!.trial);
  });
});
