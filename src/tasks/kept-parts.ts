/**
 * How do results become the parts of a kept file? Units as a file has them, numbers to a few digits, so that a file can be read.
 */
import type { Edge, EdgeReport } from '../explain/edge-found.js';
import { ridersWhoFall, rowFigures, type ProfileResult } from '../measure/profile-result.js';
import { COST_NAMES, weightsWith } from '../measure/scales.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { DEG_PER_RAD } from '../quantity/units.js';
import { weakPointText } from '../show/worst-sentences.js';
import { shortHash } from '../store/short-hash.js';
import type { FinalistMargins, WorstMargin } from '../sweep/finalist-margins.js';
import { trialsOf, type RankPlan } from './plan.js';

/** Digits of a number that was computed: finer than anything can be felt. */
const DIGITS = 5;

/** Weak points that are told. */
const WEAKEST_COUNT = 3;

const S_TO_MS = 1000;

function few(value: number): number {
  return Number(value.toPrecision(DIGITS));
}

function fewIfAny(value: number | null): number | null {
  return value === null ? null : few(value);
}

/** The board and the riders of a plan. */
export function rigPart({ board, riders }: RankPlan): KeptFile['rig'] {
  return {
    boardName: board.name,
    board: board.value,
    riders: riders.map(({ name, value }) => ({ name, rider: value })),
  };
}

/** What a plan runs in; its weights only where they are not the usual ones. */
export function cellsPart(plan: RankPlan): KeptFile['cells'] {
  const { scenarios, charges, seeds, weights } = plan;
  const usual = weightsWith();
  const own = COST_NAMES.filter((name) => weights[name] !== usual[name]);
  return {
    scenarios: scenarios.map(({ name }) => name),
    chargesPercent: [...charges],
    seeds: [...seeds],
    count: trialsOf(plan).length,
    scenarioHash: shortHash(JSON.stringify(scenarios.map(({ name, value }) => [name, value]))),
    ...(own.length > 0 && { weights: Object.fromEntries(own.map((name) => [name, weights[name]])) }),
  };
}

/** The figures over all cells. */
export function figuresPart({ cells, failures, score }: ProfileResult): KeptFile['figures'] {
  const row = rowFigures(cells);
  return {
    failures,
    score: few(score),
    overshootPercent: fewIfAny(row.overshootPercent),
    settlingTimeS: fewIfAny(row.settlingTimeS),
    notSettled: row.notSettledCount,
    saturationPercent: fewIfAny(row.saturationShare === null ? null : 100 * row.saturationShare),
    notFor: ridersWhoFall(cells),
  };
}

/** The margins, each where it is smallest; null where there is none to tell. */
export function marginsPart(margins: FinalistMargins | null): KeptFile['margins'] {
  if (margins === null) return null;
  const told = ({ value, rider, speedKmPerH }: WorstMargin, factor = 1) => ({
    value: Number.isFinite(value) ? few(value * factor) : null,
    rider,
    speedKmPerH,
  });
  // A gain that may shrink to nothing has no end below.
  const { gainDown } = margins;
  return {
    disk: told(margins.disk),
    gainUpRatio: told(margins.gainUp),
    gainDownRatio: told(gainDown.value === 0 ? { ...gainDown, value: Infinity } : gainDown),
    phaseDeg: told(margins.phaseRad, DEG_PER_RAD),
    delayMs: told(margins.delayS, S_TO_MS),
  };
}

/** Each edge under the rider who comes to it first: who falls at the smallest size, or holds out least far. */
export function limitsPart({ riders }: EdgeReport): KeptFile['limits'] {
  const [first] = riders;
  return (first?.edges ?? []).map((_, index) => {
    const each = riders.map(({ rider, edges }) => ({ rider, edge: edges[index]! }));
    return limitOf(each.toSorted((a, b) => reach(a.edge) - reach(b.edge))[0]!);
  });
}

/** How far an edge is, for comparing. */
function reach({ survived, failed }: Edge): number {
  if (survived === null) return -1;
  return failed === null ? Infinity : survived;
}

function limitOf({ rider, edge }: { rider: string; edge: Edge }): KeptFile['limits'][number] {
  const { name, unit, speedKmPerH, chargePercent, survived, failed, ending } = edge;
  return {
    what: name,
    unit,
    rider,
    speedKmPerH,
    chargePercent,
    survived: fewIfAny(survived),
    failed: fewIfAny(failed),
    ending: ending?.kind ?? null,
  };
}

/** The worst cells, each of another scenario, in words with their place. */
export function weakestPart({ cells }: ProfileResult, { weights }: RankPlan): KeptFile['weakest'] {
  const worst = cells.toSorted(
    (a, b) => Number(b.failed) - Number(a.failed) || b.cost - a.cost || (a.key < b.key ? -1 : 1),
  );
  const each = worst.filter(
    ({ scenario }, index) => worst.findIndex((other) => other.scenario === scenario) === index,
  );
  return each.slice(0, WEAKEST_COUNT).map((cell) => {
    const { scenario, rider, chargePercent, seed } = cell;
    return { says: weakPointText(cell, weights), scenario, rider, chargePercent, seed };
  });
}
