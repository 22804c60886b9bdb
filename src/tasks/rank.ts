/**
 * The ranking: every profile in every trial, scored and ordered as its cells come in.
 */
import { profileResult, type CellResult, type ProfileResult } from '../measure/profile-result.js';
import { rankProfiles } from '../measure/score.js';
import { JOB_CELLS, jobsFor, runJobs, type JobOptions } from './jobs.js';
import { trialsOf, type RankPlan } from './plan.js';

/** How a ranking is carried out; `onProfile` hears of each profile as its last cell comes in. */
export interface RankOptions extends Pick<JobOptions, 'threads' | 'signal'> {
  onCells?: (done: number, all: number) => void;
  /** Hears of some cells of a profile as they come in, before the others do. */
  onSome?: (profile: string, cells: readonly CellResult[]) => void;
  onProfile?: (profile: ProfileResult) => void;
}

/** Ranks the profiles of a plan, best first. The plan has at least one profile, rider, scenario, charge and seed. */
export async function rank(plan: RankPlan, options: RankOptions): Promise<ProfileResult[]> {
  const trials = trialsOf(plan);
  // A crew begins cold, all of it at once: its threads share out the first profile, so that its row is there soonest.
  const { threads } = options;
  const share = typeof threads === 'number' ? JOB_CELLS : Math.ceil(trials.length / threads.size);
  const jobs = jobsFor({
    profileCount: plan.profiles.length,
    trialCount: trials.length,
    solver: plan.solver,
    jobCells: Math.min(JOB_CELLS, share),
  });
  const results = plan.profiles.map(() => new Array<CellResult | undefined>(trials.length));
  const missing = plan.profiles.map(() => trials.length);
  const ranked: ProfileResult[] = [];
  let done = 0;
  await runJobs(plan, jobs, {
    threads,
    signal: options.signal,
    onDone: ({ profileIndex, trialIndices }, computed) => {
      trialIndices.forEach((trialIndex, index) => (results[profileIndex]![trialIndex] = computed[index]!));
      missing[profileIndex]! -= computed.length;
      done += computed.length;
      options.onSome?.(plan.profiles[profileIndex]!.name, computed);
      options.onCells?.(done, trials.length * plan.profiles.length);
      if (missing[profileIndex] !== 0) return;
      const { name, value } = plan.profiles[profileIndex]!;
      const cells = results[profileIndex] as CellResult[];
      const profile = profileResult({ name, summary: value.summary }, cells, plan.weights);
      ranked.push(profile);
      options.onProfile?.(profile);
    },
  });
  return rankProfiles(ranked);
}
