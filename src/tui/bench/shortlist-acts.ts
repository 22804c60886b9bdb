/**
 * What keys do on the Shortlist screen: move, other views, note and ratings, files, taking out, and its numbers back to Rank.
 */
import type { Act } from './binding.js';
import { drafted, draftName, withNumbersOf } from './choices.js';
import { typedFelt } from './felt-typed.js';
import { ownFolderOff } from './own-folder.js';
import { carriedForm, carriedName } from './shortlist-exports.js';
import { currentKept, currentShortlistRow, shortlistRowsOf, withNearRow } from './shortlist-items.js';
import { SHORTLIST_VIEWS, type ShortlistState } from './shortlist-state.js';
import type { BenchState, Entry } from './state.js';

function withShortlist(state: BenchState, shortlist: Partial<ShortlistState>): BenchState {
  return { ...state, shortlist: { ...state.shortlist, ...shortlist } };
}

/** Opens the Shortlist screen; the cursor stays on what it is on, whatever comes before that later. */
export const openShortlist: Act = (state) => ({
  ...withShortlist(state, { cursor: currentShortlistRow(state)?.name ?? null }),
  screen: 'shortlist',
  behind: [...state.behind, state.screen],
  playhead: { ...state.playhead, playing: false },
  looks: [],
});

/** Moves the cursor by so many rows; it stops at the ends. */
export function moveKept(by: number): Act {
  return (state) => {
    const rows = shortlistRowsOf(state);
    const here = rows.findIndex(({ name }) => name === currentShortlistRow(state, rows)?.name);
    const there = Math.min(rows.length - 1, Math.max(0, here + by));
    if (there === here) return state;
    return withShortlist(state, { cursor: rows[there]?.name ?? null, read: 0 });
  };
}

/** Shows the next view, or the one before, from its first line on. */
export function moveView(by: 1 | -1): Act {
  return (state) => {
    const at = SHORTLIST_VIEWS.indexOf(state.shortlist.view) + by;
    const view = SHORTLIST_VIEWS[(at + SHORTLIST_VIEWS.length) % SHORTLIST_VIEWS.length]!;
    return withShortlist(state, { view, read: 0 });
  };
}

/** Shows the kept profile through another sheet. */
export function withSheet(state: BenchState, sheet: string): BenchState {
  return withShortlist(state, { sheet, view: 'sheet', read: 0 });
}

/** Why no sheet can be chosen; null where one can. */
export function sheetOff({ shelf }: BenchState): string | null {
  return shelf.sheet.length === 0 ? 'there is no controller sheet in profiles/sheets' : null;
}

/** Why nothing can be done with a kept profile; null where one is under the cursor. */
export function keptOff(state: BenchState): string | null {
  const row = currentShortlistRow(state);
  if (row === undefined) return 'nothing is kept yet';
  return row.kind === 'kept' ? null : `${row.name} is not proven yet`;
}

/** Why nothing can be written of or into a kept profile; null where it can. */
export function keptWritingOff(state: BenchState): string | null {
  const row = currentShortlistRow(state);
  const isFaulty = row?.kind === 'kept' && row.problem !== null;
  return ownFolderOff(state) ?? keptOff(state) ?? (isFaulty ? `the file of ${row.name} is damaged` : null);
}

/** Opens a line about the kept profile under the cursor; a text that is offered gives way to what is typed. */
function openLine(purpose: Entry['purpose'], text: (state: BenchState) => string, isOffered: boolean): Act {
  return (state) => {
    const cursor = currentKept(state)?.name ?? null;
    const entry = { purpose, text: text(state), isOffered };
    return { ...withShortlist(state, { cursor }), entry };
  };
}

/** Opens the line of the note, with the note as it is. */
export const openNote: Act = openLine('note', (state) => currentKept(state)?.value.note ?? '', false);

/** Opens the line of ratings. */
export const openFelt: Act = openLine('felt', () => '', false);

/** Opens the line of a file to write. */
export const openCarrying: Act = openLine('carry', carriedName, true);

