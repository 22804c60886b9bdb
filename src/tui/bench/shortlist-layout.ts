/**
 * Where do list and preview stand on the Shortlist screen? Beside each other where the terminal is wide, else the list on top.
 */
import { shortlistRowsOf } from './shortlist-items.js';
import type { BenchState } from './state.js';

/** A place, columns and rows. */
interface Place {
  width: number;
  height: number;
}

/** The places; the preview has a line above it that is not counted here. */
export interface ShortlistLayout {
  isBeside: boolean;
  list: Place;
  preview: Place;
}

/** Columns between list and preview. */
export const LIST_GAP = 2;

/** Fewest columns of the whole, and rows, in which they stand beside each other. */
const BESIDE = { width: 100, height: 10 } as const;

/** Fewest columns of a preview beside the list, the columns of a ride card; the most, and its part of the whole. */
const PREVIEW = { least: 64, most: 100, share: 0.6 } as const;

/** The part of the height that the list may take on top, and its fewest rows: the header and the row under the cursor. */
const LIST = { share: 0.3, least: 2 } as const;

/** The places for the size that there is. */
export function shortlistLayout(state: Pick<BenchState, 'size' | 'shelf' | 'shortlist'>): ShortlistLayout {
  const { columns } = state.size;
  const height = Math.max(1, state.size.rows - 2);
  if (columns >= BESIDE.width && height >= BESIDE.height) {
    const share = Math.floor(columns * PREVIEW.share);
    const width = Math.max(PREVIEW.least, Math.min(PREVIEW.most, share));
    return {
      isBeside: true,
      list: { width: columns - width - LIST_GAP, height },
      preview: { width, height: height - 1 },
    };
  }
  // A code for a camera needs every row that there is.
  const most = state.shortlist.view === 'qr' ? LIST.least : Math.floor(height * LIST.share);
  const rows = Math.max(LIST.least, Math.min(most, shortlistRowsOf(state).length + 1));
  return {
    isBeside: false,
    list: { width: columns, height: Math.min(rows, height) },
    preview: { width: columns, height: Math.max(1, height - rows - 1) },
  };
}
