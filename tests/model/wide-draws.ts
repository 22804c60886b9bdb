/** Rigs and motions drawn wider than any ride, for tests that hold equations of motion against other people's. */
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';

/** A number between two others, by chance. */
export type Between = (low: number, high: number) => number;

/** Masses, inertias and places of wheel, deck and rider. */
export function drawBodies(between: Between): Partial<Plant> {
  return {
    deckForwardM: between(-0.2, 0.2),
    deckAboveAxleM: between(-0.2, 0.2),
    ankleAboveAxleM: between(-0.15, 0.3),
    deckMassKg: between(1, 60),
    deckInertiaKgM2: between(0.02, 10),
    wheelMassKg: between(0.5, 40),
    riderMassKg: between(20, 200),
    riderInertiaKgM2: between(1, 60),
    wheelInertiaKgM2: between(0.001, 2),
  };
}

/** Sets all rates of a state. */
export function drawRates(state: Float64Array, between: Between): void {
  for (const [place, most] of [
    [at.X, 12],
    [at.Z, 2],
    [at.WHEEL, 90],
    [at.PITCH, 8],
    [at.LEAN, 6],
    [at.LEG, 3],
  ] as const) {
    state[place + at.RATE] = between(-most, most);
  }
}
