/**
 * Frames of the bench as it stands on a terminal: the starter set, really ranked and checked, and real runs.
 */
import { weightsWith } from '../../src/measure/scales.js';
import { createPaint } from '../../src/show/colour.js';
import { findPlaces, programFolder } from '../../src/store/places.js';
import { openCrew } from '../../src/tasks/crew.js';
import { createShelfReader } from '../../src/tasks/shelf.js';
import { isPainted } from '../../src/tui/app/bench.js';
import { followStore } from '../../src/tui/app/session.js';
import { firstState } from '../../src/tui/bench/first-state.js';
import { press } from '../../src/tui/bench/press.js';
import type { BenchState } from '../../src/tui/bench/state.js';
import { createStore, type Store } from '../../src/tui/bench/store.js';
import { bodyArea } from '../../src/tui/draw/areas.js';
import { screenRows } from '../../src/tui/draw/screen-rows.js';
import { createBodyDrawer } from '../../src/tui/draw/trace.js';

/** Threads that compute the frames. */
const THREADS = 2;

/** A bench without a terminal. */
export interface FramedBench {
  /** Presses keys by their names and answers the rows of the screen once everything that it shows is there. */
  frame: (keys: readonly string[]) => Promise<string[]>;
  close: () => Promise<void>;
}

/** Opens the bench on the starter set, in colours for a dark terminal. */
export async function openFramed(size: BenchState['size']): Promise<FramedBench> {
  const places = findPlaces(programFolder());
  const reader = createShelfReader(places);
  const opened = firstState({
    size,
    shelf: reader.read(),
    setup: {},
    options: {
      symbols: 'braille',
      paint: createPaint('truecolor'),
      speedUnit: 'km/h',
      animation: true,
      ownFolder: true,
      folder: 'my-board',
      solver: 'fixed',
      weights: weightsWith(),
      seeds: [1],
    },
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const store = createStore(opened.value);
  const crew = await openCrew(THREADS);
  const ignore = () => undefined;
  const onFault = (error: unknown) => {
    throw error;
  };
  const stop = followStore({ store, crew, places, reader, leave: ignore, suspend: ignore, onFault });
  return {
    frame: async (keys) => {
      await settled(store);
      for (const name of keys) {
        store.change((state) => press(state, { name, text: name.length === 1 ? name : '' }));
        await settled(store);
      }
      return frameOf(store.get());
    },
    close: async () => {
      stop();
      await crew.close();
    },
  };
}

/** True once every row is computed and checked, a question why is answered, and every run that is shown is there. */
function isSettled({ rows, looks, work, why }: BenchState): boolean {
  const isRanked = rows.length === work?.plan.profiles.length && rows.every(({ check }) => check !== null);
  const isAnswered = why === null || why.edge !== null;
  return isRanked && isAnswered && looks.length > 0 && looks.every((look) => look !== null);
}

function settled(store: Store): Promise<void> {
  return new Promise((resolve) => {
    const unsubscribe = store.subscribe(() => look());
    const look = () => {
      if (!isSettled(store.get())) return;
      unsubscribe();
      resolve();
    };
    look();
  });
}

function frameOf(state: BenchState): string[] {
  const rows = screenRows(state);
  if (!isPainted(state)) return rows;
  const body = createBodyDrawer()(state, bodyArea(state));
  return rows.map((row, index) => body[index - 1] ?? row);
}
