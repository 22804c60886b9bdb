/**
 * Both integrators against motions that are known exactly. Sources: the damped oscillator of any textbook of vibration;
 * orders of the classical Runge-Kutta method and of Simpson's rule: Hairer, Norsett, Wanner, Solving Ordinary
 * Differential Equations I (1993).
 */
import { describe, expect, it } from 'vitest';
import { MOTOR_CURRENT } from '../../src/model/battery.js';
import { lagDecay } from '../../src/model/motor.js';
import * as at from '../../src/model/state.js';
import { fixedStep, type Integrator } from '../../src/simulate/fixed-step.js';
import { referenceStep, solveReference } from '../../src/simulate/reference.js';
import { momentWith, planeRoad, plantWith } from '../rigs.js';

describe('odex on the damped oscillator y" + 2 zeta w y\' + w^2 y = 0', () => {
  const [zeta, w, y0] = [0.1, 12, 0.3] as const;
  const wd = w * Math.sqrt(1 - zeta * zeta);
  const exact = (t: number) => {
    const decay = y0 * Math.exp(-zeta * w * t);
    const y = decay * (Math.cos(wd * t) + ((zeta * w) / wd) * Math.sin(wd * t));
    return [y, -decay * ((w * w) / wd) * Math.sin(wd * t)] as const;
  };
  const errorAt = (tolerance: number) => {
    const end = solveReference((_t, [y, v]) => [v!, -2 * zeta * w * v! - w * w * y!], [y0, 0], {
      xEnd: 2,
      tolerance,
    })!;
    const [y, v] = exact(2);
    return Math.max(Math.abs(end[0]! - y), Math.abs(end[1]! - v));
  };

  it('ends within a hundred tolerances of the exact solution after four periods', () => {
    for (const tolerance of [1e-6, 1e-8, 1e-10, 1e-12]) {
      expect(errorAt(tolerance)).toBeLessThan(100 * tolerance);
    }
  });

  it('stays at rest where rates are rounding noise, however they change sign', () => {
    let sign = 1e-13;
    const end = solveReference(() => [(sign = -sign)], [0.127], { xEnd: 1 / 800 });
    expect(end![0]).toBeCloseTo(0.127, 12);
  });

  it('says so when it finds no solution: rates that are no numbers, and a pole', () => {
    expect(solveReference(() => [NaN], [1], { xEnd: 1 / 800 })).toBeUndefined();
    expect(solveReference((_t, [y]) => [y! * y!], [1], { xEnd: 2 })).toBeUndefined();
  });
});

/** Requests of the motor at five ticks, A. */
const REQUESTS = [40, -25, 60, 0, 10];
const TICK_S = 1 / 800;

/** A wheel in the air: nothing but its motor turns it, by K_t / I_w times the integral of the current. */
const PLANT = plantWith();
const LAG_S = PLANT.motor.lagS;

function spinAfter(integrator: Integrator): { spin: number; angle: number } {
  const moment = momentWith({ [at.Z]: 5, [at.LEG]: 0.95, [at.WHEEL + at.RATE]: 10 });
  for (const request of REQUESTS) {
    moment.followed[0] = request;
    expect(integrator.advance(moment)).toBeUndefined();
    moment.motion[MOTOR_CURRENT] =
      request + lagDecay(TICK_S, LAG_S) * (moment.motion[MOTOR_CURRENT]! - request);
  }
  return { spin: moment.state[at.WHEEL + at.RATE]!, angle: moment.state[at.WHEEL]! };
}

/** The same by hand: i = r + gap e^(-t/lag), integrated once for the spin and twice for the angle. */
function exactSpin(): { spin: number; angle: number } {
  const perAmpere = PLANT.motor.torqueConstantNmPerA / PLANT.wheelInertiaKgM2;
  const left = Math.exp(-TICK_S / LAG_S);
  let [spin, angle, currentA] = [10, 0, 0];
  for (const request of REQUESTS) {
    const gap = currentA - request;
    const gone = LAG_S * (1 - left);
    angle +=
      spin * TICK_S + perAmpere * ((request * TICK_S ** 2) / 2 + gap * LAG_S * TICK_S - gap * LAG_S * gone);
    spin += perAmpere * (request * TICK_S + gap * gone);
    currentA = request + gap * left;
  }
  return { spin, angle };
}

describe('a wheel in the air that follows requests with a lag of 1.5 ms', () => {
  const exact = exactSpin();
  const fixed = (stepsPerTick: number) =>
    spinAfter(fixedStep(PLANT, planeRoad(0), { tickS: TICK_S, stepsPerTick }));

  it('turns exactly as the integral of its current says, with odex', () => {
    const { spin, angle } = spinAfter(referenceStep(PLANT, planeRoad(0), { tickS: TICK_S }));
    expect(Math.abs(spin - exact.spin)).toBeLessThan(1e-9);
    expect(Math.abs(angle - exact.angle)).toBeLessThan(1e-9);
  });

  it('does so within 0.002 rad/s with one fixed step a tick, and by order 4 closer with more', () => {
    const errors = [1, 2, 4, 8].map((steps) => Math.abs(fixed(steps).spin - exact.spin));
    expect(errors[0]).toBeLessThan(0.002);
    for (const index of [1, 2, 3]) {
      expect(Math.abs(Math.log2(errors[index - 1]! / errors[index]!) - 4)).toBeLessThan(0.1);
    }
  });

  it('jumps with its request when the motor has no lag, and then both integrators are exact', () => {
    const motor = { ...PLANT.motor, lagS: 0 };
    const plant = plantWith({ motor });
    const expected =
      10 +
      (motor.torqueConstantNmPerA / plant.wheelInertiaKgM2) *
        TICK_S *
        REQUESTS.reduce((sum, request) => sum + request, 0);
    const spinOf = (integrator: Integrator) => {
      const moment = momentWith({ [at.Z]: 5, [at.LEG]: 0.95, [at.WHEEL + at.RATE]: 10 });
      for (const request of REQUESTS) {
        moment.followed[0] = request;
        integrator.advance(moment);
        moment.motion[MOTOR_CURRENT] = request;
      }
      return moment.state[at.WHEEL + at.RATE]!;
    };
    const road = planeRoad(0);
    expect(spinOf(fixedStep(plant, road, { tickS: TICK_S, stepsPerTick: 1 }))).toBeCloseTo(expected, 10);
    expect(spinOf(referenceStep(plant, road, { tickS: TICK_S }))).toBeCloseTo(expected, 10);
  });
});
