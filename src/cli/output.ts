/**
 * Where does what a command says go? Results to the standard output, problems and remarks to the
 * standard error.
 */
import type { Problem } from '../quantity/problem.js';
import { problemLines } from '../show/problems.js';
import { EXIT } from './exit-codes.js';

const WIDTH_WITHOUT_TERMINAL = 100;
const LEAST_WIDTH = 40;

/** Stands for the standard output in place of a file. */
export const STANDARD_OUTPUT = '-';

/** The file that was asked for; null for the standard output, which is also meant where none is named. */
export function outPath(out: string | undefined): string | null {
  return out === undefined || out === STANDARD_OUTPUT ? null : out;
}

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

/** Columns that printed text may take: the terminal's, or COLUMNS, or a hundred; never fewer than 40. */
export function outputWidth(): number {
  const asked = Number(process.env['COLUMNS']);
  const columns = process.stdout.columns ?? (Number.isInteger(asked) && asked > 0 ? asked : undefined);
  return Math.max(LEAST_WIDTH, columns ?? WIDTH_WITHOUT_TERMINAL);
}

/** "1 file", "2 files". */
export function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
