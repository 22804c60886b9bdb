/**
 * The findings of an explanation with what shows them: the cell that each costs most is run once more, and its moment read off.
 */
import { causeNumber } from '../explain/cause-number.js';
import { greatestRelief, mergedFindings, momentOf, type Evidence } from '../explain/evidence.js';
import type { RankedCell } from '../measure/profile-result.js';
import { createEvaluator } from './evaluate.js';
import type { Explanation } from './explain.js';
import { trialsOf, type RankPlan, type TrialKey } from './plan.js';
import { makingsOf, UNDER_REFERENCE } from './study.js';

/** The evidence for every finding, in their order. */
export function evidenceOf(plan: RankPlan, explanation: Explanation): Evidence[] {
  const { blame, removals, result, reference, profile } = explanation;
  const evaluator = createEvaluator();
  const trials = trialsOf(plan);
  return mergedFindings(blame.findings).flatMap(({ finding, causes }): Evidence[] => {
    const removal = removals.find(({ cause }) => cause === finding.cause);
    const isUnderReference = finding.family !== 'profile' && blame.isProfileToBlame;
    const after = isUnderReference ? removal?.underReference : removal?.result;
    if (after === undefined || after === null) return [];
    const base = isUnderReference ? reference : result;
    const isTheirs = (index: number) => !reference.cells[index]!.failed || result.cells[index]!.failed;
    const index = greatestRelief(base, after, isUnderReference ? isTheirs : undefined);
    const cell = result.cells[index]!;
    const without = after.cells[index]!;
    const trial = trials.find(({ key }) => isSameTrial(key, cell))!;
    const own = makingsOf(profile.value, trial);
    const suited = UNDER_REFERENCE.change(own).profile;
    const run = evaluator.run(profile.value, trial, plan.solver);
    const number = causeNumber(finding.cause, own, suited);
    return [
      { finding, causes, isUnderReference, number, cell, without, moment: momentOf(run.tape, run.window) },
    ];
  });
}

function isSameTrial(key: TrialKey, cell: RankedCell): boolean {
  const names = ['scenario', 'rider', 'chargePercent', 'seed'] as const;
  return names.every((name) => key[name] === cell[name]);
}
