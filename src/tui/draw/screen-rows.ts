/**
 * Every row of the screen in front: a line at the top, a line at the bottom, and between them what the state says. Trace and
 * Compare leave their place free; their pictures are painted into it at every frame.
 */
import { beside } from '../../show/beside.js';
import type { BenchState } from '../bench/state.js';
import { isTooSmall, LEAST_SIZE } from '../bench/least-size.js';
import { missingSentences } from '../bench/missing.js';
import { bodyArea, PANEL_GAP, rankAreas } from './areas.js';
import { footerRow, headerRow } from './chrome.js';
import { noticeRows } from './entry-row.js';
import { gainsRows, helpRows, listRows, problemRows } from './overlays.js';
import { panelRows } from './panel.js';
import { say, type Area } from './say.js';
import { shortlistRows } from './shortlist.js';
import { sweepRows } from './sweep.js';
import { tableRows } from './table.js';
import { whyRows } from './why.js';

/** As many rows as the terminal has. */
export function screenRows(state: BenchState): string[] {
  const { columns, rows } = state.size;
  if (isTooSmall(state)) {
    const text = `underfoot needs ${LEAST_SIZE.columns} columns and ${LEAST_SIZE.rows} rows; here are ${columns} and ${rows}. q leaves.`;
    const told = state.notice === null ? [] : say(state.notice.text, columns, state.options);
    return filled([...told, ...say(text, columns, state.options)], rows);
  }
  const body = filled(bodyRows(state), bodyArea(state).height);
  const notice = noticeRows(state);
  const above = body.slice(0, Math.max(0, body.length - notice.length));
  return [headerRow(state), ...above, ...notice, footerRow(state)];
}

/** So many rows: those given, and empty ones below them. */
function filled(rows: readonly string[], height: number): string[] {
  return Array.from({ length: height }, (_, index) => rows[index] ?? '');
}

function bodyRows(state: BenchState): string[] {
  const { overlay, work, screen } = state;
  const area = bodyArea(state);
  if (overlay?.kind === 'help') return helpRows(state, overlay, area);
  if (overlay?.kind === 'problems') return problemRows(state, overlay, area);
  if (screen === 'shortlist') return shortlistRows(state, area);
  if (work === null && overlay === null) {
    const faults = state.shelf.problems.length === 0 ? [] : ['! shows what is wrong with files'];
    const sentences = [...missingSentences(state), ...faults];
    return sentences.flatMap((text) =>
      say(`${text[0]!.toUpperCase()}${text.slice(1)}.`, area.width, state.options),
    );
  }
  if (screen === 'why') return whyRows(state, area);
  if (screen === 'sweep') return sweepRows(state, area);
  return screen === 'rank' ? rankRows(state) : [];
}

function rankRows(state: BenchState): string[] {
  const { isBeside, table, panel } = rankAreas(state);
  const left = tableRows(state, table);
  const right = panelOf(state, panel);
  if (isBeside) return beside(left, right, { leftWidth: table.width, gap: PANEL_GAP });
  return [...filled(left, table.height), '', ...right];
}

/** What stands in the place of the panel. */
function panelOf(state: BenchState, area: Area): string[] {
  const { overlay } = state;
  if (overlay?.kind === 'chooser') return listRows(state, overlay.chooser, area);
  if (overlay?.kind === 'gains') return gainsRows(state, area);
  return panelRows(state, area);
}
