/**
 * Our equations, reduced to one body on one wheel, against the planar wheeled inverted pendulum as published:
 * K. Pathak, J. Franch, S. K. Agrawal, IEEE Trans. Robotics 21 (2005) 505, planar part (equations from memory), and a
 * public parameter set (m_w 0.5313, I_w 0.00273, m 8.22, I 0.57, r 0.101, l 0.49, c_w = c_m = 0.1, g 9.81) whose
 * matrices and poles were computed from those equations.
 */
import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { chance } from '../rigs.js';
import { deckAlone, rollRigidly, type Rolling } from './rolling.js';

const GRAVITY = 9.80665;
const BOOK_GRAVITY = 9.81;
const [mw, Iw, m, I, r, l] = [0.5313, 0.00273, 8.22, 0.57, 0.101, 0.49] as const;
const [cw, cm] = [0.1, 0.1] as const;
const PLANT = deckAlone({
  wheelRadiusM: r,
  wheelMassKg: mw,
  wheelInertiaKgM2: Iw,
  deckMassKg: m,
  deckInertiaKgM2: I,
  deckAboveAxleM: l,
});

/** The published equations, solved for both accelerations. */
function published(theta: number, thetaRate: number, torque: number): { wheel: number; pitch: number } {
  const coupling = m * r * l * Math.cos(theta);
  const left = new Matrix([
    [Iw + (mw + m) * r * r, coupling],
    [coupling, I + m * l * l],
  ]);
  const right = Matrix.columnVector([
    torque + m * r * l * Math.sin(theta) * thetaRate ** 2,
    m * GRAVITY * l * Math.sin(theta) - torque,
  ]);
  const [wheel, pitch] = solve(left, right).to1DArray();
  return { wheel: wheel!, pitch: pitch! };
}

/** Central difference of both accelerations, friction c_m in the motor and c_w at the ground (the slope of our rolling resistance at rest). */
function slopes(damped: boolean, direction: Rolling): { wheel: number; pitch: number } {
  const h = 1e-5;
  const weightN = (mw + m) * GRAVITY;
  const respond = (sign: number) => {
    const step = (value = 0) => sign * h * value;
    const [pitchRate, wheelRate] = [step(direction.pitchRateRadPerS), step(direction.wheelRateRadPerS)];
    return rollRigidly(PLANT, {
      pitchRad: step(direction.pitchRad),
      pitchRateRadPerS: pitchRate,
      wheelRateRadPerS: wheelRate,
      motorNm: step(direction.motorNm) - (damped ? cm * (wheelRate - pitchRate) : 0),
      rollingRatio: damped ? (0.5 * cw) / (weightN * r) : 0,
    });
  };
  const [after, before] = [respond(1), respond(-1)];
  return { wheel: (after.wheel - before.wheel) / (2 * h), pitch: (after.pitch - before.pitch) / (2 * h) };
}

/** Poles [rad/s] of the states pitch, wheel rate and pitch rate, gravity brought to the source's. */
function poles(damped: boolean): number[] {
  const tilt = slopes(damped, { pitchRad: 1 });
  const spin = slopes(damped, { wheelRateRadPerS: 1 });
  const turn = slopes(damped, { pitchRateRadPerS: 1 });
  const g = BOOK_GRAVITY / GRAVITY;
  const A = new Matrix([
    [0, 0, 1],
    [tilt.wheel * g, spin.wheel, turn.wheel],
    [tilt.pitch * g, spin.pitch, turn.pitch],
  ]);
  return [...new EigenvalueDecomposition(A).realEigenvalues].sort((a, b) => a - b);
}

const near = (actual: number, expected: number, share: number) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(share * Math.abs(expected));

