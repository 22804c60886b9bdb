/**
 * Does the command on a card prove the same again: is each of its options one that the program has, with a value that it takes?
 */
import { Command } from 'commander';
import { describe, expect, it } from 'vitest';
import { parseCharges, parseSeedCount } from '../../src/cli/run-arguments.js';
import { addShortlistCommand } from '../../src/cli/shortlist-command.js';
import { againCommand, againText } from '../../src/show/card-again.js';
import { keptExample, LONGEST, SCENARIOS } from './kept-example.js';

const EXAMPLE = keptExample();
const { cells } = EXAMPLE;

describe('the way to prove a card again', () => {
  it('names board, riders, scenarios, charges and seeds', () => {
    expect(againCommand('denim', EXAMPLE)).toBe(
      'underfoot shortlist add denim --as again --board otter --rider light,first-timer,heavy ' +
        `--scenarios ${SCENARIOS.join(',')} --charge own --seeds 1`,
    );
    const more = { ...cells, chargesPercent: [null, 20], seeds: [1, 2, 3], weights: { settling: 3 } };
    expect(againCommand('denim', { ...EXAMPLE, cells: more })).toMatch(
      / --charge own,20 --seeds 3 --weights settling=3$/,
    );
  });

  it('has no option that the program does not have', () => {
    const program = new Command();
    addShortlistCommand(program);
    const [shortlist] = program.commands;
    const add = shortlist!.commands.find((command) => command.name() === 'add')!;
    const known = add.options.map(({ long }) => long);
    const weighted = { ...EXAMPLE, cells: { ...cells, weights: { settling: 3 } } };
    const used = againCommand('denim', weighted).match(/--[a-z]+/g)!;
    expect(used).toHaveLength(7);
    expect(used.filter((option) => !known.includes(option))).toEqual([]);
    expect(parseCharges('own,20')).toEqual([null, 20]);
    expect(parseSeedCount('3')).toEqual([1, 2, 3]);
  });

  it('tells version, day and scales, and leaves for the file what is no line to type', () => {
    expect(againText('denim-2', EXAMPLE)).toMatch(
      /^proven 2026-05-31 by underfoot 0\.1\.0, scales 3; with profile denim of these numbers: underfoot /,
    );
    const long = againText('x', LONGEST);
    expect(long).toContain(
      'over the 12 riders, the 40 scenarios and the seeds 4, 8, 15, 16, 23, 42 of shortlist/x.yaml: ',
    );
    expect(long).not.toMatch(/--scenarios|--rider|--seeds/);
  });
});
