/**
 * What follows from the state outside of it: rows and runs are computed, files are read again, a run plays, and errands are done.
 */
import type { ProfileResult } from '../../measure/profile-result.js';
import type { Crew } from '../../tasks/crew.js';
import { openLooks, type LookWish } from '../../tasks/looks.js';
import { watchShelf, type ShelfReader } from '../../tasks/shelf.js';
import { openStandingRank, type Standing } from '../../tasks/standing-rank.js';
import type { Places } from '../../store/places.js';
import { systemFault } from '../../store/system-fault.js';
import { editedProfiles } from '../bench/choices.js';
import { looked, ranked, shelved, told } from '../bench/hear.js';
import { wishesOf } from '../bench/rows.js';
import type { BenchState } from '../bench/state.js';
import type { Store } from '../bench/store.js';
import { played } from '../bench/time-acts.js';
import { doErrands } from './errands.js';
import { failedCell } from './failed-cell.js';
import { paced } from './paced.js';
import { followPreview } from './preview-following.js';
import { followShortlist } from './shortlist-following.js';
import { followSweep } from './sweep-following.js';
import { followWhy } from './why-following.js';

/** Frames a second while a run plays. */
const FRAME_RATE_HZ = 30;

/** How far apart news of a ranking is told, ms: each draws the whole screen, and keys come in between. */
const NEWS_GAP_MS = 66;

/** What a session works with; `leave` and `suspend` are for the terminal, `onFault` hears of errors of ours. */
export interface SessionParts {
  store: Store;
  crew: Crew;
  places: Places;
  reader: ShelfReader;
  leave: (interrupted: boolean) => void;
  suspend: () => void;
  onFault: (error: unknown) => void;
}

/** Follows a store until it is stopped. */
export function followStore(parts: SessionParts): () => void {
  const { store } = parts;
  const ranking = followPlan(parts);
  const looks = followWishes(parts);
  const why = followWhy(parts);
  const sweeping = followSweep(parts);
  const keeping = followShortlist(parts);
  const preview = followPreview(parts);
  const clock = followPlaying(store);
  const follow = () => {
    ranking.follow();
    looks();
    why.follow();
    sweeping.follow();
    keeping.follow();
    preview.follow();
    clock.follow();
    doErrands(parts);
  };
  const unsubscribe = store.subscribe(follow);
  const unwatch = followFiles(parts);
  follow();
  return () => {
    unsubscribe();
    unwatch();
    clock.stop();
    why.stop();
    sweeping.stop();
    keeping.stop();
    preview.stop();
    ranking.stop();
  };
}

/** Has files read again when they change; where the system cannot watch them, the bench goes on without and says so. */
function followFiles({ store, places, reader, onFault }: SessionParts): () => void {
  const changed = () => {
    try {
      store.change((state) => shelved(state, reader.read()));
    } catch (error) {
      onFault(error);
    }
  };
  try {
    return watchShelf(places, changed);
  } catch (error) {
    const fault = systemFault(places.workingFolder, 'a folder whose changes can be followed', error);
    store.change((state) => told(state, [fault]));
    return () => {};
  }
}

/** Tells of a cell that could not be computed, and hands on errors of ours. */
function faultsOf(key: string, { store, onFault }: Pick<SessionParts, 'store' | 'onFault'>) {
  return (error: unknown) => {
    const said = failedCell(error, { key, again: 'another choice tries again' });
    if (said === null) onFault(error);
    else store.change((state) => told(state, said));
  };
}

/** Has the plan ranked whenever it is another one. */
function followPlan({ store, crew, onFault }: SessionParts) {
  const news = paced<Standing>(NEWS_GAP_MS, (standing) =>
    store.change((state) => ranked(state, standing, unedited(state, standing))),
  );
  let heardOf: BenchState['work'] = null;
  const standing = openStandingRank(crew, {
    onChange: (next) => {
      const { work } = store.get();
      if (next.plan !== work?.plan) return;
      const isFirst = work !== heardOf;
      heardOf = work;
      news.tell(next, isFirst);
    },
    onFault: faultsOf('rank', { store, onFault }),
  });
  const unedited = (state: BenchState, { plan }: Standing): Map<string, ProfileResult> => {
    const known = editedProfiles(state).flatMap((name) => {
      const asFile = state.shelf.profile.find((profile) => profile.name === name);
      const result = asFile === undefined ? null : standing.known(plan, { name, value: asFile.value });
      return result === null ? [] : [[name, result] as const];
    });
    return new Map(known);
  };
  let wanted: BenchState['work'] = null;
  return {
    stop: () => {
      standing.close();
      news.stop();
    },
    follow: () => {
      const { work } = store.get();
      if (work === wanted) return;
      wanted = work;
      if (work !== null) standing.want(work.plan);
    },
  };
}

/** Has the runs computed that the screen wants. */
function followWishes({ store, crew, onFault }: SessionParts): () => void {
  const found = () => store.change((state) => looked(state, wishesOf(state).map(looks.find)));
  const looks = openLooks(crew, { onChange: found, onFault: faultsOf('run', { store, onFault }) });
  let wanted: LookWish[] = [];
  return () => {
    const wishes = wishesOf(store.get());
    const same =
      wishes.length === wanted.length &&
      wishes.every(
        ({ profile, trial }, index) => profile === wanted[index]!.profile && trial === wanted[index]!.trial,
      );
    if (same && store.get().looks.length === wishes.length) return;
    wanted = wishes;
    found();
    looks.want(wishes);
  };
}

/** Moves the playhead while a run plays. */
function followPlaying(store: Store) {
  let timer: NodeJS.Timeout | undefined;
  let lastMs = 0;
  const stop = () => {
    clearInterval(timer);
    timer = undefined;
  };
  const frame = () => {
    const nowMs = performance.now();
    const elapsedS = (nowMs - lastMs) / 1000;
    lastMs = nowMs;
    store.change((state) => played(state, elapsedS));
  };
  return {
    stop,
    follow: () => {
      const { playing } = store.get().playhead;
      if (!playing) return stop();
      if (timer !== undefined) return;
      lastMs = performance.now();
      timer = setInterval(frame, 1000 / FRAME_RATE_HZ);
    },
  };
}
