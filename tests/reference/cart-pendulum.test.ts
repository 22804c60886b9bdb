/**
 * Carts with a pendulum from a public tutorial and two textbooks, described to the project as rigs (cart-rig.ts) and
 * compared with what is printed of them and with Octave (control.json): linear, by the equations of motion with the tread
 * rigid; in time, by the project's two integrators with a tread that is stiff but not rigid. What the tread gives way is of
 * first order in its compliance, so two stiffnesses tell where a rigid one would be; the test holds both to that.
 */
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { settlingTimeS } from '../../src/measure/settling-time.js';
import { overshootPercent, riseTimeS } from '../../src/measure/step-response.js';
import { derive } from '../../src/model/derive.js';
import * as at from '../../src/model/state.js';
import { fixedStep, stepsFor } from '../../src/simulate/fixed-step.js';
import { createMoment } from '../../src/simulate/moment.js';
import { solveReference } from '../../src/simulate/reference.js';
import { cartRig, linearCart, RADIUS_M, type Cart, type CartRig } from './cart-rig.js';
import octave from './control.json' with { type: 'json' };
import { apart, held, polesApart, polesOf, responseAt } from './state-space.js';

const { cart, ogata, balance } = octave;
/** Control Tutorials for Matlab and Simulink (University of Michigan), "Inverted Pendulum"; its phi has the other sign. */
const TUTORIAL: Cart = cart.parameters;

const column = (values: readonly number[]) => Matrix.columnVector([...values]);
const closed = ({ A, B }: { A: Matrix; B: Matrix }, gains: readonly number[]) =>
  Matrix.sub(A, B.mmul(Matrix.rowVector([...gains])));

describe("the tutorial's cart, linear", () => {
  const linear = linearCart(cartRig(TUTORIAL), -1);

  it('has the printed rows and poles, and those of Octave', () => {
    expect(linear.A.get(1, 1)).toBeCloseTo(-0.1818, 4);
    expect(linear.A.get(1, 2)).toBeCloseTo(2.6727, 4);
    expect(linear.A.get(3, 1)).toBeCloseTo(-0.4545, 4);
    expect(linear.A.get(3, 2)).toBeCloseTo(31.1818, 4);
    expect(apart(linear.A, new Matrix(cart.A))).toBeLessThan(1e-9);
    expect(apart(linear.B, column(cart.B))).toBeLessThan(1e-9);
    expect(polesApart(polesOf(linear.A), cart.poles)).toBeLessThan(1e-9);
  });

  it('is held by the printed gains at -4.759 +- 0.831j and -8.491 +- 7.928j', () => {
    const poles = polesOf(closed(linear, [-70.7107, -37.8345, 105.5298, 20.9238]));
    // Half a unit of the last digit of poles as large as 11.6.
    expect(polesApart(poles, cart.lqr.poles)).toBeLessThan(4.5e-5);
    expect(polesApart(polesOf(closed(linear, cart.lqr.gains)), cart.lqr.poles)).toBeLessThan(1e-8);
  });

  it('moves from one hundredth of a second to the next as Octave says', () => {
    const { A, B } = held(linear, cart.sampled.tickS);
    expect(apart(A, new Matrix(cart.sampled.Phi))).toBeLessThan(1e-9);
    expect(apart(B, column(cart.sampled.Gamma))).toBeLessThan(1e-9);
  });

  it("crosses 1 with Octave's margin under proportional, integral and rate feedback", () => {
    const { phaseCrossingRadPerS: w, phaseMarginDeg } = cart.margins;
    const [P, I, D] = cart.tuned.gains as [number, number, number];
    const phi = responseAt(linear, [0, 0, 1, 0], { re: 0, im: w });
    const [re, im] = [P, D * w - I / w];
    const loop = { re: re * phi.re - im * phi.im, im: re * phi.im + im * phi.re };
    expect(Math.hypot(loop.re, loop.im)).toBeCloseTo(1, 8);
    expect((Math.atan2(-loop.im, -loop.re) * 180) / Math.PI).toBeCloseTo(phaseMarginDeg, 6);
  });
});

