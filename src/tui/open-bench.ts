/**
 * Opens the bench on a terminal and answers, once it is left, how: this is where state, screens, threads and the terminal meet.
 */
import { render } from 'ink';
import { createElement } from 'react';
import { weightsWith } from '../measure/scales.js';
import type { BenchEnd, BenchRequest } from '../tasks/bench-request.js';
import { openCrew } from '../tasks/crew.js';
import { createShelfReader } from '../tasks/shelf.js';
import { Bench, isPainted } from './app/bench.js';
import { followStore, type SessionParts } from './app/session.js';
import { resized } from './bench/hear.js';
import { firstState } from './bench/first-state.js';
import { paste, press } from './bench/press.js';
import type { BenchState } from './bench/state.js';
import { createStore, type Store } from './bench/store.js';
import { bodyArea } from './draw/areas.js';
import { createBodyDrawer } from './draw/trace.js';
import { openTerminal } from './terminal/guard.js';
import { listenToKeys } from './terminal/keys.js';
import { createScreen, type Screen } from './terminal/screen.js';

/** Opens the bench; throws, with the terminal given back, what goes wrong inside. */
export async function openBench(request: BenchRequest): Promise<BenchEnd> {
  const { places, threads, setup } = request;
  // Threads start while files are read.
  const opening = openCrew(threads);
  try {
    const reader = createShelfReader(places);
    const opened = firstState({
      size: sizeOf(process.stdout),
      shelf: reader.read(),
      setup,
      options: {
        ...request,
        ownFolder: !places.isStarterSet,
        folder: places.isStarterSet ? 'the starter set' : places.workingFolder,
        weights: weightsWith(),
      },
    });
    if (!opened.ok) return { kind: 'not opened', problems: opened.faults };
    return await onTerminal({ store: createStore(opened.value), crew: await opening, places, reader });
  } finally {
    const crew = await opening;
    await crew.close();
  }
}

/** The size of the terminal; a usual one where it tells none. */
function sizeOf({ columns, rows }: { columns: number; rows: number }): BenchState['size'] {
  return { columns: columns || 80, rows: rows || 24 };
}

/** Has the terminal until the bench is left, or fails; what was begun is undone then, the last thing first. */
async function onTerminal(
  parts: Pick<SessionParts, 'store' | 'crew' | 'places' | 'reader'>,
): Promise<BenchEnd> {
  const { store } = parts;
  const stops: (() => void)[] = [];
  try {
    return await new Promise<BenchEnd>((resolve, reject) => {
      const screen = createScreen(process.stdout);
      const terminal = openTerminal({
        stdin: process.stdin,
        stdout: process.stdout,
        onResume: () => screen.forget(),
      });
      stops.push(() => terminal.close());
      stops.push(() => screen.close());
      stops.push(showState(store, screen, reject));
      stops.push(hearTerminal(store, () => resolve({ kind: 'hung up' })));
      const stopFollowing = followStore({
        ...parts,
        leave: (interrupted) => resolve({ kind: interrupted ? 'interrupted' : 'left' }),
        suspend: () => terminal.suspend(),
        onFault: reject,
      });
      stops.push(stopFollowing);
    });
  } finally {
    for (const stop of stops.toReversed()) stop();
  }
}

/** Draws the state, and again whenever it is another one: Ink the frame, the moving pictures painted over it. */
function showState(store: Store, screen: Screen, onFault: (error: unknown) => void): () => void {
  const drawBody = createBodyDrawer();
  const paintBody = () => {
    const state = store.get();
    if (isPainted(state)) screen.paint(1, drawBody(state, bodyArea(state)));
    else screen.unpaint();
  };
  const ink = render(createElement(Bench, { store }), {
    stdout: screen.stdout,
    debug: true,
    patchConsole: false,
    exitOnCtrlC: false,
  });
  ink.waitUntilExit().catch(onFault);
  const unsubscribe = store.subscribe(paintBody);
  return () => {
    unsubscribe();
    ink.unmount();
  };
}

/** Brings keys, pastes and sizes of the terminal to the state; `onGone` hears when there is no terminal any more. */
function hearTerminal(store: Store, onGone: () => void): () => void {
  const { stdin, stdout } = process;
  const onResize = () => store.change((state) => resized(state, sizeOf(stdout)));
  const stopListening = listenToKeys(stdin, {
    onKey: (key) => store.change((state) => press(state, key)),
    onPaste: (text) => store.change((state) => paste(state, text)),
  });
  stdout.on('resize', onResize);
  stdin.on('end', onGone).on('error', onGone);
  return () => {
    stopListening();
    stdout.off('resize', onResize);
    stdin.off('end', onGone); // an error may still come, and there would be nobody to hear it
  };
}
