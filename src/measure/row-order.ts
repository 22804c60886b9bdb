/**
 * In which order do the rows of a ranking stand? By rank, or by any column, either way round; the rank of a profile
 * is its place in the ranking and stays what it is.
 */
import { rowFigures, type ProfileResult } from './profile-result.js';

/** Columns that rows can be ordered by. */
export const ROW_ORDERS = ['rank', 'profile', 'falls', 'score', 'overshoot', 'settling', 'cut'] as const;

/** A column that rows can be ordered by. */
export type RowColumn = (typeof ROW_ORDERS)[number];

/** An order of rows: least first (names from a to z), or the other way round when reversed. */
export interface RowOrder {
  by: RowColumn;
  reversed: boolean;
}

/** Best first. */
export const RANK_ORDER: RowOrder = { by: 'rank', reversed: false };

/** What each column is ordered by: the figure that its row shows, or null where it shows none. */
const FIGURE_OF: Readonly<
  Record<RowColumn, (profile: ProfileResult, index: number) => number | string | null>
> = {
  rank: (_profile, index) => index,
  profile: ({ name }) => name,
  falls: ({ failures }) => failures,
  score: ({ score }) => score,
  overshoot: ({ cells }) => rowFigures(cells).overshootPercent,
  settling: ({ cells }) => rowFigures(cells).settlingTimeS,
  cut: ({ cells }) => rowFigures(cells).saturationShare,
};

/**
 * Profiles, given in the order of their rank, in the order asked for. Those without a figure come last
 * either way round; equal ones stand in the order of their rank.
 */
export function orderRows(ranked: readonly ProfileResult[], order: RowOrder): ProfileResult[] {
  const side = order.reversed ? -1 : 1;
  const rows = ranked.map((profile, index) => ({ profile, figure: FIGURE_OF[order.by](profile, index) }));
  rows.sort(({ figure: one }, { figure: other }) => {
    if (one === null || other === null) return Number(one === null) - Number(other === null);
    if (one === other) return 0;
    return one < other ? -side : side;
  });
  return rows.map(({ profile }) => profile);
}
