/**
 * Body data from stature against published anthropometry: centre of mass 0.56 H and ankle 0.039 H (D. A. Winter;
 * P. McGinnis 2005), inertia 0.0572 m H^2 from side to side (Y. Breniere 1996); the worked numbers follow from them.
 */
import { describe, expect, it } from 'vitest';
import { plantOf } from '../../src/model/plant.js';
import { bodyOf } from '../../src/model/rider-body.js';
import { riderSchema } from '../../src/quantity/rider-file.js';
import { boardWith, riderWith } from '../rigs.js';

const rows = [
  { statureM: 1.75, massKg: 75, centreM: 0.912, ankleInertia: 75.5, toppling: 670.8, frequency: 3.0 },
  { statureM: 1.8, massKg: 80, centreM: 0.938, ankleInertia: 85.2, toppling: 736, frequency: 2.96 },
];

describe('body from stature', () => {
  it.each(rows)('of $statureM m and $massKg kg matches the worked row', (row) => {
    const { centreAboveAnkleM: h, inertiaKgM2 } = bodyOf({ ...row, dragAreaM2: 0.5 });
    const ankleInertia = inertiaKgM2 + row.massKg * h * h;
    const toppling = row.massKg * 9.80665 * h;
    expect(h).toBeCloseTo(row.centreM, 3);
    expect(Math.abs(ankleInertia - row.ankleInertia)).toBeLessThan(0.1);
    expect(Math.abs(toppling / row.toppling - 1)).toBeLessThan(1e-3);
    expect(Math.sqrt(toppling / ankleInertia)).toBeCloseTo(row.frequency, 1);
  });

  it('has a radius of gyration of 0.239 H (Breniere), within 5 % of 0.237 H assembled from segments (Winter)', () => {
    const { inertiaKgM2 } = bodyOf({ statureM: 1, massKg: 1, dragAreaM2: 0 });
    expect(Math.sqrt(inertiaKgM2)).toBeCloseTo(0.239, 3);
    expect(Math.abs(Math.sqrt(inertiaKgM2) / 0.237 - 1)).toBeLessThan(0.05);
  });

  it("gives way to the rider's own numbers, and reaches the plant either way", () => {
    expect(plantOf(boardWith(), riderWith()).legLengthM).toBe(0.95);
    expect(plantOf(boardWith(), riderWith()).riderInertiaKgM2).toBe(9.5);
    const plain = riderSchema.parse({ ...riderWith(), body: { massKg: 75, statureM: 1.75 } });
    expect(plantOf(boardWith(), plain).legLengthM).toBeCloseTo(0.521 * 1.75, 12);
    expect(plantOf(boardWith(), plain).riderInertiaKgM2).toBeCloseTo(0.0572 * 75 * 1.75 ** 2, 12);
  });
});
