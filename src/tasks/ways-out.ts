/**
 * What else would help where no change of the profile does? The cells that a limit fells are run with more of what it lacks, or
 * less of what is asked, until the least is found that keeps all of them up.
 */
import type { Finding } from '../explain/blame.js';
import { nextPlaces, openWaySearch, stretch, withPlace, type WaySearch } from '../explain/way-search.js';
import { waysOut, type LimitWays, type WayFound, type WayOut } from '../explain/ways-out.js';
import type { Explanation } from './explain.js';
import { trialsOf, type PlannedTrial, type RankPlan } from './plan.js';
import { AS_IS, makingsOf, runVariants, UNDER_REFERENCE, type StudyOptions, type Variant } from './study.js';

/** Looks for ways out of limits: findings that no change of the profile cures. */
export async function findWaysOut(
  plan: RankPlan,
  { explanation, limits }: { explanation: Explanation; limits: readonly Finding[] },
  options: StudyOptions,
): Promise<LimitWays[]> {
  const found: LimitWays[] = [];
  for (const { cause } of limits) found.push(await waysFor(plan, { explanation, cause }, options));
  return found;
}

async function waysFor(
  plan: RankPlan,
  { explanation, cause }: { explanation: Explanation; cause: string },
  options: StudyOptions,
): Promise<LimitWays> {
  const { profile, result, reference, removals } = explanation;
  const removal = removals.find((one) => one.cause === cause);
  const isUnderReference = (removal?.underReference ?? null) !== null;
  const before = isUnderReference ? reference : result;
  const after = removal?.underReference ?? removal?.result;
  const all = trialsOf(plan);
  const felled = before.cells.flatMap((cell, index) =>
    cell.failed && after?.cells[index]?.failed === false ? [{ cell, trial: all[index]! }] : [],
  );
  const cells = felled.map(({ cell }) => cell);
  if (felled.length === 0) return { cause, isUnderReference, cells, ways: [] };
  const trials = felled.map(({ trial }) => trial);
  const from = isUnderReference ? UNDER_REFERENCE : AS_IS;
  const made = trials.map((trial) => from.change(makingsOf(profile.value, trial)));
  const ground = { plan, profile, trials, from };
  const ways = await searched(waysOut(cause, made), ground, options);
  const others = all.filter((trial) => !trials.includes(trial));
  return {
    cause,
    isUnderReference,
    cells,
    ways: await withWhatFalls(ways, { ...ground, trials: others }, options),
  };
}

/** Runs the nearest size that helps in the other cells too: what helps in one may fell another. */
async function withWhatFalls(
  ways: readonly { way: WayOut; found: WayFound }[],
  { from, ...ground }: Ground,
  options: StudyOptions,
): Promise<WayFound[]> {
  const helping = ways.filter(({ found }) => found.helpsFrom !== null);
  if (helping.length === 0 || ground.trials.length === 0) return ways.map(({ found }) => found);
  const variants = helping.map(({ way, found }): Variant => ({
    name: way.lever,
    change: (makings) => way.change(from.change(makings), found.helpsFrom!),
  }));
  const [before, ...after] = await runVariants(ground, [from, ...variants], options);
  return ways.map(({ found }) => {
    const index = helping.findIndex((one) => one.found === found);
    if (index === -1) return found;
    const alsoFells = after[index]!.cells.filter(
      (cell, place) => cell.failed && !before!.cells[place]!.failed,
    );
    return { ...found, alsoFells };
  });
}

interface Ground {
  plan: RankPlan;
  profile: Explanation['profile'];
  trials: readonly PlannedTrial[];
  from: Variant;
}

/** Searches all ways side by side, some sizes of each at a time. */
async function searched(
  ways: readonly WayOut[],
  { from, ...ground }: Ground,
  options: StudyOptions,
): Promise<{ way: WayOut; found: WayFound }[]> {
  const searches = ways.map(({ sizes }) => openWaySearch(sizes.length));
  for (;;) {
    const level = searches.flatMap((search, index) =>
      nextPlaces(search).map((place) => ({ index, place, way: ways[index]! })),
    );
    if (level.length === 0) break;
    const variants = level.map(({ way: { lever, sizes, change }, place }): Variant => {
      return { name: lever, change: (makings) => change(from.change(makings), sizes[place]!) };
    });
    const results = await runVariants(ground, variants, options);
    level.forEach(({ index, place }, at) => {
      searches[index] = withPlace(searches[index]!, place, results[at]!.failures === 0);
    });
  }
  return ways.map((way, index) => ({ way, found: foundIn(way, searches[index]!) }));
}

function foundIn({ lever, unit, now, sizes }: WayOut, search: WaySearch): WayFound {
  const { near, far } = stretch(search);
  const sizeAt = (place: number | null) => (place === null ? null : sizes[place]!);
  return { lever, unit, now, helpsFrom: sizeAt(near), helpsTo: sizeAt(far), alsoFells: [] };
}
