/**
 * Where does what a command says go? Results to the standard output, problems and remarks to the
 * standard error.
 */
import type { Problem } from '../quantity/problem.js';
import { problemLines } from '../show/problems.js';
import { EXIT } from './exit-codes.js';

const WIDTH_WITHOUT_TERMINAL = 100;

/** Prints lines of a result. */
export function printResult(lines: readonly string[]): void {
  if (lines.length > 0) process.stdout.write(`${lines.join('\n')}\n`);
}

/** Prints a value as JSON. */
export function printJson(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}

/** Prints remarks for the person at the terminal. */
export function printRemark(lines: readonly string[]): void {
  if (lines.length > 0) process.stderr.write(`${lines.join('\n')}\n`);
}

/** Tells the problems, if any, and makes the program end as after bad input. */
export function tellProblems(problems: readonly Problem[]): void {
  if (problems.length === 0) return;
  printRemark(problemLines(problems));
  process.exitCode = EXIT.badInput;
}

/** Columns that printed text may take. */
export function outputWidth(): number {
  return process.stdout.columns ?? WIDTH_WITHOUT_TERMINAL;
}

/** "1 file", "2 files". */
export function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
