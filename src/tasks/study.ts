/**
 * The cells of one profile with something changed in what they are made from: as they are, under the reference, with a
 * suspect taken away, with another number in the profile.
 */
import type { Makings } from '../explain/makings.js';
import { referenceProfile } from '../control/reference-profile.js';
import { profileResult, type CellResult, type ProfileResult } from '../measure/profile-result.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { CellTask } from './crew.js';
import { runTasks, type TaskOptions } from './labour.js';
import type { Named, PlannedTrial, RankPlan } from './plan.js';

/** A change of what cells are made from, and the name that its result goes by. */
export interface Variant {
  name: string;
  change: (makings: Makings) => Makings;
}

/** How variants are run; `onRuns` hears of the runs that are done. */
export interface StudyOptions extends Pick<TaskOptions, 'threads' | 'signal'> {
  onRuns?: ((done: number, all: number) => void) | undefined;
}

/** Nothing changed. */
export const AS_IS: Variant = { name: 'as it is', change: (makings) => makings };

/** The reference profile of each rig in place of the profile. */
export const UNDER_REFERENCE: Variant = {
  name: 'under the reference',
  change: (makings) => ({ ...makings, profile: referenceProfile(makings.board, makings.rider) }),
};

/** What a trial of a profile is made from. */
export function makingsOf(profile: ProfileFile, { circumstances }: PlannedTrial): Makings {
  const { board, rider, scenario, seed, noiseRatio = 1 } = circumstances;
  return { profile, board, rider, scenario, seed, noiseRatio };
}

/** Runs a profile in trials, once for each variant; results in the order of the variants, cells in that of the trials. */
export async function runVariants(
  { plan, profile, trials }: { plan: RankPlan; profile: Named<ProfileFile>; trials: readonly PlannedTrial[] },
  variants: readonly Variant[],
  { threads, signal, onRuns }: StudyOptions,
): Promise<ProfileResult[]> {
  const tasks = variants.flatMap(({ change }) =>
    trials.map((trial): CellTask => {
      const { profile: changed, ...circumstances } = change(makingsOf(profile.value, trial));
      return { profile: changed, trials: [{ key: trial.key, circumstances }], solver: plan.solver };
    }),
  );
  const cells = new Array<CellResult>(tasks.length);
  let done = 0;
  await runTasks(tasks, {
    threads,
    signal,
    onDone: (index, [cell]) => {
      cells[index] = cell!;
      onRuns?.(++done, tasks.length);
    },
  });
  return variants.map(({ name }, index) => {
    const own = cells.slice(index * trials.length, (index + 1) * trials.length);
    return profileResult({ name, summary: profile.value.summary }, own, plan.weights);
  });
}
