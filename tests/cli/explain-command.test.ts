/** Does `explain` show, keep and refuse as it says, and does Ctrl-C keep what is there? */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { describe, expect, it } from 'vitest';
import { validScenario } from '../quantity/valid-values.js';
import { putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { PROGRAM, runProgram } from './run-program.js';

/** A working folder with a profile that has next to no damping, and a scenario in which that is felt. */
function folderWithRinging(): string {
  const folder = workingFolder();
  const ringing = {
    summary: 'A profile for tests',
    gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 0.02 },
    shaping: { blendTimeS: 4 },
  };
  const level = {
    summary: 'Levelling',
    durationS: 3,
    start: { noseUpDeg: 6 },
    road: [{ lengthM: 20 }],
    speeds: [{ atS: 0, speedKmPerH: 0 }],
    measure: { as: 'step', bandDeg: 1 },
  };
  putFile(folder, 'profiles/gains/satin.yaml', stringify(ringing));
  putFile(folder, 'scenarios/level.yaml', stringify(level));
  return folder;
}

describe('explain', () => {
  it('says what is to blame, where it shows, how it feels and what helps', () => {
    const { code, out, err } = runProgram(folderWithRinging(), 'explain', 'satin');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Why satin rides as it does: board pebble, rider kim\n/);
    expect(out).toMatch(/^Feels [a-z-]+ under kim: /m);
    expect(out).toMatch(/^1\. .*oo little rate gain/m);
    expect(out).toContain('underfoot run satin level --rider kim --solver fixed');
    expect(out).toMatch(/^1\) .*ate gain from 0\.02 to /m);
    expect(out).toContain('Simulated with the numbers given');
    expect(out).toMatch(/\n\nHow far from the edge\n\n/);
    expect(out).toMatch(/^- Bump: /m);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  it('shows the run again by the command that it names', () => {
    const folder = folderWithRinging();
    const { out } = runProgram(folder, 'explain', 'satin', '--charge', '60', '--symbols', 'ascii');
    expect(out).toMatch(/^[\n -~]*$/);
    const [, command] = /See it again: underfoot ([^\n]+)/.exec(out)!;
    expect(command).toContain('--charge 60');
    expect(runProgram(folder, ...command!.split(' ')).code).toBe(0);
  });

  it('tells the first finding on the standard error, and prints JSON alone on the other', () => {
    const folder = folderWithRinging();
    const { code, out, err } = runProgram(folder, 'explain', 'satin', '--seeds', '6', '--json');
    expect(code).toBe(0);
    expect(err).toMatch(/Too little rate gain/i);
    const report = JSON.parse(out);
    expect(report).toMatchObject({
      isComplete: true,
      profile: { name: 'satin', gains: { rateAPerDegPerS: 0.02 } },
      standing: { runs: 12 },
      verdict: { kind: 'one change helps' },
      saved: null,
    });
    expect(report.feel.words[0]).toMatchObject({ word: expect.any(String), reasons: expect.any(Array) });
    expect(report.findings[0]).toMatchObject({
      causes: ['too little rate gain'],
      family: 'profile',
      numberIfAny: { value: 0.02, unit: 'A/(deg/s)' },
      command: expect.stringMatching(/^underfoot run satin level /),
    });
    expect(report.remedies[0]).toMatchObject({ number: 1, helps: true, edits: expect.any(Array) });
    expect(report.edge).toMatchObject({ seeds: [1, 2, 3, 4, 5, 6], statedPushNS: 30 });
    expect(report.edge.riders).toHaveLength(1);
    expect(report.edge.riders[0]).toMatchObject({ rider: 'kim', edges: expect.any(Array) });
    expect(report.edge.riders[0].edges[0]).toMatchObject({ name: 'bump', unit: 'mm', largestTried: 300 });
  });

  it('is the same from any number of threads', () => {
    const folder = folderWithRinging();
    const outputs = ['1', '2'].map(
      (count) => runProgram(folder, 'explain', 'satin', '--json', '--workers', count).out,
    );
    expect(outputs[0]).toBe(outputs[1]);
  });

  it('keeps a change as a new profile, and never over one that is there', () => {
    const folder = folderWithRinging();
    const path = join(folder, 'profiles/gains/calm.yaml');
    const { code, err } = runProgram(folder, 'explain', 'satin', '--apply', '1', '--save-as', 'calm');
    expect(code).toBe(0);
    expect(err).toMatch(/^wrote .*calm\.yaml$/m);
    expect(readFileSync(path, 'utf8')).toMatch(/From satin against too little\s+rate/);
    const before = readFileSync(path, 'utf8');
    const again = runProgram(folder, 'explain', 'satin', '--apply', '1', '--save-as', 'calm');
    expect([again.code, again.out]).toEqual([2, '']);
    expect(again.err).toContain('a file that is there already');
    expect(readFileSync(path, 'utf8')).toBe(before);
  });

  it('says which numbers there are when that of a change is none', () => {
    const folder = folderWithRinging();
    const { code, err } = runProgram(folder, 'explain', 'satin', '--apply', '99', '--save-as', 'calm');
    expect(code).toBe(2);
    expect(err).toMatch(/apply: expected the number of a change, from 1 to \d+, received 99/);
    expect(existsSync(join(folder, 'profiles/gains/calm.yaml'))).toBe(false);
  });

  it.each([
    [['slat'], "'slat'"],
    [['slate', '--rider', 'tim'], "'tim'"],
    [['slate', '--apply', '1'], 'together'],
    [['slate', '--save-as', 'new'], 'together'],
    [['slate', '--apply', '0', '--save-as', 'new'], 'whole number from 1'],
    [['slate', '--apply', '1', '--save-as', 'Not A Name'], 'lower-case letters'],
    [['slate', '--charge', '0'], 'from 1 to 100'],
    [[], 'profile'],
  ])('refuses %j', (given, says) => {
    const { code, out, err } = runProgram(workingFolder(), 'explain', ...given);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(says);
  });

  it('leads its help with an example', () => {
    const { out } = runProgram(workingFolder(), 'explain', '--help');
    expect(out).toMatch(/^Example: underfoot explain /);
  });
});

