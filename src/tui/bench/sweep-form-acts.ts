/**
 * What keys do in the form of a sweep: ends of ranges are moved and typed, numbers added and taken out, and the sweep is begun.
 */
import { nudged, PROFILE_FIELDS, type ProfileField } from '../../quantity/profile-fields.js';
import type { Range } from '../../sweep/range.js';
import { MOST_CANDIDATES } from '../../tasks/sweep-select.js';
import type { Act } from './binding.js';
import { fieldKey } from './choices.js';
import { fieldText, rangeText } from './gains-acts.js';
import type { BenchState } from './state.js';
import {
  firstRange,
  formView,
  gridFault,
  OTHER_ROWS,
  PLAIN,
  pointBounds,
  sweepPlanOf,
  USUAL_COUNT,
  USUAL_POINTS,
  type FormView,
} from './sweep-form.js';
import type { RangeEnd, SweepForm } from './sweep-state.js';

function withForm(state: BenchState, form: Partial<SweepForm>): BenchState {
  return { ...state, sweep: { ...state.sweep, form: { ...state.sweep.form, ...form } } };
}

function refused(state: BenchState, text: string): BenchState {
  return { ...state, notice: { text, isFault: true } };
}

/** Moves from row to row; it stops at the ends. */
export function moveFormRow(by: number): Act {
  return (state) => {
    const view = formView(state);
    if (view === null) return state;
    return withForm(state, {
      row: Math.max(0, Math.min(view.ranges.length + OTHER_ROWS.length - 1, view.row + by)),
    });
  };
}

/** Moves to the least or the greatest end of the range, or chooses the first or the second of two. */
export function moveToEnd(end: RangeEnd): Act {
  return (state) => {
    const kind = formView(state)?.rowKind;
    if (kind === 'layout') return withForm(state, { isGrid: end === 'max' });
    if (kind === 'cells') return withForm(state, { isExhaustive: end === 'max' });
    return withForm(state, { end });
  };
}

/** A whole number of the form: how it is called, and between which bounds it lies. */
function wholeNumber(view: FormView) {
  return view.isGrid
    ? { name: 'points', key: 'points' as const, ...pointBounds(view) }
    : { name: 'candidates', key: 'count' as const, min: 1, max: MOST_CANDIDATES };
}

const wholeText = ({ min, max }: { min: number; max: number }) =>
  `expected a whole number from ${min} to ${max}`;

/** Why no number can be typed under the cursor; null where one can. */
export function typingOff(state: BenchState): string | null {
  const view = formView(state);
  if (view === null) return 'a board, riders, scenarios and a profile are needed first';
  return isChoice(view) ? 'left and right choose here' : null;
}

const isChoice = ({ rowKind }: FormView) => rowKind === 'layout' || rowKind === 'cells';

/** The state with another number at the cursor, or with what is wrong with it. */
function withNumber(state: BenchState, view: FormView, value: number): BenchState {
  const { field, ranges, row } = view;
  if (field === null) {
    const whole = wholeNumber(view);
    const isWhole = Number.isInteger(value) && value >= whole.min && value <= whole.max;
    if (isWhole) return withForm({ ...state, entry: null }, { [whole.key]: value });
    return refused(state, `${whole.name}: ${wholeText(whole)}, received ${value}`);
  }
  const { end } = state.sweep.form;
  if (!(value >= field.min && value <= field.max))
    return refused(state, `${field.key}: ${rangeText(field)}, received ${value}`);
  const range = { ...ranges[row]!, [end]: value };
  if (!(range.min < range.max)) {
    const expected =
      end === 'min'
        ? `expected a least number below ${fieldText(range.max, field)}`
        : `expected a greatest number above ${fieldText(range.min, field)}`;
    return refused(state, `${field.key}: ${expected}, received ${value}`);
  }
  return withForm({ ...state, entry: null }, { ranges: ranges.with(row, range) });
}

