/**
 * The body of Shortlist: what is kept and what is being proven, and beside or below it a view of the one under the cursor.
 */
import { beside } from '../../show/beside.js';
import { textWidth } from '../../show/fit-text.js';
import { LIST_GAP, shortlistLayout } from '../bench/shortlist-layout.js';
import { SHORTLIST_VIEWS, type ShortlistViewName } from '../bench/shortlist-state.js';
import { previewLines, previewPage } from '../bench/shortlist-text.js';
import { chosenSheet, currentShortlistRow } from '../bench/shortlist-items.js';
import type { BenchState } from '../bench/state.js';
import { listRows } from './overlays.js';
import { atBothEnds, type Area } from './say.js';
import { keptListRows } from './shortlist-list.js';

/** The body, in at most as many rows as the area has. */
export function shortlistRows(state: BenchState, area: Area): string[] {
  const { overlay } = state;
  if (overlay?.kind === 'chooser') return listRows(state, overlay.chooser, area);
  const { isBeside, list, preview } = shortlistLayout(state);
  if (currentShortlistRow(state) === undefined) return previewRows(state, preview).slice(1);
  const left = keptListRows(state, list, { withWords: isBeside });
  const right = previewRows(state, preview);
  const rows = isBeside
    ? beside(left, right, { leftWidth: list.width, gap: LIST_GAP })
    : [...filled(left, list.height), ...right];
  return rows.slice(0, area.height);
}

function filled(rows: readonly string[], height: number): string[] {
  return Array.from({ length: height }, (_, index) => rows[index] ?? '');
}

/** The names of the views; that of the sheet says which. */
function viewName(state: BenchState, view: ShortlistViewName): string {
  if (view === 'qr') return 'QR';
  const sheet = view === 'sheet' ? chosenSheet(state) : undefined;
  return sheet === undefined ? view : `sheet ${sheet.name}`;
}

/** The views with the one in front in brackets and which lines of it these are; then the lines. */
function previewRows(state: BenchState, { width }: Area): string[] {
  const { options, shortlist } = state;
  const { paint } = options;
  const { top, height, count } = previewPage(state);
  const lines = previewLines(state, paint).slice(top, top + height);
  const names = SHORTLIST_VIEWS.map((view) => {
    const name = viewName(state, view);
    return view === shortlist.view ? `[${name}]` : name;
  });
  const place = count > height ? `${top + 1}-${top + lines.length} of ${count}` : '';
  const at = SHORTLIST_VIEWS.indexOf(shortlist.view);
  const all = names.join(' ');
  // Where there is no room for all of them, the one in front says which of them it is.
  const isRoomy = textWidth(all) + (place === '' ? 0 : textWidth(place) + 2) <= width;
  const views = isRoomy ? all : `${at + 1}/${names.length} ${names[at]}`;
  return [paint.bold(atBothEnds(views, place, { width, options })), ...lines];
}
