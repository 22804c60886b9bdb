/**
 * What do `rank`, `explain` and `plan` say of a cell that no thread survives? Which it is, of which profile, in one line, and 1 as the end.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { stringify } from 'yaml';
import { validProfile } from '../quantity/valid-values.js';
import { putFile } from '../store/temp-folder.js';
import { dyingProgram } from './dying-program.js';
import { sweepFolder } from './sweep-folder.js';
import { keptFixture, putKept } from '../tasks/kept-fixture.js';

const NAMED =
  /^a run of slate could not be computed: drop, bo, 35 %, seed 1: its thread ended; no fault of your files$/;

const DEADLY = { scenario: 'drop', rider: 'bo', chargePercent: 35 };

it.each([
  // The main thread ranks too, and outlives what it computes.
  [
    'rank',
    {},
    /^a run of (slate|chalk) could not be computed: (drop|level), (kim|bo), (80|35) %, seed 1: its thread ended; no fault of your files$/,
  ],
  ['explain slate', DEADLY, NAMED],
  ['explain slate --json --apply 1 --save-as mended', DEADLY, NAMED],
])('%s', (given, dies, said) => {
  const folder = sweepFolder();
  putFile(folder, 'profiles/gains/chalk.yaml', stringify(validProfile()));
  const deadly = dyingProgram(dies);
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [deadly, ...given.split(' '), '--rider', 'kim,bo', '--charge', 'own,35', '--workers', '2'],
    { cwd: folder, encoding: 'utf8' },
  );
  expect([status, stdout]).toEqual([1, '']);
  expect(stderr.trimEnd().split('\n').at(-1)).toMatch(said);
  expect(stderr).not.toContain('    at ');
});

it('plan evening', () => {
  const folder = sweepFolder();
  putKept(folder, 'evening', keptFixture());
  const given = ['plan', 'evening', '--workers', '2', '--out', 'plan.txt'];
  const program = dyingProgram({ scenario: 'weaving' });
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...given], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect([status, stdout]).toEqual([1, '']);
  expect(stderr.trimEnd().split('\n').at(-1)).toMatch(
    /^a run of evening could not be computed: weaving, \S+, 80 %, seed 1: its thread ended; no fault of your files$/,
  );
  expect(stderr).not.toContain('    at ');
  expect(existsSync(join(folder, 'plan.txt'))).toBe(false);
});
