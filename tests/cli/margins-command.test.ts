/** Does `margins` show, keep and refuse as it says? */
import { describe, expect, it } from 'vitest';
import { workingFolder } from '../store/working-folder.js';
import { runProgram } from './run-program.js';

describe('margins', () => {
  it('shows the table, what it means and the loop over frequency', () => {
    const { code, out, err } = runProgram(workingFolder(), 'margins', 'slate');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Margins of slate on pebble under kim, pack at 80 %\n/);
    expect(out).toMatch(/^ +standing +10 km\/h +20 km\/h +10 km\/h\nroad +level +level +level +8 % up$/m);
    expect(out).toMatch(/^delay to spare( +\d+(\.\d)? ms){4}$/m);
    expect(out).toContain('Tried in the simulation: ');
    expect(out).toMatch(/^ +0\.1 +1 +10 +100 Hz$/m);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('looks at the rides asked for, and keeps to ASCII when asked', () => {
    const given = ['--speed', '12', '--grade', '5', '--charge', '40', '--symbols', 'ascii'];
    const { out } = runProgram(workingFolder(), 'margins', 'slate', ...given);
    expect(out).toMatch(/^[\n -~]*$/);
    expect(out).toContain('pack at 40 %');
    expect(out).toMatch(/^ +12 km\/h +12 km\/h\nroad +level +5 % up$/m);
  });

  it('prints JSON with units in the names, and nothing else', () => {
    const { code, out } = runProgram(workingFolder(), 'margins', 'slate', '--speed', '10', '--json');
    const { rig, profile, points } = JSON.parse(out);
    expect(code).toBe(0);
    expect([rig.board.name, rig.rider.name, profile.name]).toEqual(['pebble', 'kim', 'slate']);
    expect(points).toHaveLength(1);
    expect(points[0].marginsIfItHolds.delaySIfAny.value).toBeGreaterThan(0);
    expect(points[0].curve.frequencyHz).toHaveLength(points[0].curve.gain.length);
  });

  it('tells every problem at once', () => {
    const given = ['slat', '--rider', 'tim', '--speed', 'x,70', '--charge', '0'];
    const { code, out, err } = runProgram(workingFolder(), 'margins', ...given);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/received 'slat'; did you mean slate\?/);
    expect(err).toContain("'tim'");
    expect(err).toContain("speed: expected a number from 0 to 60 km/h, received 'x'");
    expect(err).toContain("received '70'");
    expect(err).toContain('from 1 to 100 %');
  });

  it('leads its help with an example', () => {
    const { code, out } = runProgram(workingFolder(), 'margins', '--help');
    expect(code).toBe(0);
    expect(out).toMatch(/^Example: underfoot margins linen/);
    expect(out.replaceAll(/\s+/g, ' ')).toContain('left out: 0,10,20 and 10 up 8 %');
  });
});