describe('wheeled inverted pendulum as published', () => {
  it('has the same equations at any pitch, pitch rate and torque', () => {
    const next = chance(11);
    for (let draw = 0; draw < 200; draw++) {
      const [theta, thetaRate, torque] = [2 * next() - 1, 8 * next() - 4, 40 * next() - 20];
      const expected = published(theta, thetaRate, torque);
      const actual = rollRigidly(PLANT, {
        pitchRad: theta,
        pitchRateRadPerS: thetaRate,
        motorNm: torque,
      });
      const scale = Math.abs(expected.wheel) + Math.abs(expected.pitch) + 1;
      expect(Math.abs(actual.wheel - expected.wheel) / scale).toBeLessThan(1e-7);
      expect(Math.abs(actual.pitch - expected.pitch) / scale).toBeLessThan(1e-7);
    }
  });

  it('has its undamped poles: 0 and +-7.2835, p^2 = m g l E11 / det E', () => {
    const [low, middle, high] = poles(false);
    near(high!, 7.2835, 1e-5);
    near(low!, -7.2835, 1e-5);
    expect(Math.abs(middle!)).toBeLessThan(1e-6);
    const E11 = Iw + (mw + m) * r * r;
    const determinant = E11 * (I + m * l * l) - (m * r * l) ** 2;
    near(slopes(false, { pitchRad: 1 }).pitch, (m * GRAVITY * l * E11) / determinant, 1e-6);
  });

  it('has its rows: wheel -234.57 -8.0175 4.3056, body 53.0494 1.3216 -0.7279, input 43.0558 -7.2792', () => {
    const tilt = slopes(true, { pitchRad: 1 });
    const spin = slopes(true, { wheelRateRadPerS: 1 });
    const turn = slopes(true, { pitchRateRadPerS: 1 });
    const push = slopes(true, { motorNm: 1 });
    const g = BOOK_GRAVITY / GRAVITY;
    near(tilt.wheel * g, -234.57, 5e-5);
    near(spin.wheel, -8.0175, 5e-5);
    near(turn.wheel, 4.3056, 5e-5);
    near(tilt.pitch * g, 53.0494, 5e-5);
    near(spin.pitch, 1.3216, 5e-5);
    near(turn.pitch, -0.7279, 1e-4);
    near(push.wheel, 43.0558, 5e-5);
    near(push.pitch, -7.2792, 5e-5);
  });

  it('has its damped poles 5.3095, -1.7677, -12.2872', () => {
    const [low, middle, high] = poles(true);
    near(high!, 5.3095, 5e-5);
    near(middle!, -1.7677, 5e-5);
    near(low!, -12.2872, 5e-5);
  });
});

describe('steady states of the wheeled pendulum', () => {
  it.each([0.03, 0.0833, 0.12, -0.12])(
    'climbs a slope of %d with m g l sin(theta) = tau = M g r sin(alpha)',
    (slope) => {
      const torque = (m + mw) * GRAVITY * r * Math.sin(Math.atan(slope));
      const pitchRad = Math.asin(torque / (m * GRAVITY * l));
      const rolling = rollRigidly(PLANT, { slope, pitchRad, motorNm: torque, wheelRateRadPerS: 20 });
      expect(Math.abs(rolling.wheel)).toBeLessThan(1e-6);
      expect(Math.abs(rolling.pitch)).toBeLessThan(1e-6);
      near(rolling.loadN, (m + mw) * GRAVITY * Math.cos(Math.atan(slope)), 1e-8);
    },
  );

  it.each([0.5, 1, -1.2, 2])(
    'speeds up by %d m/s2 with m g l sin(theta) = m l a cos(theta) + tau, tau = (I_w / r + M r) a',
    (a) => {
      const torque = (Iw / r + (mw + m) * r) * a;
      const [sine, cosine] = [m * GRAVITY * l, m * l * a];
      const pitchRad = Math.asin(torque / Math.hypot(sine, cosine)) + Math.atan2(cosine, sine);
      const rolling = rollRigidly(PLANT, { pitchRad, motorNm: torque });
      near(rolling.wheel * r, a, 1e-7);
      expect(Math.abs(rolling.pitch)).toBeLessThan(1e-6);
    },
  );
});
