/**
 * What the state wants done outside of it: to leave, to give the terminal back for a while, and to write files.
 */
import { resolve } from 'node:path';
import { rankProfiles } from '../../measure/score.js';
import { shownPath, type Places } from '../../store/places.js';
import { mergedCheck } from '../../tasks/reference-check.js';
import { saveProfile } from '../../tasks/save-profile.js';
import { saveRank } from '../../tasks/save-rank.js';
import type { ShelfReader } from '../../tasks/shelf.js';
import { chosen, withoutChanges } from '../bench/choices.js';
import { changesOf } from '../bench/gains-acts.js';
import { isOfShortlist, refusedErrand, shelved, told } from '../bench/hear.js';
import type { Errand } from '../bench/state.js';
import type { Store } from '../bench/store.js';
import { doShortlistErrand } from './shortlist-errands.js';

/** What errands are done with. */
export interface ErrandParts {
  store: Store;
  places: Places;
  reader: ShelfReader;
  leave: (interrupted: boolean) => void;
  suspend: () => void;
  onFault: (error: unknown) => void;
}

/** Does the errands of the state, each once. */
export function doErrands(parts: ErrandParts): void {
  const { store, leave, suspend, onFault } = parts;
  const { errands } = store.get();
  if (errands.length === 0) return;
  store.change((state) => ({ ...state, errands: [] }));
  for (const errand of errands) {
    if (errand.kind === 'leave') leave(errand.interrupted);
    else if (errand.kind === 'suspend') suspend();
    else if (isOfShortlist(errand)) doShortlistErrand(errand, parts).catch(onFault);
    else write(errand, parts).catch(onFault);
  }
}

/** Longest summary of a profile that was changed here. */
const SUMMARY_LENGTH = 500;

async function write(
  errand: Extract<Errand, { kind: 'export' | 'save' }>,
  parts: ErrandParts,
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
