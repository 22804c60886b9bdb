/**
 * What keys do while a line of text is typed, and what becomes of the text.
 */
import { isName } from '../../quantity/field.js';
import { ALL } from '../../tasks/select.js';
import { editedProfiles } from './choices.js';
import { typeNumber } from './gains-acts.js';
import type { Act } from './binding.js';
import { currentRow } from './rows.js';
import type { BenchState, Entry } from './state.js';
import { takeCarrying, takeFelt, takeNote } from './shortlist-acts.js';
import { keepAs } from './shortlist-keep.js';
import { typeRange } from './sweep-form-acts.js';
import { appended, LONGEST_TEXT, shortened } from './typed-text.js';

/** What a line begins with: a text that is offered, one that was typed before, or what opened it. */
interface Beginning {
  offered?: (state: BenchState) => string;
  kept?: (state: BenchState) => string;
  typed?: string;
}

/** Opens a line of text. */
export function openEntry(purpose: Entry['purpose'], { offered, kept, typed = '' }: Beginning = {}): Act {
  return (state) => {
    const text = (offered ?? kept)?.(state) ?? typed;
    return { ...state, entry: { purpose, text, isOffered: offered !== undefined } };
  };
}

/** The file that a ranking is offered to be written to. */
export function exportName({ choices: { setup } }: BenchState): string {
  return `rank-${setup.board}-${setup.riders?.join('-') ?? ALL}.csv`;
}

/** The profile that would be saved: the one under the cursor or explained, if it was edited. */
export function savedProfile(state: BenchState): string | null {
  const inFront = state.screen === 'why' ? state.why?.plan.profiles[0]?.name : currentRow(state)?.name;
  const name = state.overlay?.kind === 'gains' ? state.overlay.profile : inFront;
  return name !== undefined && editedProfiles(state).includes(name) ? name : null;
}

/** The name that a changed profile is offered to be saved under: its own where no file has that, else the first that is free. */
export function newName(state: BenchState): string {
  const saved = savedProfile(state) ?? 'profile';
  const taken = new Set(state.files.profile.map(({ name }) => name));
  if (!taken.has(saved)) return saved;
  const base = saved.replace(/-\d+$/, '').slice(0, 36);
  let count = 2;
  while (taken.has(`${base}-${count}`)) count += 1;
  return `${base}-${count}`;
}

function withText(state: BenchState, text: string): BenchState {
  if (state.entry === null) return state;
  const entry = { ...state.entry, text, isOffered: false };
  const next = { ...state, entry };
  return entry.purpose === 'filter' ? { ...next, rank: { ...state.rank, filter: entry.text } } : next;
}

/** Longest note that can be typed, characters: as long as a file has it. */
const LONGEST_NOTE = 600;

/** Adds typed or pasted text; it takes the place of a text that was offered. */
export function typeText(text: string): Act {
  return (state) => {
    const before = state.entry === null || state.entry.isOffered ? '' : state.entry.text;
    const most = state.entry?.purpose === 'note' ? LONGEST_NOTE : LONGEST_TEXT;
    return withText(state, appended(before, text, most));
  };
}

/** Takes back the character typed last. */
export const untype: Act = (state) => withText(state, shortened(state.entry?.text ?? ''));

/** Takes back all that was typed. */
export const clearText: Act = (state) => withText(state, '');

/** Closes the line; a filter that was typed is lifted. */
export const cancelEntry: Act = (state) => ({
  ...withText(state, state.entry?.purpose === 'filter' ? '' : (state.entry?.text ?? '')),
  entry: null,
});

/** Takes the text over. */
export const acceptEntry: Act = (state) =>
  state.entry === null ? state : ACCEPT[state.entry.purpose](state);

const textOf = (state: BenchState) => (state.entry?.text ?? '').trim();

function refused(state: BenchState, text: string): BenchState {
  return { ...state, notice: { text, isFault: true } };
}

const ACCEPT: Readonly<Record<Entry['purpose'], Act>> = {
  filter: (state) => ({ ...state, entry: null }),
  number: (state) => typeNumber(state.entry?.text ?? '')(state),
  range: (state) => typeRange(state.entry?.text ?? '')(state),
  export: (state) => {
    const path = textOf(state);
    if (path === '') return refused(state, 'expected the name of a file');
    return { ...state, entry: null, errands: [...state.errands, { kind: 'export', path }] };
  },
  keep: (state) => keepAs(textOf(state))(state),
  note: (state) => takeNote(textOf(state))(state),
  felt: (state) => takeFelt(textOf(state))(state),
  carry: (state) => takeCarrying(textOf(state))(state),
  save: (state) => {
    const name = textOf(state);
    const from = savedProfile(state);
    if (from === null) return { ...state, entry: null };
    if (!isName(name)) {
      return refused(
        state,
        `expected a name of lower-case letters, digits and hyphens, received ${JSON.stringify(name)}`,
      );
    }
    return { ...state, entry: null, errands: [...state.errands, { kind: 'save', from, name }] };
  },
};
