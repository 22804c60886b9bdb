/**
 * How is a sweep followed? While it is to run the crew makes its runs; stopped, it waits with all that it knows, and goes on from
 * there. Its runs are kept in a file where the folder is the rider's own, else in memory.
 */
import type { Places } from '../../store/places.js';
import { RecentMap } from '../../tasks/content-key.js';
import type { Crew } from '../../tasks/crew.js';
import { KeepingFailed, openSweepFile, usualSweepPath, type SweepFile } from '../../tasks/sweep-file.js';
import { sweepKey, type SweepPlan } from '../../tasks/sweep-plan.js';
import { sweep, type SweepProgress } from '../../tasks/sweep.js';
import { swept, told, type SweepNews } from '../bench/hear.js';
import type { Store } from '../bench/store.js';
import { failedCell } from './failed-cell.js';
import { paced } from './paced.js';
import { watched } from './sweep-watch.js';

/** How far apart news is told, ms: each draws the whole screen, and nobody reads faster. */
const NEWS_GAP_MS = 200;

/** Sweeps whose runs are kept in memory. */
const KEPT = 4;

/** Who asks, who computes, and whose files it is about. */
export interface SweepFollowing {
  store: Store;
  crew: Crew;
  places: Places;
  onFault: (error: unknown) => void;
}

/** Has the sweep of the state run while it is to run; another one ends the work for the one before. */
export function followSweep(parts: SweepFollowing) {
  const { store } = parts;
  const files = openFiles(parts);
  let wanted: SweepPlan | null = null;
  let end = () => {};
  return {
    stop: () => {
      end();
      files.close();
    },
    follow: () => {
      const { run } = store.get().sweep;
      const plan = run !== null && run.isRunning && run.outcome === null ? run.plan : null;
      if (plan === wanted) return;
      wanted = plan;
      end();
      end = () => {};
      if (plan !== null) end = begun(plan, files.of, parts);
    },
  };
}

/** The runs of the sweep in hand, and those of some before it. */
function openFiles({ store, places }: SweepFollowing) {
  const inMemory = new RecentMap<SweepFile>(KEPT);
  let current: { plan: SweepPlan; file: SweepFile } | null = null;
  const open = (plan: SweepPlan): SweepFile => {
    const path = usualSweepPath(places, plan, null);
    const opened = path === null ? null : openSweepFile(plan, { path, places });
    if (opened?.ok) return opened.value;
    if (opened !== null) store.change((state) => told(state, opened.faults));
    const key = sweepKey(plan);
    const known = inMemory.get(key) ?? memoryFile(plan, places);
    inMemory.set(key, known);
    return known;
  };
  return {
    close: () => current?.file.close(),
    of: (plan: SweepPlan): SweepFile => {
      if (current?.plan === plan) return current.file;
      current?.file.close();
      current = { plan, file: open(plan) };
      return current.file;
    },
  };
}

function memoryFile(plan: SweepPlan, places: Places): SweepFile {
  const opened = openSweepFile(plan, { path: null, places });
  if (!opened.ok) throw new Error('runs in memory have no fault');
  return opened.value;
}

/** Lets a sweep go on, telling the state of it; gives how to end it. */
function begun(plan: SweepPlan, fileOf: (plan: SweepPlan) => SweepFile, parts: SweepFollowing): () => void {
  const { store, crew, onFault } = parts;
  const control = new AbortController();
  const { signal } = control;
  const change = (next: Parameters<Store['change']>[0]) => {
    if (!signal.aborted) store.change(next);
  };
  let untold: SweepNews = {};
  const news = paced<SweepNews>(NEWS_GAP_MS, (all) => {
    untold = {};
    change((state) => swept(state, plan, all));
  });
  const tell = (part: SweepNews) => news.tell((untold = { ...untold, ...part }));
  const work = async () => {
    const file = fileOf(plan);
    change((state) => swept(state, plan, { kept: file.shown }));
    const watch = watched(file.ledger);
    const rate = rateMeter(file.ledger.size());
    const answer = await sweep(plan, watch.ledger, {
      threads: crew,
      signal,
      onProgress: (progress) => tell({ progress: { ...progress, ratePerS: rate(progress) } }),
      onBase: (base) => tell({ base }),
      onBest: (best) =>
        tell({ best: best.map(({ candidate, result }) => ({ values: candidate.values, result })) }),
    });
    const points = await watch.points(answer);
    signal.throwIfAborted();
    news.stop();
    change((state) => swept(state, plan, { isRunning: false, outcome: { answer, points } }));
    const fault = await file.finish();
    if (fault !== null) store.change((state) => told(state, [fault])); // the sweep itself is over by now
  };
  work().catch((error: unknown) => {
    if (signal.aborted) return;
    const said = saidOf(error);
    if (said === null) return onFault(error);
    news.stop();
    change((state) => told(swept(state, plan, { isRunning: false }), said));
  });
  return () => {
    control.abort();
    news.stop();
  };
}

/** What is told where a sweep could not go on: that its runs cannot be kept, or a cell not computed; null for errors of ours. */
function saidOf(error: unknown): Parameters<typeof told>[1] | null {
  if (error instanceof KeepingFailed) return [error.problem];
  return failedCell(error, { key: 'sweep', again: 'Space tries again' });
}

/** Runs that are made in a second since it was begun; those known before count for nothing. */
function rateMeter(knownBefore: number): (progress: SweepProgress) => number {
  const startMs = performance.now();
  return ({ known }) => (known - knownBefore) / Math.max(1e-3, (performance.now() - startMs) / 1000);
}
