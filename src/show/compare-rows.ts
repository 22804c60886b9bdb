/**
 * Which part of a comparison gets how many rows? Pitch comes first, then the rows of the table that matter most, then
 * current, speed and lean, then the rest of the table.
 */
import type { COMPARE_PANELS } from './compare-panels.js';
import { LEAST_TABLE_ROWS } from './difference-table.js';

type PanelName = (typeof COMPARE_PANELS)[number];

/** What there is to share, in rows. `table`: whole, and with its notes; `fixedPlotRows`: names of the marks and time axis. */
export interface RowsAtHand {
  free: number;
  table: { whole: number; noted: number };
  fixedPlotRows: number;
  isBeside: boolean;
}

/** How many rows each part gets; panels from top to bottom. */
export interface ComparePlan {
  tableRows: number;
  panels: { name: PanelName; rowCount: number }[];
  hasCaptions: boolean;
}

/** Rows from which a panel tells something, in the order in which panels are added. */
const GOOD_ROWS: readonly (readonly [PanelName, number])[] = [
  ['pitch', 7],
  ['current', 4],
  ['speed', 3],
  ['lean', 5],
];

/** Pitch alone is drawn in fewer rows where there are no more, down to this. */
const LEAST_PITCH_ROWS = 4;

/** From top to bottom. */
const TOP_TO_BOTTOM: readonly PanelName[] = ['pitch', 'lean', 'current', 'speed'];

/** Weights by which rows to spare go to the panels. */
const SPARE_WEIGHT: Readonly<Record<PanelName, number>> = { pitch: 4, lean: 2, current: 3, speed: 2 };

/** Shares the free rows: beside each other both have all of them, else the lines have half at least. */
export function sharedHeight({ free, table, fixedPlotRows, isBeside }: RowsAtHand): ComparePlan {
  if (isBeside) {
    return { tableRows: Math.max(0, free), ...sharedPanels(free - fixedPlotRows) };
  }
  const least = fixedPlotRows + LEAST_PITCH_ROWS;
  if (free < least + LEAST_TABLE_ROWS) {
    return { tableRows: Math.max(0, free), panels: [], hasCaptions: false };
  }
  const half = Math.min(free - least, Math.max(LEAST_TABLE_ROWS, Math.floor((free - fixedPlotRows) / 2)));
  const forTable = half >= table.noted ? table.noted : Math.min(half, table.whole);
  return { tableRows: forTable, ...sharedPanels(free - forTable - fixedPlotRows) };
}

/** As many panels as have room, then a caption for each of several, then the rest by weight. */
function sharedPanels(rows: number): Pick<ComparePlan, 'panels' | 'hasCaptions'> {
  const counts = new Map<PanelName, number>();
  let left = rows;
  for (const [name, good] of GOOD_ROWS) {
    const count = name === 'pitch' && left >= LEAST_PITCH_ROWS ? Math.min(good, left) : good;
    if (count > left) break;
    counts.set(name, count);
    left -= count;
  }
  const hasCaptions = counts.size > 1 && left >= counts.size;
  if (hasCaptions) left -= counts.size;
  for (; left > 0 && counts.size > 0; left -= 1) {
    const neediest = [...counts.keys()].reduce((a, b) =>
      counts.get(b)! / SPARE_WEIGHT[b] < counts.get(a)! / SPARE_WEIGHT[a] ? b : a,
    );
    counts.set(neediest, counts.get(neediest)! + 1);
  }
  const panels = TOP_TO_BOTTOM.flatMap((name) => {
    const rowCount = counts.get(name);
    return rowCount === undefined ? [] : [{ name, rowCount }];
  });
  return { panels, hasCaptions };
}
