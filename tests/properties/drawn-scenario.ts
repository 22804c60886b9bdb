/**
 * Scenarios by chance: a second of riding or less, over road pieces of every kind, with shifts, shoves and speeds that
 * change. Valid by the schema; ranges are ours.
 */
import fc from 'fast-check';
import {
  ROUGHNESS_CLASSES,
  SURFACES,
  type RoadPiece,
  type ScenarioFile,
} from '../../src/quantity/scenario-file.js';
import type { Circumstances } from '../../src/simulate/trial.js';
import { around, section, share } from './drawn-numbers.js';
import { boards, riders, valid } from './drawn-rig.js';

const seeds = fc.integer({ min: 0, max: 2 ** 31 - 1 });

/** A road piece of any kind. */
const piece = section(
  {
    lengthM: around(0.3, 1.5, 3),
    gradePercent: around(-18, 0, 18),
    easeM: around(0, 0, 2),
    stepUpM: around(-0.06, 0, 0.06),
    bumpHeightM: around(-0.05, 0, 0.05),
    bumpCount: around(1, 1, 5).map(Math.round),
    roughness: fc.constantFrom(...ROUGHNESS_CLASSES),
    surface: fc.constantFrom(...SURFACES),
    gripRatio: around(0.05, 0.65, 1.2),
    rollingResistanceRatio: around(0, 0.015, 0.25),
  },
  'roughness',
  'gripRatio',
  'rollingResistanceRatio',
);

type DrawnPiece = Partial<RoadPiece> & { lengthM: number };

/** Pieces of any kind, one after another. */
export const anyRoad: fc.Arbitrary<DrawnPiece[]> = fc.array(piece as fc.Arbitrary<DrawnPiece>, {
  minLength: 1,
  maxLength: 3,
});

/** One piece of any kind. */
export const shortRoad: fc.Arbitrary<DrawnPiece[]> = anyRoad.map((pieces) => pieces.slice(0, 1));

/** A straight road: one grade, no unevenness; surface as it comes. */
export const straightRoad: fc.Arbitrary<DrawnPiece[]> = piece.map(
  ({ lengthM, gradePercent, surface, ...rest }) => {
    const { gripRatio, rollingResistanceRatio } = rest;
    const own = {
      ...(gripRatio !== undefined && { gripRatio }),
      ...(rollingResistanceRatio !== undefined && { rollingResistanceRatio }),
    };
    return [{ lengthM: lengthM + 15, gradePercent, surface, ...own }];
  },
);

/** A level, even road; surface as it comes. */
export const levelRoad: fc.Arbitrary<DrawnPiece[]> = fc
  .constantFrom(...SURFACES)
  .map((surface) => [{ lengthM: 5, surface }]);

/** A spell within a run of a length [s]: from a share of it on, for a share of what is left. */
function spell([from, long]: readonly [number, number], durationS: number) {
  const atS = 0.9 * from * durationS;
  return { atS, forS: Math.max(0.01, 0.999 * long * (durationS - atS)) };
}

const times = fc.tuple(share, share);
const shifts = fc.array(fc.record({ times, noseDownNm: around(-60, 10, 60), frequencyHz: around(0, 0, 8) }), {
  maxLength: 2,
});
const shoves = fc.array(fc.record({ times, forwardN: around(-400, 60, 400) }), { maxLength: 2 });

const start = section(
  { speedKmPerH: around(-12, 8, 35), noseUpDeg: around(-6, 0, 6), takesOver: fc.boolean() },
  'noseUpDeg',
);

/** A scenario on a road, up to a length [s]. */
export function scenariosOn(road: fc.Arbitrary<DrawnPiece[]>, mostS = 1.2): fc.Arbitrary<ScenarioFile> {
  return fc
    .record({
      road,
      durationS: around(0.5, Math.min(0.8, mostS), mostS),
      chargePercent: around(1, 80, 100),
      start,
      later: fc.option(fc.record({ at: share, speedKmPerH: around(-12, 8, 35) })),
      shifts,
      shoves,
      as: fc.constantFrom('ride', 'disturbance'),
      bandDeg: around(0.2, 0.5, 3),
    })
    .map(({ later, as, bandDeg, ...raw }) => {
      const { durationS } = raw;
      const first = { atS: 0, speedKmPerH: raw.start.speedKmPerH };
      return valid('scenario', {
        ...raw,
        summary: 'drawn',
        speeds: later
          ? [first, { atS: 0.01 + later.at * durationS, speedKmPerH: later.speedKmPerH }]
          : [first],
        shifts: raw.shifts.map(({ times: when, ...shift }) => ({ ...shift, ...spell(when, durationS) })),
        shoves: raw.shoves.map(({ times: when, ...shove }) => ({ ...shove, ...spell(when, durationS) })),
        measure: { as, bandDeg },
      });
    });
}

/** Any board under any rider in a scenario, with any seed and noise from none to twice the usual. */
export function circumstancesIn(
  scenario: fc.Arbitrary<ScenarioFile>,
): fc.Arbitrary<Circumstances & { noiseRatio: number }> {
  return fc.record({
    board: boards,
    rider: riders,
    scenario,
    seed: seeds,
    noiseRatio: around(0, 1, 2),
  });
}
