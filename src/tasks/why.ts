/**
 * The whole answer to why a profile rides as it does: what is to blame with its evidence, how it feels, and which changes help.
 * First what the worst cells alone say, then all of it.
 */
import { USUAL_CHARGE_PERCENT } from '../explain/edge-scenarios.js';
import type { Evidence } from '../explain/evidence.js';
import type { FeelRide } from '../explain/feel-readings.js';
import { feelOf, footShiftNm, type Feel } from '../explain/feel.js';
import { reportRide } from '../linear/ride-report.js';
import type { WhyView } from '../show/why-view.js';
import { evidenceOf } from './evidence.js';
import { explain, type Explanation } from './explain.js';
import { USUAL_SPEEDS_KM_PER_H } from './margin-points.js';
import type { RankPlan } from './plan.js';
import { tryRemedies, type TriedRemedies } from './remedies.js';
import { DEFAULT_RIDER } from './select.js';
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
  feel: { rider: string; rides: FeelRide[]; words: Feel[] } | null;
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
  const found = { ...answer(plan, explanation), feel: feelIn(plan, explanation) };
  onKnown?.(found);
  return { ...found, tried: await tryRemedies(plan, explanation, telling('to try changes')) };
}

function answer(plan: RankPlan, explanation: Explanation): Why {
  return { plan, explanation, evidence: evidenceOf(plan, explanation), feel: null, tried: null };
}

/** How the one profile of a plan feels, from its cells and three steady rides: to the usual rider, if he is among its own, or else to the first. */
export function feelIn(
  { board, riders }: RankPlan,
  { profile, result }: Pick<Explanation, 'profile' | 'result'>,
): NonNullable<Why['feel']> {
  const rider = riders.find(({ name }) => name === DEFAULT_RIDER) ?? riders[0]!;
  const rig = { board: board.value, rider: rider.value, profile: profile.value };
  const steady = { gradePercent: 0, chargePercent: USUAL_CHARGE_PERCENT };
  const rides = USUAL_SPEEDS_KM_PER_H.map((speedKmPerH) => ({
    speedKmPerH,
    report: reportRide({ ...rig, ...steady, speedKmPerH }, { tries: false }),
  }));
  const { body, stance } = rider.value;
  const words = feelOf({
    rides,
    cells: result.cells.filter((cell) => cell.rider === rider.name),
    footShiftNm: footShiftNm({ massKg: body.massKg, stanceWidthM: stance.widthM }),
  });
  return { rider: rider.name, rides, words };
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
