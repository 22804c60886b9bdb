/**
 * Does `rank` print what a person and a program can read, and refuse what makes no sense?
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { describe, expect, it } from 'vitest';
import { putFile, tempFolder } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { validBoard, validProfile, validRider, validScenario } from '../quantity/valid-values.js';
import { runProgram } from './run-program.js';

function folderWithTwo(): string {
  const folder = workingFolder();
  const loose = { ...validProfile(), gains: { proportionalAPerDeg: 2, rateAPerDegPerS: 0.1 } };
  putFile(folder, 'profiles/gains/loose.yaml', stringify(loose));
  const rolling = {
    ...validScenario(),
    start: { speedKmPerH: 8 },
    measure: { from: 'gust', as: 'disturbance' },
    road: [{ lengthM: 50 }],
  };
  putFile(folder, 'scenarios/gust.yaml', stringify({ ...rolling, shifts: [] }));
  return folder;
}

describe('rank', () => {
  it('prints the table, what to try first, and the check against odex', () => {
    const { code, out, err } = runProgram(folderWithTwo(), 'rank');
    expect(code).toBe(0);
    const rows = out.split('\n');
    const header = rows.findIndex((row) => row.trimStart().startsWith('#'));
    expect(rows[header + 1]).toMatch(/^1\s+slate/);
    expect(rows[header + 2]).toMatch(/^2\s+loose/);
    expect(out).toContain('Try first: slate');
    expect(out).toMatch(/loose: falls in [12] of 2 runs/);
    expect(out).toMatch(/agrees with odex on the 2 worst runs/);
    expect(err).toMatch(/slate: falls 0\/2/);
    expect(rows.every((row) => row.length <= 100)).toBe(true);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('runs when no command is named', () => {
    const folder = folderWithTwo();
    expect(runProgram(folder).out).toBe(runProgram(folder, 'rank').out);
  });

  it('prints JSON from which any row can be run again', () => {
    const folder = folderWithTwo();
    const { out } = runProgram(folder, 'rank', '--json', '--seeds', '2');
    const report = JSON.parse(out);
    expect(report).toMatchObject({
      version: expect.stringMatching(/^\d+\.\d+\.\d+/),
      solver: 'fixed',
      seeds: [1, 2],
      rig: { board: { name: 'pebble', controller: { loopRateHz: 800 } }, riders: [{ name: 'kim' }] },
      scenarios: [{ name: 'gust' }, { name: 'kerb' }],
      profiles: [
        { rank: 1, name: 'slate', failures: 0 },
        { rank: 2, name: 'loose' },
      ],
      check: { agrees: true, largestDifference: { metric: expect.any(String) } },
    });
    expect(report.profiles[0].cells).toHaveLength(4);
    expect(report.profiles[0].cells[3]).toMatchObject({
      scenario: 'kerb',
      rider: 'kim',
      seed: 2,
      outcome: 'upright',
      overshootPercent: expect.any(Number),
      saturationShare: expect.any(Number),
    });
    const again = JSON.parse(
      runProgram(folder, 'run', 'slate', 'kerb', '--seed', '2', '--solver', 'fixed', '--json').out,
    );
    expect(report.profiles[0].cells[3]).toMatchObject(again.metrics);
  });

  it('keeps the order asked for in table, JSON and CSV, with the true ranks', () => {
    const folder = folderWithTwo();
    const asked = ['--sort', 'profile'];
    const { out } = runProgram(folder, 'rank', ...asked);
    const rows = out.split('\n').filter((row) => /^\d\s/.test(row));
    expect(rows.map((row) => row.split(/\s+/).slice(0, 2))).toEqual([
      ['2', 'loose'],
      ['1', 'slate'],
    ]);
    expect(out).toMatch(/^#\s+profile ▴/m);
    expect(out).toContain('Try first: slate');
    const report = JSON.parse(runProgram(folder, 'rank', ...asked, '--json').out);
    expect(report.profiles).toMatchObject([
      { rank: 2, name: 'loose' },
      { rank: 1, name: 'slate' },
    ]);
    const csv = runProgram(folder, 'rank', ...asked, '--reverse', '--csv', '-');
    expect(csv.code).toBe(0);
    const lines = csv.out.split('\r\n').map((line) => line.split(',').slice(0, 2).join(' '));
    expect(lines).toEqual(['rank profile', '1 slate', '2 loose', '']);
    expect(csv.err).toContain('agrees with odex');
  });

  it('writes CSV beside the table, and never over another file', () => {
    const folder = folderWithTwo();
    const path = join(folder, 'rank.csv');
    const first = runProgram(folder, 'rank', '--csv', 'rank.csv');
    expect(first.code).toBe(0);
    expect(first.out).toContain('Try first: slate');
    expect(first.err).toContain('wrote rank.csv');
    expect(readFileSync(path, 'utf8')).toMatch(/^rank,profile,.*,standing\.gust,standing\.kerb\r\n1,slate,/);
    putFile(folder, 'rank.csv', 'mine');
    const again = runProgram(folder, 'rank', '--csv', 'rank.csv');
    expect(again.code).toBe(2);
    expect(again.err).toContain('--force');
    expect(readFileSync(path, 'utf8')).toBe('mine');
    expect(runProgram(folder, 'rank', '--csv', 'rank.csv', '--force').code).toBe(0);
    expect(readFileSync(path, 'utf8')).toMatch(/^rank,profile/);
  });

  it('takes darker colours on a light background', () => {
    const folder = folderWithTwo();
    const colours = (...given: string[]) =>
      new Set(runProgram(folder, 'rank', '--color', '256', ...given).out.match(/38;5;\d+/g));
    const dark = colours();
    const light = colours('--background', 'light');
    expect(dark.size).toBeGreaterThan(0);
    expect(light.size).toBe(dark.size);
    expect([...light].filter((colour) => dark.has(colour))).toEqual([]);
  });

  it('changes only the scores when weights change', () => {
    const folder = folderWithTwo();
    const cells = (given: string[]) =>
      JSON.parse(runProgram(folder, 'rank', 'slate', '--json', ...given).out).profiles[0];
    const usual = cells([]);
    const weighted = cells(['--weights', 'settling=0,overshoot=5']);
    expect(weighted.score).not.toBe(usual.score);
    expect(weighted.cells[0].settlingTimeS).toBe(usual.cells[0].settlingTimeS);
  });

  it('tells every wrong name at once, with a suggestion, and ends with 2', () => {
    const { code, out, err } = runProgram(
      folderWithTwo(),
      'rank',
      'slte',
      '--rider',
      'kym',
      '--scenarios',
      'gust,curb',
    );
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain("'slte'");
    expect(err).toContain('slate');
    expect(err).toContain("'kym'");
    expect(err).toContain("'curb'");
  });

  it('ranks for every rider when asked for all', () => {
    const folder = folderWithTwo();
    putFile(folder, 'profiles/riders/lee.yaml', stringify(validRider()));
    const { riders } = JSON.parse(runProgram(folder, 'rank', 'slate', '--rider', 'all', '--json').out).rig;
    expect(riders.map(({ name }: { name: string }) => name)).toEqual(['kim', 'lee']);
  });

  it('says what is missing in a folder without profiles', () => {
    const folder = tempFolder();
    putFile(folder, 'profiles/boards/pebble.yaml', stringify(validBoard()));
    const { code, err } = runProgram(folder, 'rank');
    expect(code).toBe(2);
    expect(err).toMatch(/rider/);
    expect(err).toMatch(/profile/);
    expect(err).toMatch(/scenario/);
  });

  it.each([
    [['--board', 'all'], "'all'"],
    [['--seeds', '0'], 'whole number from 1'],
    [['--seeds', '2.5'], 'whole number from 1'],
    [['--charge', '0'], 'from 1 to 100'],
    [['--charge', 'NaN'], 'from 1 to 100'],
    [['--weights', 'setling=2'], 'settling'],
    [['--weights', 'settling=-1'], 'from 0'],
    [['--weights', 'settling=Infinity'], 'from 0'],
    [['--solver', 'euler'], 'fixed, reference'],
    [['--workers', 'many'], 'whole number'],
    [['--rider', 'kim,'], 'divided by commas'],
    [['--sort', 'name'], 'rank, profile, falls, score, overshoot, settling, cut'],
    [['--background', 'grey'], 'auto, dark, light'],
    [['--json', '--csv', '-'], 'one thing for the standard output'],
    [['--csv', 'none/rank.csv', '--board', 'all'], "'all'"],
    [['--csv', 'none/rank.csv', '--board', 'all'], 'no folder none'],
    [['--csv', 'scenarios/kerb.yaml'], '--force'],
  ])('refuses %j', (given, says) => {
    const { code, out, err } = runProgram(workingFolder(), 'rank', ...given);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(says);
  });
});
