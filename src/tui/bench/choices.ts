/**
 * From files and choices to a plan, and how choices change: every change can be undone.
 */
import { editsBetween } from '../../explain/remedies.js';
import {
  PROFILE_FIELDS,
  readField,
  withField,
  withFields,
  type ProfileField,
} from '../../quantity/profile-fields.js';
import type { ProfileFile } from '../../quantity/profile-file.js';
import { trialsOf, type Named } from '../../tasks/plan.js';
import { DEFAULT_RIDER } from '../../tasks/select.js';
import type { Shelf } from '../../tasks/shelf.js';
import { carriedOver } from './carry-over.js';
import type { BenchOptions, BenchState, Choices, Edit, Setup, Work } from './state.js';

/** The key of a field in an edit. */
export function fieldKey({ path }: Pick<ProfileField, 'path'>): string {
  return path.join('.');
}

/** The setup to begin with: what was asked for as far as it is there, else the usual one. */
export function firstSetup(shelf: Shelf, asked: Partial<Setup>): Setup {
  const board = asked.board ?? shelf.board[0]?.name ?? '';
  const usual = shelf.rider.find(({ name }) => name === DEFAULT_RIDER) ?? shelf.rider[0];
  return {
    board,
    riders: asked.riders === undefined ? (usual === undefined ? [] : [usual.name]) : asked.riders,
    charges: asked.charges ?? [null],
    scenarios: asked.scenarios ?? null,
  };
}

/** A profile with the edits that are for it; one that no longer fits its file, or says the same, changes nothing. */
export function edited(profile: Named<ProfileFile>, edits: readonly Edit[]): Named<ProfileFile> {
  const own = edits.filter((edit) => edit.profile === profile.name);
  if (own.length === 0) return profile;
  const changes = own.flatMap(({ field: key, value }) => {
    const field = PROFILE_FIELDS.find((known) => fieldKey(known) === key);
    return field === undefined ? [] : [{ path: field.path, value }];
  });
  // At once, since a section may need all of its numbers; else those that fit by themselves.
  const value =
    withFields(profile.value, changes) ??
    changes.reduce(
      (file, change) => withField(file, change, change.value ?? undefined) ?? file,
      profile.value,
    );
  const isSame = PROFILE_FIELDS.every((field) => readField(value, field) === readField(profile.value, field));
  return isSame ? profile : { name: profile.name, value };
}

/** The files of these names, in the order of the names; of null all. */
function meant<T extends { name: string }>(names: readonly string[] | null, files: readonly T[]): T[] {
  return names === null ? [...files] : names.flatMap((name) => files.filter((file) => file.name === name));
}

/** The plan of files and choices; null where a board, a rider, a profile or a scenario is missing. */
export function workOf(shelf: Shelf, { setup, edits }: Choices, options: BenchOptions): Work | null {
  const board = shelf.board.find(({ name }) => name === setup.board);
  const riders = meant(setup.riders, shelf.rider);
  const scenarios = meant(setup.scenarios, shelf.scenario);
  const profiles = shelf.profile.map((profile) => edited(profile, edits));
  if (!board || riders.length === 0 || scenarios.length === 0 || profiles.length === 0) return null;
  const { solver, weights, seeds } = options;
  const charges = [...setup.charges];
  const plan = { board, riders, profiles, scenarios, charges, seeds: [...seeds], solver, weights };
  return { plan, trials: trialsOf(plan) };
}

/** The state with other files (`shelf`) or choices and the plan that follows from them. */
export function replanned(
  state: BenchState,
  changed: Partial<Pick<BenchState, 'shelf' | 'choices' | 'past' | 'future'>>,
): BenchState {
  const { shelf: files = state.files, ...others } = changed;
  const next = { ...state, ...others };
  const shelf = withDraft(files, next.choices);
  return carriedOver(state, { ...next, files, shelf, work: workOf(shelf, next.choices, next.options) });
}

