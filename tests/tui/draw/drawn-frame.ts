/** The whole bench on a terminal in memory: the real screens, the real renderer, the real cell grid. */
import { createElement } from 'react';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { createStore } from '../../../src/tui/bench/store.js';
import { bodyArea } from '../../../src/tui/draw/areas.js';
import { createBodyDrawer } from '../../../src/tui/draw/trace.js';
import { createScreen } from '../../../src/tui/terminal/screen.js';
import { FakeTerminal } from '../terminal/fake-terminal.js';

// The renderer draws nothing where it believes to run in continuous integration; it looks when it is loaded.
process.env['CI'] = 'false';
const { render } = await import('ink');
const { Bench, isPainted } = await import('../../../src/tui/app/bench.js');

/** A bench on a terminal in memory. */
export interface DrawnBench {
  /** Shows another state, at its own size, and answers the rows: as they stand on the terminal and as they were written. */
  show: (state: BenchState) => Promise<{ rows: string[]; written: string[] }>;
  close: () => void;
}

/** Opens a bench on a terminal in memory. */
export function openDrawn(first: BenchState): DrawnBench {
  const terminal = new FakeTerminal(first.size.columns, first.size.rows);
  const screen = createScreen(terminal);
  const store = createStore(first);
  let frame = '';
  const { stdout } = screen;
  const write = stdout.write.bind(stdout) as (text: string) => boolean;
  stdout.write = ((text: string) => {
    frame = text;
    return write(text);
  }) as typeof stdout.write;
  const ink = render(createElement(Bench, { store }), {
    stdout,
    debug: true,
    patchConsole: false,
    exitOnCtrlC: false,
  });
  const drawBody = createBodyDrawer();
  return {
    show: async (state) => {
      const { columns, rows } = state.size;
      if (columns !== terminal.columns || rows !== terminal.rows) await terminal.resize(columns, rows);
      store.change(() => state);
      const painted = isPainted(state) ? drawBody(state, bodyArea(state)) : [];
      screen.paint(1, painted);
      await new Promise((resolve) => setTimeout(resolve));
      await terminal.settled();
      return { rows: terminal.text(), written: [...frame.split('\n'), ...painted] };
    },
    close: () => {
      ink.unmount();
      screen.close();
    },
  };
}

/** The rows of one state. */
export async function drawnRows(state: BenchState): Promise<string[]> {
  const bench = openDrawn(state);
  const { rows } = await bench.show(state);
  bench.close();
  return rows;
}
