/** Does `compare` show, keep and refuse as it says? */
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { validProfile, validScenario } from '../quantity/valid-values.js';
import { putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { runProgram } from './run-program.js';

/** A working folder with a second profile, softer than slate. */
function folderOfTwo(): string {
  const folder = workingFolder();
  const chalk = { ...validProfile(), gains: { proportionalAPerDeg: 12, rateAPerDegPerS: 0.5 } };
  putFile(folder, 'profiles/gains/chalk.yaml', stringify(chalk));
  return folder;
}

describe('compare', () => {
  it('says which is better and when they part, draws both and lists what differs', () => {
    const { code, out, err } = runProgram(folderOfTwo(), 'compare', 'slate', 'chalk', '--scenario', 'kerb');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^In kerb, pebble under kim, pack at \d+ %\n/);
    expect(out).toMatch(/^[AB] (slate|chalk) is better over all/m);
    expect(out).toMatch(/ move apart by more than | never part| part at /);
    expect(out).toMatch(/nose (down|up) \d+° ┤/);
    expect(out).toMatch(/^◆ better +A slate +B chalk +difference$/m);
    expect(out).toMatch(/^feet vibration/m);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('takes the first scenario by name when none is named', () => {
    const folder = folderOfTwo();
    putFile(folder, 'scenarios/alley.yaml', stringify({ ...validScenario(), durationS: 9 }));
    expect(runProgram(folder, 'compare', 'slate', 'chalk').out).toMatch(/^In alley,/);
  });

  it('keeps to ASCII when asked', () => {
    const { out } = runProgram(folderOfTwo(), 'compare', 'slate', 'chalk', '--symbols', 'ascii');
    expect(out).toMatch(/^[\n -~]*$/);
  });

  it('prints JSON with units in the names, and nothing else', () => {
    const { code, out } = runProgram(folderOfTwo(), 'compare', 'slate', 'chalk', '--json', '--charge', '40');
    const { profiles, scenario, best, parting } = JSON.parse(out);
    expect(code).toBe(0);
    expect(profiles.map(({ name }: { name: string }) => name)).toEqual(['slate', 'chalk']);
    expect(scenario).toMatchObject({ name: 'kerb', chargePercent: 40 });
    expect(['slate', 'chalk']).toEqual(expect.arrayContaining(best));
    expect(parting).toHaveProperty('timeS');
  });

  it('tells every problem at once', () => {
    const given = ['slate', 'slate', 'slat', '--scenario', 'curb', '--rider', 'tim'];
    const { code, out, err } = runProgram(folderOfTwo(), 'compare', ...given);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain("expected every profile once, received 'slate' more than once");
    expect(err).toMatch(/received 'slat'; did you mean slate\?/);
    expect(err).toContain("'curb'");
    expect(err).toContain("'tim'");
  });

  it.each([
    [[], 'received 0 names'],
    [['slate'], 'received 1 name'],
    [['a', 'b', 'c', 'd', 'e'], 'received 5 names'],
    [['slate', 'profiles/gains/slate.yaml'], "'slate' twice"],
    [['slate', 'chalk', '--charge', '0'], 'from 1 to 100'],
  ])('refuses %j', (given, says) => {
    const { code, out, err } = runProgram(folderOfTwo(), 'compare', ...given);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(says);
  });

  it('leads its help with an example and names the default scenario', () => {
    const { code, out } = runProgram(folderOfTwo(), 'compare', '--help');
    expect(code).toBe(0);
    expect(out).toMatch(/^Example: underfoot compare canvas linen/);
    expect(out.replace(/\s+/g, ' ')).toContain('left out: the first by name');
  });
});