describe('Ctrl-C', () => {
  /** Stops an explanation when its first finding is told. */
  async function stopped(...given: string[]): Promise<{ code: number | null; out: string }> {
    const folder = folderWithRinging();
    const long = {
      ...validScenario(),
      durationS: 60,
      road: [{ lengthM: 400 }],
      shifts: [],
      measure: { as: 'ride' },
    };
    putFile(folder, 'scenarios/long.yaml', stringify({ ...long, shoves: [] }));
    const args = [PROGRAM, 'explain', 'satin', '--seeds', '10', ...given];
    const child = spawn(process.execPath, args, { cwd: folder, env: { ...process.env, NO_COLOR: '1' } });
    let out = '';
    child.stdout.on('data', (piece: Buffer) => (out += piece.toString()));
    await once(child.stderr, 'data');
    child.kill('SIGINT');
    const [code] = (await once(child, 'close')) as [number | null];
    return { code, out };
  }

  it('prints what the worst runs said, and ends with 130', async () => {
    const { code, out } = await stopped();
    expect(code).toBe(130);
    expect(out).toMatch(
      /\n1\. Too little rate gain[^]*See it again: [^]*Stopped: only the worst runs were looked at\.\n$/,
    );
    expect(out).toContain('Simulated with the numbers given: it proves nothing');
  });

  it('keeps it as JSON where that was asked for', async () => {
    const { code, out } = await stopped('--json');
    expect(code).toBe(130);
    expect(JSON.parse(out)).toMatchObject({ isComplete: false, remedies: [], verdict: null, edge: null });
  });
});
