/**
 * What follows from the state outside of it: rows and runs are computed, files are read again and written, a run plays, and
 * errands are done.
 */
import { resolve } from 'node:path';
import { rankProfiles } from '../../measure/score.js';
import type { ProfileResult } from '../../measure/profile-result.js';
import type { Crew } from '../../tasks/crew.js';
import { openLooks, type LookWish } from '../../tasks/looks.js';
import { mergedCheck } from '../../tasks/reference-check.js';
import { saveProfile } from '../../tasks/save-profile.js';
import { saveRank } from '../../tasks/save-rank.js';
import { watchShelf, type ShelfReader } from '../../tasks/shelf.js';
import { openStandingRank, type Standing } from '../../tasks/standing-rank.js';
import { shownPath, type Places } from '../../store/places.js';
import { systemFault } from '../../store/system-fault.js';
import { chosen, editedProfiles, withoutChanges } from '../bench/choices.js';
import { changesOf } from '../bench/gains-acts.js';
import { looked, ranked, refusedErrand, shelved, told } from '../bench/hear.js';
import { wishesOf } from '../bench/rows.js';
import type { BenchState, Errand } from '../bench/state.js';
import type { Store } from '../bench/store.js';
import { played } from '../bench/time-acts.js';
import { failedCell } from './failed-cell.js';
import { paced } from './paced.js';
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
  const clock = followPlaying(store);
  const follow = () => {
    ranking.follow();
    looks();
    why.follow();
    sweeping.follow();
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

function doErrands(parts: SessionParts): void {
  const { store, leave, suspend, onFault } = parts;
  const { errands } = store.get();
  if (errands.length === 0) return;
  store.change((state) => ({ ...state, errands: [] }));
  for (const errand of errands) {
    if (errand.kind === 'leave') leave(errand.interrupted);
    else if (errand.kind === 'suspend') suspend();
    else write(errand, parts).catch(onFault);
  }
}

/** Longest summary of a profile that was changed here. */
const SUMMARY_LENGTH = 500;

async function write(
  errand: Extract<Errand, { path: string } | { name: string }>,
  parts: SessionParts,
): Promise<void> {
  const { store, places } = parts;
  const state = store.get();
  if (errand.kind === 'export') {
    const results = state.rows.flatMap(({ result }) => (result === null ? [] : [result]));
    const path = resolve(places.currentFolder, errand.path);
    const { plan } = state.work!;
    const check = mergedCheck(state.rows.map((row) => row.check));
    const saved = await saveRank(
      path,
      { plan, ranked: rankProfiles(results), check, order: state.rank.order },
      { force: null },
    );
    const file = shownPath(places, path);
    store.change((now) =>
      saved.ok
        ? told(now, `wrote ${file}`)
        : refusedErrand(
            now,
            errand,
            saved.faults.map((fault) => ({ ...fault, file })),
          ),
    );
    return;
  }
  const { from, name } = errand;
  const profile = state.work?.plan.profiles.find((candidate) => candidate.name === from);
  if (profile === undefined) return;
  const changes = changesOf(state, from);
  const summary =
    changes === '' ? profile.value.summary : `From ${from}: ${changes}.`.slice(0, SUMMARY_LENGTH);
  const saved = await saveProfile(places, { from, name, profile: { ...profile.value, summary } });
  if (!saved.ok) {
    store.change((now) => refusedErrand(now, errand, saved.faults));
    return;
  }
  store.change((now) => {
    const next = shelved(chosen(now, withoutChanges(now.choices, from)), parts.reader.read());
    return told(
      { ...next, overlay: null, rank: { ...next.rank, cursor: name } },
      `wrote ${shownPath(places, saved.value)}`,
    );
  });
}
