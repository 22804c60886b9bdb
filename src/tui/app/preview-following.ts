/**
 * How is computed what a view of the shortlist needs? As long as it is looked at the crew computes it; what was computed lately is
 * known at once.
 */
import type { Problem } from '../../quantity/problem.js';
import type { Checked } from '../../quantity/problem.js';
import type { Places } from '../../store/places.js';
import { contentKey, RecentMap } from '../../tasks/content-key.js';
import type { Crew } from '../../tasks/crew.js';
import { firstRidePlan } from '../../tasks/first-ride.js';
import { keptPlan } from '../../tasks/kept-plan.js';
import { throughSheet } from '../../tasks/through-sheet.js';
import { previewed, type PreviewNews } from '../bench/hear-shortlist.js';
import { isSameWish, previewWish } from '../bench/shortlist-items.js';
import type { PreviewAnswer, PreviewWish } from '../bench/shortlist-state.js';
import type { Store } from '../bench/store.js';
import { failedCell } from './failed-cell.js';
import { paced } from './paced.js';

/** How far apart news of the runs is told, ms. */
const NEWS_GAP_MS = 150;

/** Answers that are kept. */
const KEPT = 16;

/** Who asks, who computes, and whose files it is about. */
export interface PreviewFollowing {
  store: Store;
  crew: Crew;
  places: Places;
  onFault: (error: unknown) => void;
}

/** The key of all that an answer hangs on; what a rider says of a profile is no part of it. */
function keyOf(wish: PreviewWish): string {
  const { name, value } = wish.kept;
  return wish.kind === 'plan'
    ? contentKey(['plan', name, value.seal])
    : contentKey(['sheet', name, value.seal, wish.sheet, wish.scenarios]);
}

/** Has computed what the view in front needs; another view ends the work for the one before. */
export function followPreview(parts: PreviewFollowing) {
  const { store } = parts;
  const memory = new RecentMap<PreviewAnswer>(KEPT);
  let wanted: PreviewWish | null = null;
  let end = () => {};
  return {
    stop: () => end(),
    follow: () => {
      const wish = previewWish(store.get());
      if (isSameWish(wish, wanted)) return;
      wanted = wish;
      end();
      end = () => {};
      if (wish === null) return;
      const key = keyOf(wish);
      const answer = memory.get(key);
      if (answer !== undefined) store.change((state) => previewed(state, wish, { answer, problems: [] }));
      else end = begun(wish, { ...parts, onKnown: (known) => memory.set(key, known) });
    },
  };
}

/** What an answer is computed with. */
interface Work {
  crew: Crew;
  places: Places;
  signal: AbortSignal;
  onRuns: (done: number, all: number | null) => void;
}

async function answered(wish: PreviewWish, work: Work): Promise<Checked<PreviewAnswer, Problem>> {
  const { crew: threads, places, signal, onRuns } = work;
  const { kept } = wish;
  if (wish.kind === 'plan') {
    const plan = await firstRidePlan(kept, { threads, signal, onRuns: (done) => onRuns(done, null) });
    return { ok: true, value: { kind: 'plan', plan } };
  }
  const planned = keptPlan(places, kept);
  if (!planned.ok) return planned;
  const through = { kept, sheet: wish.sheet, ...planned.value };
  const view = await throughSheet(through, { threads, signal, onProgress: onRuns });
  return { ok: true, value: { kind: 'sheet', view } };
}

/** Begins to compute an answer, telling the state of it; gives how to end it. */
function begun(
  wish: PreviewWish,
  { store, onFault, onKnown, ...parts }: PreviewFollowing & { onKnown: (answer: PreviewAnswer) => void },
): () => void {
  const control = new AbortController();
  const { signal } = control;
  const tell = (news: PreviewNews) => {
    if (!signal.aborted) store.change((state) => previewed(state, wish, news));
  };
  const runs = paced<PreviewNews>(NEWS_GAP_MS, tell);
  const work = async () => {
    const onRuns = (done: number, all: number | null) => runs.tell({ done, all });
    const answer = await answered(wish, { ...parts, signal, onRuns });
    runs.stop();
    if (signal.aborted) return;
    if (answer.ok) onKnown(answer.value);
    tell(answer.ok ? { answer: answer.value, problems: [] } : { problems: answer.faults });
  };
  tell({ done: 0, all: null, problems: [] });
  work().catch((error: unknown) => {
    if (signal.aborted) return;
    const problems = failedCell(error, { key: wish.kind, again: 'another view and back tries again' });
    if (problems === null) return onFault(error);
    runs.stop();
    tell({ problems });
  });
  return () => {
    control.abort();
    runs.stop();
  };
}
