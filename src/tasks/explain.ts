/**
 * Why does a profile cost what it costs? Its cells are run as they are, under the reference profile of each rig, and with one
 * suspect after the other taken away. Nothing is said that was not simulated.
 */
import { blame, type Ablation, type Blame, type Toll } from '../explain/blame.js';
import { CAUSES, type Cause } from '../explain/causes.js';
import type { ProfileResult } from '../measure/profile-result.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { trialsOf, type Named, type PlannedTrial, type RankPlan } from './plan.js';
import { AS_IS, makingsOf, runVariants, UNDER_REFERENCE, type StudyOptions, type Variant } from './study.js';

/** How an explanation is carried out; `onFirst` hears what the worst cells alone say, long before the rest. */
export interface ExplainOptions extends StudyOptions {
  onFirst?: (first: Explanation) => void;
}

/** The cells with one suspect taken away, as the profile is, and under the reference where that was asked. */
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
  const own = CAUSES.filter((cause) => isPresent(study, AS_IS, cause));
  const ofRig = CAUSES.filter(({ family }) => family !== 'profile');
  const underReference = ofRig.filter((cause) => isPresent(study, UNDER_REFERENCE, cause));
  const variants = [
    AS_IS,
    UNDER_REFERENCE,
    ...own.map((cause) => without(cause, AS_IS)),
    ...underReference.map((cause) => without(cause, UNDER_REFERENCE)),
  ];
  const [result, reference, ...others] = await runVariants(study, variants, options);
  const removals = CAUSES.flatMap((cause): Removal[] => {
    const [here, there] = [own.indexOf(cause), underReference.indexOf(cause)];
    if (here === -1 && there === -1) return [];
    return [
      {
        cause: cause.name,
        result: here === -1 ? null : others[here]!,
        underReference: there === -1 ? null : others[own.length + there]!,
      },
    ];
  });
  const said = blame(tollOf(result!), tollOf(reference!), removals.flatMap(ablationOf));
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
    change: (makings) => cause.remove(from.change(makings), UNDER_REFERENCE.change(makings).profile),
  };
}

/** What the cells of a result cost together. */
export function tollOf({ cells, failures }: ProfileResult): Toll {
  return { mean: cells.reduce((sum, { cost }) => sum + cost, 0) / cells.length, failures };
}

function ablationOf({ cause, result, underReference }: Removal): Ablation[] {
  const toll = result ?? underReference;
  if (toll === null) return [];
  return [{ cause, toll: tollOf(toll), underReference: underReference && tollOf(underReference) }];
}
