/** The made-up run of sample-run.ts with all that a trace shows: a rig, a rider who sways, a kerb in the road. */
import type { RigShape, RoadGrid, TraceView } from '../../src/show/trace-view.js';
import { sampleTape, sampleView } from './sample-run.js';

/** A rig of round numbers, m. */
export const SAMPLE_RIG: RigShape = {
  wheelRadiusM: 0.15,
  ankleAboveAxleM: 0.05,
  reachM: 0.4,
  tipBelowAxleM: 0.03,
  legLengthM: 1,
  halfStanceM: 0.2,
};

/** Level road with a step down of 5 cm at a place [m], on a grid of 1 cm from 10 m behind the start on. */
export function kerbRoad(atM: number): RoadGrid {
  const bareHeightM = Float64Array.from({ length: 6001 }, (_, index) => (index / 100 - 10 < atM ? 0 : -0.05));
  return { originM: -10, spacingM: 0.01, bareHeightM };
}

/** The sample run, on its way at 4.2 m/s, over a kerb at 4.2 m. */
export function sampleTrace(seconds = 6): TraceView {
  const tape = sampleTape(seconds);
  const { columns } = tape;
  const road = kerbRoad(4.2);
  for (let row = 0; row < tape.length; row += 1) {
    const timeS = columns.timeS[row] ?? 0;
    columns.positionM[row] = 4.2 * timeS;
    columns.axleHeightM[row] = 0.15 + (timeS < 1 ? 0 : -0.05);
    columns.leanRad[row] = timeS < 1 ? 0 : 0.1 * Math.sin(2 * (timeS - 1));
    columns.legLengthM[row] = 1;
    columns.requestedCurrentA[row] = Math.min(
      columns.askedCurrentA[row] ?? 0,
      columns.upperCeilingA[row] ?? 0,
    );
    columns.headroomShare[row] = 0.5;
    columns.packV[row] = 60.2;
    columns.packCurrentA[row] = 12.34;
    columns.chargeShare[row] = 0.8;
    columns.riderTorqueNm[row] = -4.5;
    columns.riderTorqueLimitNm[row] = 80;
    columns.wheelLoadN[row] = 912.4;
  }
  return { ...sampleView(tape), rig: SAMPLE_RIG, road, finalPitchRad: -0.004 };
}
