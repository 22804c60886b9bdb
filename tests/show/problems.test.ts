/**
 * Is a problem told in one line that says where, what was expected and what came, and nothing more?
 */
import { describe, expect, it } from 'vitest';
import { listingLines } from '../../src/show/listing.js';
import { problemLine, problemLines } from '../../src/show/problems.js';
import type { Problem } from '../../src/quantity/problem.js';

const PROBLEM: Problem = {
  file: 'profiles/gains/slate.yaml',
  line: 5,
  column: 7,
  key: 'gains.rateAPerDegPerS',
  expected: 'a number from 0 to 100 A/(deg/s)',
  received: "text 'high'",
};

describe('a problem', () => {
  it('in a file has its place and key', () => {
    expect(problemLine(PROBLEM)).toBe(
      "profiles/gains/slate.yaml:5:7 gains.rateAPerDegPerS: expected a number from 0 to 100 A/(deg/s), received text 'high'",
    );
  });

  it('with a suggestion asks', () => {
    expect(problemLine({ ...PROBLEM, suggestion: 'rateAPerDegPerS' })).toMatch(
      /'high'; did you mean rateAPerDegPerS\?$/,
    );
  });

  it('with a file as a whole has no place', () => {
    expect(problemLine({ ...PROBLEM, line: null, column: null, key: '' })).toMatch(
      /^profiles\/gains\/slate\.yaml: expected a number/,
    );
  });

  it('with the text of a file has a place and no key', () => {
    expect(problemLine({ ...PROBLEM, key: '' })).toMatch(/^profiles\/gains\/slate\.yaml:5:7: expected/);
  });

  it('with an argument begins with its name', () => {
    expect(problemLine({ ...PROBLEM, file: '', line: null, column: null, key: 'profile' })).toMatch(
      /^profile: expected/,
    );
  });

  it('stays one line without control characters, wherever they came from', () => {
    const nasty = 'a\u001b[31mb\u0007\u009b2Jc\nd\u202e';
    const problem = {
      ...PROBLEM,
      file: nasty,
      key: nasty,
      expected: nasty,
      received: nasty,
      suggestion: nasty,
    };
    const [line = '', ...others] = problemLines([problem]);
    expect(others).toEqual([]);
    expect(line).not.toMatch(/[\p{Cc}\p{Cf}]/u);
    expect(line).toContain('ab');
  });
});

describe('a listing', () => {
  it('has names in a column and summaries that fit beside it', () => {
    const entries = [
      { name: 'slate', summary: 'Calm and firm, meant for the first metres on level ground.' },
      { name: 'agate-two', summary: 'Loose.\nVery loose.' },
    ];
    expect(listingLines(entries, 46)).toEqual([
      '  slate      Calm and firm, meant for the',
      '             first metres on level ground.',
      '  agate-two  Loose. Very loose.',
    ]);
  });

  it('shows no control characters', () => {
    const [line] = listingLines([{ name: 'a\u001b[31m', summary: 'b\u0007' }], 80);
    expect(line).toBe('  a  b');
  });
});
