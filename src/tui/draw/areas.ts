/**
 * Where does everything stand on a terminal of some size? One line at the top and one at the bottom; between them the Rank
 * screen has its table and, below it or on wide terminals beside it, its panel.
 */
import { shownRows } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import type { Area } from './say.js';
import { wholeTableWidth } from './table-columns.js';

export { isTooSmall } from '../bench/least-size.js';

/** Fewest columns of a panel beside the table. */
const PANEL_BESIDE = 56;

/** Columns between the table and a panel beside it. */
export const PANEL_GAP = 2;

/** What lies between the first and the last line. */
export function bodyArea({ size }: Pick<BenchState, 'size'>): Area {
  return { width: size.columns, height: Math.max(1, size.rows - 2) };
}

/** The places of the Rank screen. */
export interface RankAreas {
  isBeside: boolean;
  table: Area;
  panel: Area;
}

/** Fewest rows that the panel should have: a list or numbers, sentences and a plot, or less on a low terminal. */
function panelRowsWanted(bodyRows: number, isOpen: boolean): number {
  if (bodyRows >= 36) return 18;
  if (isOpen) return Math.min(12, bodyRows - 4);
  return bodyRows >= 18 ? 9 : Math.floor(bodyRows / 3);
}

/** The places of the Rank screen for the rows that there are. */
export function rankAreas(state: BenchState): RankAreas {
  const { width, height } = bodyArea(state);
  const tableWidth = wholeTableWidth(state);
  if (width >= tableWidth + PANEL_GAP + PANEL_BESIDE) {
    return {
      isBeside: true,
      table: { width: tableWidth, height },
      panel: { width: width - tableWidth - PANEL_GAP, height },
    };
  }
  const tableRows = Math.max(
    3,
    Math.min(shownRows(state).length + 1, height - panelRowsWanted(height, state.overlay !== null) - 1),
  );
  return {
    isBeside: false,
    table: { width, height: Math.min(height, tableRows) },
    panel: { width, height: Math.max(0, height - tableRows - 1) },
  };
}
