/**
 * The linear view of two rigs against Octave's (control.json). The test rig about standing: wheel, deck and rider by Lagrange
 * with rigid tyre and legs, written out in control.m; to first order an upright rig neither bounces nor squats, so the two
 * describe the same system once the tread is rigid. Octave sampled it and took the margins of the loop broken at the request for
 * current; the project has no margin tool yet, so the loop is only looked at where Octave found its crossings. And a
 * planar wheeled pendulum: equations by K. Pathak, J. Franch, S. K. Agrawal, IEEE Trans. Robotics 21 (2005) 505 (from memory),
 * parameters from public code, not from the paper.
 */
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import * as at from '../../src/model/state.js';
import { deckAlone } from '../model/rolling.js';
import { planeRoad, plantWith } from '../rigs.js';
import octave from './control.json' with { type: 'json' };
import { jacobianOf, type OperatingPoint } from './jacobian.js';
import { apart, held, polesApart, polesOf, responseAt, rollingRig } from './state-space.js';

const { standing } = octave;
const { loop } = standing;
const PLANT = plantWith({ ...standing.parameters, deckForwardM: 0 });
const RADIUS = standing.parameters.wheelRadiusM;
const DEG = Math.PI / 180;

/** Upright at a speed on the level, nothing driving. */
function upright(speedMPerS = 0): OperatingPoint {
  const state = new Float64Array(at.STATE_SIZE);
  state[at.Z] = RADIUS - (PLANT.totalMassKg * 9.80665) / PLANT.verticalStiffnessNPerM;
  state[at.LEG] = PLANT.legLengthM;
  state[at.X + at.RATE] = speedMPerS;
  state[at.WHEEL + at.RATE] = speedMPerS / RADIUS;
  return { state, inputs: Float64Array.of(0, 0, 0, 0.65, 0) };
}

const WAYS = [at.X, at.PITCH, at.LEAN];
const rolling = rollingRig(jacobianOf(PLANT, planeRoad(0), upright()), RADIUS, WAYS);

/** The rolling rig with the current's lag in front; input is the request in A, output what the gains make of pitch. */
function broken() {
  const A = Matrix.zeros(7, 7);
  A.setSubMatrix(rolling.A, 0, 0);
  A.setSubMatrix(Matrix.mul(rolling.B.getColumnVector(0), loop.torqueConstantNmPerA), 0, 6);
  A.set(6, 6, -1 / loop.lagS);
  const B = Matrix.zeros(7, 1);
  B.set(6, 0, 1 / loop.lagS);
  const [P, D] = loop.gainsAPerDeg as [number, number];
  return { system: { A, B }, output: [0, -P / DEG, 0, 0, -D / DEG, 0, 0] };
}

const onCircle = (angle: number) => ({ re: Math.cos(angle), im: Math.sin(angle) });
const magnitude = ({ re, im }: { re: number; im: number }) => Math.hypot(re, im);
const marginDeg = ({ re, im }: { re: number; im: number }) => Math.atan2(-im, -re) / DEG;

describe('the equations about standing', () => {
  it('are those of wheel, deck and rider by Lagrange', () => {
    expect(apart(rolling.A, new Matrix(standing.A))).toBeLessThan(1e-10);
    expect(apart(rolling.B, new Matrix(standing.B))).toBeLessThan(1e-10);
  });

  it('have their poles: 5.650, 0, 0, -5.696, -8.695, -11.071 rad/s', () => {
    // Two poles in one place move by the root of a rounding.
    expect(polesApart(polesOf(rolling.A), standing.poles)).toBeLessThan(1e-7);
  });

  it('are the same at any speed where there is neither air nor rolling resistance', () => {
    const airless = { ...PLANT, halfDragAreaKgPerM: 0 };
    const cruising = rollingRig(jacobianOf(airless, planeRoad(0), upright(5)), RADIUS, WAYS);
    expect(apart(cruising.A, rolling.A)).toBeLessThan(1e-9);
    expect(apart(cruising.B, rolling.B)).toBeLessThan(1e-9);
  });

  it('lose 2 k v of drag at the centre of mass at speed v', () => {
    const [still, fast] = [upright(), upright(5)].map(
      (point) => jacobianOf(PLANT, planeRoad(0), point).A,
    ) as [Matrix, Matrix];
    const perShove = jacobianOf(PLANT, planeRoad(0), upright()).B.get(at.LEAN + at.RATE, at.SHOVE);
    const change = fast.get(at.LEAN + at.RATE, at.X + at.RATE) - still.get(at.LEAN + at.RATE, at.X + at.RATE);
    expect(change / (-2 * PLANT.halfDragAreaKgPerM * 5 * perShove)).toBeCloseTo(1, 7);
  });
});

