/**
 * How far from the edge, in plain sentences? Each with its number, the circumstances, and what happens one step beyond.
 */
import type { Edge, EdgeReport } from '../explain/edge-found.js';
import { LOW_SPEED_KM_PER_H, type LiftStart } from '../explain/edge-headroom.js';
import { KNOCK_S, SLOPE_S, SPEED_LADDER_KM_PER_H, USUAL_SPEED_KM_PER_H } from '../explain/edge-scenarios.js';
import { ridersEdgeSentences, ridersLiftSentences } from './edge-riders.js';
import {
  ALL_OF_IT,
  circumstances,
  edgeWords,
  endingText,
  isGrowingPush,
  seedsText,
  sizeText,
} from './edge-words.js';
import { shareText } from './quantities.js';
import { writer, type WhyOptions } from './why-lines.js';

/** That an edge is one of the simulation, and no promise. */
export const EDGE_CAUTION =
  'These are edges of the simulation with the numbers given, one thing at a time and no other chance than that of the ' +
  'seeds; a push is one at the centre of mass, and the rider never steps off. No promise that the board holds out as far on ' +
  'the road, nor that less is harmless.';

/** The section about the edge: heading, sentences, caution. */
export function edgeLines(report: EdgeReport, options: WhyOptions): string[] {
  const { say, paint } = writer(options);
  const whole = (text: string, indent?: string) =>
    say(text.replaceAll(' N s', ' N\u00a0s').replaceAll(' seed ', ' seed\u00a0'), indent).map((line) =>
      line.replaceAll('\u00a0', ' '),
    );
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
  const { riders, seeds } = report;
  const [only] = riders;
  const isAlone = riders.length === 1;
  const rode = isAlone ? `under ${only!.rider}` : 'under each rider';
  const chance = seeds.length === 1 ? '' : 'under any of the seeds ';
  return [
    `A steady ride ${rode} on dry asphalt, noise on, ${seedsText(seeds)}, meets one thing, made larger until ${chance}the run (${KNOCK_S} s, with a slope ${SLOPE_S} s) no longer ends upright:`,
    ...(isAlone ? only!.edges.map((edge) => edgeSentence(edge, seeds)) : ridersEdgeSentences(report)),
    ...delaySentences(report),
    ...liftSentences(report),
  ];
}

/** From which delay on the loop is lost, whether or not it falls: what holds out beyond that rattles. */
function delaySentences({ riders }: EdgeReport): string[] {
  const known = riders.filter(({ spareDelayMs }) => spareDelayMs !== null);
  if (known.length === 0) return [];
  const told = known.map(({ rider, spareDelayMs }) =>
    spareDelayMs === 0 ? `none under ${rider}` : `${spareDelayMs!.toFixed(1)} ms under ${rider}`,
  );
  return [
    `Delay that the loop itself can spare, by the linear view at ${USUAL_SPEED_KM_PER_H} km/h: ${told.join(', ')}. With more it ` +
      'rattles, and what holds out then holds out rattling.',
  ];
}

/** The sentence about one edge under one rider and these seeds. */
export function edgeSentence(edge: Edge, seeds: readonly number[]): string {
  const { survived, failed, ending } = edge;
  const { thing, none, shape = '' } = edgeWords(edge);
  const where = circumstances(edge);
  const feet = feetText(edge);
  if (failed === null || ending === null) {
    return `${thing}: holds out even at ${sizeText(edge.largestTried, edge)}, the most that was tried, ${shape}${where}${feet}.`;
  }
  const ends = endingText(ending, seeds);
  if (survived === null) {
    return `${thing}: no edge to be found, for ${none} ${ends}, ${where}.`;
  }
  if (survived === 0 && edge.speedKmPerH !== null) {
    return `${thing}: holds out against none, ${shape}${where}; at ${sizeText(failed, edge)} it ${ends}.`;
  }
  return `${thing}: holds out up to ${sizeText(survived, edge)}, ${shape}${where}; at ${sizeText(failed, edge)} it ${ends}${feet}.`;
}

function feetText(edge: Edge): string {
  const { footLightFrom } = edge;
  if (!isGrowingPush(edge)) return '';
  if (footLightFrom === null) return '; up to there both feet stay loaded';
  return `; from ${sizeText(footLightFrom, edge)} on one foot is light`;
}

/** The sentences about what the stated push takes and where the headroom lift should begin. */
export function liftSentences(report: EdgeReport): string[] {
  const { riders, statedPushNS, liftBelowShare } = report;
  if (riders.length > 1) return ridersLiftSentences(report);
  const { lifts } = riders[0]!;
  const push = `a push of ${statedPushNS} N s`;
  const neededShare = lifts[0]?.neededShare ?? null;
  if (neededShare === null) {
    return [
      `Headroom lift: what ${push} takes is not known, for at ${LOW_SPEED_KM_PER_H} km/h the ride ends in a fall.`,
    ];
  }
  if (neededShare > 1) {
    return [
      `Headroom lift: ${push} takes ${ALL_OF_IT}, even at ${LOW_SPEED_KM_PER_H} km/h: no lift covers it.`,
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
