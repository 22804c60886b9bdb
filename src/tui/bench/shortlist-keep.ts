/**
 * How does a profile come onto the shortlist? One key asks under which name the one in front is kept; then it waits to be proven.
 */
import { editsBetween } from '../../explain/remedies.js';
import { isName } from '../../quantity/field.js';
import type { ProfileFile } from '../../quantity/profile-file.js';
import type { RankPlan } from '../../tasks/plan.js';
import type { Act } from './binding.js';
import { editedProfiles } from './choices.js';
import { problemOfFile } from './faulty-files.js';
import { ownFolderOff } from './own-folder.js';
import { currentRow } from './rows.js';
import type { BenchState } from './state.js';
import { currentCandidate, profileOf } from './sweep-items.js';

/** A profile that may be kept: where it comes from, what it is proven in, and whether it has other numbers than its file. */
interface Keepable {
  from: string;
  profile: ProfileFile;
  cells: RankPlan;
  isChanged: boolean;
}

/** The name of the profile in front. */
function nameInFront(state: BenchState): string | undefined {
  if (state.screen === 'trace') return state.view.profiles[0];
  return state.screen === 'why' ? state.why?.plan.profiles[0]?.name : currentRow(state)?.name;
}

/** What the key keeps: the candidate under the cursor, proven in the cells of its sweep; else the profile in front, as Rank has it. */
function keepable(state: BenchState): Keepable | null {
  if (state.screen === 'sweep') return keepableCandidate(state);
  const name = nameInFront(state);
  const { work } = state;
  const profile = work?.plan.profiles.find((one) => one.name === name);
  if (work === null || name === undefined || profile === undefined) return null;
  const asFile = state.shelf.profile.find((one) => one.name === name)?.value ?? profile.value;
  return {
    from: name,
    profile: withChangesTold(profile.value, { from: name, before: asFile }),
    cells: work.plan,
    isChanged: editedProfiles(state).includes(name),
  };
}

function keepableCandidate(state: BenchState): Keepable | null {
  const { run } = state.sweep;
  const candidate = currentCandidate(state);
  const profile = candidate === undefined ? null : profileOf(state, candidate);
  if (run === null || profile === null) return null;
  const { base, cells } = run.plan;
  const told = run.isPlain ? profile : withChangesTold(profile, { from: base.name, before: base.value });
  return { from: base.name, profile: told, cells, isChanged: true };
}

/** Longest summary of a profile. */
const SUMMARY_LENGTH = 500;

/** A profile whose summary says what was changed; as it was where nothing was. */
function withChangesTold(
  profile: ProfileFile,
  { from, before }: { from: string; before: ProfileFile },
): ProfileFile {
  const changes = editsBetween(before, profile).map(({ path, unit, from: old, to }) => {
    const now = to === null ? 'left out' : `${to} ${unit}`.trimEnd();
    return `${path.at(-1)!} ${old ?? 'left out'} to ${now}`;
  });
  if (changes.length === 0) return profile;
  return { ...profile, summary: `From ${from}: ${changes.join(', ')}.`.slice(0, SUMMARY_LENGTH) };
}

/** Why nothing can be kept now; null where something can. */
export function keepingOff(state: BenchState): string | null {
  const off = ownFolderOff(state);
  if (off !== null) return off;
  if (keepable(state) !== null) return null;
  return state.screen === 'sweep' ? 'there is no candidate yet' : 'there is no profile in sight';
}

/** What speaks against a name: that something is kept under it, or will be; null where nothing does. */
function takenBy({ shelf, shortlist }: BenchState, name: string): string | null {
  if (shelf.kept.some((kept) => kept.name === name))
    return `${name} is kept already; type another name, or take that one out on the shortlist (L)`;
  if (problemOfFile(shelf, 'kept', name) !== null)
    return `a file that is damaged has the name ${name}; type another one`;
  const waits = shortlist.queue.some((one) => one.name === name);
  return waits ? `${name} is being proven already; type another name` : null;
}

/** The name that is offered: the profile's own for one that is as in its file, else the first like it that is free. */
function offeredName(state: BenchState, { from, isChanged }: Keepable): string {
  if (!isChanged && takenBy(state, from) === null) return from;
  const base = from.replace(/-\d+$/, '').slice(0, 36);
  let count = 2;
  while (takenBy(state, `${base}-${count}`) !== null) count += 1;
  return `${base}-${count}`;
}

/** Asks under which name the profile in front is to be kept. */
export const askToKeep: Act = (state) => {
  const found = keepable(state);
  if (found === null) return state;
  const { from, profile, cells } = found;
  const asked: RankPlan = { ...cells, profiles: [{ name: from, value: profile }], solver: 'fixed' };
  return {
    ...state,
    entry: { purpose: 'keep', text: offeredName(state, found), isOffered: true },
    shortlist: { ...state.shortlist, asked },
  };
};

/** Has what was asked for proven under a name, after what waits already; or says what is wrong with the name. */
export function keepAs(name: string): Act {
  return (state) => {
    const { asked, queue } = state.shortlist;
    if (asked === null) return { ...state, entry: null };
    const taken = isName(name)
      ? takenBy(state, name)
      : `expected a name of at most 40 lower-case letters, digits and hyphens, received ${JSON.stringify(name)}`;
    if (taken !== null) return { ...state, notice: { text: taken, isFault: true } };
    const waits = queue.length === 0 ? 'is being proven' : 'waits to be proven';
    return {
      ...state,
      entry: null,
      shortlist: {
        ...state.shortlist,
        asked: null,
        cursor: name,
        read: 0,
        queue: [...queue, { name, plan: asked, progress: null }],
      },
      notice: { text: `${name} ${waits}; L shows how far it is`, isFault: false },
    };
  };
}
