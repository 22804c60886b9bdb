/**
 * How far from the edge under several riders? Each kind of edge once, with the limit of every rider and what ends the least.
 */
import type { Edge, EdgeReport, RiderEdges } from '../explain/edge-found.js';
import { LOW_SPEED_KM_PER_H, type LiftStart } from '../explain/edge-headroom.js';
import { SPEED_LADDER_KM_PER_H } from '../explain/edge-scenarios.js';
import { ALL_OF_IT, circumstances, edgeWords, endingText, isGrowingPush, sizeText } from './edge-words.js';
import { listed } from './margin-view.js';
import { shareText } from './quantities.js';

interface RiderEdge {
  rider: string;
  edge: Edge;
}

/** A sentence for each kind of edge. */
export function ridersEdgeSentences({ riders, seeds }: EdgeReport): string[] {
  return riders[0]!.edges.map((_, index) =>
    sentenceOf(
      riders.map(({ rider, edges }) => ({ rider, edge: edges[index]! })),
      seeds,
    ),
  );
}

function sentenceOf(all: readonly RiderEdge[], seeds: readonly number[]): string {
  const { edge } = all[0]!;
  const { thing, shape = '' } = edgeWords(edge);
  const start = `${thing} (${shape}${circumstances(edge)})`;
  const parts = [limitsOf(all), endOfLeast(all, seeds), feetOf(all)].filter((text) => text !== null);
  return `${start}: ${parts.join('; ')}.`;
}

function limitsOf(all: readonly RiderEdge[]): string {
  const { edge } = all[0]!;
  const most = `${sizeText(edge.largestTried, edge)}, the most that was tried`;
  const enduring = all.filter(({ edge: { failed } }) => failed === null).map(({ rider }) => rider);
  if (enduring.length === all.length) return `all hold out even at ${most}`;
  const limits = all
    .filter(({ edge: { failed } }) => failed !== null)
    .map(
      ({ rider, edge: { survived } }) => `${rider} ${survived === null ? 'none' : sizeText(survived, edge)}`,
    );
  return `${limits.join(', ')}${enduring.length === 0 ? '' : `, and ${listed(enduring)} even ${most}`}`;
}

/** What happens one step beyond the least limit; null where nobody falls. */
function endOfLeast(all: readonly RiderEdge[], seeds: readonly number[]): string | null {
  const limit = ({ edge: { survived, failed } }: RiderEdge) =>
    failed === null ? Infinity : (survived ?? -1);
  const least = Math.min(...all.map(limit));
  const those = all.filter((one) => limit(one) === least);
  const { rider, edge } = those[0]!;
  const { survived, failed, ending } = edge;
  if (failed === null || ending === null) return null;
  const who = `${those.length === 1 ? 'the least' : 'one of the least'}, ${rider}`;
  return survived === null
    ? `${who}: ${edgeWords(edge).none} ${endingText(ending, seeds)}`
    : `${who}, ${endingText(ending, seeds, ` at ${sizeText(failed, edge)}`)}`;
}

/** From which push on a foot is light; null where it is no push that grows, or nobody survives any. */
function feetOf(all: readonly RiderEdge[]): string | null {
  const pushes = all.filter(({ edge }) => isGrowingPush(edge));
  if (pushes.length === 0) return null;
  const light = pushes.flatMap(({ rider, edge }) =>
    edge.footLightFrom === null ? [] : [`${rider} from ${sizeText(edge.footLightFrom, edge)} on`],
  );
  return light.length === 0
    ? 'up to their limits all keep both feet loaded'
    : `one foot is light: ${light.join(', ')}`;
}

/** The sentences about what the stated push takes and where the headroom lift should begin. */
export function ridersLiftSentences({ riders, statedPushNS, liftBelowShare }: EdgeReport): string[] {
  const push = `a push of ${statedPushNS} N s`;
  const known = riders.filter(({ lifts }) => neededBy(lifts) !== null);
  const unknown = riders.filter(({ lifts }) => neededBy(lifts) === null).map(({ rider }) => rider);
  const fall = `at ${LOW_SPEED_KM_PER_H} km/h the ride ends in a fall`;
  if (known.length === 0) return [`Headroom lift: what ${push} takes is not known, for ${fall}.`];
  const needs = known.map(({ rider, lifts }) => `${rider} ${neededText(neededBy(lifts)!)}`).join(', ');
  const fallen = unknown.length === 0 ? '' : ` Not known for ${listed(unknown)}: ${fall}.`;
  const speeds = known[0]!.lifts.map((_, index) => speedsAt(index, known));
  return [
    `Headroom lift: of the drive ceiling ${push} takes (the most asked for at ${LOW_SPEED_KM_PER_H} km/h, less the steady ` +
      `current): ${needs}.${fallen} More than that is left ${speeds.join('; ')}. There, at the latest, the lift should begin.`,
    `Headroom lift of this profile: ${ownLift(liftBelowShare, known)}.`,
  ];
}

function neededBy(lifts: readonly LiftStart[]): number | null {
  return lifts[0]?.neededShare ?? null;
}

function neededText(share: number): string {
  return share > 1 ? ALL_OF_IT : shareText(share);
}

function speedsAt(index: number, known: readonly RiderEdges[]): string {
  const speeds = known.map(({ rider, lifts }) => `${rider} ${speedText(lifts[index]!.speedKmPerH)}`);
  return `with the pack at ${known[0]!.lifts[index]!.chargePercent} % up to: ${speeds.join(', ')}`;
}

function speedText(speedKmPerH: number | null): string {
  if (speedKmPerH === null) return 'not even standing';
  const isMost = speedKmPerH === SPEED_LADDER_KM_PER_H.at(-1);
  return `${speedKmPerH} km/h${isMost ? ' (the most that was tried)' : ''}`;
}

function ownLift(belowShare: number | null, known: readonly RiderEdges[]): string {
  if (belowShare === null) {
    const most = Math.max(...known.map(({ lifts }) => neededBy(lifts)!));
    if (most > 1) return 'it has none, and none covers what the push takes under all of these riders';
    const needed = shareText(most);
    return `it has none; one that begins below ${needed} of headroom, the most of these, begins not later than those speeds`;
  }
  const begins = `it begins below ${shareText(belowShare)} of headroom`;
  const late = known.filter(({ lifts }) => belowShare < neededBy(lifts)!).map(({ rider }) => rider);
  if (late.length === 0) return `${begins}, not later than those speeds`;
  return `${begins}, later than those speeds${late.length === known.length ? '' : ` for ${listed(late)}`}`;
}