/** Takes a typed number over, or says what is wrong with it. */
export function typeRange(text: string): Act {
  return (state) => {
    const view = formView(state);
    if (view === null) return { ...state, entry: null };
    const value = text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.'));
    if (Number.isFinite(value)) return withNumber(state, view, value);
    const whole = wholeNumber(view);
    const [name, expected] =
      view.field === null ? [whole.name, wholeText(whole)] : [view.field.key, rangeText(view.field)];
    return refused(state, `${name}: ${expected}, received ${JSON.stringify(text)}`);
  };
}

/** Changes the number at the cursor by about a twentieth of itself, or chooses the other of two. */
export function nudgeNumber(direction: 1 | -1): Act {
  return (state) => {
    const view = formView(state);
    if (view === null) return state;
    if (isChoice(view)) return moveToEnd(direction === 1 ? 'max' : 'min')(state);
    const { field, ranges, row } = view;
    if (field !== null) {
      const now = ranges[row]![state.sweep.form.end];
      return withNumber(state, view, nudged(field, now, { direction, finely: false }));
    }
    const whole = wholeNumber(view);
    const now = view[whole.key];
    const next = Math.round(nudged(whole, now, { direction, finely: false }));
    const moved = next === now ? now + direction : next;
    return withNumber(state, view, Math.min(whole.max, Math.max(whole.min, moved)));
  };
}

/** Takes the range under the cursor out. */
export const dropRange: Act = (state) => {
  const view = formView(state);
  if (view === null || view.field === null) return state;
  return withForm(state, { ranges: view.ranges.filter((_, row) => row !== view.row) });
};

/** Why the number under the cursor cannot be taken out; null where it can. */
export function droppingOff(state: BenchState): string | null {
  const view = formView(state);
  if (view === null || view.field === null) return 'there is no number of a profile under the cursor';
  return view.ranges.length === 1 ? 'a sweep needs one number at least' : null;
}

/** Ranges and candidates as they are for the rig. */
export const usualAgain: Act = (state) =>
  withForm(state, {
    ranges: null,
    count: USUAL_COUNT,
    isGrid: false,
    points: USUAL_POINTS,
    isExhaustive: false,
    row: 0,
  });

/** The numbers of the list: those that were swept keep their ranges, in the order of a profile. */
export function withSweptNumbers(state: BenchState, keys: readonly string[]): BenchState {
  const view = formView(state);
  if (view === null) return state;
  const fields = PROFILE_FIELDS.filter(({ key }) => keys.includes(key));
  const rangeOf = (field: ProfileField): Range =>
    view.ranges.find((range) => fieldKey(range) === fieldKey(field)) ?? firstRange(view, field);
  return fields.length === 0 ? state : withForm(state, { ranges: fields.map(rangeOf) });
}

/** The state whose candidates share all else with another profile. */
export function withSweptFrom(state: BenchState, name: string): BenchState {
  return withForm(state, { from: name });
}

/** Why no sweep can be begun; null where one can. */
export function beginningOff(state: BenchState): string | null {
  const view = formView(state);
  if (view === null) return 'a board, riders, scenarios and a profile are needed first';
  if (view.ranges.length === 0) return 'a sweep needs one number at least; a adds some';
  const fault = gridFault(view);
  if (fault !== null) return fault;
  return sweepPlanOf(state) === null ? 'no profile can have numbers in all of these ranges' : null;
}

/** Begins the sweep that the form asks for, in place of the one before. */
export const beginSweep: Act = (state) => {
  const plan = sweepPlanOf(state);
  if (plan === null) return state;
  const isPlain = state.sweep.form.from === PLAIN;
  const found = { progress: null, best: [], base: null, kept: null, outcome: null };
  const run = { plan, isPlain, isRunning: true, ...found };
  return { ...state, sweep: { ...state.sweep, run, view: 'live', cursor: null, pair: 0 } };
};
