/**
 * From the form to a sweep: which profile candidates share all else with, between which numbers they lie, and in which cells they
 * are run, which is what the Rank screen ranks on.
 */
import { PROFILE_FIELDS, readField, type ProfileField } from '../../quantity/profile-fields.js';
import type { ProfileFile } from '../../quantity/profile-file.js';
import { candidateAt } from '../../sweep/candidate.js';
import { rounded, usualRanges, type Range } from '../../sweep/range.js';
import type { Named, RankPlan } from '../../tasks/plan.js';
import type { SweepPlan } from '../../tasks/sweep-plan.js';
import { fieldKey } from './choices.js';
import { fieldsOf } from './gains-acts.js';
import type { BenchState } from './state.js';
import type { SweepState } from './sweep-state.js';

/** Candidates that are spread over the ranges unless another count is typed. */
export const USUAL_COUNT = 300;

/** Hardest cells of each finalist that are run again with odex. */
const CHECKED_CELLS = 4;

/** The Sweep screen before anything was asked. */
export const FIRST_SWEEP: SweepState = {
  form: { from: null, ranges: null, count: USUAL_COUNT, row: 0, end: 'min' },
  run: null,
  view: 'ranges',
  cursor: null,
  metric: 0,
  pair: 0,
  trade: 0,
};

/** The form as it is now; `field` is the number under the cursor, null on the count of candidates. */
export interface FormView {
  base: Named<ProfileFile>;
  plan: RankPlan;
  ranges: readonly Range[];
  count: number;
  row: number;
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

/** The field of a range. */
export function fieldOf(range: Pick<Range, 'path'>): ProfileField {
  return PROFILE_FIELDS.find((field) => fieldKey(field) === fieldKey(range))!;
}

/** What the form shows; null where there is nothing to run. */
export function formView({ work, sweep }: Pick<BenchState, 'work' | 'sweep'>): FormView | null {
  if (work === null) return null;
  const { plan } = work;
  const { form } = sweep;
  const base = plan.profiles.find(({ name }) => name === form.from) ?? plan.profiles[0];
  if (base === undefined) return null;
  const keys = fieldsOf(base.value).map(fieldKey);
  const ranges = (form.ranges ?? usualFor(plan)).filter((range) => keys.includes(fieldKey(range)));
  const row = Math.min(form.row, ranges.length);
  const here = ranges[row];
  return { base, plan, ranges, count: form.count, row, field: here === undefined ? null : fieldOf(here) };
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
export function cellCount({ scenarios, riders, charges, seeds }: RankPlan): number {
  return scenarios.length * riders.length * charges.length * seeds.length;
}

/** The sweep that the form asks for; null where there is nothing to run, or no profile has such numbers. */
export function sweepPlanOf(state: Pick<BenchState, 'work' | 'sweep'>): SweepPlan | null {
  const view = formView(state);
  if (view === null || view.ranges.length === 0) return null;
  const { base, ranges, count, plan } = view;
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
    grid: null,
    isExhaustive: false,
    isRefined: true,
    seed: 1,
    checkedCells: CHECKED_CELLS,
  };
}
