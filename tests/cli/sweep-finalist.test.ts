/**
 * Are the figures of a finalist its own? Those that `rank` gives the same profile once it is saved, and those that it has when nobody
 * is dropped from the race.
 */
import { expect, it } from 'vitest';
import { runProgram } from './run-program.js';
import { OPEN_SWEEP, sweepFolder } from './sweep-folder.js';

interface Sweep {
  tried: { kind: string }[];
  finalists: {
    name: string;
    failures: number;
    score: number;
    worst: string;
    cells: { key: string; failed: boolean; cost: number }[];
  }[];
}

interface RankedCell {
  scenario: string;
  rider: string;
  chargePercent: number;
  seed: number;
  failed: boolean;
  cost: number;
}

interface Ranking {
  profiles: { name: string; failures: number; score: number; worst: RankedCell; cells: RankedCell[] }[];
}

const keyOf = ({ scenario, rider, chargePercent, seed }: RankedCell) =>
  [scenario, rider, chargePercent, seed].join('/');

it.each([1, 7])('finalist %i is ranked as the sweep had it', (place) => {
  const folder = sweepFolder();
  const cells = ['--rider', 'all', '--charge', '80,20', '--seeds', '2', '--json'];
  const swept = runProgram(folder, ...OPEN_SWEEP, ...cells, '--keep', String(place), '--save-as', 'found');
  expect(swept.code).toBe(0);
  const finalist = (JSON.parse(swept.out) as Sweep).finalists[place - 1]!;
  const ranked = runProgram(folder, 'rank', 'slate', 'found', ...cells);
  const found = (JSON.parse(ranked.out) as Ranking).profiles.find(({ name }) => name === 'found')!;
  expect(found.cells).toHaveLength(16);
  expect({
    failures: found.failures,
    score: found.score,
    worst: keyOf(found.worst),
    cells: found.cells.map((cell) => ({ key: keyOf(cell), failed: cell.failed, cost: cell.cost })),
  }).toEqual({
    failures: finalist.failures,
    score: finalist.score,
    worst: finalist.worst,
    cells: finalist.cells.map(({ key, failed, cost }) => ({ key, failed, cost })),
  });
});

it('finalists of a race have the figures that they have when everyone runs in every cell', () => {
  const folder = sweepFolder();
  const swept = (...more: string[]) => {
    const given = ['--candidates', '60', '--no-downhill', '--odex-cells', '0', '--json', ...more];
    const { code, out } = runProgram(folder, 'sweep', ...given);
    expect(code).toBe(0);
    const { tried, finalists } = JSON.parse(out) as Sweep;
    const dropped = tried.filter(({ kind }) => kind === 'dropped').length;
    const own = finalists.map(({ name, failures, score, worst, cells }) => {
      return { name, failures, score, worst, cells };
    });
    return { dropped, finalists: own };
  };
  const [raced, open] = [swept(), swept('--exhaustive')];
  expect(raced.dropped).toBeGreaterThan(10);
  expect(open.dropped).toBe(0);
  expect(raced.finalists.slice(0, 10)).toEqual(open.finalists.slice(0, 10));
  for (const finalist of raced.finalists) {
    const other = open.finalists.find(({ name }) => name === finalist.name);
    if (other !== undefined) expect(finalist).toEqual(other);
  }
});
