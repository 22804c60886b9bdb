/**
 * Which lines of a long text are in sight? Where a reader stands is kept as the count of signs above, so that it is the same place at
 * another width.
 */

/** The lines of a text in sight: from `top`, counted from 0, `height` of `count`. */
export interface TextPage {
  top: number;
  height: number;
  count: number;
}

/** What a line counts of where a reader stands: the same in all, however the lines are broken; an empty line counts too. */
const signsOf = (line: string) => Math.max(1, line.replaceAll(/\s/g, '').length);

/** Rows of the screen that are not for a text that has the whole body: header, place in the text, footer. */
const OTHER_ROWS = 3;

/** The rows of a text that has the whole body. */
export function textHeight({ size }: { size: { rows: number } }): number {
  return Math.max(1, size.rows - OTHER_ROWS);
}

/** The page of so many lines whose first one has `read` signs above it, as near as the end of the text allows. */
export function pageAt(
  lines: readonly string[],
  { read, height }: { read: number; height: number },
): TextPage {
  let above = 0;
  const below = lines.findIndex((line) => (above += signsOf(line)) > read);
  const top = Math.min(below === -1 ? lines.length : below, lines.length - height);
  return { top: Math.max(0, top), height, count: lines.length };
}

/** The signs above a page that begins with line `top`, as near as the ends of the text allow. */
export function readAt(lines: readonly string[], { top, height }: { top: number; height: number }): number {
  const first = Math.max(0, Math.min(top, lines.length - height));
  return lines.slice(0, first).reduce((sum, line) => sum + signsOf(line), 0);
}
