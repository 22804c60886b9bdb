/**
 * How do profiles come onto the shortlist? Those that wait are proven by the crew, one after the other, and written; one that is not
 * wanted any more is ended.
 */
import type { Places } from '../../store/places.js';
import type { Crew } from '../../tasks/crew.js';
import type { KeepProgress } from '../../tasks/keep.js';
import type { ShelfReader } from '../../tasks/shelf.js';
import { addToShortlist } from '../../tasks/shortlist.js';
import { keepingOn, keepingOver } from '../bench/hear-shortlist.js';
import { shelved, told } from '../bench/hear.js';
import type { Keeping } from '../bench/shortlist-state.js';
import type { Store } from '../bench/store.js';
import { failedCell } from './failed-cell.js';
import { paced } from './paced.js';

/** How far apart news is told, ms: each draws the whole screen, and nobody reads faster. */
const NEWS_GAP_MS = 200;

/** Who asks, who computes, and whose files it is about. */
export interface ShortlistFollowing {
  store: Store;
  crew: Crew;
  places: Places;
  reader: ShelfReader;
  onFault: (error: unknown) => void;
}

/** Has the first of what waits proven and kept, then the next. */
export function followShortlist(parts: ShortlistFollowing) {
  const { store } = parts;
  let wanted: Keeping['plan'] | null = null;
  let end = () => {};
  return {
    stop: () => end(),
    follow: () => {
      const [first] = store.get().shortlist.queue;
      const plan = first?.plan ?? null;
      if (plan === wanted) return;
      wanted = plan;
      end();
      end = () => {};
      if (first !== undefined) end = begun(first, parts);
    },
  };
}

/** Begins to prove a profile, telling the state of it; gives how to end it. */
function begun(
  { name, plan }: Keeping,
  { store, crew, places, reader, onFault }: ShortlistFollowing,
): () => void {
  const control = new AbortController();
  const { signal } = control;
  const news = paced<KeepProgress>(NEWS_GAP_MS, (progress) =>
    store.change((state) => keepingOn(state, plan, progress)),
  );
  const over = (said: Parameters<typeof told>[1]) => {
    news.stop();
    if (signal.aborted) return;
    store.change((state) => told(shelved(keepingOver(state, plan), reader.read()), said));
  };
  const work = async () => {
    const added = await addToShortlist(
      places,
      { name, note: null, force: false, plan },
      { threads: crew, signal, onProgress: (progress) => news.tell(progress) },
    );
    over(added.ok ? `${name} is proven and kept in ${added.value.path}` : added.faults);
  };
  work().catch((error: unknown) => {
    if (signal.aborted) return;
    const said = failedCell(error, { key: name, again: 'a tries again' });
    if (said === null) return onFault(error);
    over(said);
  });
  return () => {
    control.abort();
    news.stop();
  };
}
