/**
 * The JSON of the distance to the edge: sizes with their unit beside them, null where there is none, and the sentences.
 */
import type { Edge, EdgeReport } from '../explain/edge-found.js';
import { EDGE_CAUTION, edgeSentence, liftSentences } from '../show/why-edge.js';

/** The report of the edges that were looked for. */
export function edgeReport(report: EdgeReport) {
  const { rider, seed, statedPushNS, edges, lifts, liftBelowShare } = report;
  return {
    rider,
    seed,
    statedPushNS,
    edges: edges.map((edge) => oneEdge(edge)),
    headroomLift: {
      neededHeadroomShareIfKnown: lifts[0]?.neededShare ?? null,
      latestStarts: lifts.map(({ chargePercent, speedKmPerH }) => ({
        chargePercent,
        speedKmPerHIfAny: speedKmPerH,
      })),
      ownBelowShareIfAny: liftBelowShare,
      sentences: liftSentences(report),
    },
    caution: EDGE_CAUTION,
  };
}

function oneEdge(edge: Edge) {
  const { name, unit, speedKmPerH, chargePercent, pushNS, survived, failed, ending, largestTried } = edge;
  return {
    name,
    unit,
    survivedIfAny: survived,
    failedIfAny: failed,
    endingIfFailed: ending,
    largestTried,
    at: { speedKmPerHIfGiven: speedKmPerH, chargePercent, pushNSIfAny: pushNS },
    sentence: edgeSentence(edge),
  };
}
