/**
 * Where in the text of a kept profile do note and rides go? For each the ways in which they can be put in, the most readable first;
 * which of them reads back right is for the caller to see.
 */
import { isMap, isScalar, isSeq, type Document, type YAMLSeq } from 'yaml';
import type { KeptFile } from '../quantity/kept-file.js';
import {
  belowAll,
  columnsBefore,
  endOf,
  entryText,
  exchanged,
  linesBelow,
  pairOf,
  type Splice,
} from './yaml-splice.js';

type Ride = KeptFile['rides'][number];

/** Splices that belong together. */
type Way = Splice[];

/** In quotes any text is one line, wherever it stands. */
const QUOTES = [false, true] as const;

/** A ride as lines of a list; in quotes its note is one line. */
export function rideLines({ on, note, felt }: Ride, quotes: boolean): string[] {
  const ratings = Object.entries(felt).map(([word, rating]) => `${word}: ${rating}`);
  const lines = [
    `on: ${on}`,
    ...(note === '' ? [] : noteLines(note, quotes)),
    ...(ratings.length === 0 ? [] : [`felt: { ${ratings.join(', ')} }`]),
  ];
  return lines.map((line, index) => `${index === 0 ? '- ' : '  '}${line}`);
}

function noteLines(note: string, quotes: boolean): string[] {
  return quotes ? [`note: ${JSON.stringify(note)}`] : entryText('note', note).trimEnd().split('\n');
}

/** The ways to exchange the note. */
export function changedNote(text: string, { contents }: Document.Parsed, note: string): Way[] {
  if (!isMap(contents)) return [];
  const pair = pairOf(contents, 'note');
  if (pair === undefined) {
    return QUOTES.flatMap((quotes) => {
      const below = belowAll(text, contents, noteLines(note, quotes));
      return below === null ? [] : [[below]];
    });
  }
  const { value } = pair;
  if (!isScalar(value) || !value.range || value.anchor !== undefined) return [];
  const [from, to] = value.range;
  const old = text.slice(from, to);
  const [ending] = /\n*$/.exec(old) ?? [''];
  // The comment beside the sign of a block of lines is no part of what the block says.
  const beside = /^[|>]\S*(\s+#[^\n]*)\n/.exec(old)?.[1];
  const quoted = { from, to, text: `${JSON.stringify(note)}${beside ?? ''}${ending}` };
  return beside === undefined ? [[exchanged(text, value.range, ['note', note])], [quoted]] : [[quoted]];
}

/** The ways to add a ride below the others. */
export function withRideAdded(text: string, { contents }: Document.Parsed, ride: Ride): Way[] {
  if (!isMap(contents)) return [];
  const pair = pairOf(contents, 'rides');
  return QUOTES.flatMap((quotes): Way[] => {
    const lines = rideLines(ride, quotes);
    if (pair === undefined) {
      const below = belowAll(text, contents, ['rides:', ...lines.map((line) => `  ${line}`)]);
      return below === null ? [] : [[below]];
    }
    return isSeq(pair.value) ? intoList(text, pair.value, { ride, lines }) : [];
  });
}

/** The ways to add a ride to a list: a line below the last, or before the bracket that ends it. */
function intoList(
  text: string,
  list: YAMLSeq,
  { ride, lines }: { ride: Ride; lines: readonly string[] },
): Way[] {
  if (!list.range || list.anchor !== undefined) return [];
  const [from, to] = list.range;
  if (!list.flow) {
    const end = endOf(list);
    const indent = columnsBefore(text, from);
    return end === null ? [] : [[linesBelow(text, pastComments(text, end, indent), { lines, indent })]];
  }
  if (list.items.length === 0) {
    const gap = /[ \t]*$/.exec(text.slice(0, from))?.[0].length ?? 0;
    const isLastOfLine = /^[ \t]*\r?(\n|$)/.test(text.slice(to));
    const out = { from: isLastOfLine ? from - gap : from, to, text: '' };
    return [[out, linesBelow(text, to, { lines, indent: '  ' })]];
  }
  const inBraces = `{ on: ${ride.on}, note: ${JSON.stringify(ride.note)}, felt: ${JSON.stringify(ride.felt)} }`;
  return [`, ${inBraces} `, ` ${inBraces} `].map((put) => [{ from: to - 1, to: to - 1, text: put }]);
}

/** The offset behind comments that stand further in than a list whose last entry ends at `end`: they belong to it. */
function pastComments(text: string, end: number, indent: string): number {
  let at = end;
  for (;;) {
    const lineEnd = at > 0 && text[at - 1] === '\n' ? at : text.indexOf('\n', at) + 1;
    if (lineEnd === 0) return at;
    const next = /^[^\n]*(\n|$)/.exec(text.slice(lineEnd))?.[0] ?? '';
    const isInside = next.startsWith(`${indent} `) && next.trimStart().startsWith('#');
    if (!isInside) return at;
    at = lineEnd + next.length;
  }
}
