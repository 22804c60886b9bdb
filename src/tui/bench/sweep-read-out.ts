/**
 * Everything that is known of the candidate under the cursor, in words.
 */
import { rowFigures } from '../../measure/profile-result.js';
import { COST_GROUPS } from '../../measure/scales.js';
import { cellsText, numbersText } from '../../show/sweep-words.js';
import { cellName, scoreText } from '../../show/why-sentences.js';
import { cellPhrase } from '../../show/worst-sentences.js';
import type { Finalist } from '../../tasks/sweep-finalists.js';
import type { BenchState } from './state.js';
import { currentCandidate } from './sweep-items.js';
import type { SweepPoint } from './sweep-state.js';
import { percentText, secondsText } from './sweep-words.js';

/** What is known of the candidate under the cursor; empty where there is none. */
export function candidateText(state: BenchState): string {
  const { run } = state.sweep;
  const here = currentCandidate(state);
  if (run === null || here === undefined) return '';
  const { name, values, result } = here;
  const numbers = numbersText(run.plan.ranges, values);
  const outcome = run.outcome;
  const place = outcome?.answer.finalists.findIndex(({ candidate }) => candidate.name === name) ?? -1;
  const point = outcome?.points.find(({ candidate }) => candidate.name === name);
  const standing = place === -1 ? fateText(point) : finalistText(outcome!.answer.finalists[place]!, place);
  const weak =
    result === null
      ? []
      : [`Weakest in ${cellName(result.worst)}: ${cellPhrase(result.worst, run.plan.cells.weights)}.`];
  return [`${name}: ${numbers}.`, ...standing, ...resultTexts(here.result, point), ...weak].join(' ');
}

/** Falls and score over the cells of its own, and figures over those that all were run in. */
function resultTexts(result: SweepPoint['own'], point: SweepPoint | undefined): string[] {
  if (result === null) return [];
  const { failures, cells, score } = result;
  const own = `Falls in ${failures} of ${cellsText(cells.length)}, score ${scoreText(score)}.`;
  const shared = point?.shared;
  if (!shared) return [own];
  const { overshootPercent, settlingTimeS, saturationShare } = rowFigures(shared.cells);
  const parts = [
    ...(shared.cells.length === cells.length ? [] : [`score ${scoreText(shared.score)}`]),
    ...(overshootPercent === null ? [] : [`overshoot ${percentText(overshootPercent)}`]),
    ...(settlingTimeS === null ? [] : [`settling ${secondsText(settlingTimeS)}`]),
    ...(saturationShare === null ? [] : [`${percentText(100 * saturationShare)} of the ticks cut`]),
  ];
  const where =
    shared.cells.length === cells.length ? 'There' : `Over the ${cellsText(shared.cells.length)} of all`;
  return parts.length === 0 ? [own] : [own, `${where}: ${parts.join(', ')}.`];
}

function fateText(point: SweepPoint | undefined): string[] {
  if (point === undefined) return [];
  const { fate } = point;
  if (fate.kind === 'hopeless')
    return ['By the linear view it cannot hold the board up under somebody, and was not run.'];
  return fate.kind === 'dropped' ? [`Dropped after ${cellsText(fate.afterCells)}.`] : ['Run in every cell.'];
}

function finalistText({ interval, groups, isOnFront }: Finalist, place: number): string[] {
  const { low, high } = interval;
  const ranks = low === high ? `rank ${low}` : `rank ${low} to ${high}`;
  const costs = COST_GROUPS.map((group) => `${group} ${groups[group].toFixed(2)}`).join(', ');
  const front = isOnFront ? '; on the front' : '';
  return [`Finalist ${place + 1}, ${ranks} when other cells are drawn. Costs: ${costs}${front}.`];
}
