/**
 * The screens: a line at the top, a line at the bottom, and between them what the state says. Trace and Compare leave their
 * place free; their pictures are painted into it.
 */
import { Box } from 'ink';
import { useSyncExternalStore } from 'react';
import type { BenchState } from '../bench/state.js';
import type { Store } from '../bench/store.js';
import { bodyArea, LEAST_SIZE, rankAreas } from '../draw/areas.js';
import { footerRow, headerRow } from '../draw/chrome.js';
import { gainsRows, helpRows, listRows, problemRows } from '../draw/overlays.js';
import { panelRows } from '../draw/panel.js';
import { say, type Area } from '../draw/say.js';
import { tableRows } from '../draw/table.js';
import { Lines } from './lines.js';

/** True where the body is painted from outside. */
export function isPainted({ screen, overlay, size }: BenchState): boolean {
  return screen !== 'rank' && overlay === null && !isTooSmall({ size });
}

function isTooSmall({ size }: Pick<BenchState, 'size'>): boolean {
  return size.columns < LEAST_SIZE.columns || size.rows < LEAST_SIZE.rows;
}

/** What stands in the place of the panel. */
function panelOf(state: BenchState, area: Area): string[] {
  const { overlay } = state;
  if (overlay?.kind === 'chooser') return listRows(state, overlay.chooser, area);
  if (overlay?.kind === 'gains') return gainsRows(state, area);
  return panelRows(state, area);
}

function Rank({ state }: { state: BenchState }) {
  const { isBeside, table, panel } = rankAreas(state);
  return (
    <Box flexDirection={isBeside ? 'row' : 'column'} gap={isBeside ? 2 : 1} flexGrow={1}>
      <Box width={table.width} height={table.height} flexShrink={0}>
        <Lines rows={tableRows(state, table)} />
      </Box>
      <Box width={panel.width} height={panel.height} flexShrink={0}>
        <Lines rows={panelOf(state, panel)} />
      </Box>
    </Box>
  );
}

function Body({ state }: { state: BenchState }) {
  const { overlay, work, screen } = state;
  const area = bodyArea(state);
  if (overlay?.kind === 'help') return <Lines rows={helpRows(state, overlay, area)} />;
  if (overlay?.kind === 'problems') return <Lines rows={problemRows(state, overlay, area)} />;
  if (work === null && overlay === null) {
    const text =
      'A board, a rider, a profile and a scenario are needed; press ! for what is wrong, or choose others.';
    return <Lines rows={say(text, area.width, state.options)} />;
  }
  return screen === 'rank' ? <Rank state={state} /> : null;
}

/** The whole bench on a terminal. */
export function Bench({ store }: { store: Store }) {
  const state = useSyncExternalStore(store.subscribe, store.calm);
  const { columns, rows } = state.size;
  if (isTooSmall(state)) {
    const text = `underfoot needs ${LEAST_SIZE.columns} columns and ${LEAST_SIZE.rows} rows; here are ${columns} and ${rows}.`;
    return <Lines rows={say(text, columns, state.options).slice(0, rows)} />;
  }
  return (
    <Box flexDirection="column" width={columns} height={rows}>
      <Lines rows={[headerRow(state)]} />
      <Box height={rows - 2} flexDirection="column" overflow="hidden">
        <Body state={state} />
      </Box>
      <Lines rows={[footerRow(state)]} />
    </Box>
  );
}
