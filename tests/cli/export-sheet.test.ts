/** Does `export --sheet` print and write what is to be typed, and nothing where that falls or where a file is faulty? */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { validSheet, type RawRow } from '../quantity/valid-sheet.js';
import { putFile } from '../store/temp-folder.js';
import { keptFixture, putKept } from '../tasks/kept-fixture.js';
import { folderOfScenarios, provenKept } from '../tasks/proven-kept.js';
import { runProgram } from './run-program.js';

const ROWS: RawRow[] = [
  { label: 'Hold', quantity: 'proportionalAPerDeg', unit: 'mA/deg', decimals: 0 },
  { label: 'Calm', quantity: 'rateAPerDegPerS', unit: 'mA/(deg/s)', decimals: 0 },
  { label: 'Memory', quantity: 'blendTimeS', unit: 'ms', decimals: 0 },
];

let proven: Awaited<ReturnType<typeof provenKept>>;
beforeAll(async () => {
  proven = await provenKept();
});

function folderWith(rows: readonly RawRow[] = ROWS): string {
  const folder = folderOfScenarios(proven);
  const { profile, rig, cells, figures } = proven.kept.value;
  putKept(folder, 'evening', keptFixture({ profile, rig, cells, figures }));
  putFile(folder, 'profiles/sheets/slab.yaml', stringify({ ...validSheet(rows), loopRateHz: 800 }));
  return folder;
}

const run = (folder: string, ...given: string[]) =>
  runProgram(folder, 'export', 'evening', '--workers', '1', ...given);

it('prints what is to be typed', () => {
  const { code, out, err } = run(folderWith(), '--sheet', 'slab');
  expect([code, err]).toEqual([0, '']);
  expect(out).toContain('still deserves its rank');
  expect(out).toMatch(/\n {2}Hold {4,}20000\n {2}Calm {4,}1200\n {2}Memory {3,}4000\n/);
});

it('writes it to a new file, and ends with 1 where the rank is lost', () => {
  const folder = folderWith(ROWS.map((row) => (row.label === 'Calm' ? { ...row, greatest: 20 } : row)));
  const { code, out, err } = run(folder, '--sheet', 'slab', '--out', 'type.txt');
  expect([code, out]).toEqual([1, '']);
  expect(err).toMatch(/^wrote type\.txt\nTyped like this it does NOT deserve its rank/);
  const text = readFileSync(join(folder, 'type.txt'), 'utf8');
  expect(text).toContain('does NOT deserve its rank');
  expect(text).toContain('not to be ridden like this:');
});

it('prints it as JSON, a refused sheet without anything to type', () => {
  const { code, out, err } = run(folderWith(), '--sheet', 'slab', '--json');
  expect([code, err]).toEqual([0, '']);
  expect(JSON.parse(out)).toMatchObject({
    name: 'evening',
    sheet: 'slab',
    refused: false,
    deserves: true,
    rows: [
      { label: 'Hold', typed: '20000', proven: 20, asTyped: 20 },
      { label: 'Calm', typed: '1200', proven: 1.2, asTyped: 1.2 },
      { label: 'Memory', typed: '4000', proven: 4, asTyped: 4 },
    ],
  });
  const folder = folderWith(ROWS.map((row) => (row.label === 'Hold' ? { ...row, sign: 'minus' } : row)));
  const refused = run(folder, '--sheet', 'slab', '--json');
  expect(refused.code).toBe(1);
  expect(JSON.parse(refused.out)).toMatchObject({ refused: true, deserves: false, rows: [] });
});

it('a sign that fells it is refused with 1, and nothing is written', () => {
  const folder = folderWith(ROWS.map((row) => (row.label === 'Hold' ? { ...row, sign: 'minus' } : row)));
  const { code, out, err } = run(folder, '--sheet', 'slab', '--out', 'type.txt');
  expect([code, out]).toEqual([1, '']);
  expect(err).toContain('Refused: with the signs of slab it falls in 2 of 2 runs');
  expect(existsSync(join(folder, 'type.txt'))).toBe(false);
});

describe('bad input', () => {
  it('is told all at once, before anything is run', () => {
    const folder = folderWith([{ ...ROWS[0]!, unit: 'Hz' }, ...ROWS.slice(1)]);
    const { code, out, err } = run(folder, '--sheet', 'slab', '--out', 'nowhere/type.txt');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('nowhere/type.txt: expected a path in a folder that exists');
    expect(err).toMatch(/slab\.yaml:\d+:\d+ rows\[0\]\.unit: expected a unit of current per angle/);
  });

  it.each([
    [['--sheet', 'slap'], /did you mean slab/],
    [['--sheet', 'slab', '--as', 'json'], /one of the two/],
    [['--sheet', 'slab', '--format', 'svg'], /cannot be used/],
    [[], /one of the two/],
  ])('%j ends with 2', (given, expected) => {
    const { code, out, err } = run(folderWith(), ...given);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(expected);
  });
});
