/**
 * How far from the edge, in plain sentences? Each with its number, the circumstances, and what happens one step beyond.
 */
import type { Ending } from '../explain/edge.js';
import type { Edge, EdgeReport } from '../explain/edge-found.js';
import { LOW_SPEED_KM_PER_H, type LiftStart } from '../explain/edge-headroom.js';
import {
  BUMP_LENGTH_M,
  KNOCK_S,
  PUSH_S,
  SLOPE_EASE_M,
  SLOPE_S,
  SPEED_LADDER_KM_PER_H,
} from '../explain/edge-scenarios.js';
import { shareText, timeText } from './quantities.js';
import { writer, type WhyOptions } from './why-lines.js';

/** That an edge is one of the simulation, and no promise. */
export const EDGE_CAUTION =
  'These are edges of the simulation with the numbers given, one thing at a time and one seed of chance: no promise that the ' +
  'board holds out as far on the road, nor that less is harmless.';

/** The section about the edge: heading, sentences, caution. */
export function edgeLines(report: EdgeReport, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const whole = (text: string, indent?: string) =>
    say(text.replaceAll(' N s', ' N\u00a0s'), indent).map((line) => line.replaceAll('\u00a0', ' '));
  const [first, ...others] = edgeSentences(report);
  return [
    ...say('How far from the edge').map(paint.bold),
    '',
    ...whole(first!),
    ...others.flatMap((text) =>
      whole(text, '  ').map((line, index) => (index === 0 ? `- ${line.slice(2)}` : line)),
    ),
    '',
    ...say(EDGE_CAUTION).map(paint.dim),
  ];
}

/** All sentences: how it was looked for, an edge each, and where the headroom lift should begin. */
export function edgeSentences(report: EdgeReport): string[] {
  const { rider, seed, edges } = report;
  return [
    `A steady ride under ${rider} on dry asphalt, noise on, seed ${seed}, meets one thing, made larger until the run (${KNOCK_S} s, with a slope ${SLOPE_S} s) no longer ends upright:`,
    ...edges.map(edgeSentence),
    ...liftSentences(report),
  ];
}

/** The sentence about one edge. */
export function edgeSentence(edge: Edge): string {
  const { name, survived, failed, ending } = edge;
  const { thing, none, shape = '' } = WORDS[name];
  const where = circumstances(edge);
  if (failed === null || ending === null) {
    return `${thing}: holds out even at ${sizeText(edge.largestTried, edge)}, the most that was tried, ${shape}${where}.`;
  }
  const ends = endingText(ending);
  if (survived === null) return `${thing}: no edge to be found, for ${none} ${ends}, ${where}.`;
  return `${thing}: holds out up to ${sizeText(survived, edge)}, ${shape}${where}; at ${sizeText(failed, edge)} it ${ends}.`;
}

/** The sentences about what the stated push takes and where the headroom lift should begin. */
export function liftSentences({ statedPushNS, lifts, liftBelowShare }: EdgeReport): string[] {
  const push = `a push of ${statedPushNS} N s`;
  const neededShare = lifts[0]?.neededShare ?? null;
  if (neededShare === null) {
    return [
      `Headroom lift: what ${push} takes is not known, for at ${LOW_SPEED_KM_PER_H} km/h the ride ends in a fall.`,
    ];
  }
  const needed = shareText(neededShare);
  return [
    `Headroom lift: ${push} takes ${needed} of the drive ceiling (the most asked for at ${LOW_SPEED_KM_PER_H} km/h, less the ` +
      `steady current). ${lifts.map(liftSentence).join(' ')}`,
    `Headroom lift of this profile: ${ownLift(liftBelowShare, neededShare)}.`,
  ];
}

function liftSentence({ chargePercent, speedKmPerH }: LiftStart): string {
  const pack = `With the pack at ${chargePercent} %`;
  if (speedKmPerH === null) return `${pack} not even standing leaves so much.`;
  if (speedKmPerH === SPEED_LADDER_KM_PER_H.at(-1)) {
    return `${pack} more than that is left up to ${speedKmPerH} km/h, the most that was tried.`;
  }
  return `${pack} more than that is left up to ${speedKmPerH} km/h: there, at the latest, the lift should begin.`;
}

function ownLift(belowShare: number | null, neededShare: number): string {
  const needed = shareText(neededShare);
  if (belowShare === null)
    return `it has none; one that begins below ${needed} of headroom begins at those speeds`;
  const begins = `it begins below ${shareText(belowShare)} of headroom`;
  return belowShare < neededShare
    ? `${begins}, later than those speeds`
    : `${begins}, not later than those speeds`;
}

interface Words {
  thing: string;
  /** The ride with nothing of it. */
  none: string;
  shape?: string;
}

const SLOPE = { none: 'the ride without any slope', shape: `easing in over ${SLOPE_EASE_M} m, ` };
const PUSH = { none: 'the ride without any push', shape: `over ${PUSH_S} s, ` };

/** What is made larger. */
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

function circumstances({ speedKmPerH, chargePercent, pushNS }: Edge): string {
  const pace = speedKmPerH === null ? '' : `at ${speedKmPerH} km/h `;
  const push = pushNS === null ? '' : ` and a push of ${pushNS} N s from behind`;
  return `${pace}with the pack at ${chargePercent} %${push}`;
}

function endingText({ kind, atS }: Ending): string {
  if (kind === 'not met') return 'stays up but never gets there';
  return `ends in ${ENDING_WORDS[kind] ?? kind} at ${timeText(atS)}`;
}

const ENDING_WORDS: Readonly<Record<string, string>> = {
  'nose strike': 'a nose strike',
  'tail strike': 'a tail strike',
  'rider off': 'the rider coming off',
  'solver stopped': 'a stopped solver',
};

/** A size with its unit; one digit after the point where there is something to say. */
function sizeText(size: number, { unit }: Edge): string {
  return `${Number(size.toFixed(1))} ${unit}`;
}
