/**
 * What keys do while the numbers of a profile are edited.
 */
import {
  PROFILE_FIELDS,
  nudged,
  readField,
  withField,
  type ProfileField,
} from '../../quantity/profile-fields.js';
import type { ProfileFile } from '../../quantity/profile-file.js';
import { edited, withEdit } from './choices.js';
import type { Act } from './binding.js';
import { currentRow } from './rows.js';
import type { BenchState } from './state.js';

/** The profile that is edited: as its file has it, and as it is now. */
export interface GainsView {
  name: string;
  asFile: ProfileFile;
  now: ProfileFile;
  fields: readonly ProfileField[];
  field: ProfileField;
}

/** The numbers that can be edited: a section that the file does not have is added in the file. */
export function fieldsOf(profile: ProfileFile): ProfileField[] {
  return PROFILE_FIELDS.filter(({ path }) => {
    let section: unknown = profile;
    for (const key of path.slice(0, -1)) section = (section as Record<string, unknown> | undefined)?.[key];
    return section !== undefined;
  });
}

/** What the editor shows; null where no profile is edited. */
export function gainsView({ overlay, shelf, choices }: BenchState): GainsView | null {
  if (overlay?.kind !== 'gains') return null;
  const profile = shelf.profile.find(({ name }) => name === overlay.profile);
  if (profile === undefined) return null;
  const now = edited(profile, choices.edits).value;
  const fields = fieldsOf(now);
  return {
    name: overlay.profile,
    asFile: profile.value,
    now,
    fields,
    field: fields[Math.min(overlay.field, fields.length - 1)]!,
  };
}

/** Opens the editor on the profile under the cursor. */
export const openGains: Act = (state) => {
  const name = currentRow(state)?.name;
  if (name === undefined) return state;
  const rank = { ...state.rank, cursor: name }; // the cursor stays on it when its row moves
  return { ...state, rank, overlay: { kind: 'gains', profile: name, field: 0 } };
};

/** Moves from field to field; it stops at the ends. */
export function moveField(by: number): Act {
  return (state) => {
    const view = gainsView(state);
    if (view === null || state.overlay?.kind !== 'gains') return state;
    const field = Math.min(view.fields.length - 1, Math.max(0, view.fields.indexOf(view.field) + by));
    return { ...state, overlay: { ...state.overlay, field } };
  };
}

function edit(state: BenchState, view: GainsView, value: number | null): BenchState {
  const { name, field, asFile, now } = view;
  if ((readField(now, field) ?? null) === value) return state;
  if (withField(now, field, value ?? undefined) === null) {
    const text = `${field.key}: ${value === null ? 'cannot be left out' : rangeText(field)}`;
    return { ...state, notice: { text, isFault: true } };
  }
  const isAsFile = (readField(asFile, field) ?? null) === value;
  return withEdit(state, { profile: name, field }, isAsFile ? undefined : value);
}

/** What is expected of a number. */
export function rangeText({ min, max, unit }: ProfileField): string {
  return `expected a number from ${min} to ${max} ${unit}`.trimEnd();
}

/** Changes the number by about a twentieth of itself, or finely by a hundredth. */
export function nudge(direction: 1 | -1, { finely }: { finely: boolean }): Act {
  return (state) => {
    const view = gainsView(state);
    if (view === null) return state;
    const value = readField(view.now, view.field);
    if (value === undefined) {
      return {
        ...state,
        notice: { text: `${view.field.key} is left out; type a number to begin`, isFault: false },
      };
    }
    const next = nudged(view.field, value, { direction, finely });
    if (next !== value) return edit(state, view, next);
    const text = `${view.field.key}: ${fieldText(value, view.field)} is the ${direction === 1 ? 'most' : 'least'}`;
    return { ...state, notice: { text, isFault: false } };
  };
}

/** The number as its file has it. */
export const asInFile: Act = (state) => {
  const view = gainsView(state);
  return view === null ? state : edit(state, view, readField(view.asFile, view.field) ?? null);
};

/** Leaves an optional number out. */
export const leaveOut: Act = (state) => {
  const view = gainsView(state);
  return view === null ? state : edit(state, view, null);
};

/** Takes a typed number over, or says what is wrong with it. */
export function typeNumber(text: string): Act {
  return (state) => {
    const view = gainsView(state);
    if (view === null) return state;
    const value = Number(text.trim().replace(',', '.'));
    const { min, max } = view.field;
    if (text.trim() === '' || !(value >= min && value <= max)) {
      const said = `${view.field.key}: ${rangeText(view.field)}, received ${JSON.stringify(text)}`;
      return { ...state, notice: { text: said, isFault: true } };
    }
    return edit({ ...state, entry: null }, view, value);
  };
}

/** A number of a profile with its unit; left out is said in words. */
export function fieldText(value: number | undefined, { unit }: ProfileField): string {
  return value === undefined ? 'left out' : `${value} ${unit}`.trimEnd();
}

/** The changes of a profile in words: `proportionalAPerDeg 20 -> 22 A/deg`; empty where it is as in its file. */
export function changesOf(state: BenchState, name: string): string {
  const profile = state.shelf.profile.find((candidate) => candidate.name === name);
  if (profile === undefined) return '';
  const asFile = profile.value;
  const now = edited(profile, state.choices.edits).value;
  return fieldsOf(now)
    .filter((field) => readField(asFile, field) !== readField(now, field))
    .map((field) => {
      const before = readField(asFile, field);
      return `${field.key} ${before ?? 'left out'} to ${fieldText(readField(now, field), field)}`;
    })
    .join(', ');
}