/** Files with the profile that was made here among them; a file of the same name goes before it. */
function withDraft(files: Shelf, { draft }: Choices): Shelf {
  if (draft === undefined || files.profile.some(({ name }) => name === draft.name)) return files;
  const profile = [...files.profile, draft].sort((a, b) => (a.name < b.name ? -1 : 1));
  return { ...files, profile };
}

/** The name of the profile that is made here: of the one there is, else the first like the wanted one that is free. */
export function draftName({ choices, files }: Pick<BenchState, 'choices' | 'files'>, wanted: string): string {
  const isFree = (name: string) => files.profile.every((file) => file.name !== name);
  const { draft } = choices;
  if (draft !== undefined && isFree(draft.name)) return draft.name;
  let name = wanted;
  for (let count = 2; !isFree(name); count += 1) name = `${wanted}-${count}`;
  return name;
}

/** The state with a profile that no file holds, in place of the one before and of what was edited in it. */
export function drafted(state: BenchState, draft: Named<ProfileFile>): BenchState {
  const edits = state.choices.edits.filter(({ profile }) => profile !== draft.name);
  const before = state.choices.draft;
  const isSame = before?.name === draft.name && editsBetween(before.value, draft.value).length === 0;
  if (isSame && edits.length === state.choices.edits.length) return state;
  return chosen(state, { ...state.choices, edits, draft });
}

/** Choices without anything that was made or edited under a name. */
export function withoutChanges({ draft, ...choices }: Choices, name: string): Choices {
  const edits = choices.edits.filter(({ profile }) => profile !== name);
  return draft === undefined || draft.name === name ? { ...choices, edits } : { ...choices, edits, draft };
}

const REMEMBERED_STEPS = 200;

/** The state after a choice; the one before can be brought back. */
export function chosen(state: BenchState, choices: Choices): BenchState {
  const past = [...state.past, state.choices].slice(-REMEMBERED_STEPS);
  return replanned(state, { choices, past, future: [] });
}

/** The state with one number of a profile changed; `undefined` takes the edit back. */
export function withEdit(
  state: BenchState,
  at: { profile: string; field: ProfileField },
  value: number | null | undefined,
): BenchState {
  const field = fieldKey(at.field);
  const others = state.choices.edits.filter((edit) => edit.profile !== at.profile || edit.field !== field);
  const edits = value === undefined ? others : [...others, { profile: at.profile, field, value }];
  return chosen(state, { ...state.choices, edits });
}

/** The state whose profile of that name has the numbers of another, in one step: they take the place of what was edited in it. */
export function withNumbersOf(state: BenchState, name: string, profile: ProfileFile): BenchState {
  const asFile = state.shelf.profile.find((known) => known.name === name);
  if (asFile === undefined) return state;
  const own = editsBetween(asFile.value, profile).map(({ path, to }) => ({
    profile: name,
    field: path.join('.'),
    value: to,
  }));
  const others = state.choices.edits.filter((edit) => edit.profile !== name);
  const edits = [...others, ...own];
  const isSame = JSON.stringify(edits) === JSON.stringify(state.choices.edits);
  return isSame ? state : chosen(state, { ...state.choices, edits });
}

/** One choice back. */
export function undo(state: BenchState): BenchState {
  const before = state.past.at(-1);
  if (before === undefined) return state;
  const past = state.past.slice(0, -1);
  return replanned(state, { choices: before, past, future: [...state.future, state.choices] });
}

/** The choice that was undone last, again. */
export function redo(state: BenchState): BenchState {
  const after = state.future.at(-1);
  if (after === undefined) return state;
  const past = [...state.past, state.choices];
  return replanned(state, { choices: after, past, future: state.future.slice(0, -1) });
}

/** Names of the profiles that differ from their files, or have none. */
export function editedProfiles({ choices, shelf }: Pick<BenchState, 'choices' | 'shelf'>): string[] {
  return shelf.profile
    .filter((profile) => profile === choices.draft || edited(profile, choices.edits) !== profile)
    .map(({ name }) => name);
}
