/**
 * The plant with its tyre made rigid: wheel load and tread force are whatever keeps the wheel on a plane without
 * slip. Both enter the accelerations linearly, so three evaluations of `derive` give them exactly, and a floor that
 * would have to hold the wheel down (published equations do not ask) as well as one that pushes.
 */
import { Matrix, solve } from 'ml-matrix';
import { derive } from '../../src/model/derive.js';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import { planeRoad, plantWith } from '../rigs.js';

/** What the rigid wheel rolls with: angles [rad], rates [rad/s], motor torque [Nm], slope, rolling resistance. */
export interface Rolling {
  pitchRad?: number;
  pitchRateRadPerS?: number;
  wheelRateRadPerS?: number;
  motorNm?: number;
  slope?: number;
  rollingRatio?: number;
}

/** Angular accelerations of wheel and deck, rad/s2, and the forces of the road that make them, N. */
export interface Response {
  wheel: number;
  pitch: number;
  loadN: number;
  treadN: number;
}

/** Accelerations of a plant that rolls without slip or bounce. */
export function rollRigidly(plant: Plant, rolling: Rolling): Response {
  const { pitchRad = 0, pitchRateRadPerS = 0, wheelRateRadPerS = 0, motorNm = 0, slope = 0 } = rolling;
  const s = Math.sqrt(1 + slope * slope);
  const speed = plant.wheelRadiusM * wheelRateRadPerS;
  const road = planeRoad(slope, plant.wheelRadiusM);
  const weightN = plant.totalMassKg * 9.80665;
  const evaluate = (loadN: number, treadN: number) => {
    const state = new Float64Array(at.STATE_SIZE);
    state[at.Z] = (plant.wheelRadiusM - loadN / plant.verticalStiffnessNPerM) * s;
    state[at.TREAD] = treadN / plant.treadStiffnessNPerM;
    state[at.PITCH] = pitchRad;
    state[at.LEG] = plant.legLengthM;
    state[at.X + at.RATE] = speed / s;
    state[at.Z + at.RATE] = (speed * slope) / s;
    state[at.WHEEL + at.RATE] = wheelRateRadPerS;
    state[at.PITCH + at.RATE] = pitchRateRadPerS;
    const inputs = new Float64Array(at.INPUT_SIZE);
    inputs[at.MOTOR_TORQUE] = motorNm;
    inputs[at.GRIP] = 1e6;
    inputs[at.ROLLING] = rolling.rollingRatio ?? 0;
    const out = new Float64Array(at.DERIVE_SIZE);
    derive(plant, road, inputs, state, out);
    const [x, z] = [out[at.X + at.RATE]!, out[at.Z + at.RATE]!];
    const wheel = out[at.WHEEL + at.RATE]!;
    return {
      wheel,
      pitch: out[at.PITCH + at.RATE]!,
      slip: plant.wheelRadiusM * wheel - (x + slope * z) / s,
      bounce: (z - slope * x) / s,
    };
  };
  const base = evaluate(weightN, 0);
  const loaded = evaluate(weightN + 1, 0);
  const driven = evaluate(weightN, 1);
  const effect = new Matrix([
    [loaded.slip - base.slip, driven.slip - base.slip],
    [loaded.bounce - base.bounce, driven.bounce - base.bounce],
  ]);
  const [more, treadN] = solve(effect, Matrix.columnVector([-base.slip, -base.bounce])).to1DArray();
  const acceleration = (of: 'wheel' | 'pitch') =>
    base[of] + more! * (loaded[of] - base[of]) + treadN! * (driven[of] - base[of]);
  return {
    wheel: acceleration('wheel'),
    pitch: acceleration('pitch'),
    loadN: weightN + more!,
    treadN: treadN!,
  };
}

/** A plant whose deck is the whole body: the rider weighs a millionth of a gram and holds on to nothing. */
export function deckAlone(body: {
  wheelRadiusM: number;
  wheelMassKg: number;
  wheelInertiaKgM2: number;
  deckMassKg: number;
  deckInertiaKgM2: number;
  deckAboveAxleM: number;
}): Plant {
  return plantWith({
    ...body,
    riderMassKg: 1e-9,
    riderInertiaKgM2: 1e-9,
    totalMassKg: body.wheelMassKg + body.deckMassKg + 1e-9,
    deckForwardM: 0,
    passiveStiffnessNmPerRad: 0,
    passiveDampingNmSPerRad: 0,
    legStiffnessNPerM: 0,
    legDampingNSPerM: 0,
    halfDragAreaKgPerM: 0,
    verticalStiffnessNPerM: 1e5,
    verticalDampingNSPerM: 0,
    treadStiffnessNPerM: 1e5,
    treadDampingNSPerM: 0,
  });
}
