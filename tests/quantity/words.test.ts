/**
 * Are places, received values and suggestions put into words as a person would?
 */
import { describe, expect, it } from 'vitest';
import { keyPath } from '../../src/quantity/key-path.js';
import { receivedInWords } from '../../src/quantity/received.js';
import { suggestion } from '../../src/quantity/suggestion.js';

describe('a path', () => {
  it('has points between keys and brackets around positions', () => {
    expect(keyPath(['road', 2, 'lengthM'])).toBe('road[2].lengthM');
    expect(keyPath([0, 'a'])).toBe('[0].a');
    expect(keyPath([])).toBe('');
  });
});

describe('a received value', () => {
  it.each([
    [undefined, 'nothing'],
    [0, '0'],
    [1e-7, '1e-7'],
    [false, 'false'],
    [[1], 'a list of one entry'],
    [{}, 'an empty section'],
    [10n, 'a bigint'],
  ])('is in words: %s', (value, words) => {
    expect(receivedInWords(value)).toBe(words);
  });
});

describe('a suggestion', () => {
  const keys = ['proportionalAPerDeg', 'rateAPerDegPerS', 'integralAPerDegS'];

  it.each([
    ['proportionalAperDeg', 'proportionalAPerDeg'],
    ['propotionalAPerDeg', 'proportionalAPerDeg'],
    ['RATEAPERDEGPERS', 'rateAPerDegPerS'],
    ['integral', 'integralAPerDegS'],
  ])('is made for %s', (word, near) => {
    expect(suggestion(word, keys)).toBe(near);
  });

  it.each(['summary', 'x', '', 'int', 'rateAPerDegPerS', 'r'.repeat(5000)])('is not made for %s', (word) => {
    expect(suggestion(word, keys.filter((key) => key !== word).slice(0, 1))).toBeUndefined();
  });

  it('is not made when a beginning fits several', () => {
    expect(suggestion('verti', ['verticalStiffnessNPerM', 'verticalDampingNSPerM'])).toBeUndefined();
  });

  it('never swaps one single letter for another', () => {
    expect(suggestion('F', ['A', 'B', 'C'])).toBeUndefined();
  });
});
