/**
 * How is a value in a YAML text exchanged, or a new one added, without touching one other letter? Stretches of the text, found by
 * the nodes that were read from it, and what is to stand there.
 */
import { isMap, isScalar, isSeq, Scalar, stringify, type Pair, type YAMLMap } from 'yaml';
import { keyText } from './yaml-value.js';

/** Columns that a line of text may take before it is folded. */
export const LINE_WIDTH = 98;

/** A stretch of the text, in offsets, and what is to stand there. */
export interface Splice {
  from: number;
  to: number;
  text: string;
}

/** The text with the splices done; of two at one place the first comes first. */
export function spliced(text: string, splices: readonly Splice[]): string {
  let result = '';
  let doneTo = 0;
  for (const { from, to, text: put } of splices.toSorted((a, b) => a.from - b.from)) {
    result += text.slice(doneTo, from) + put;
    doneTo = to;
  }
  return result + text.slice(doneTo);
}

/** A key with its value as lines of YAML, the last one ended. */
export function entryText(key: string, value: unknown): string {
  const isLong =
    typeof value === 'string' && (value.length + key.length > LINE_WIDTH || value.includes('\n'));
  const defaultStringType = isLong ? Scalar.BLOCK_FOLDED : Scalar.PLAIN;
  const options = { lineWidth: LINE_WIDTH, defaultStringType, defaultKeyType: Scalar.PLAIN } as const;
  return stringify(new Map([[key, value]]), options);
}

/** The pair of a key in a section. */
export function pairOf(map: YAMLMap, key: string): Pair | undefined {
  return map.items.find((pair) => keyText(pair.key) === key);
}

/** What stands in place of a value: one that filled its lines goes on doing so. */
export function exchanged(
  text: string,
  [from, to]: readonly [number, number, number],
  [key, value]: readonly [string, unknown],
): Splice {
  const [ending] = /\n*$/.exec(text.slice(from, to)) ?? [''];
  const put = entryText(key, value)
    .slice(key.length + 2)
    .trimEnd();
  return { from, to, text: put + ending };
}

/** Lines to be put below where something ended, each as far in as `indent` says; a blank one stays empty. */
export function linesBelow(
  text: string,
  end: number,
  { lines, indent }: { lines: readonly string[]; indent: string },
): Splice {
  const isAtStart = end > 0 && text[end - 1] === '\n';
  const nextLine = isAtStart ? end : text.indexOf('\n', end) + 1;
  const at = nextLine === 0 ? text.length : nextLine;
  const before = at > 0 && text[at - 1] !== '\n' ? '\n' : '';
  const put = before + lines.map((line) => `${indent}${line}`.trimEnd() + '\n').join('');
  return { from: at, to: at, text: put };
}

/** How far in a node stands: the columns before its offset. */
export function columnsBefore(text: string, offset: number): string {
  const startOfLine = text.lastIndexOf('\n', offset - 1) + 1;
  return ' '.repeat(offset - startOfLine);
}

/** New keys below the last one of a section, as far in as its first; null where they would not be told apart. */
export function appended(text: string, map: YAMLMap, added: ReadonlyMap<string, unknown>): Splice | null {
  const lines = [...added].flatMap(([key, value]) => entryText(key, value).trimEnd().split('\n'));
  return belowAll(text, map, lines);
}

/** Lines below the last key of a section, as far in as its first; null where they would not be told apart. */
export function belowAll(text: string, map: YAMLMap, lines: readonly string[]): Splice | null {
  const [first, last] = [map.items[0]?.key, map.items.at(-1)];
  if (map.flow || !isScalar(first) || !first.range || last === undefined) return null;
  const end = endOf(last.value);
  if (end === null) return null;
  const indent = columnsBefore(text, first.range[0]);
  return linesBelow(text, end, { lines: indent === '' ? ['', ...lines] : lines, indent });
}

/** The offset at which a value is over; null where it is none that can be told. */
export function endOf(value: unknown): number | null {
  if (isMap(value) && !value.flow && value.items.length > 0) return endOf(value.items.at(-1)!.value);
  if (isSeq(value) && !value.flow && value.items.length > 0) return endOf(value.items.at(-1));
  if (!isScalar(value) && !isMap(value) && !isSeq(value)) return null;
  return value.range ? value.range[1] : null;
}
