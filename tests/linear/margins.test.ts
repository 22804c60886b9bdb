/**
 * Are the margins of a loop those of the textbooks? Published worked examples and Octave's control package.
 */
import { describe, expect, it } from 'vitest';
import { magnitude, minus, over, plus, real, times, type Complex } from '../../src/linear/complex.js';
import { sensitivity } from '../../src/linear/loop-view.js';
import { allowedByDisk, marginsOf, type Loop } from '../../src/linear/margins.js';
import octave from '../reference/control.json' with { type: 'json' };

const DEG = Math.PI / 180;
const RANGE = { fromRadPerS: 1e-3, toRadPerS: 1e3 };

/** A ratio of polynomials in s = j w, coefficients from the highest power down. */
function ratio(numerator: readonly number[], denominator: readonly number[]): Loop {
  const value = (coefficients: readonly number[], s: Complex) =>
    coefficients.reduce<Complex>((sum, coefficient) => plus(times(sum, s), real(coefficient)), real(0));
  return (radPerS) =>
    over(value(numerator, { re: 0, im: radPerS }), value(denominator, { re: 0, im: radPerS }));
}

const product = (...factors: number[][]) =>
  factors.reduce((a, b) =>
    Array.from({ length: a.length + b.length - 1 }, (_, k) =>
      a.reduce((sum, value, i) => sum + value * (b[k - i] ?? 0), 0),
    ),
  );

const LOOPS: Readonly<Record<string, Loop>> = {
  '25/(s3+10s2+10s+10)': ratio([25], [1, 10, 10, 10]),
  '8.75(4s2+0.4s+1)/...': ratio([35, 3.5, 8.75], product([100, 1], [1, 0.22, 1], [0.01, 0.008, 1])),
  '10/(s(s+1)(s+5))': ratio([10], product([1, 0], [1, 1], [1, 5])),
  '100/(s(s+1)(s+5))': ratio([100], product([1, 0], [1, 1], [1, 5])),
  '200/((s+2)(s+4)(s+5))': ratio([200], product([1, 2], [1, 4], [1, 5])),
};

describe('margins', () => {
  it.each(octave.margins)('of $name are Octave’s', (expected) => {
    const { gainUp, gainDown, phaseRad, delayS, sensitivityPeak } = marginsOf(LOOPS[expected.name]!, RANGE);
    const gain = expected.gainMargin > 1 ? gainUp : gainDown;
    expect(gain.value / expected.gainMargin).toBeCloseTo(1, 9);
    expect(gain.radPerS! / expected.gainCrossingRadPerS).toBeCloseTo(1, 9);
    expect(phaseRad.value / DEG / Math.abs(expected.phaseMarginDeg)).toBeCloseTo(1, 9);
    expect(phaseRad.radPerS! / expected.phaseCrossingRadPerS).toBeCloseTo(1, 9);
    // Octave searched the peak by iteration, to about 1e-8.
    expect(sensitivityPeak.value / expected.iterated.sensitivityPeak).toBeCloseTo(1, 7);
    expect(sensitivityPeak.radPerS! / expected.iterated.sensitivityAtRadPerS).toBeCloseTo(1, 4);
    const isStable = expected.phaseMarginDeg > 0;
    if (isStable && expected.name !== '8.75(4s2+0.4s+1)/...') {
      expect(delayS.value / expected.delayMarginS!).toBeCloseTo(1, 9);
    }
  });

  it('of a published example: 3.6000 at 3.1623, 29.1104 degrees at 1.7844, 0.2847 s (MathWorks, allmargin)', () => {
    const { gainUp, phaseRad, delayS } = marginsOf(LOOPS['25/(s3+10s2+10s+10)']!, RANGE);
    expect([gainUp.value, gainUp.radPerS].map((value) => value!.toFixed(4))).toEqual(['3.6000', '3.1623']);
    expect([phaseRad.value / DEG, phaseRad.radPerS].map((value) => value!.toFixed(4))).toEqual([
      '29.1104',
      '1.7844',
    ]);
    expect(delayS.value.toFixed(4)).toBe('0.2847');
  });

  it('of a loop with three crossings take the nearest delay: 134.74 degrees at the last (MathWorks, allmargin)', () => {
    const { phaseRad, delayS, gainUp } = marginsOf(LOOPS['8.75(4s2+0.4s+1)/...']!, RANGE);
    expect((phaseRad.value / DEG).toFixed(2)).toBe('97.59');
    expect([gainUp.value, gainUp.radPerS].map((value) => value!.toFixed(4))).toEqual(['2.2716', '10.0053']);
    // Printed as 134.74; a root finder of SciPy says 134.7326.
    expect((delayS.value * delayS.radPerS!) / DEG).toBeCloseTo(134.7326, 4);
  });

  it('see a loop that is lost when its gain falls', () => {
    // Unstable pole at 1: 2 / (s - 1) needs a gain above 1, and has 2.
    const { gainDown, gainUp } = marginsOf(ratio([2], [1, -1]), RANGE);
    // Its response is real and negative at w = 0 only, which no grid has; a pole at zero more makes it cross.
    expect(gainUp.value).toBe(Infinity);
    expect(gainDown.value).toBe(0);
    const crossing = marginsOf(ratio([4, 4], product([1, 0], [1, -1])), RANGE);
    // L = 4 (s + 1) / (s (s - 1)) is -4 / w^2 ... real where w^2 = 1: value -4, so a quarter loses it.
    expect(crossing.gainDown.value).toBeCloseTo(0.25, 9);
    expect(crossing.gainDown.radPerS).toBeCloseTo(1, 9);
  });
});

describe('the disk margin', () => {
  it('of the published example is 0.458: factors 0.627 to 1.594, 25.8 degrees (MathWorks, diskmargin; from memory)', () => {
    const { disk } = marginsOf(LOOPS['25/(s3+10s2+10s+10)']!, RANGE);
    const { gainDown, gainUp, phaseRad } = allowedByDisk(disk.value);
    expect(disk.value.toFixed(3)).toBe('0.458');
    expect([gainDown, gainUp, phaseRad / DEG].map((value) => value.toPrecision(3))).toEqual([
      '0.627',
      '1.59',
      '25.8',
    ]);
  });

  it('of an integrator is 2: any gain (exact)', () => {
    const { disk } = marginsOf(ratio([3], [1, 0]), RANGE);
    expect(disk.value).toBeCloseTo(2, 12);
    expect(allowedByDisk(2).gainUp).toBe(Infinity);
  });

  it.each(Object.entries(LOOPS).filter(([name]) => !name.startsWith('100')))(
    'of %s is reached by a factor at its edge that puts the loop on -1',
    (_name, loop) => {
      const { disk } = marginsOf(loop, RANGE);
      const L = loop(disk.radPerS!);
      const edge = over(real(1), minus(sensitivity(L), real(0.5)));
      const half = times(edge, real(0.5));
      const factor = over(plus(real(1), half), minus(real(1), half));
      expect(magnitude(edge) / disk.value).toBeCloseTo(1, 9);
      expect(magnitude(plus(real(1), times(factor, L)))).toBeLessThan(1e-9);
    },
  );
});
