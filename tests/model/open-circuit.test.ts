/**
 * The pack's open-circuit curve against its source: electrode functions of the 5 Ah 21700 cell (NMC 811 against
 * graphite-SiOx) of C.-H. Chen et al., J. Electrochem. Soc. 167 (2020) 080534, as PyBaMM's set Chen2020 prints them;
 * electrode data of the same set (from memory). Charge follows from the balance of lithium between 2.5 and 4.2 V.
 */
import { describe, expect, it } from 'vitest';
import { openCircuitTable } from '../../src/model/open-circuit.js';

const FARADAY_C_PER_MOL = 96485.33212;
const AREA_M2 = 0.065 * 1.58;
const NEGATIVE = { thicknessM: 85.2e-6, activeShare: 0.75, mostMolPerM3: 33133, startMolPerM3: 29866 };
const POSITIVE = { thicknessM: 75.6e-6, activeShare: 0.665, mostMolPerM3: 63104, startMolPerM3: 17038 };

const negativeV = (x: number) =>
  1.9793 * Math.exp(-39.3631 * x) +
  0.2482 -
  0.0909 * Math.tanh(29.8538 * (x - 0.1234)) -
  0.04478 * Math.tanh(14.9159 * (x - 0.2769)) -
  0.0205 * Math.tanh(30.4444 * (x - 0.6103));

const positiveV = (y: number) =>
  -0.809 * y +
  4.4875 -
  0.0428 * Math.tanh(18.5138 * (y - 0.5542)) -
  17.7326 * Math.tanh(15.789 * (y - 0.3117)) +
  17.5842 * Math.tanh(15.9308 * (y - 0.312));

/** Charge that fills an electrode from empty to full, C. */
const roomC = ({ thicknessM, activeShare, mostMolPerM3 }: typeof NEGATIVE) =>
  thicknessM * AREA_M2 * activeShare * mostMolPerM3 * FARADAY_C_PER_MOL;

const filled = ({ startMolPerM3, mostMolPerM3 }: typeof NEGATIVE) => startMolPerM3 / mostMolPerM3;

const LITHIUM_C = roomC(NEGATIVE) * filled(NEGATIVE) + roomC(POSITIVE) * filled(POSITIVE);

/** Cell voltage with the negative electrode filled to a share x, all other lithium in the positive one. */
const cellV = (x: number) => positiveV((LITHIUM_C - roomC(NEGATIVE) * x) / roomC(POSITIVE)) - negativeV(x);

/** Share x at which the cell shows a voltage, by halving. */
function fillAt(voltageV: number): number {
  let [low, high] = [0.005, 0.99];
  for (let pass = 0; pass < 60; pass++) {
    const middle = (low + high) / 2;
    if (cellV(middle) < voltageV) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const EMPTY = fillAt(2.5);
const FULL = fillAt(4.2);
const publishedV = (chargePercent: number) => cellV(EMPTY + (chargePercent / 100) * (FULL - EMPTY));
const POINTS = [0, 1, 2, 3, 5, 7, 10, 12, 14, 16, 18, 20, 30, 40, 50, 60, 70, 80, 85, 90, 95, 100];

describe('open-circuit curve of the published cell', () => {
  const table = openCircuitTable();

  it('starts the source itself right: 4.181 V as delivered, 5.15 Ah between its limits', () => {
    expect(cellV(filled(NEGATIVE))).toBeCloseTo(4.181, 3);
    expect((roomC(NEGATIVE) * (FULL - EMPTY)) / 3600).toBeCloseTo(5.15, 1);
  });

  it.each(POINTS)('agrees within 2 mV at %d percent', (percent) => {
    expect(Math.abs(table[percent]! - publishedV(percent))).toBeLessThan(0.002);
  });

  it('stays within 12 mV between the points, where straight lines stand for the curve', () => {
    const misses = Array.from(table, (volts, percent) => Math.abs(volts - publishedV(percent)));
    expect(Math.max(...misses)).toBeLessThan(0.012);
  });

  it('rises with charge all the way', () => {
    for (let percent = 1; percent <= 100; percent++) {
      expect(table[percent]!).toBeGreaterThan(table[percent - 1]!);
    }
  });
});

describe("a builder's own curve", () => {
  it('is joined by straight lines and goes on level beyond its ends', () => {
    const table = openCircuitTable([
      { chargePercent: 10, cellV: 3 },
      { chargePercent: 30, cellV: 3.4 },
      { chargePercent: 90, cellV: 4 },
    ]);
    expect(table[0]).toBe(3);
    expect(table[10]).toBe(3);
    expect(table[20]).toBeCloseTo(3.2, 12);
    expect(table[60]).toBeCloseTo(3.7, 12);
    expect(table[90]).toBe(4);
    expect(table[100]).toBe(4);
  });
});
