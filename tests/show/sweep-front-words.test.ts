/** Do words tell who is on the front, and what each gives for what? */
import { describe, expect, it } from 'vitest';
import { frontWords } from '../../src/show/sweep-front-words.js';
import type { ScatterPoint, ScatterSpec } from '../../src/show/sweep-scatter.js';

const point = (
  sign: string,
  comfort: number,
  reserve: number,
  changes: Partial<ScatterPoint> = {},
): ScatterPoint => ({
  name: `c${sign}`,
  sign,
  groups: { comfort, reserve, agility: 0.3 },
  isOnFront: true,
  ...changes,
});

const wordsOf = (...points: ScatterPoint[]) =>
  frontWords({ x: 'comfort', y: 'reserve', points } as ScatterSpec);

describe('the front in words', () => {
  it('goes from the least of one cost to the least of the other, with what is given for what', () => {
    const [first, front, others] = wordsOf(point('1', 0.5, 0.2), point('2', 0.2, 0.6), point('3', 0.3, 0.45));
    expect(first![0]).toMatch(/^Comfort against reserve: of 3 finalists 3 are matched by nobody in both/);
    expect(front).toEqual([
      'Matched by nobody in both, from the least comfort to the least reserve:',
      '2 c2: comfort 0.20, reserve 0.60, agility 0.30.',
      '3 c3: comfort 0.30, reserve 0.45, agility 0.30; against c2 0.15 less reserve for 0.1 more comfort.',
      '1 c1: comfort 0.50, reserve 0.20, agility 0.30; against c3 0.25 less reserve for 0.2 more comfort.',
    ]);
    expect(others).toBeUndefined();
  });

  it('says by whom the others are matched, and whom the third cost keeps on the front', () => {
    const [, front, others] = wordsOf(
      point('1', 0.2, 0.2),
      point('2', 0.3, 0.2, { isOnFront: false }),
      point('3', 0.4, 0.4, { groups: { comfort: 0.4, reserve: 0.4, agility: 0.1 } }),
    );
    expect(front).toHaveLength(2);
    expect(others).toEqual([
      'The others:',
      '2 c2: comfort 0.30, reserve 0.20, agility 0.30; matched in both by c1.',
      '3 c3: comfort 0.40, reserve 0.40, agility 0.10; matched in both by c1, yet by nobody once agility counts too.',
    ]);
  });

  it('counts those that match when there are many, and tells equals', () => {
    const many = ['1', '2', '3', '4', '5'].map((sign, index) =>
      point(sign, 0.2 + 0.01 * index, 0.3 - 0.01 * index),
    );
    const [, , others] = wordsOf(...many, point('6', 0.9, 0.9, { isOnFront: false }));
    expect(others![1]).toMatch(/matched in both by c1 and 4 more\.$/);
    expect(wordsOf(point('1', 0.2, 0.2), point('2', 0.2, 0.2))[1]![2]).toMatch(/; as much as c1 in both\.$/);
  });

  it('has as many decimals as the costs differ by', () => {
    const [, front] = wordsOf(point('1', 0.28, 0.2468), point('2', 0.2803, 0.2464));
    expect(front![1]).toMatch(/comfort 0\.28000, reserve 0\.24680, agility 0\.30\./);
    expect(front![2]).toMatch(/0\.0004 less reserve for 0\.0003 more comfort/);
  });
});
