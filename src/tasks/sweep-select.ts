/**
 * From what a person asked for to the plan of a sweep: the cells, the profile that candidates share, the ranges; every problem at
 * once.
 */
import { EARLY_LIFT, referenceProfile } from '../control/reference-profile.js';
import { PROFILE_FIELDS } from '../quantity/profile-fields.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { suggestion } from '../quantity/suggestion.js';
import { listKind, load } from '../store/library.js';
import type { Places } from '../store/places.js';
import { candidateAt } from '../sweep/candidate.js';
import { fieldCalled, rounded, usualRanges, type Range } from '../sweep/range.js';
import type { Named, RankPlan } from './plan.js';
import { planFor, type Selection } from './select.js';
import type { SweepPlan } from './sweep-plan.js';

/** A range as it was asked for. */
export interface AskedRange {
  key: string;
  min: number;
  max: number;
}

/** What a person asked for; `riders` undefined stands for those of different weight and practice, null for all. */
export interface SweepSelection
  extends
    Omit<Selection, 'profiles' | 'solver'>,
    Pick<SweepPlan, 'count' | 'grid' | 'isExhaustive' | 'isRefined' | 'seed' | 'checkedCells'> {
  /** The profile that candidates share all else with; undefined stands for the plain one made for the rig. */
  from: string | undefined;
  /** None stands for those that suit the rig. */
  ranges: readonly AskedRange[];
}

/** Riders that a sweep is for where none is named, as far as the working folder has them; else all that it has. */
export const USUAL_RIDERS = ['light', 'regular', 'heavy', 'first-timer'];

/** States of charge that a sweep is for where none is named: each scenario's own, and a low one, %. */
export const USUAL_CHARGES: readonly (number | null)[] = [null, 20];

/** Most candidates of a spread or a grid. */
export const MOST_CANDIDATES = 20_000;

/** The plan for what was asked for, or everything that is wrong with it. */
export function sweepPlanFor(places: Places, selection: SweepSelection): Checked<SweepPlan, Problem> {
  const { from, ranges, count, grid, isExhaustive, isRefined, seed, checkedCells, ...cells } = selection;
  const riders = cells.riders === undefined ? usualRiders(places) : cells.riders;
  const planned = planFor(places, { ...cells, riders, profiles: [], solver: 'fixed' });
  const base = from === undefined ? null : load(places, 'profile', from);
  const rangeFaults = faultsOf(ranges, grid);
  const faults = [
    ...(planned.ok ? [] : planned.faults),
    ...(base === null || base.ok ? [] : base.faults),
    ...rangeFaults,
  ];
  if (!planned.ok || faults.length > 0) return { ok: false, faults };
  const plan: SweepPlan = {
    cells: planned.value,
    base: base?.ok ? { name: base.value.name, value: base.value.value } : plainBase(planned.value),
    ranges: ranges.length === 0 ? rangesFor(planned.value) : ranges.map(rangeFor),
    count,
    grid,
    isExhaustive,
    isRefined: isRefined && grid === null,
    seed,
    checkedCells,
  };
  const lacking = plan.ranges.filter((range) => !hasPlaceFor(plan.base.value, range));
  if (lacking.length > 0) return { ok: false, faults: lacking.map((range) => placeFault(plan.base, range)) };
  const middle = candidateAt(
    { base: plan.base.value, ranges: plan.ranges },
    plan.ranges.map(() => 0.5),
    'c',
  );
  if (middle === null) {
    return {
      ok: false,
      faults: [rangeFault('', 'ranges that make a profile together', 'ranges that make none')],
    };
  }
  return { ok: true, value: plan };
}

/** Whether a profile has the section that a number stands in, whether or not it has the number. */
function hasPlaceFor(profile: ProfileFile, { path }: Range): boolean {
  const inside = (part: unknown, key: string) => (part as Record<string, unknown> | undefined)?.[key];
  return path.slice(0, -1).reduce<unknown>(inside, profile) !== undefined;
}

function placeFault(base: Named<ProfileFile>, { path }: Range): Problem {
  const [section] = path.slice(-2);
  return rangeFault(
    path.at(-1)!,
    `a profile with ${section} to begin from, named with --from`,
    `${base.name}, which has none`,
  );
}

/** The names of the riders that a profile is proven under where none is named; null for every one in the working folder. */
export function usualRiders(places: Places): string[] | null {
  const names = listKind(places, 'rider').entries.map(({ name }) => name);
  const usual = USUAL_RIDERS.filter((name) => names.includes(name));
  return usual.length > 1 ? usual : null;
}

/** The plain profile for the rig, under the mean of its riders, with a headroom lift. */
export function plainBase({ board, riders }: RankPlan): Named<ProfileFile> {
  const massKg = riders.reduce((sum, { value }) => sum + value.body.massKg, 0) / riders.length;
  const { value } = riders[0]!;
  const profile = referenceProfile(board.value, { ...value, body: { ...value.body, massKg } });
  const gains = {
    ...profile.gains,
    proportionalAPerDeg: rounded(profile.gains.proportionalAPerDeg),
    rateAPerDegPerS: rounded(profile.gains.rateAPerDegPerS),
  };
  const shaping = { ...profile.shaping, headroomLift: EARLY_LIFT };
  return { name: 'plain', value: { ...profile, gains, shaping, summary: 'Found by a sweep.' } };
}

function rangesFor({ board, riders }: RankPlan): Range[] {
  return usualRanges(
    board.value,
    riders.map(({ value }) => value),
  );
}

function rangeFor({ key, min, max }: AskedRange): Range {
  const { path, unit } = fieldCalled(key)!;
  return { path, unit, min, max };
}

function faultsOf(ranges: readonly AskedRange[], grid: number | null): Problem[] {
  const faults = ranges.flatMap(({ key, min, max }, index): Problem[] => {
    const field = fieldCalled(key);
    if (field === undefined) {
      const keys = PROFILE_FIELDS.map((one) => one.key);
      const near = keysLike(key, keys);
      const expected =
        near.length === 0
          ? `one of ${keys.join(', ')}`
          : `a number of a profile such as ${near.join(' or ')}`;
      return [rangeFault(key, expected, 'no number of a profile')];
    }
    const own: Problem[] = [];
    if (min < field.min || max > field.max) {
      own.push(rangeFault(key, `from ${field.min} to ${field.max} ${field.unit}`.trim(), `${min}..${max}`));
    }
    if (!(min < max)) own.push(rangeFault(key, 'a least number below the greatest', `${min}..${max}`));
    if (ranges.findIndex((other) => other.key === key) < index) {
      own.push(rangeFault(key, 'each number once', 'twice'));
    }
    return own;
  });
  const points = grid === null ? 0 : grid ** Math.max(ranges.length, ranges.length === 0 ? 2 : 0);
  if (points > MOST_CANDIDATES) {
    const fault = rangeFault('', `at most ${MOST_CANDIDATES} candidates`, `${points}`);
    faults.push({ ...fault, key: 'grid' });
  }
  return faults;
}

/** Keys that begin with what was typed, or else the nearest. */
function keysLike(typed: string, keys: readonly string[]): string[] {
  const begun = keys.filter((key) => key.toLowerCase().startsWith(typed.toLowerCase()));
  return begun.length > 0 ? begun : [suggestion(typed, keys) ?? []].flat();
}

function rangeFault(key: string, expected: string, received: string): Problem {
  return {
    file: '',
    line: null,
    column: null,
    key: key === '' ? 'range' : `range ${key}`,
    expected,
    received,
  };
}
