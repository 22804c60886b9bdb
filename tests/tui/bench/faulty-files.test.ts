/**
 * Does a profile whose file is faulty say so on its own row?
 */
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../src/quantity/problem.js';
import { problemOfProfile } from '../../../src/tui/bench/faulty-files.js';
import { shelved } from '../../../src/tui/bench/hear.js';
import { screenRows } from '../../../src/tui/draw/screen-rows.js';
import { afterKeys, rankedState, someShelf } from './some-state.js';

const problem = (file: string, key = 'gains.proportionalAPerDeg'): Problem => ({
  file,
  line: 5,
  column: 7,
  key,
  expected: 'a number',
  received: '"lots"',
});
const has = (file: string, name = 'wool') => problemOfProfile({ problems: [problem(file)] }, name) !== null;

describe('the file of a profile', () => {
  it.each([
    'profiles/gains/wool.yaml',
    '/home/kim/boards/profiles/gains/wool.yaml',
    'C:\\boards\\profiles\\gains\\wool.yaml',
  ])('is known by %s', (file) => {
    expect(has(file)).toBe(true);
    expect(has(file, 'ool')).toBe(false);
  });

  it.each([
    '',
    'profiles/gains',
    'profiles/boards/wool.yaml',
    'profiles/gains/wool.yml',
    'profiles/gains/more/wool.yaml',
    'my-profiles/gains/wool.yaml',
  ])('is not %j', (file) => {
    expect(has(file)).toBe(false);
  });

  it('tells its first problem', () => {
    const problems = ['a', 'b'].map((key) => problem('profiles/gains/wool.yaml', key));
    expect(problemOfProfile({ problems }, 'wool')).toBe(problems[0]);
  });
});

describe.each([80, 120])('a row of a faulty file at %i columns', (columns) => {
  const first = { ...rankedState(), size: { columns, rows: 30 } };
  const name = first.rows[0]!.name;
  const faulty = shelved(first, someShelf({ problems: [problem(`profiles/gains/${name}.yaml`)] }));
  const rows = screenRows({ ...faulty, notice: null, rank: { ...faulty.rank, cursor: name } });

  it('is marked by a sign beside the name, and no other row is', () => {
    expect(rows.filter((row) => row.includes(`${name} !`))).toHaveLength(1);
    expect(rows.filter((row) => /(?:felt|silk|wool) !/.test(row))).toHaveLength(1);
    const edited = screenRows(
      afterKeys({ ...faulty, rank: { ...faulty.rank, cursor: name } }, 'e right escape'),
    );
    expect(edited.join('\n')).toContain(`${name} ~ !`);
    expect(screenRows(first).join('\n')).not.toMatch(/(?:felt|silk|wool) !/);
  });

  it('says what is wrong, and what is ranked', () => {
    const text = rows
      .slice(4)
      .map((row) => row.slice(0, Math.floor(columns * 0.45)).trim())
      .join(' ');
    expect(text).toContain('! its file has a problem: 5:7 gains.proportionalAPerDeg: expected a number');
    expect(text).toContain('the last good version is ranked');
    expect(text).toContain('! faulty file');
  });
});