describe('textbook carts, linear', () => {
  it("Ogata's, ch. 10 (from memory): rows 20.601 and -0.4905, poles with his gains at -2 +- 2 sqrt(3) j, -10, -10", () => {
    const book = { cartMassKg: 2, massKg: 0.1, lengthM: 0.5, frictionNSPerM: 0, gravityMPerS2: 9.81 };
    // A mass point; a rig's rider has some inertia.
    const { A, B } = linearCart(cartRig({ ...book, inertiaKgM2: 1e-12 }), 1);
    expect(A.get(3, 2)).toBeCloseTo(20.601, 8);
    expect(A.get(1, 2)).toBeCloseTo(-0.4905, 8);
    const [phi, phiRate, x, xRate] = ogata.gains as [number, number, number, number];
    const poles = polesOf(closed({ A, B }, [x, xRate, phi, phiRate]));
    const placed = [
      [-2, 2 * Math.sqrt(3)],
      [-2, -2 * Math.sqrt(3)],
    ];
    expect(polesApart(poles, placed)).toBeLessThan(1e-8);
    // Two poles in one place move by the root of a rounding.
    for (const pole of poles.slice(2)) expect(Math.hypot(pole.re + 10, pole.im)).toBeLessThan(1e-3);
  });

  it('Astrom and Murray, Feedback Systems (from memory): the balance system, with and without friction', () => {
    const book = { cartMassKg: 10, massKg: 80, lengthM: 1, inertiaKgM2: 100, gravityMPerS2: 9.8 };
    const damped = linearCart(cartRig({ ...book, frictionNSPerM: 0.1, pivotNmSPerRad: 0.01 }), 1);
    expect(apart(damped.A, new Matrix(balance.A))).toBeLessThan(1e-9);
    expect(polesApart(polesOf(damped.A), balance.poles)).toBeLessThan(1e-9);
    expect(polesOf(linearCart(cartRig({ ...book, frictionNSPerM: 0 }), 1).A)[0]!.re).toBeCloseTo(2.6833, 4);
  });
});

/** What the cart's controller makes of x, x', phi, phi' and the integral of phi, N. */
type Force = (seen: { x: number; xRate: number; phi: number; phiRate: number; integral: number }) => number;

/** x and phi in the tutorial's variables every `everyS`, by odex. */
function drive(
  { plant, road, rest, stretch }: CartRig,
  force: Force,
  { startRates, everyS, count }: { startRates?: { x: number; phi: number }; everyS: number; count: number },
): { x: number[]; phi: number[] } {
  const inputs = rest.inputs.slice();
  const [state, rates] = [new Float64Array(at.STATE_SIZE), new Float64Array(at.DERIVE_SIZE)];
  const slope = (_time: number, y: number[]) => {
    state.set(y.slice(0, at.STATE_SIZE));
    const [phi, phiRate] = [-stretch * y[at.LEAN]!, -stretch * y[at.LEAN + at.RATE]!];
    const seen = { x: y[at.X]!, xRate: y[at.X + at.RATE]!, phi, phiRate, integral: y[at.STATE_SIZE]! };
    inputs[at.MOTOR_TORQUE] = RADIUS_M * force(seen);
    derive(plant, road, inputs, state, rates);
    return [...rates.subarray(0, at.STATE_SIZE), phi];
  };
  let y = [...rest.state, 0];
  if (startRates !== undefined) {
    y[at.X + at.RATE] = startRates.x;
    y[at.WHEEL + at.RATE] = startRates.x / RADIUS_M;
    y[at.LEAN + at.RATE] = -startRates.phi / stretch;
  }
  const [x, phi] = [[y[at.X]!], [-stretch * y[at.LEAN]!]];
  for (let k = 0; k < count; k++) {
    y = solveReference(slope, y, { xEnd: everyS, tolerance: 1e-12 })!;
    x.push(y[at.X]!);
    phi.push(-stretch * y[at.LEAN]!);
  }
  return { x, phi };
}

interface Summit {
  value: number;
  place: number;
}

/** Largest value and its place, by a parabola through the largest row and its neighbours. */
function summit(rows: readonly number[]): Summit {
  const top = rows.indexOf(Math.max(...rows));
  const [a, b, c] = [rows[top - 1]!, rows[top]!, rows[top + 1]!];
  const offset = (a - c) / (2 * (a - 2 * b + c));
  return { value: b - ((a - c) * offset) / 4, place: top + offset };
}

/** Where a tread 10 times stiffer moves a figure, it goes 0.9 of the way to rigid. */
const towardsRigid = (soft: number, stiff: number) => (10 * stiff - soft) / 9;

