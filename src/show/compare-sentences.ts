/**
 * What does a comparison say in words? Which profile is better over all and why, and when and how the runs part.
 */
import type { Parting } from '../measure/parting.js';
import type { RankedCell } from '../measure/profile-result.js';
import { signAt, signedName, type ComparedRun } from './compare-run.js';
import type { PlotMark } from './plot-frame.js';
import { plainText } from './plain-text.js';
import { angleText, numberText, pitchText, timeText } from './quantities.js';
import { outcomeText } from './run-sentences.js';

/**
 * The indexes of the profiles that are best over all: of those that stayed up and met their event, the ones whose cost
 * is shown as the least. None where every one failed; several where they come out equal.
 */
export function bestIndexes(runs: readonly Pick<ComparedRun, 'cell'>[]): number[] {
  const standing = runs.flatMap(({ cell }, index) =>
    cell.failed ? [] : [{ index, cost: Number(numberText(cell.cost, 'ratio')) }],
  );
  const least = Math.min(...standing.map(({ cost }) => cost));
  return standing.filter(({ cost }) => cost === least).map(({ index }) => index);
}

/** `x`, `x and y`, `x, y and z`. */
function listed(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function fate({ outcome, eventReached }: RankedCell): string {
  return outcome.kind === 'upright' && !eventReached
    ? 'never came to the event that is measured'
    : outcomeText(outcome);
}

function costText({ cost }: RankedCell): string {
  return numberText(cost, 'ratio');
}

/** `A: nose strike at 2.61 s` for each run that failed. */
function failureTexts(runs: readonly ComparedRun[]): string[] {
  return runs.flatMap(({ cell }, index) => (cell.failed ? [`${signAt(index).letter}: ${fate(cell)}`] : []));
}

/** `0.31 for C` for each run that did not fail and is not among the best, cheapest first. */
function dearerTexts(runs: readonly ComparedRun[], best: readonly number[]): string[] {
  return runs
    .map(({ cell }, index) => ({ cell, index }))
    .filter(({ cell, index }) => !cell.failed && !best.includes(index))
    .toSorted((a, b) => a.cell.cost - b.cell.cost)
    .map(({ cell, index }) => `${costText(cell)} for ${signAt(index).letter}`);
}

/** One sentence: which profile is better over all, at what cost, against what. */
export function verdictSentence(runs: readonly ComparedRun[]): string {
  const best = bestIndexes(runs);
  const failures = failureTexts(runs).join('; ');
  const [first] = best;
  const isPair = runs.length === 2;
  if (first === undefined)
    return `None is better over all, ${isPair ? 'both' : 'all'} fail here: ${failures}.`;
  const names = listed(best.map((index) => signedName(runs, index)));
  const cost = costText(runs[first]!.cell);
  const dearer = dearerTexts(runs, best);
  const ending = failures === '' ? '.' : `; ${failures}.`;
  if (best.length > 1) {
    const against = dearer.length === 0 ? '' : ` against ${listed(dearer)}`;
    return `${names} come out equal over all, at the same cost: ${cost}${against}${ending}`;
  }
  const start = `${names} is ${isPair ? 'better' : 'best'} over all`;
  if (dearer.length === 0) return `${start}, the only one that does not fail (${failures}).`;
  return `${start}, at ${isPair ? 'less' : 'the least'} cost: ${cost} against ${listed(dearer)}${ending}`;
}

/** The last event at or before a time, as `, 0.12 s after the kerb`; nothing where only the start was before. */
function sinceEvent(marks: readonly PlotMark[], timeS: number): string {
  const last = marks.filter((mark) => mark.timeS <= timeS && mark.timeS > 0).at(-1);
  return last === undefined ? '' : `, ${timeText(timeS - last.timeS)} after the ${plainText(last.name)}`;
}

/** One sentence: when the runs part, between which two, and where each then is. */
export function partingSentence(runs: readonly ComparedRun[], parting: Parting | null): string {
  const band = angleText(runs[0]?.view.facts.bandRad ?? 0);
  if (parting === null)
    return `They never part: from where each begins, their pitches stay within ${band} of one another.`;
  const { between, by, timeS, pitchesRad } = parting;
  const letters = listed(between.map((index) => signAt(index).letter));
  const since = sinceEvent(runs[between[0]]?.view.marks ?? [], timeS);
  const states = between.map((index) => {
    const pitchRad = pitchesRad[index] ?? null;
    const { letter } = signAt(index);
    return pitchRad === null
      ? `${letter} has ended (${runs[index]?.view.outcome.kind ?? 'no run'})`
      : `${letter} ${pitchText(pitchRad)}`;
  });
  const part = by === 'pitch' ? `move apart by more than ${band}` : 'part';
  return `${letters} ${part} at ${timeText(timeS)}${since}: ${states.join(', ')}.`;
}
