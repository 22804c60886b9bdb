/**
 * Everything about a run but the profile: a rig on its road with its script and its chance. Built once and
 * shared by all profiles, so that every one of them meets exactly the same.
 */
import { riderLaw, type RiderLaw } from '../control/rider-feedback.js';
import { plantOf, type Plant } from '../model/plant.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import type { ScenarioFile } from '../quantity/scenario-file.js';
import { RAD_PER_DEG } from '../quantity/units.js';
import { normals, STREAMS } from '../scenario/random.js';
import { buildRoad, type Road } from '../scenario/road.js';
import { sampleScript, type Script } from '../scenario/script.js';

/** One board under one rider in one scenario with one seed. */
export interface Circumstances {
  board: BoardFile;
  rider: RiderFile;
  scenario: ScenarioFile;
  seed: number;
  /** Scales all noise and tremor; 0 is a run without chance (the road keeps its unevenness). */
  noiseRatio?: number;
}

/** Circumstances as the loop wants them. */
export interface Trial extends Omit<Circumstances, 'noiseRatio'> {
  plant: Plant;
  riderLaw: RiderLaw;
  tickS: number;
  road: Road;
  script: Script;
  /** Noise of each tick: gyro rad/s; accelerometer m/s2, forward and up; unit normals for the tremor. */
  noise: { gyro: Float64Array; forward: Float64Array; up: Float64Array; tremor: Float64Array };
}

/** Prepares a trial: road built, script sampled, noise drawn. */
export function prepareTrial(circumstances: Circumstances): Trial {
  const { board, rider, scenario, seed, noiseRatio = 1 } = circumstances;
  const { loopRateHz, gyroNoiseDegPerS, accelerometerNoiseMPerS2 } = board.controller;
  const plant = plantOf(board, rider);
  const script = sampleScript(scenario, loopRateHz);
  const draw = (stream: (typeof STREAMS)[keyof typeof STREAMS], deviation: number) =>
    normals(seed, stream, script.tickCount + 1).map((number) => number * deviation * noiseRatio);
  // Spelt out, not spread: the loop reads it at every tick, and an object with one shape is read without boxing.
  return {
    board,
    rider,
    scenario,
    seed,
    plant,
    riderLaw: riderLaw(rider, plant, 1 / loopRateHz),
    tickS: 1 / loopRateHz,
    road: buildRoad(scenario.road, { radiusM: plant.wheelRadiusM, seed }),
    script,
    noise: {
      gyro: draw(STREAMS.gyro, gyroNoiseDegPerS * RAD_PER_DEG),
      forward: draw(STREAMS.accelerometerForward, accelerometerNoiseMPerS2),
      up: draw(STREAMS.accelerometerUp, accelerometerNoiseMPerS2),
      tremor: draw(STREAMS.tremor, 1),
    },
  };
}