describe("the tutorial's cart in time, by odex", () => {
  it('answers an impulse under proportional, integral and rate feedback: 0.04436 rad at 0.03525 s', () => {
    // 1 mN s, so that angles are small; the figures are for 1 N s.
    const size = 1e-3;
    const everyS = 0.00025;
    const [P, I, D] = cart.tuned.gains as [number, number, number];
    const startRates = { x: size * cart.B[1]!, phi: size * cart.B[3]! };
    const force: Force = ({ phi, phiRate, integral }) => -(P * phi + I * integral + D * phiRate);
    const [soft, stiff] = [1e6, 1e7].map((tread) =>
      summit(drive(cartRig(TUTORIAL, tread), force, { startRates, everyS, count: 180 }).phi),
    ) as [Summit, Summit];
    const share = (value: number) => value / size / cart.tuned.peakRad - 1;
    expect(Math.abs(share(stiff.value))).toBeLessThan(1e-5);
    expect(Math.abs(share(towardsRigid(soft.value, stiff.value)))).toBeLessThan(2e-7);
    expect(Math.abs(towardsRigid(soft.place, stiff.place) * everyS - cart.tuned.peakAtS)).toBeLessThan(2e-6);
    expect((stiff.value / size).toFixed(5)).toBe('0.04436');
    expect((stiff.place * everyS).toFixed(5)).toBe('0.03525');
  });

  it('goes 0.2 m with the printed gains: rise 0.412 s, settled after 1.038 s, first back by 0.0581 m', () => {
    const size = 1e-3;
    const everyS = 0.0025;
    const [x, xRate, phi, phiRate] = cart.lqr.gains as [number, number, number, number];
    const goal = 0.2 * size;
    const force: Force = (seen) =>
      -(x * (seen.x - goal) + xRate * seen.xRate + phi * seen.phi + phiRate * seen.phiRate);
    const driven = drive(cartRig(TUTORIAL, 1e7), force, { everyS, count: 600 });
    const signal = { samples: driven.x, first: 0, end: driven.x.length, tickS: everyS };
    const { positionStep } = cart;
    const rise = riseTimeS(signal, { initial: 0, final: goal })!;
    const settling = settlingTimeS(signal, goal, 0.02 * goal)!;
    expect(Math.abs(rise - positionStep.riseTimeS)).toBeLessThan(1e-5);
    expect(Math.abs(settling - positionStep.settlingTimeS)).toBeLessThan(1e-5);
    expect(overshootPercent(signal, { initial: 0, final: goal })).toBeLessThan(0.001);
    const [back, lowest] = [driven.x, driven.phi].map((rows) => summit(rows.map((value) => -value))) as [
      Summit,
      Summit,
    ];
    expect(Math.abs(back.value / size / -positionStep.backM - 1)).toBeLessThan(1e-5);
    expect(Math.abs(lowest.value / size / -positionStep.phiLowestRad - 1)).toBeLessThan(1e-5);
    expect(Math.abs(back.place * everyS - positionStep.backAtS)).toBeLessThan(1e-5);
  });
});

describe("the tutorial's cart sampled, by the quick integrator", () => {
  const { tickS, gains, phiEvery20TicksRad, xEvery20TicksM } = cart.sampled;

  /** x [m] and phi [rad] every 20 ticks, let go with phi at 1e-4 rad. */
  function regulate({ plant, road, rest, stretch }: CartRig): number[][] {
    const integrator = fixedStep(plant, road, { tickS, stepsPerTick: stepsFor(plant, tickS) });
    const moment = createMoment(0, 0);
    const { state } = moment;
    state.set(rest.state);
    moment.inputs.set(rest.inputs);
    state[at.LEAN] = -1e-4 / stretch;
    const rows: number[][] = [];
    for (let tick = 0; tick <= 300; tick++) {
      const [phi, phiRate] = [-stretch * state[at.LEAN]!, -stretch * state[at.LEAN + at.RATE]!];
      const seen = [state[at.X]!, state[at.X + at.RATE]!, phi, phiRate];
      if (tick % 20 === 0) rows.push([seen[0]!, phi]);
      moment.followed[0] = -gains.reduce((sum, gain, k) => sum + gain * seen[k]!, 0);
      integrator.advance(moment);
    }
    return rows;
  }

  it("follows Octave's regulator at 100 ticks a second, to 1e-6 of the angle it began with", () => {
    const [soft, stiff] = [1e6, 1e7].map((tread) => regulate(cartRig(TUTORIAL, tread))) as [
      number[][],
      number[][],
    ];
    expect(stiff).toHaveLength(phiEvery20TicksRad.length);
    stiff.forEach(([x, phi], k) => {
      expect(Math.abs(x! - xEvery20TicksM[k]!)).toBeLessThan(1e-10);
      expect(Math.abs(phi! - phiEvery20TicksRad[k]!)).toBeLessThan(1e-10);
      const [softX, softPhi] = soft[k]!;
      expect(Math.abs(towardsRigid(softX!, x!) - xEvery20TicksM[k]!)).toBeLessThan(5e-12);
      expect(Math.abs(towardsRigid(softPhi!, phi!) - phiEvery20TicksRad[k]!)).toBeLessThan(5e-12);
    });
  });
});