describe('the loop from request to what the gains answer', () => {
  const { system, output } = broken();
  const sampled = held(system, loop.tickS);

  it('moves from tick to tick as Octave says', () => {
    expect(apart(sampled.A, new Matrix(loop.Phi))).toBeLessThan(1e-10);
    expect(apart(sampled.B, new Matrix(loop.Gamma.map((value) => [value])))).toBeLessThan(1e-10);
  });

  it('crosses 1 with 81.85 degrees in hand at 101.2 rad/s without sampling', () => {
    const { phaseCrossingRadPerS: w, phaseMarginDeg } = loop.steady;
    const response = responseAt(system, output, { re: 0, im: w });
    expect(magnitude(response)).toBeCloseTo(1, 9);
    expect(marginDeg(response)).toBeCloseTo(phaseMarginDeg, 7);
    expect(phaseMarginDeg).toBeCloseTo(81.85, 2);
  });

  it('sampled and a tick late, crosses 1 with 70.99 degrees in hand and -180 degrees with a factor of 6.177', () => {
    const late = (w: number) => {
      const { re, im } = responseAt(sampled, output, onCircle(w * loop.tickS));
      const delay = onCircle(-w * loop.tickS);
      return { re: re * delay.re - im * delay.im, im: re * delay.im + im * delay.re };
    };
    const atOne = late(loop.sampled.phaseCrossingRadPerS);
    expect(magnitude(atOne)).toBeCloseTo(1, 9);
    expect(marginDeg(atOne)).toBeCloseTo(loop.sampled.phaseMarginDeg, 7);
    const opposite = late(loop.sampled.gainCrossingRadPerS);
    expect(opposite.im).toBeCloseTo(0, 9);
    expect(-1 / opposite.re).toBeCloseTo(loop.sampled.gainMargin, 8);
    expect(loop.sampled.delayMarginS).toBeCloseTo(
      (loop.sampled.phaseMarginDeg * DEG) / loop.sampled.phaseCrossingRadPerS,
      12,
    );
  });
});

describe('the planar wheeled pendulum, parameters of public code (control.json, "wheeled")', () => {
  const { wheeled } = octave;
  const [mw, m, r, ground, motor] = [0.5313, 8.22, 0.101, 0.1, 0.1];
  const plant = deckAlone({
    wheelRadiusM: r,
    wheelMassKg: mw,
    wheelInertiaKgM2: 0.00273,
    deckMassKg: m,
    deckInertiaKgM2: 0.57,
    deckAboveAxleM: 0.49,
  });
  const weightN = (mw + m) * 9.80665;
  const state = new Float64Array(at.STATE_SIZE);
  state[at.Z] = r - weightN / plant.verticalStiffnessNPerM;
  state[at.LEG] = plant.legLengthM;
  const inputs = Float64Array.of(0, 0, 0, 1e6, (0.5 * ground) / (weightN * r));
  const { A, B } = rollingRig(jacobianOf(plant, planeRoad(0, r), { state, inputs }), r, [at.X, at.PITCH]);
  // From x to the wheel's angle; motor friction put in by its torque; gravity, the whole of the pitch column, to the source's 9.81.
  const turn = Matrix.diag([1 / r, 1, 1 / r, 1]);
  const input = turn.mmul(B.getColumnVector(0));
  const bare = turn.mmul(A).mmul(Matrix.diag([r, 9.81 / 9.80665, r, 1]));
  const model = Matrix.add(bare, input.mmul(Matrix.rowVector([0, 0, -motor, motor])));

  it('has the equations and poles', () => {
    expect(apart(model, new Matrix(wheeled.A))).toBeLessThan(1e-9);
    expect(apart(input, Matrix.columnVector(wheeled.B))).toBeLessThan(1e-9);
    expect(polesApart(polesOf(model), wheeled.poles)).toBeLessThan(1e-8);
  });

  it('moves over a hundredth of a second and is held by the regulator as Octave says', () => {
    const sampled = held({ A: model, B: input }, 0.01);
    expect(apart(sampled.A, new Matrix(wheeled.Phi))).toBeLessThan(1e-9);
    expect(apart(sampled.B, Matrix.columnVector(wheeled.Gamma))).toBeLessThan(1e-9);
    const regulated = Matrix.sub(model, input.mmul(Matrix.rowVector(wheeled.lqrGains)));
    expect(polesApart(polesOf(regulated), wheeled.lqrPoles)).toBeLessThan(1e-8);
  });
});
