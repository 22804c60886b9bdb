/**
 * From the form to a sweep: which profile candidates share all else with, between which numbers they lie, and in which cells they
 * are run, which is what the Rank screen ranks on.
 */
import { PROFILE_FIELDS, readField, type ProfileField } from '../../quantity/profile-fields.js';
import type { ProfileFile } from '../../quantity/profile-file.js';
import { candidateAt } from '../../sweep/candidate.js';
import { rounded, usualRanges, type Range } from '../../sweep/range.js';
import { trialsOf, type Named, type RankPlan } from '../../tasks/plan.js';
import type { SweepPlan } from '../../tasks/sweep-plan.js';
import { MOST_CANDIDATES, plainBase } from '../../tasks/sweep-select.js';
import { fieldKey } from './choices.js';
import { fieldsOf } from './gains-acts.js';
import type { BenchState } from './state.js';
import type { SweepState } from './sweep-state.js';

/** Candidates that are spread over the ranges unless another count is typed. */
export const USUAL_COUNT = 300;

/** Points along each range of a grid unless others are typed. */
export const USUAL_POINTS = 12;

/** Fewest points along each range of a grid: its two ends. */
const LEAST_POINTS = 2;

/** Bounds of the points along each of so many ranges. */
export function pointBounds({ ranges }: Pick<FormView, 'ranges'>): { min: number; max: number } {
  const most = Math.floor(MOST_CANDIDATES ** (1 / Math.max(1, ranges.length)) + 1e-9);
  return { min: LEAST_POINTS, max: Math.max(LEAST_POINTS, most) };
}

/** In place of a profile's name: the plain one, made for the rig. No file can be called so. */
export const PLAIN = 'plain, made for the rig';

/** Hardest cells of each finalist that are run again with odex. */
const CHECKED_CELLS = 4;

/** The Sweep screen before anything was asked. */
export const FIRST_SWEEP: SweepState = {
  form: {
    from: null,
    ranges: null,
    count: USUAL_COUNT,
    isGrid: false,
    points: USUAL_POINTS,
    isExhaustive: false,
    row: 0,
    end: 'min',
  },
  run: null,
  view: 'ranges',
  read: null,
  cursor: null,
  metric: 0,
  pair: 0,
  trade: 0,
};

/** The rows of the form below the ranges: how many, a spread or a grid, a race or every cell. */
export const OTHER_ROWS = ['count', 'layout', 'cells'] as const;

/** What stands in a row of the form. */
export type FormRow = 'range' | (typeof OTHER_ROWS)[number];

/** The form as it is now; `field` is the number of a profile under the cursor, null below the ranges. */
export interface FormView extends Pick<SweepState['form'], 'count' | 'isGrid' | 'points' | 'isExhaustive'> {
  base: Named<ProfileFile>;
  /** True for a base that no file holds. */
  isPlain: boolean;
  plan: RankPlan;
  ranges: readonly Range[];
  row: number;
  rowKind: FormRow;
  field: ProfileField | null;
}

const usual = new WeakMap<RankPlan, readonly Range[]>();

/** The ranges that suit the rig of a plan. */
function usualFor(plan: RankPlan): readonly Range[] {
  const known =
    usual.get(plan) ??
    usualRanges(
      plan.board.value,
      plan.riders.map(({ value }) => value),
    );
  usual.set(plan, known);
  return known;
}

const plains = new WeakMap<RankPlan, Named<ProfileFile>>();

/** The plain profile for the rig of a plan. */
function plainFor(plan: RankPlan): Named<ProfileFile> {
  const known = plains.get(plan) ?? plainBase(plan);
  plains.set(plan, known);
  return known;
}

/** The field of a range. */
export function fieldOf(range: Pick<Range, 'path'>): ProfileField {
  return PROFILE_FIELDS.find((field) => fieldKey(field) === fieldKey(range))!;
}

