/**
 * A body that stands on a floor which nothing moves, described to the project as a rig: wheel and deck so heavy that
 * the rider cannot move them, his ankles in the axle. What acts on him is the project's own: equations of motion, delay
 * rings, `riderStep`, the order of the tick.
 */
import { controlLaw } from '../../src/control/law.js';
import { riderLaw, type RiderLaw } from '../../src/control/rider-feedback.js';
import { plantOf, type Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';
import type { RiderFile } from '../../src/quantity/rider-file.js';
import { integratorFor } from '../../src/simulate/run.js';
import { loopPlan, runTicks } from '../../src/simulate/loop.js';
import type { Outcome } from '../../src/simulate/outcome.js';
import { startMoment } from '../../src/simulate/start.js';
import { createTape, type Tape } from '../../src/simulate/tape.js';
import type { Trial } from '../../src/simulate/trial.js';
import { boardWith, COMPOSED, plantWith, profileWith, riderWith, scenarioWith, trialWith } from '../rigs.js';

/** A body over its ankles: inertia about them, mass, height of its centre of mass, and the ankles' passive spring and damper. */
export interface Body {
  ankleInertiaKgM2: number;
  massKg: number;
  heightM: number;
  passiveStiffnessNmPerRad: number;
  passiveDampingNmSPerRad: number;
}

/** What the body does about its lean, `delayS` late. */
export interface Feedback {
  stiffnessNmPerRad: number;
  dampingNmSPerRad: number;
  delayS: number;
}

/** How a stand is run; left out: 800 ticks a second, a lean of 1 microradian, legs of 14 kN/m, the quick integrator. */
export interface Stand {
  durationS: number;
  loopRateHz?: number;
  leanRad?: number;
  legStiffnessNPerM?: number;
  solver?: 'fixed' | 'reference';
}

/** Mass and inertia of the floor, kg and kg m2. */
const FLOOR = 1e15;

/** The rig of a body on the floor. */
export function floorPlant(body: Body, legStiffnessNPerM = 14_000): Plant {
  const { massKg, heightM } = body;
  return plantWith({
    wheelMassKg: FLOOR,
    wheelInertiaKgM2: FLOOR,
    deckInertiaKgM2: FLOOR,
    deckAboveAxleM: 0,
    ankleAboveAxleM: 0,
    verticalStiffnessNPerM: 1000 * FLOOR,
    verticalDampingNSPerM: 0,
    riderMassKg: massKg,
    legLengthM: heightM,
    riderInertiaKgM2: body.ankleInertiaKgM2 - massKg * heightM ** 2,
    totalMassKg: FLOOR + plantWith().deckMassKg + massKg,
    halfDragAreaKgPerM: 0,
    legStiffnessNPerM,
    passiveStiffnessNmPerRad: body.passiveStiffnessNmPerRad,
    passiveDampingNmSPerRad: body.passiveDampingNmSPerRad,
  });
}

/** A rider of the project as a body, and the feedback that the project gives him on a rig; left out: on the floor. */
export function riderAsBody(rider: RiderFile, rig?: Plant): { body: Body; feedback: Feedback } {
  const plant = plantOf(boardWith(), rider);
  const body = {
    ankleInertiaKgM2: plant.riderInertiaKgM2 + plant.riderMassKg * plant.legLengthM ** 2,
    massKg: plant.riderMassKg,
    heightM: plant.legLengthM,
    passiveStiffnessNmPerRad: plant.passiveStiffnessNmPerRad,
    passiveDampingNmSPerRad: plant.passiveDampingNmSPerRad,
  };
  const { stiffnessNmPerRad, dampingNmSPerRad } = riderLaw(rider, rig ?? floorPlant(body), 1 / 800);
  return { body, feedback: { stiffnessNmPerRad, dampingNmSPerRad, delayS: rider.balance.delayS } };
}

/** The rider's law with given feedback on the lean and the outer loop, which chooses lean by speed, at rest. */
function standingLaw(feedback: Feedback, tickS: number): RiderLaw {
  return {
    ...riderLaw(riderWith(), plantWith(), tickS),
    stiffnessNmPerRad: feedback.stiffnessNmPerRad,
    dampingNmSPerRad: feedback.dampingNmSPerRad,
    delayTicks: feedback.delayS / tickS,
    thrustNmPerMPerS2: 0,
    leanGainRatio: 0,
    trimRatePerM: 0,
    tremorKickNm: 0,
  };
}

/** Stands for a while after a small lean that was there long enough to be felt; the tape and how it ended, undefined if still up. */
export function stand(
  body: Body,
  feedback: Feedback,
  { durationS, loopRateHz = 800, leanRad = 1e-6, legStiffnessNPerM, solver = 'fixed' }: Stand,
): { tape: Tape; fall: Outcome | undefined } {
  const board = boardWith({ controller: { loopRateHz } });
  const usual = trialWith({ board, scenario: scenarioWith({ durationS }) });
  const plant = floorPlant(body, legStiffnessNPerM);
  const trial: Trial = { ...usual, plant, riderLaw: standingLaw(feedback, usual.tickS) };
  const law = controlLaw(profileWith(COMPOSED), board);
  const plan = loopPlan(trial, law, integratorFor(trial, { solver }));
  const moment = startMoment(trial, law);
  moment.state[at.LEAN] = leanRad;
  moment.pastLean.fill(leanRad);
  const tape = createTape(trial.script.tickCount + 1, trial.tickS);
  const fall = runTicks(plan, moment, { tape, untilTick: trial.script.tickCount });
  return { tape, fall };
}

/** Growth [1/s] and frequency [rad/s] of the oscillation that a tape's lean has come down to after `fromS`. */
export function oscillationOf(
  { columns, length, tickS }: Tape,
  fromS: number,
): { growth: number; frequency: number } {
  // One mode obeys y(t + 2h) = p y(t + h) + q y(t), by least squares over all rows; its roots are exp(s h).
  const stride = Math.round(0.05 / tickS);
  const y = columns.leanRad;
  let [aa, ab, bb, ya, yb] = [0, 0, 0, 0, 0];
  for (let row = Math.round(fromS / tickS); row + 2 * stride < length; row++) {
    const [b, a, later] = [y[row]!, y[row + stride]!, y[row + 2 * stride]!];
    aa += a * a;
    ab += a * b;
    bb += b * b;
    ya += later * a;
    yb += later * b;
  }
  const p = (ya * bb - yb * ab) / (aa * bb - ab * ab);
  const q = (yb * aa - ya * ab) / (aa * bb - ab * ab);
  const spanS = stride * tickS;
  return { growth: Math.log(-q) / (2 * spanS), frequency: Math.acos(p / (2 * Math.sqrt(-q))) / spanS };
}
