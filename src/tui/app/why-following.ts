/**
 * How is a question why followed? The crew answers it while it is asked, and what was answered lately is known at once.
 */
import { contentKey, RecentMap } from '../../tasks/content-key.js';
import type { Crew } from '../../tasks/crew.js';
import { why, type Why } from '../../tasks/why.js';
import { explained } from '../bench/hear.js';
import type { WhyState } from '../bench/state.js';
import type { Store } from '../bench/store.js';
import { paced } from './paced.js';

/** How far apart news of the runs is told, ms. */
const NEWS_GAP_MS = 100;

/** Answers that are kept. */
const KEPT = 8;

/** Has the question of the state answered; another question, or none, ends the work for the one before. */
export function followWhy({
  store,
  crew,
  onFault,
}: {
  store: Store;
  crew: Crew;
  onFault: (error: unknown) => void;
}) {
  const memory = new RecentMap<Why>(KEPT);
  let wanted: WhyState['plan'] | null = null;
  let end = () => {};
  return {
    stop: () => end(),
    follow: () => {
      const plan = store.get().why?.plan ?? null;
      if (plan === wanted) return;
      wanted = plan;
      end();
      end = () => {};
      if (plan === null) return;
      const key = contentKey(plan);
      const known = memory.get(key);
      if (known !== undefined) {
        store.change((state) => explained(state, plan, { answer: known }));
        return;
      }
      end = answered(plan, { store, crew, onFault, onAnswer: (answer) => memory.set(key, answer) });
    },
  };
}

/** Begins to answer, telling the state of it; gives how to end it. */
function answered(
  plan: WhyState['plan'],
  {
    store,
    crew,
    onFault,
    onAnswer,
  }: { store: Store; crew: Crew; onFault: (error: unknown) => void; onAnswer: (answer: Why) => void },
): () => void {
  const control = new AbortController();
  const tell = (news: Parameters<typeof explained>[2]) =>
    store.change((state) => explained(state, plan, news));
  const progress = paced<NonNullable<WhyState['progress']>>(NEWS_GAP_MS, (news) => tell({ progress: news }));
  const work = async () => {
    const answer = await why(plan, {
      threads: crew,
      signal: control.signal,
      onRuns: (done, all, purpose) => progress.tell({ done, all, purpose }),
      onFirst: (first) => tell({ answer: first }),
    });
    if (control.signal.aborted) return;
    progress.stop();
    onAnswer(answer);
    tell({ answer });
  };
  work().catch((error: unknown) => {
    if (!control.signal.aborted) onFault(error);
  });
  return () => {
    control.abort();
    progress.stop();
  };
}
