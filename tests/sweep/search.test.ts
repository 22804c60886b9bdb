/** Does the search find the best of a made-up world, and does dropping candidates on the way change who is best? */
import { describe, expect, it } from 'vitest';
import { FINALISTS } from '../../src/sweep/racing.js';
import { priceOf, searched, specWith } from './made-judge.js';

const names = (candidates: readonly { name: string }[]) => candidates.map(({ name }) => name);
const numbers = (candidates: readonly { values: readonly number[] }[]) =>
  candidates.map(({ values }) => values.join(' '));

describe('a search', () => {
  it('asks the same and finds the same every time', () => {
    expect(searched(specWith())).toEqual(searched(specWith()));
    expect(numbers(searched(specWith({ seed: 2 })).found.finalists)).not.toEqual(
      numbers(searched(specWith()).found.finalists),
    );
  });

  it.each([1, 2, 3, 4, 5])('has the same first ten as one that drops nobody, seed %i', (seed) => {
    const race = searched(specWith({ seed, isRefined: false }));
    const all = searched(specWith({ seed, isRefined: false, isExhaustive: true }));
    expect(names(race.found.finalists).slice(0, 10)).toEqual(names(all.found.finalists).slice(0, 10));
    expect(race.runs.size).toBeLessThan(0.4 * all.runs.size);
  });

  it('goes on downhill to better ones than the race had', () => {
    const scoreOf = (spec: ReturnType<typeof specWith>) => {
      const { found } = searched(spec);
      return spec.cellOrder.reduce((sum, cell) => sum + priceOf(found.finalists[0]!, cell).cost, 0);
    };
    expect(scoreOf(specWith())).toBeLessThan(scoreOf(specWith({ isRefined: false })));
    const { progress } = searched(specWith()).found;
    expect(progress.length).toBeGreaterThan(3);
    expect(progress.map(({ score }) => score)).toEqual(
      progress.map(({ score }) => score).toSorted((a, b) => b - a),
    );
  });

  it('tells of everyone who was tried: out at once, dropped after so many cells, or run in all', () => {
    const spec = specWith();
    const { found, runs } = searched(spec, ({ gains }) => gains.proportionalAPerDeg < 6);
    const cellsOf = (values: readonly number[]) =>
      spec.cellOrder.filter((cell) => runs.has(`${values.join(' ')} ${cell}`)).length;
    const kinds = new Set(found.tried.map(({ fate }) => fate.kind));
    expect(kinds).toEqual(new Set(['hopeless', 'dropped', 'run in every cell']));
    for (const { candidate, fate } of found.tried) {
      if (fate.kind === 'hopeless') expect(cellsOf(candidate.values)).toBe(0);
      if (fate.kind === 'dropped') expect(cellsOf(candidate.values)).toBe(fate.afterCells);
      if (fate.kind === 'run in every cell') expect(cellsOf(candidate.values)).toBe(spec.cellOrder.length);
    }
    expect(new Set(names(found.tried.map(({ candidate }) => candidate))).size).toBe(found.tried.length);
    expect(new Set(numbers(found.tried.map(({ candidate }) => candidate))).size).toBe(found.tried.length);
  });

  it('keeps sixteen at most, of whom each was run in every cell', () => {
    const { found } = searched(specWith());
    expect(found.finalists.length).toBeLessThanOrEqual(FINALISTS);
    expect(found.finalists.length).toBeGreaterThan(10);
  });

  it('keeps no two found downhill that are alike, but the better of them', () => {
    const { found } = searched(specWith());
    const spreadCount = searched(specWith({ isRefined: false })).found.tried.length;
    const isFresh = ({ name }: { name: string }) => Number(name.slice(1)) > spreadCount;
    const fresh = found.finalists.filter(isFresh);
    expect(fresh.length).toBeGreaterThan(0);
    for (const [place, { values }] of fresh.entries()) {
      const isLike = (better: readonly number[]) =>
        better.every((value, index) => Math.abs(value / values[index]! - 1) <= 0.045);
      expect(fresh.slice(0, place).filter((better) => isLike(better.values))).toEqual([]);
    }
  });

  it('of a grid tries every point once and does not go downhill where that is not asked for', () => {
    const { found, asked } = searched(specWith({ grid: 7, isRefined: false }));
    expect(found.tried).toHaveLength(49);
    expect(asked.map(({ stage }) => stage)).not.toContain('going downhill');
  });

  it.each([1, 3, 4, 5, 9, 17, 40, 120])('goes through with %i cells', (count) => {
    const cellOrder = Array.from({ length: count }, (_, cell) => count - 1 - cell);
    const { found } = searched(specWith({ cellOrder, count: 30 }));
    expect(found.finalists.length).toBeGreaterThan(0);
  });

  it('finds nobody where nobody holds the board up', () => {
    const { found, asked } = searched(specWith(), () => true);
    expect(found.finalists).toEqual([]);
    expect(asked.flatMap(({ candidates }) => candidates)).toEqual([]);
  });
});
