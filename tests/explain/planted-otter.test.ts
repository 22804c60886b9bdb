/**
 * Does the first finding name what was planted? On a light board: every cause, several riders, strengths and seeds.
 */
import { expect, it } from 'vitest';
import { missesOf, plantAll } from './planted.js';

it('names the planted cause first in at least 95 of 100 cases', () => {
  const cases = plantAll('otter', { riders: ['light', 'regular', 'heavy', 'seasoned'], times: 2 });
  const misses = missesOf(cases);
  expect(cases.length).toBeGreaterThanOrEqual(100);
  expect(misses.length / cases.length, misses.join('\n')).toBeLessThanOrEqual(0.05);
});
