/**
 * The whole answer to why a profile rides as it does: what is to blame with its evidence, how it feels, and which changes help.
 * First what the worst cells alone say, then all of it.
 */
import type { Evidence } from '../explain/evidence.js';
import type { WhyView } from '../show/why-view.js';
import { evidenceOf } from './evidence.js';
import { explain, type Explanation } from './explain.js';
import { feelFrom, feelPoints, type Felt } from './feel-rides.js';
import type { RankPlan } from './plan.js';
import { tryRemedies, type TriedRemedies } from './remedies.js';
import { lookAtRides } from './ride-looks.js';
import type { StudyOptions } from './study.js';

/** What the runs of a piece of work are for. */
export type Purpose = 'to find what is to blame' | 'to try changes';

/**
 * How the answer is to be made; `onKnown` hears what the worst cells say, then what all of them say, before changes are tried;
 * `onRuns` of the runs, piece of work by piece.
 */
export interface WhyOptions extends Omit<StudyOptions, 'onRuns'> {
  onKnown?: (known: Why) => void;
  onRuns?: (done: number, all: number, purpose: Purpose) => void;
}

/** The answer; feel and remedies are null as long as only the worst cells were run. */
export interface Why {
  plan: RankPlan;
  explanation: Explanation;
  evidence: Evidence[];
  feel: Felt | null;
  tried: TriedRemedies | null;
}

/** Answers for the one profile of a plan. */
export async function why(plan: RankPlan, { onKnown, onRuns, ...options }: WhyOptions): Promise<Why> {
  const telling = (purpose: Purpose) => ({
    ...options,
    onRuns: (done: number, all: number) => onRuns?.(done, all, purpose),
  });
  const explanation = await explain(plan, {
    ...telling('to find what is to blame'),
    ...(onKnown && { onFirst: (first) => onKnown(answer(plan, first)) }),
  });
  const { profile, result } = explanation;
  const reports = await lookAtRides(feelPoints(plan, profile.value), options);
  const found = { ...answer(plan, explanation), feel: feelFrom(plan, result.cells, reports) };
  onKnown?.(found);
  return { ...found, tried: await tryRemedies(plan, explanation, telling('to try changes')) };
}

function answer(plan: RankPlan, explanation: Explanation): Why {
  return { plan, explanation, evidence: evidenceOf(plan, explanation), feel: null, tried: null };
}

/** What is shown of an answer; `asked` is how profile and board were named. */
export function whyView({ plan, explanation, evidence, feel, tried }: Why, asked: WhyView['asked']): WhyView {
  const { profile, isComplete, result, reference, blame, removals } = explanation;
  return {
    profile: profile.name,
    board: plan.board.name,
    asked,
    riders: plan.riders.map(({ name }) => name),
    isComplete,
    weights: plan.weights,
    result,
    reference,
    blame,
    suspects: removals.length,
    ownCharges: Object.fromEntries(plan.scenarios.map(({ name, value }) => [name, value.chargePercent])),
    findings: evidence,
    feel,
    tried,
  };
}
