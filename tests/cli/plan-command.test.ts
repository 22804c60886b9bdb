/** Does `plan` print and write the way to the first ride, and tell what is wrong before it computes anything? */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { keptFixture, putKept } from '../tasks/kept-fixture.js';
import { putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { runProgram } from './run-program.js';

function folderWithKept(): string {
  const folder = workingFolder();
  putKept(folder, 'evening', keptFixture());
  return folder;
}

const run = (folder: string, ...given: string[]) =>
  runProgram(folder, 'plan', 'evening', '--workers', '1', ...given);

it('prints the plan, also for a hyphen, and writes the same to a new file', () => {
  const folder = folderWithKept();
  const { code, out } = run(folder, '--out', '-');
  expect(code).toBe(0);
  expect(out).toMatch(/^First ride with evening: .*\n/);
  expect(existsSync(join(folder, '-'))).toBe(false);
  const written = run(folder, '--out', 'plan.txt');
  expect([written.code, written.out]).toEqual([0, '']);
  const words = (text: string) => text.split(/\s+/).join(' ');
  expect(words(readFileSync(join(folder, 'plan.txt'), 'utf8'))).toBe(words(out));
});

it('tells every problem at once, and spoils nothing', () => {
  const folder = folderWithKept();
  putFile(folder, 'there.txt', 'mine\n');
  const { code, out, err } = run(folder, '--rider', 'nobody', '--out', 'there.txt');
  expect([code, out]).toEqual([2, '']);
  expect(err).toMatch(/^rider: expected a rider that it was proven under/);
  expect(err).toContain('there.txt: expected a new file, or --force to replace one');
  expect(readFileSync(join(folder, 'there.txt'), 'utf8')).toBe('mine\n');
  const own = run(folder, '--out', 'shortlist/evening.yaml', '--force');
  expect([own.code, own.out]).toEqual([2, '']);
  expect(own.err).toContain('expected a file elsewhere');
});