function refused(state: BenchState, text: string): BenchState {
  return { ...state, notice: { text, isFault: true } };
}

/** The kept profile that a line is about; undefined where it is gone since. */
function keptOfLine(state: BenchState) {
  return state.shelf.kept.find(({ name }) => name === state.shortlist.cursor);
}

function gone({ shortlist }: BenchState): string {
  return `${shortlist.cursor ?? 'it'} is no longer on the shortlist`;
}

/** Has a note written. */
export function takeNote(note: string): Act {
  return (state) => {
    const kept = keptOfLine(state);
    if (kept === undefined) return refused(state, gone(state));
    if (note === kept.value.note) return { ...state, entry: null };
    return { ...state, entry: null, errands: [...state.errands, { kind: 'note', name: kept.name, note }] };
  };
}

/** Has ratings written as a ride of today, or says all that is wrong with them. */
export function takeFelt(text: string): Act {
  return (state) => {
    const kept = keptOfLine(state);
    if (kept === undefined) return refused(state, gone(state));
    const felt = typedFelt(text);
    if (!felt.ok) return refused(state, felt.faults.join('; '));
    const errand = { kind: 'felt' as const, name: kept.name, felt: felt.value, text };
    return { ...state, entry: null, errands: [...state.errands, errand] };
  };
}

/** Has a file written, or says what is wrong with its name. */
export function takeCarrying(path: string): Act {
  return (state) => {
    const kept = keptOfLine(state);
    if (kept === undefined) return refused(state, gone(state));
    const form = carriedForm(state, path);
    if (!form.ok) return refused(state, form.faults.join('; '));
    const errand = { kind: 'carry' as const, name: kept.name, path, form: form.value };
    return { ...state, entry: null, errands: [...state.errands, errand] };
  };
}

/** Why nothing can be taken out; null where something can. */
export function removingOff(state: BenchState): string | null {
  const row = currentShortlistRow(state);
  if (row === undefined) return 'nothing is kept yet';
  return row.kind === 'keeping' ? null : keptWritingOff(state);
}

/** Takes out what is under the cursor, once it was asked for twice: the file of a kept profile, or one that waits to be proven. */
export const removeKept: Act = (state) => {
  const row = currentShortlistRow(state);
  if (row === undefined) return state;
  const { name } = row;
  if (state.shortlist.removing !== name) {
    const loss = row.kind === 'kept' ? ', with its file, note and rides' : ': it is not proven then';
    const asking = withShortlist(state, { cursor: name, removing: name });
    return { ...asking, notice: { text: `d again takes ${name} out${loss}`, isFault: true } };
  }
  const next = withShortlist(state, { removing: null, read: 0 });
  if (row.kind === 'kept') return { ...next, errands: [...state.errands, { kind: 'remove', name }] };
  const queue = state.shortlist.queue.filter((one) => one !== row.keeping);
  const done = withNearRow(state, withShortlist(next, { queue }));
  return { ...done, notice: { text: `${name} is not proven any more`, isFault: false } };
};

/** Takes the numbers of a kept profile to Rank: as changes of the profile it came from, or as one of its own where that is gone. */
export const takeNumbersToRank: Act = (state) => {
  const kept = currentKept(state);
  if (kept === undefined) return state;
  const { origin, profile } = kept.value;
  const hasOrigin = state.shelf.profile.some(({ name }) => name === origin.from);
  const name = hasOrigin ? origin.from : draftName(state, kept.name);
  const next = hasOrigin ? withNumbersOf(state, name, profile) : drafted(state, { name, value: profile });
  const keeping = state.options.ownFolder ? 'w writes it, u takes it back' : 'u takes it back';
  const text =
    next === state
      ? `${name} has the numbers of ${kept.name} already`
      : `${name} has the numbers of ${kept.name} now: ${keeping}`;
  return {
    ...next,
    rank: { ...next.rank, cursor: name, column: null, filter: '' },
    screen: 'rank',
    behind: [],
    why: null,
    looks: [],
    notice: { text, isFault: false },
  };
};
