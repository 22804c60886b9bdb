/**
 * How is a problem told? One line: place, key, what was expected, what came, and the word probably
 * meant. Everything that came from a file or an argument is shown without control characters.
 */
import type { Problem } from '../quantity/problem.js';
import { plainText } from './plain-text.js';

/** One problem in one line; without a file it is about an argument. */
export function problemLine({ file, line, column, key, expected, received, suggestion }: Problem): string {
  const place = [plainText(file), line, column].filter((part) => part !== null && part !== '').join(':');
  const gap = line === null ? ': ' : ' ';
  const start = [place, plainText(key)].filter((part) => part !== '').join(gap);
  const guess = suggestion === undefined ? '' : `; did you mean ${suggestion}?`;
  const said = plainText(`expected ${expected}, received ${received}${guess}`);
  return start === '' ? said : `${start}: ${said}`;
}

/** Problems, one a line. */
export function problemLines(problems: readonly Problem[]): string[] {
  return problems.map(problemLine);
}
