/**
 * The JSON of the distance to the edge: sizes with their unit beside them, null where there is none, and the sentences.
 */
import type { Edge, EdgeReport, RiderEdges } from '../explain/edge-found.js';
import { EDGE_CAUTION, edgeSentence, edgeSentences } from '../show/why-edge.js';

/** The report of the edges that were looked for. */
export function edgeReport(report: EdgeReport) {
  const { seeds, statedPushNS, riders, liftBelowShare } = report;
  return {
    seeds,
    statedPushNS,
    riders: riders.map((rider) => oneRider(rider, seeds)),
    ownHeadroomLiftBelowShareIfAny: liftBelowShare,
    sentences: edgeSentences(report),
    caution: EDGE_CAUTION,
  };
}

function oneRider({ rider, edges, lifts, spareDelayMs }: RiderEdges, seeds: readonly number[]) {
  return {
    rider,
    edges: edges.map((edge) => oneEdge(edge, seeds)),
    spareDelayMsIfKnown: spareDelayMs,
    headroomLift: {
      neededHeadroomShareIfKnown: lifts[0]?.neededShare ?? null,
      latestStarts: lifts.map(({ chargePercent, speedKmPerH }) => ({
        chargePercent,
        speedKmPerHIfAny: speedKmPerH,
      })),
    },
  };
}

function oneEdge(edge: Edge, seeds: readonly number[]) {
  const { name, unit, speedKmPerH, chargePercent, pushNS, survived, failed, ending, largestTried } = edge;
  return {
    name,
    unit,
    survivedIfAny: survived,
    failedIfAny: failed,
    endingIfFailed: ending,
    largestTried,
    footLightFromNSIfAny: edge.footLightFrom,
    at: { speedKmPerHIfGiven: speedKmPerH, chargePercent, pushNSIfAny: pushNS },
    sentence: edgeSentence(edge, seeds),
  };
}
