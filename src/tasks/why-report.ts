/**
 * The JSON of `explain`: rig, profile, feel, findings, remedies and their sentences; units in the names, or beside the number.
 */
import type { Evidence, Instant } from '../explain/evidence.js';
import type { Remedy } from '../explain/remedy-effect.js';
import type { LimitWays } from '../explain/ways-out.js';
import { SCALES_VERSION } from '../measure/scales.js';
import type { ProfileResult, RankedCell } from '../measure/profile-result.js';
import { CAUTION } from '../show/cautions.js';
import { feelSentences } from '../show/why-feel.js';
import { remedySentences, verdictSentences } from '../show/why-remedies.js';
import { blamelessSentences, findingSentences, runCommand } from '../show/why-sentences.js';
import type { WhyView } from '../show/why-view.js';
import { waysSentences } from '../show/why-ways.js';
import { programVersion } from '../store/places.js';
import type { Why } from './why.js';

/** The report of an answer with its view. */
export function whyReport(
  { plan, explanation, feel, tried }: Why,
  view: WhyView,
  saved: { remedy: number; file: string } | null = null,
) {
  const named = <T extends object>({ name, value }: { name: string; value: T }) => ({ name, ...value });
  const { result, reference, removals, blame, isComplete } = explanation;
  return {
    version: programVersion(),
    scalesVersion: SCALES_VERSION,
    solver: plan.solver,
    seeds: plan.seeds,
    isComplete,
    rig: { board: named(plan.board), riders: plan.riders.map(named) },
    scenarios: plan.scenarios.map(({ name }) => name),
    profile: named(plan.profiles[0]!),
    standing: standingReport(result),
    underReference: standingReport(reference),
    isProfileToBlame: blame.isProfileToBlame,
    feel:
      feel === null || view.feel === null
        ? null
        : { rider: feel.rider, words: feel.words, sentences: feelSentences(view.feel) },
    findings: view.findings.map((evidence) => findingReport(view, evidence)),
    ifNothingToBlame: view.findings.length === 0 ? blamelessSentences(view) : null,
    removals: removals.map(({ cause, result: own, underReference }) => ({
      cause,
      ...(own && { meanCost: meanCost(own), failures: own.failures }),
      ...(underReference && {
        meanCostUnderReference: meanCost(underReference),
        failuresUnderReference: underReference.failures,
      }),
    })),
    remedies: (tried?.remedies ?? []).map(remedyReport),
    verdict:
      tried === null
        ? null
        : {
            kind: tried.verdict.kind,
            notCured: tried.verdict.limits.map(({ cause }) => cause),
            waysOut: tried.ways.map(waysReport),
            sentences: verdictSentences(tried, view.findings),
          },
    saved,
    caution: CAUTION,
  };
}

function waysReport({ cause, isUnderReference, cells, ways }: LimitWays) {
  return {
    cause,
    isUnderReference,
    cells: cells.map(cellReport),
    ways,
    sentences: waysSentences({ cause, isUnderReference, cells, ways }),
  };
}

function meanCost({ cells }: ProfileResult): number {
  return cells.reduce((sum, { cost }) => sum + cost, 0) / cells.length;
}

function standingReport(result: ProfileResult) {
  const { failures, score, cells, worst } = result;
  return { runs: cells.length, failures, score, meanCost: meanCost(result), worst: cellReport(worst) };
}

function cellReport({ scenario, rider, chargePercent, seed, outcome, cost, failed }: RankedCell) {
  const { kind, atS } = outcome;
  return { scenario, rider, chargePercent, seed, outcome: kind, endedAtS: atS, failed, cost };
}

function findingReport(view: WhyView, evidence: Evidence) {
  const { finding, causes, isUnderReference, number, cell, without, moment } = evidence;
  const { family, relief, share, failuresCured, sureness, rival } = finding;
  const instant = ({ timeS, speedMPerS, pitchRad }: Instant) => ({
    timeS,
    speedMPerS,
    pitchRadNoseDown: pitchRad,
  });
  return {
    causes,
    family,
    sureness,
    rivalIfNotSure: rival,
    costRelief: relief,
    costShare: share,
    failuresCured,
    isUnderReference,
    numberIfAny: number,
    seenBestIn: cellReport(cell),
    withoutTheCause: cellReport(without),
    largestTilt: instant(moment.peak),
    firstCutIfAny: moment.firstCut && { ...instant(moment.firstCut), ceiling: moment.firstCut.ceiling },
    sentences: findingSentences(view, evidence),
    command: runCommand(view, cell),
  };
}

function remedyReport(remedy: Remedy, index: number) {
  const { causes, edits, effect, helps, profile } = remedy;
  const { cured, newlyFailed, ...figures } = effect;
  return {
    number: index + 1,
    against: causes,
    edits: edits.map(({ path, ...edit }) => ({ key: path.join('.'), ...edit })),
    helps,
    ...figures,
    cured: cured.map(cellReport),
    newlyFailed: newlyFailed.map(cellReport),
    sentences: remedySentences(remedy),
    profile,
  };
}
