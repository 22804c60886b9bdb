/**
 * How is a list of named things shown? The names in a column, what each is beside it, broken into
 * lines that fit the width.
 */
import { padded, textWidth, wrapped } from './fit-text.js';
import { plainText } from './plain-text.js';

/** Something with a name and a sentence about it. */
export interface NamedSummary {
  name: string;
  summary: string;
}

const GAP = 2;
const NARROWEST_SUMMARY = 20;

/** Lines of at most `width` columns, unless the names alone are wider; indented by two. */
export function listingLines(entries: readonly NamedSummary[], width: number): string[] {
  const shown = entries.map(({ name, summary }) => ({ name: plainText(name), summary: plainText(summary) }));
  const nameWidth = Math.max(0, ...shown.map(({ name }) => textWidth(name)));
  const start = GAP + nameWidth + GAP;
  const summaryWidth = Math.max(NARROWEST_SUMMARY, width - start);
  return shown.flatMap(({ name, summary }) => {
    const [first = '', ...rest] = wrapped(summary.trim(), summaryWidth);
    const head = `${' '.repeat(GAP)}${padded(name, nameWidth + GAP)}${first}`.trimEnd();
    return [head, ...rest.map((line) => ' '.repeat(start) + line)];
  });
}
