/**
 * The complementary filter against its published relations: tau = alpha dt / (1 - alpha), corner 1 / (2 pi tau); a
 * gyro bias b leaves b tau; lasting acceleration a leaves atan(a / g) (that dc acceleration corrupts tilt: Analog
 * Devices AN-1057); a pulse a of length T leaves atan(a / g) (1 - exp(-T / tau)). Values follow from
 * the formulas with g 9.81.
 */
import { describe, expect, it } from 'vitest';
import {
  ACCELEROMETER_PITCH,
  ESTIMATED_PITCH,
  ESTIMATED_RATE,
  estimate,
  ESTIMATOR_SIZE,
  estimatorLaw,
  GYRO,
  READING_SIZE,
  type EstimatorLaw,
} from '../../src/control/estimator.js';

const DEG = 180 / Math.PI;

/** Estimates after every tick, fed with a reading of each. */
function feed(law: EstimatorLaw, ticks: number, read: (timeS: number) => { gyro: number; tilt: number }) {
  const memory = new Float64Array(ESTIMATOR_SIZE);
  const reading = new Float64Array(READING_SIZE);
  const pitch: number[] = [];
  const rate: number[] = [];
  for (let tick = 0; tick < ticks; tick++) {
    const { gyro, tilt } = read(tick * law.tickS);
    reading[GYRO] = gyro;
    reading[ACCELEROMETER_PITCH] = tilt;
    estimate(law, reading, memory);
    pitch.push(memory[ESTIMATED_PITCH]!);
    rate.push(memory[ESTIMATED_RATE]!);
  }
  return { pitch, rate };
}

describe('complementary filter', () => {
  it.each([
    { tauS: 0.49, dtS: 0.01, alpha: 0.98 },
    { tauS: 0.049, dtS: 0.001, alpha: 0.98 },
    { tauS: 0.999, dtS: 0.001, alpha: 0.999 },
    { tauS: 1, dtS: 0.002, alpha: 0.998004 },
    { tauS: 0.5, dtS: 0.005, alpha: 0.990099 },
  ])('trusts the gyro with alpha $alpha for $tauS s at ticks of $dtS s', ({ tauS, dtS, alpha }) => {
    expect(estimatorLaw(tauS, dtS).gyroTrustRatio).toBeCloseTo(alpha, 6);
    expect((alpha * dtS) / (1 - alpha)).toBeCloseTo(tauS, 3);
  });

  it.each([
    { a: 0.5, offDeg: 2.918 },
    { a: 1, offDeg: 5.82 },
    { a: 2, offDeg: 11.523 },
    { a: 3, offDeg: 17.004 },
    { a: 9.81 / 2, offDeg: 26.565 },
  ])('is off by $offDeg deg after long acceleration of $a m/s2', ({ a, offDeg }) => {
    const law = estimatorLaw(1, 1 / 800);
    const { pitch } = feed(law, 16_000, () => ({ gyro: 0, tilt: -Math.atan2(a, 9.81) }));
    expect(-pitch.at(-1)! * DEG).toBeCloseTo(offDeg, 3);
  });

  it('is off by 5.495 deg after 1.5 m/s2 for 1 s with a blend time of 1 s', () => {
    const law = estimatorLaw(1, 1 / 3200);
    const { pitch } = feed(law, 3200, () => ({ gyro: 0, tilt: Math.atan2(1.5, 9.81) }));
    expect(pitch.at(-1)! * DEG).toBeCloseTo(5.495, 2);
    // The sampled filter keeps alpha a tick and not exp(-dt / tau): its own value to the last digit.
    const exact = Math.atan(1.5 / 9.81) * (1 - (1 / (1 + 1 / 3200)) ** 3200);
    expect(pitch.at(-1)!).toBeCloseTo(exact, 12);
  });

  it('is off by b tau for a gyro that is off by b: 0.01 rad/s and 1 s make 0.573 deg', () => {
    const { pitch } = feed(estimatorLaw(1, 1 / 800), 16_000, () => ({ gyro: 0.01, tilt: 0 }));
    expect(pitch.at(-1)! * DEG).toBeCloseTo(0.573, 3);
  });

  it('passes a true motion unharmed: high-pass and low-pass add up to one', () => {
    const law = estimatorLaw(0.4, 1 / 800);
    const angle = (t: number) => 0.1 * Math.sin(2 * Math.PI * 1.3 * t);
    const meanRate = (t: number) => (angle(t) - angle(t - law.tickS)) / law.tickS;
    const { pitch } = feed(law, 6000, (t) => ({ gyro: meanRate(t), tilt: angle(t) }));
    pitch.slice(5000).forEach((value, index) => {
      expect(value).toBeCloseTo(angle((5000 + index) * law.tickS), 6);
    });
  });
});

describe('gyro low-pass', () => {
  it('follows a step as 1 - exp(-2 pi f t), to the last digit at every tick', () => {
    const law = estimatorLaw(1, 1 / 800, 20);
    const { rate } = feed(law, 200, () => ({ gyro: 2, tilt: 0 }));
    rate.forEach((value, tick) => {
      expect(value).toBeCloseTo(2 * (1 - Math.exp(-2 * Math.PI * 20 * (tick + 1) * law.tickS)), 12);
    });
  });

  it('takes 2.197 time constants from 10 to 90 % (first order: ln 9)', () => {
    const law = estimatorLaw(1, 1e-5, 20);
    const { rate } = feed(law, 5000, () => ({ gyro: 1, tilt: 0 }));
    const passes = (level: number) => rate.findIndex((value) => value >= level) * 1e-5;
    expect((passes(0.9) - passes(0.1)) * 2 * Math.PI * 20).toBeCloseTo(Math.log(9), 2);
  });

  it('left out, passes the rate as it is', () => {
    const { rate } = feed(estimatorLaw(1, 1 / 800), 3, (t) => ({ gyro: 1 + t, tilt: 0 }));
    expect(rate).toEqual([1, 1 + 1 / 800, 1 + 2 / 800]);
  });
});
