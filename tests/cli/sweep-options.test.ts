/**
 * Is every option of `sweep` heard? One that would change nothing beside the others is told, with 2 as the end, before anything is
 * run.
 */
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { allPaths } from '../store/temp-folder.js';
import { runProgram } from './run-program.js';
import { OPEN_SWEEP, sweepFolder } from './sweep-folder.js';

it.each([
  ['--shard 1/2', ['expected --exhaustive or --grid with --shard']],
  ['--shard 1/2 --no-downhill', ['expected --exhaustive or --grid with --shard']],
  [
    '--grid 3 --shard 1/2 --json --keep 1 --save-as a',
    [
      'expected no --json with --shard',
      'expected no --keep with --shard',
      'expected no --save-as with --shard',
    ],
  ],
  ['--grid 3 --candidates 20', ['expected --candidates or --grid, not both']],
  ['--keep 1', ['expected --keep N and --save-as NAME together']],
  ['--save-as a', ['expected --keep N and --save-as NAME together']],
  ['--keep 17 --save-as a', ['from 1 to 16']],
  ['merge none --keep 1', ['expected --keep N and --save-as NAME together']],
  ['merge none --save-as a', ['expected --keep N and --save-as NAME together']],
  ['merge none --keep 1 --save-as slate', ['none: expected', 'profiles/gains/slate.yaml: expected a name']],
  ['merge none --no-downhill', ['expected no --no-downhill with merge']],
  ['--shard 0/3', ['such as 3/8']],
  ['--shard 4/3', ['such as 3/8']],
  ['--shard a/b', ['such as 3/8']],
  ['--out=', ['Expected the path of a file']],
  ['--charge own,', ['or own for the scenario']],
  ['--seed -1', ['a whole number from 0']],
  [
    '--range rate=1..2',
    ['range rate: expected a number of a profile such as rateAPerDegPerS or rateDegPerS'],
  ],
  ['--range rateAPerDegPerS=3..1 --range x=1..2', ['received 3..1', 'range x: expected one of']],
  [
    '--from slate --range belowPercent=5..20 --range rateAPerDegPerS=1..2',
    [
      'range belowPercent: expected a profile with headroomLift to begin from, named with --from, received slate, which',
    ],
  ],
  ['--grid 200', ['grid: expected at most 20000 candidates, received 40000']],
])('%s', (given, said) => {
  const folder = sweepFolder();
  const before = allPaths(folder);
  const { code, out, err } = runProgram(folder, 'sweep', ...given.split(' '));
  expect([code, out]).toEqual([2, '']);
  const lines = err.trimEnd().split('\n');
  expect(lines).toHaveLength(said.length);
  said.forEach((text, index) => expect(lines[index]).toContain(text));
  expect(allPaths(folder)).toEqual(before);
});

it('tells of what lies beside its file, and leaves it there', () => {
  const folder = sweepFolder();
  const given = [...OPEN_SWEEP, '--charge', 'own', '--shard', '1/2', '--out', 'kept.ndjson'];
  expect(runProgram(folder, ...given).code).toBe(0);
  cpSync(join(folder, 'kept.ndjson'), join(folder, 'kept.ndjson.1234567890'));
  const { code, err } = runProgram(folder, ...given);
  expect([code, err.split('\n')[0]]).toEqual([
    0,
    'kept.ndjson.1234567890 is a copy, or was left by a run that was killed: nothing reads it',
  ]);
  expect(allPaths(folder)).toContain('kept.ndjson.1234567890');
});

it('own stands for the charge of each scenario, and a charge that is met twice counts once', () => {
  const folder = sweepFolder();
  const given = [
    'sweep',
    '--range',
    'proportionalAPerDeg=15..30',
    '--grid',
    '2',
    '--odex-cells',
    '0',
    '--json',
    '--charge',
  ];
  const cells = (charges: string) => {
    const report = JSON.parse(runProgram(folder, ...given, charges).out);
    return report.finalists[0].cells.map(({ key }: { key: unknown }) => key);
  };
  const own = cells('own');
  expect(own).toHaveLength(4);
  expect(cells('80,own')).toEqual(own);
  expect(cells('own,20')).toHaveLength(8);
});
