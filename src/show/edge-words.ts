/**
 * How are an edge, its circumstances and what lies beyond it called?
 */
import type { Edge, FoundEnding } from '../explain/edge-found.js';
import { BUMP_LENGTH_M, PUSH_S, SLOPE_EASE_M } from '../explain/edge-scenarios.js';
import { listed } from './margin-view.js';
import { timeText } from './quantities.js';

interface Words {
  thing: string;
  /** The ride with nothing of it. */
  none: string;
  /** The shape of what is met, ending in a comma. */
  shape?: string;
}

const SLOPE = { none: 'the ride without any slope', shape: `easing in over ${SLOPE_EASE_M} m, ` };
const PUSH = { none: 'the ride without any push', shape: `over ${PUSH_S} s, ` };

const WORDS: Readonly<Record<Edge['name'], Words>> = {
  bump: { thing: 'Bump', none: 'the ride without any bump', shape: `${BUMP_LENGTH_M} m long, ` },
  climb: { thing: 'Climb', ...SLOPE },
  descent: { thing: 'Descent', ...SLOPE },
  'push from behind': { thing: 'Push from behind', ...PUSH },
  'push from ahead': { thing: 'Push from ahead', ...PUSH },
  'extra delay': { thing: 'Extra delay of the loop', none: 'the ride without any' },
  'pack sag': { thing: 'Voltage lost at the open pack', none: 'the ride with the pack as it is' },
  speed: { thing: 'Steady speed', none: 'even standing' },
};

/** The words for what is made larger. */
export function edgeWords({ name }: Edge): Words {
  return WORDS[name];
}

/** That no headroom is enough for what is asked. */
export const ALL_OF_IT = 'more than the whole drive ceiling';

/** Speed, pack and push of the ride. */
export function circumstances({ speedKmPerH, chargePercent, pushNS }: Edge): string {
  const pace = speedKmPerH === null ? '' : `at ${speedKmPerH} km/h `;
  const push = pushNS === null ? '' : ` and a push of ${pushNS} N s from behind`;
  return `${pace}with the pack at ${chargePercent} %${push}`;
}

/** A size with its unit; one digit after the point where there is something to say. */
export function sizeText(size: number, { unit }: Edge): string {
  return `${Number(size.toFixed(1))} ${unit}`;
}

const ENDING_WORDS: Readonly<Record<string, string>> = {
  'nose strike': 'a nose strike',
  'tail strike': 'a tail strike',
  'rider off': 'the rider coming off',
  'solver stopped': 'a stopped solver',
};

/** How a run ended, as `ends in a nose strike at 1.82 s`; at which size, where `at` says it, and under which seed of several. */
export function endingText({ kind, atS, seed }: FoundEnding, seeds: readonly number[], at = ''): string {
  const chance = seeds.length === 1 ? '' : ` under seed ${seed}`;
  if (kind === 'not met') return `stays up${at} but never gets there${chance}`;
  return `ends${at} in ${ENDING_WORDS[kind] ?? kind} at ${timeText(atS)}${chance}`;
}

/** The chance of the runs, as `seed 1`, `seeds 1 to 5` or `seeds 1, 4 and 7`. */
export function seedsText(seeds: readonly number[]): string {
  const first = seeds[0]!;
  if (seeds.length === 1) return `seed ${first}`;
  const isRow = seeds.length > 2 && seeds.every((seed, index) => seed === first + index);
  return `seeds ${isRow ? `${first} to ${seeds.at(-1)!}` : listed(seeds.map(String))}`;
}

/** Whether what is made larger is a push that the rider survives with both feet loaded for some way. */
export function isGrowingPush({ unit, survived }: Edge): boolean {
  return unit === 'N s' && survived !== null && survived > 0;
}
