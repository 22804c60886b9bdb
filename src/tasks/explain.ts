/**
 * Why does a profile cost what it costs? Its cells are run as they are, under the reference profile of each rig, and with one
 * suspect after the other taken away. Nothing is said that was not simulated.
 */
import { blame, whomToAsk, type Ablation, type Blame } from '../explain/blame.js';
import { withoutCause, type Cause } from '../explain/cause.js';
import { CAUSES } from '../explain/causes.js';
import type { ProfileResult } from '../measure/profile-result.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { trialsOf, type Named, type PlannedTrial, type RankPlan } from './plan.js';
import { AS_IS, makingsOf, runVariants, UNDER_REFERENCE, type StudyOptions, type Variant } from './study.js';

/** How an explanation is carried out; `onFirst` hears what the worst cells alone say, long before the rest. */
export interface ExplainOptions extends StudyOptions {
  onFirst?: (first: Explanation) => void;
}

/** The cells with one suspect taken away: of the profile as it is, or, for the rig's where the profile is to blame, of the reference. */
export interface Removal {
  cause: string;
  result: ProfileResult | null;
  underReference: ProfileResult | null;
}

/** What was found, and the runs that it was found with. */
export interface Explanation {
  profile: Named<ProfileFile>;
  /** False where only the worst cells were run. */
  isComplete: boolean;
  result: ProfileResult;
  /** The same cells under the reference profile of their rig. */
  reference: ProfileResult;
  removals: Removal[];
  blame: Blame;
}

/** Cells that the first answer is made from. */
const FIRST_CELLS = 4;

/** Explains the one profile of a plan over all of its trials. */
export async function explain(plan: RankPlan, options: ExplainOptions): Promise<Explanation> {
  const [profile] = plan.profiles;
  if (profile === undefined) throw new Error('a plan to explain has a profile');
  const trials = trialsOf(plan);
  if (options.onFirst !== undefined && trials.length > FIRST_CELLS) {
    const quiet = { ...options, onRuns: undefined };
    const [base] = await runVariants({ plan, profile, trials }, [AS_IS], quiet);
    const order = base!.cells.map(({ cost }, index) => ({ cost, index })).sort((a, b) => b.cost - a.cost);
    const worst = order.slice(0, FIRST_CELLS).map(({ index }) => trials[index]!);
    options.onFirst({ ...(await inTrials({ plan, profile, trials: worst }, quiet)), isComplete: false });
  }
  return inTrials({ plan, profile, trials }, options);
}

interface Study {
  plan: RankPlan;
  profile: Named<ProfileFile>;
  trials: readonly PlannedTrial[];
}

async function inTrials(study: Study, options: StudyOptions): Promise<Explanation> {
  const [result, reference] = await runVariants(study, [AS_IS, UNDER_REFERENCE], options);
  const { isProfileToBlame, isRigTroubled } = whomToAsk(result!.cells, reference!.cells);
  const suspects = CAUSES.filter(({ family }) =>
    family === 'profile' ? isProfileToBlame : isRigTroubled,
  ).map((cause) => ({
    cause,
    from: isProfileToBlame && cause.family !== 'profile' ? UNDER_REFERENCE : AS_IS,
  }));
  const asked = suspects.filter(({ cause, from }) => isPresent(study, from, cause));
  const runs = await runVariants(
    study,
    asked.map(({ cause, from }) => without(cause, from)),
    options,
  );
  const removals = asked.map(({ cause, from }, index): Removal => {
    const removed = runs[index]!;
    return from === AS_IS
      ? { cause: cause.name, result: removed, underReference: null }
      : { cause: cause.name, result: null, underReference: removed };
  });
  const said = blame(result!.cells, reference!.cells, removals.flatMap(ablationOf));
  return {
    profile: study.profile,
    isComplete: true,
    result: result!,
    reference: reference!,
    removals,
    blame: said,
  };
}

function isPresent({ profile, trials }: Study, from: Variant, cause: Cause): boolean {
  return trials.some((trial) => {
    const makings = makingsOf(profile.value, trial);
    return cause.isPresent(from.change(makings), UNDER_REFERENCE.change(makings).profile);
  });
}

function without(cause: Cause, from: Variant): Variant {
  return {
    name: `without ${cause.name}`,
    change: (makings) => withoutCause(cause, from.change(makings), UNDER_REFERENCE.change(makings).profile),
  };
}

function ablationOf({ cause, result, underReference }: Removal): Ablation[] {
  const removed = result ?? underReference;
  if (removed === null) return [];
  return [{ cause, cells: removed.cells, isUnderReference: underReference !== null }];
}
