/**
 * What keys do on the Rank screen.
 */
import { COMPARE_COUNT } from '../../show/compare-run.js';
import { ROW_ORDERS, type RowColumn } from '../../measure/row-order.js';
import type { Act } from './binding.js';
import { currentCell, currentRow, shownRows, trialOfCell } from './rows.js';
import type { BenchState, RankState } from './state.js';

function withRank(state: BenchState, rank: Partial<RankState>): BenchState {
  return { ...state, rank: { ...state.rank, ...rank } };
}

/** Moves the cursor by so many rows; it stops at the ends. */
export function moveRow(by: number): Act {
  return (state) => {
    const rows = shownRows(state);
    const here = rows.findIndex(({ name }) => name === currentRow(state, rows)?.name);
    const there = Math.min(rows.length - 1, Math.max(0, here + by));
    return withRank(state, { cursor: rows[there]?.name ?? null });
  };
}

/** Moves the cursor along the strip; left of the first scenario it stands on the worst one again. */
export function moveColumn(by: 1 | -1): Act {
  return (state) => {
    const last = (state.work?.plan.scenarios.length ?? 0) - 1;
    const { column } = state.rank;
    if (last < 0) return state;
    if (column === null) return withRank(state, { column: by === 1 ? 0 : last });
    const next = column + by;
    return withRank(state, { column: next < 0 || next > last ? null : next });
  };
}

/** Orders by the next or the previous column. */
export function moveOrder(by: 1 | -1): Act {
  return (state) => {
    const at = ROW_ORDERS.indexOf(state.rank.order.by) + by;
    const column = ROW_ORDERS[(at + ROW_ORDERS.length) % ROW_ORDERS.length] as RowColumn;
    return withRank(state, { order: { by: column, reversed: false } });
  };
}

/** Turns the order round. */
export const turnOrder: Act = (state) => {
  const { order } = state.rank;
  return withRank(state, { order: { ...order, reversed: !order.reversed } });
};

/** Picks the row under the cursor, or lets it go. */
export const togglePick: Act = (state) => {
  const name = currentRow(state)?.name;
  if (name === undefined) return state;
  const { picked } = state.rank;
  const next = picked.includes(name) ? picked.filter((other) => other !== name) : [...picked, name];
  return moveRow(1)(withRank(state, { picked: next }));
};

/** The profiles that would be compared: those picked, and with one alone the one under the cursor too. */
export function comparedProfiles(state: BenchState): string[] {
  const here = currentRow(state)?.name;
  const { picked } = state.rank;
  const known = picked.filter((name) => state.work?.plan.profiles.some((profile) => profile.name === name));
  return known.length === 1 && here !== undefined && !known.includes(here) ? [...known, here] : known;
}

/** Why nothing can be compared now; null where it can. */
export function comparingOff(state: BenchState): string | null {
  const count = comparedProfiles(state).length;
  if (count < COMPARE_COUNT.least) return 'pick two to four profiles first';
  return count > COMPARE_COUNT.most ? `${count} are picked, ${COMPARE_COUNT.most} at most` : null;
}

function opened(state: BenchState, screen: 'trace' | 'compare', profiles: readonly string[]): BenchState {
  const cell = currentCell(state, currentRow(state));
  const scenario = state.work?.plan.scenarios[state.rank.column ?? 0]?.name;
  const first = state.work?.trials.findIndex(({ key }) => key.scenario === scenario) ?? -1;
  const trial = cell === null ? Math.max(0, first) : trialOfCell(state, cell);
  return {
    ...state,
    screen,
    behind: [...state.behind, state.screen],
    view: { ...state.view, profiles, trial },
    playhead: { ...state.playhead, timeS: null, playing: false, span: null },
    looks: [],
  };
}

/** Why no profile is meant; null where one is. */
export function rowOff(state: BenchState): string | null {
  return currentRow(state) === undefined ? 'there is no profile in sight' : null;
}

/** Why there is no run to look at; null where there is. */
export function lookingOff(state: BenchState): string | null {
  const isThere = currentCell(state, currentRow(state)) !== null;
  return rowOff(state) ?? (isThere ? null : 'this row is not computed yet');
}

/** Shows every profile again. */
export const liftFilter: Act = (state) => withRank(state, { filter: '' });

/** Opens the run under the cursor. */
export const openTrace: Act = (state) => opened(state, 'trace', [currentRow(state)!.name]);

/** Opens the picked profiles side by side, in the scenario under the cursor. */
export const openCompare: Act = (state) => opened(state, 'compare', comparedProfiles(state));

/** Back to the screen before. */
export const goBack: Act = (state) => {
  const screen = state.behind.at(-1) ?? 'rank';
  const rank =
    screen === 'rank' && state.screen === 'trace'
      ? { ...state.rank, cursor: state.view.profiles[0] ?? state.rank.cursor }
      : state.rank;
  const playhead = { ...state.playhead, playing: false };
  const view =
    state.screen === 'why' && state.why !== null
      ? { ...state.view, profiles: state.why.plan.profiles.map(({ name }) => name) }
      : state.view;
  const why = state.screen === 'why' ? null : state.why;
  return { ...state, view, why, screen, behind: state.behind.slice(0, -1), playhead, rank, looks: [] };
};
