/**
 * Does `run` show, keep and refuse as it says?
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { TAPE_COLUMNS } from '../../src/simulate/tape.js';
import { validBoard, validScenario } from '../quantity/valid-values.js';
import { allPaths, putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { runProgram } from './run-program.js';

describe('run', () => {
  it('draws pitch, current under its ceilings and speed, and lists every metric', () => {
    const { code, out } = runProgram(workingFolder(), 'run', 'slate', 'kerb');
    expect(code).toBe(0);
    expect(out).toContain('slate in kerb, pebble under kim');
    expect(out).toMatch(/nose down \d/);
    expect(out).toContain('overshoot of the step');
    expect(out).toContain('km/h');
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('says nothing of settling where the scenario only rides', () => {
    const folder = workingFolder();
    const riding = { ...validScenario(), start: { speedKmPerH: 8 }, measure: { from: 'start', as: 'ride' } };
    putFile(folder, 'scenarios/ride.yaml', stringify({ ...riding, road: [{ lengthM: 50 }] }));
    const { out } = runProgram(folder, 'run', 'slate', 'ride');
    expect(out).toContain('Pitch peaks');
    expect(out).not.toMatch(/settled|settling|of its end/);
    expect(runProgram(folder, 'run', 'slate', 'kerb').out).toMatch(/settling time/);
  });

  it('keeps to ASCII when asked', () => {
    const { out } = runProgram(workingFolder(), 'run', 'slate', 'kerb', '--symbols', 'ascii');
    const plot = out.slice(0, out.indexOf('metric'));
    expect(plot).toMatch(/^[\n -~°]*$/);
  });

  it('writes the whole tape as CSV and JSON with the same numbers', () => {
    const folder = workingFolder();
    const csv = runProgram(folder, 'run', 'slate', 'kerb', '--csv', '-').out.trimEnd().split('\n');
    const { tape, outcome, seed, profile } = JSON.parse(
      runProgram(folder, 'run', 'slate', 'kerb', '--json').out,
    );
    expect(csv[0]).toBe(TAPE_COLUMNS.join(','));
    expect(csv).toHaveLength(tape.length + 1);
    expect(tape.length).toBe(10 * 800 + 1);
    const pitchAt = TAPE_COLUMNS.indexOf('pitchRad');
    const pitches = csv.slice(1).map((line) => Number(line.split(',')[pitchAt]));
    expect(pitches).toEqual(tape.columns.pitchRad);
    expect({ kind: outcome.kind, seed, name: profile.name }).toEqual({
      kind: 'upright',
      seed: 1,
      name: 'slate',
    });
  });

  it('writes files, and never over one that is there unless forced', () => {
    const folder = workingFolder();
    expect(runProgram(folder, 'run', 'slate', 'kerb', '--svg', 'kerb.svg', '--csv', 'kerb.csv').code).toBe(0);
    expect(readFileSync(join(folder, 'kerb.svg'), 'utf8')).toContain('</svg>');
    putFile(folder, 'mine.svg', 'mine');
    const refused = runProgram(folder, 'run', 'slate', 'kerb', '--svg', 'mine.svg');
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('--force');
    expect(readFileSync(join(folder, 'mine.svg'), 'utf8')).toBe('mine');
    expect(runProgram(folder, 'run', 'slate', 'kerb', '--svg', 'mine.svg', '--force').code).toBe(0);
    expect(readFileSync(join(folder, 'mine.svg'), 'utf8')).toContain('</svg>');
  });

  it.each([
    [['all', 'kerb'], "'all'"],
    [['slate', 'all'], "'all'"],
    [['slate', 'kerb', '--charge', '20,50'], 'from 1 to 100'],
    [['slate', 'kerb', '--json', '--csv', '-'], 'one thing for the standard output'],
    [['slate', 'kerb', '--seed', '-1'], 'whole number'],
  ])('refuses %j', (given, says) => {
    const { code, out, err } = runProgram(workingFolder(), 'run', ...given);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(says);
  });

  it('writes nothing when a name is wrong', () => {
    const folder = workingFolder();
    const before = allPaths(folder);
    const { code, err } = runProgram(folder, 'run', 'slate', 'curb', '--svg', 'kerb.svg');
    expect(code).toBe(2);
    expect(err).toContain("'curb'");
    expect(allPaths(folder)).toEqual(before);
  });

  it('keeps an absurdly stiff and light board finite, with an outcome and its time', () => {
    const folder = workingFolder();
    const board = validBoard();
    const hopping = {
      ...board,
      wheel: { ...board.wheel, massKg: 0.5 },
      deck: { ...board.deck, massKg: 1 },
      tyre: { verticalStiffnessNPerM: 400000, verticalDampingNSPerM: 5000 },
    };
    putFile(folder, 'profiles/boards/hopping.yaml', stringify(hopping));
    const given = ['run', 'slate', 'kerb', '--board', 'hopping', '--solver', 'fixed', '--json'];
    const { code, out } = runProgram(folder, ...given);
    expect(code).toBe(0);
    expect(out).not.toMatch(/NaN|Infinity/);
    const { outcome, tape } = JSON.parse(out);
    expect(outcome.atS).toBeGreaterThan(0);
    expect(
      tape.columns.pitchRad.every((pitch: unknown) => typeof pitch === 'number' && Math.abs(pitch) < 7),
    ).toBe(true);
  });
});
