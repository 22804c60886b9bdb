/**
 * Opens the bench on a terminal and answers, once it is left, how: this is where state, screens, threads and the terminal meet.
 */
import { render } from 'ink';
import { createElement } from 'react';
import { weightsWith } from '../measure/scales.js';
import type { Problem } from '../quantity/problem.js';
import type { Paint } from '../show/colour.js';
import type { SymbolSet } from '../show/glyphs.js';
import type { SpeedUnit } from '../show/quantities.js';
import type { Solver } from '../simulate/run.js';
import type { Places } from '../store/places.js';
import { openCrew } from '../tasks/crew.js';
import { createShelfReader } from '../tasks/shelf.js';
import { Bench, isPainted } from './app/bench.js';
import { followStore } from './app/session.js';
import { resized } from './bench/hear.js';
import { firstState } from './bench/first-state.js';
import { paste, press } from './bench/press.js';
import type { Setup } from './bench/state.js';
import { createStore } from './bench/store.js';
import { bodyArea } from './draw/areas.js';
import { createBodyDrawer } from './draw/trace.js';
import { openTerminal } from './terminal/guard.js';
import { listenToKeys } from './terminal/keys.js';
import { createScreen } from './terminal/screen.js';

/** What the bench is opened with. */
export interface BenchRequest {
  places: Places;
  setup: Partial<Setup>;
  seeds: readonly number[];
  solver: Solver;
  threads: number;
  paint: Paint;
  symbols: SymbolSet;
  speedUnit: SpeedUnit;
  animation: boolean;
}

/** How the bench was left, or why it could not be opened. */
export type BenchEnd =
  { kind: 'left' } | { kind: 'interrupted' } | { kind: 'not opened'; problems: readonly Problem[] };

/** Opens the bench; throws, with the terminal given back, what goes wrong inside. */
export async function openBench(request: BenchRequest): Promise<BenchEnd> {
  const { places, threads, setup } = request;
  const crewOpened = openCrew(threads);
  const reader = createShelfReader(places);
  const shelf = reader.read();
  const size = { columns: process.stdout.columns || 80, rows: process.stdout.rows || 24 };
  const opened = firstState({
    size,
    shelf,
    setup,
    options: { ...request, ownFolder: !places.isStarterSet, weights: weightsWith() },
  });
  const crew = await crewOpened;
  if (!opened.ok) {
    await crew.close();
    return { kind: 'not opened', problems: opened.faults };
  }
  const store = createStore(opened.value);
  const screen = createScreen(process.stdout);
  const terminal = openTerminal({
    stdin: process.stdin,
    stdout: process.stdout,
    onResume: () => screen.forget(),
  });
  return new Promise<BenchEnd>((resolve, reject) => {
    const drawBody = createBodyDrawer();
    const paintBody = () => {
      const state = store.get();
      if (isPainted(state)) screen.paint(1, drawBody(state, bodyArea(state)));
      else screen.unpaint();
    };
    let hasEnded = false;
    const end = (settle: () => void) => {
      if (hasEnded) return;
      hasEnded = true;
      stops.forEach((stop) => stop());
      ink.unmount();
      screen.close();
      terminal.close();
      crew.close().then(settle, reject);
    };
    const fail = (error: unknown) => end(() => reject(error));
    const ink = render(createElement(Bench, { store }), {
      stdout: screen.stdout,
      debug: true,
      patchConsole: false,
      exitOnCtrlC: false,
    });
    ink.waitUntilExit().catch(fail);
    const onResize = () => {
      const { columns, rows } = process.stdout;
      store.change((state) => resized(state, { columns, rows }));
    };
    process.stdout.on('resize', onResize);
    const stops = [
      store.subscribe(paintBody),
      listenToKeys(process.stdin, {
        onKey: (key) => store.change((state) => press(state, key)),
        onPaste: (text) => store.change((state) => paste(state, text)),
      }),
      followStore({
        store,
        crew,
        places,
        reader,
        leave: (interrupted) => end(() => resolve({ kind: interrupted ? 'interrupted' : 'left' })),
        suspend: () => terminal.suspend(),
        onFault: fail,
      }),
      () => process.stdout.off('resize', onResize),
    ];
  });
}