/** What the form shows; null where there is nothing to run. */
export function formView({ work, sweep }: Pick<BenchState, 'work' | 'sweep'>): FormView | null {
  if (work === null) return null;
  const { plan } = work;
  const { form } = sweep;
  const named = plan.profiles.find(({ name }) => name === form.from) ?? plan.profiles[0];
  const isPlain = form.from === PLAIN;
  const base = isPlain ? plainFor(plan) : named;
  if (base === undefined) return null;
  const keys = fieldsOf(base.value).map(fieldKey);
  const ranges = (form.ranges ?? usualFor(plan)).filter((range) => keys.includes(fieldKey(range)));
  const row = Math.min(form.row, ranges.length + OTHER_ROWS.length - 1);
  const here = ranges[row];
  const { count, isGrid, points, isExhaustive } = form;
  return {
    base,
    isPlain,
    plan,
    ranges,
    count,
    isGrid,
    points,
    isExhaustive,
    row,
    rowKind: here === undefined ? OTHER_ROWS[row - ranges.length]! : 'range',
    field: here === undefined ? null : fieldOf(here),
  };
}

/** Candidates that the form asks for before any search goes on from them. */
export function candidateCount({
  ranges,
  count,
  isGrid,
  points,
}: Pick<FormView, 'ranges' | 'count' | 'isGrid' | 'points'>): number {
  return isGrid ? points ** ranges.length : count;
}

/** What is wrong with a grid of too many points; null where nothing is. */
export function gridFault(view: Pick<FormView, 'ranges' | 'count' | 'isGrid' | 'points'>): string | null {
  const { ranges, points } = view;
  const count = candidateCount(view);
  if (count <= MOST_CANDIDATES) return null;
  const { max } = pointBounds(view);
  const remedy = max ** ranges.length > MOST_CANDIDATES ? 'take numbers out' : `${max} points at most`;
  return `${points} points over ${ranges.length} numbers are ${count} candidates, more than ${MOST_CANDIDATES}: ${remedy}`;
}

/** Factors below and above the number of a profile between which it is looked at first. */
const FIRST_FACTOR = 3;

/** The range with which a number of a profile begins: that which suits the rig, or about what the profile has. */
export function firstRange({ base, plan }: Pick<FormView, 'base' | 'plan'>, field: ProfileField): Range {
  const known = usualFor(plan).find((range) => fieldKey(range) === fieldKey(field));
  if (known !== undefined) return known;
  const { path, unit, min, max } = field;
  const value = readField(base.value, field);
  if (value === undefined || value === 0) return { path, unit, min, max };
  const ends = [value / FIRST_FACTOR, value * FIRST_FACTOR].map((end) =>
    Math.min(max, Math.max(min, rounded(end))),
  );
  return { path, unit, min: Math.min(...ends), max: Math.max(...ends) };
}

/** Cells that a candidate can be run in. */
export function cellCount(plan: RankPlan): number {
  return trialsOf(plan).length;
}

/** The sweep that the form asks for; null where there is nothing to run, or no profile has such numbers. */
export function sweepPlanOf(state: Pick<BenchState, 'work' | 'sweep'>): SweepPlan | null {
  const view = formView(state);
  if (view === null || view.ranges.length === 0 || gridFault(view) !== null) return null;
  const { base, ranges, count, isGrid, points, isExhaustive, plan } = view;
  const middle = candidateAt(
    { base: base.value, ranges },
    ranges.map(() => 0.5),
    'c',
  );
  if (middle === null) return null;
  const { board, riders, scenarios, charges, seeds, weights } = plan;
  return {
    cells: { board, riders, profiles: [], scenarios, charges, seeds, solver: 'fixed', weights },
    base: { name: base.name, value: base.value },
    ranges: [...ranges],
    count,
    grid: isGrid ? points : null,
    isExhaustive,
    isRefined: !isGrid,
    seed: 1,
    checkedCells: CHECKED_CELLS,
  };
}
