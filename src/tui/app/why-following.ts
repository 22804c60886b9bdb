/**
 * How is a question why followed? While it is asked the crew answers it, then looks how far it is to the edge; what was
 * answered lately is known at once.
 */
import { contentKey, RecentMap } from '../../tasks/content-key.js';
import type { Crew } from '../../tasks/crew.js';
import { findEdge } from '../../tasks/edge.js';
import { why, type Why } from '../../tasks/why.js';
import { explained, told, type WhyNews } from '../bench/hear.js';
import type { BenchState, WhyState } from '../bench/state.js';
import type { Store } from '../bench/store.js';
import { failedCell } from './failed-cell.js';
import { paced } from './paced.js';

/** How far apart news of the runs is told, ms. */
const NEWS_GAP_MS = 100;

/** Answers that are kept. */
const KEPT = 8;

/** What is known of a question: its answer, and how far it is to the edge once that has been found. */
type Known = Pick<WhyState, 'edge'> & { answer: Why };

/** Who asks and who answers. */
interface Following {
  store: Store;
  crew: Crew;
  onFault: (error: unknown) => void;
}

/** Has the question of the state answered; another question, or none, ends the work for the one before. */
export function followWhy(parts: Following) {
  const { store } = parts;
  const memory = new RecentMap<Known>(KEPT);
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
      if (known !== undefined) store.change((state) => explained(state, plan, known));
      if (known === undefined || known.edge === null)
        end = answered(plan, known?.answer ?? null, {
          ...parts,
          onKnown: (news) => memory.set(key, news),
        });
    },
  };
}

/** Begins to find what is not known yet of an answer, telling the state of it; gives how to end it. */
function answered(
  plan: WhyState['plan'],
  first: Why | null,
  { store, crew, onFault, onKnown }: Following & { onKnown: (known: Known) => void },
): () => void {
  const control = new AbortController();
  const { signal } = control;
  const tell = (news: WhyNews) => {
    if (!signal.aborted) store.change((state) => explained(state, plan, news));
  };
  const runs = paced<WhyNews>(NEWS_GAP_MS, tell);
  const know = (known: Known, news: WhyNews) => {
    if (signal.aborted) return;
    runs.stop();
    onKnown(known);
    tell(news);
  };
  const explain = async () => {
    const answer = await why(plan, {
      threads: crew,
      signal,
      onRuns: (done, all, purpose) => runs.tell({ progress: { done, all, purpose } }),
      onKnown: (found) => tell({ answer: found }),
    });
    know({ answer, edge: null }, { answer });
    return answer;
  };
  const work = async () => {
    const answer = first ?? (await explain());
    signal.throwIfAborted();
    const onRuns = (edgeRuns: number) => runs.tell({ edgeRuns });
    const edge = await findEdge(plan, { threads: crew, signal, onRuns });
    know({ answer, edge }, { edge });
  };
  work().catch((error: unknown) => {
    if (signal.aborted) return;
    const said = failedCell(error, { key: 'why', again: 'Esc and y try again' });
    if (said === null) return onFault(error);
    runs.stop();
    store.change((state) => told(withoutAnswer(state), said));
  });
  return () => {
    control.abort();
    runs.stop();
  };
}

/** The state once nothing will come of its question: where nothing is known of the answer, Rank is in front again. */
function withoutAnswer(state: BenchState): BenchState {
  if (state.why === null || state.why.answer !== null) return state;
  const behind = state.behind.filter((screen) => screen !== 'why');
  return state.screen === 'why'
    ? { ...state, why: null, screen: 'rank', behind: [], looks: [] }
    : { ...state, why: null, behind };
}
