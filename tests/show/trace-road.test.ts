import { describe, expect, it } from 'vitest';
import { heightScale, leanScale } from '../../src/show/scale.js';
import { roadHeightM, roadHeightsM, roadSlopeRatio } from '../../src/show/trace-road.js';
import { leanSentence, roadSentence } from '../../src/show/trace-sentences.js';

const road = { originM: -1, spacingM: 0.5, bareHeightM: Float64Array.of(0, 0, 0.1, 0.3, 0.3) };

describe('the height of a road', () => {
  it('is straight between the points of its grid, and stays at its ends', () => {
    expect(roadHeightM(road, -1)).toBe(0);
    expect(roadHeightM(road, 0)).toBeCloseTo(0.1, 12);
    expect(roadHeightM(road, 0.25)).toBeCloseTo(0.2, 12);
    expect(roadHeightM(road, 1)).toBeCloseTo(0.3, 12);
    expect(roadHeightM(road, 7)).toBeCloseTo(0.3, 12);
    expect(roadHeightM(road, -7)).toBe(0);
    expect(roadHeightM(road, NaN)).toBeNaN();
    expect([...roadHeightsM(road, Float64Array.of(-0.25, 0.5))]).toEqual([
      expect.closeTo(0.05, 12),
      expect.closeTo(0.3, 12),
    ]);
  });

  it('gives the slope over the width of a wheel, uphill positive', () => {
    expect(roadSlopeRatio(road, 0.25, 0.25)).toBeCloseTo(0.4, 12);
    expect(roadSlopeRatio(road, 3, 0.25)).toBeCloseTo(0, 12);
  });
});

describe('sentences', () => {
  it('tell the range of leans by their sides', () => {
    expect(leanSentence(Float64Array.of(0, 0.1, -0.05))).toBe(
      'Lean stays between back 2.9° and forward 5.7°.',
    );
    expect(leanSentence(Float64Array.of(0.1, 0.2))).toBe(
      'Lean stays between forward 5.7° and forward 11.5°.',
    );
    expect(leanSentence(Float64Array.of(0, 0))).toBe('Lean stays upright.');
    expect(leanSentence(new Float64Array())).toBe('Lean was not measured.');
  });

  it('tell where a road begins and ends', () => {
    expect(roadSentence(Float64Array.of(0, -0.06))).toBe('Road goes from 0.00 m to -0.06 m.');
    expect(roadSentence(Float64Array.of(1, 1.5, 1.25))).toBe(
      'Road goes from 1.00 m to 1.25 m and stays between 1.00 m and 1.50 m.',
    );
    expect(roadSentence(Float64Array.of(0.001, 0.002))).toBe('Road stays level at 0.00 m.');
    expect(roadSentence(new Float64Array())).toBe('Road was not measured.');
  });
});

describe('scales', () => {
  it('have upright in the middle of lean, in words', () => {
    const { low, high, ticks } = leanScale({ lowest: -5, highest: 3 });
    expect([low, high]).toEqual([-8, 8]);
    expect(ticks.map(({ text }) => text)).toEqual([
      'forward 8°',
      'back 8°',
      'upright',
      'forward 4°',
      'back 4°',
    ]);
  });

  it('climb and fall with the road by a ladder', () => {
    expect(heightScale({ lowest: 0, highest: 0 })).toMatchObject({ low: -0, high: 0.05 });
    expect(heightScale({ lowest: 0, highest: 4.97 })).toMatchObject({ high: 5 });
    expect(heightScale({ lowest: -0.06, highest: 0 })).toMatchObject({ low: -0.1, high: 0 });
    expect(heightScale({ lowest: -0.06, highest: 0 }).ticks.map(({ text }) => text)).toEqual(
      expect.arrayContaining(['road 0 m', 'road -0.05 m', 'road -0.1 m']),
    );
    expect(heightScale({ lowest: -70, highest: 0 })).toMatchObject({ low: -100 });
  });
});
