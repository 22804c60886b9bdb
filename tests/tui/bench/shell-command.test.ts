/**
 * Is the command that is named for a screen the one that shows the same?
 */
import { describe, expect, it } from 'vitest';
import { shellCommand, shellSentence } from '../../../src/tui/bench/shell-command.js';
import { afterKeys, rankedState } from './some-state.js';

describe('the command of a screen', () => {
  it.each([
    ['', 'underfoot rank --board pebble --rider kim'],
    ['o return', 'underfoot rank --board pebble --rider kim --scenarios kerb'],
    ['r tab return', 'underfoot rank --board pebble --rider all'],
    ['o return o tab return', 'underfoot rank --board pebble --rider kim'],
    ['p 3 5 return', 'underfoot rank --board pebble --rider kim --charge 35'],
    ['s s R', 'underfoot rank --board pebble --rider kim --sort falls --reverse'],
  ])('after %j is %j', (keys, command) => {
    expect(shellCommand(afterKeys(rankedState(), keys))).toBe(command);
  });

  it("says that a sweep meets each scenario's own charge only, where it does", () => {
    const own = shellCommand(afterKeys(rankedState(), 'g'));
    expect(own).toMatch(/^underfoot sweep --board pebble --rider kim --scenarios \S+ --charge own /);
    expect(shellCommand(afterKeys(rankedState(), 'p 3 5 return g'))).toContain(' --charge 35 ');
    const { choices, ...rest } = rankedState();
    const both = { ...rest, choices: { ...choices, setup: { ...choices.setup, charges: [null, 20] } } };
    expect(shellCommand(both)).toBe('underfoot rank --board pebble --rider kim --charge own,20');
  });

  it('names the run of Trace and the profiles of Compare', () => {
    const rig = '--board pebble --rider kim --charge 80 --seed 1 --solver fixed';
    const trace = afterKeys(rankedState(), 'l return');
    expect(shellCommand(trace)).toBe(`underfoot run ${trace.view.profiles[0]} kerb ${rig}`);
    const compare = afterKeys(rankedState(), 'l space space c');
    expect(shellCommand(compare)).toBe(
      `underfoot compare ${compare.view.profiles.join(' ')} --scenario kerb ${rig}`,
    );
  });

  it('says what it leaves out', () => {
    expect(shellSentence(rankedState())).not.toContain('without');
    const state = afterKeys(rankedState(), 'e right');
    expect(shellSentence(state)).toContain(`without the changes to ${state.rank.cursor}`);
  });
});
