/**
 * What does the file of a kept profile say? A fresh text, or the text that is there with the note exchanged and a ride added, and
 * not one other letter touched. Only what reads back as exactly what was meant is answered.
 */
import { isDeepStrictEqual } from 'node:util';
import { Document, isScalar, Scalar, visit } from 'yaml';
import { FELT_KEYS } from '../quantity/feel-words.js';
import type { KeptFile } from '../quantity/kept-file.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { MOST_BYTES } from './file-text.js';
import { changedNote, rideLines, withRideAdded } from './kept-splice.js';
import { PROGRAM_NAME } from './places.js';
import { readText } from './read-text.js';
import { fileProblem } from './system-fault.js';
import { entryText, LINE_WIDTH, spliced, type Splice } from './yaml-splice.js';

const SCHEMA_LINE = '# yaml-language-server: $schema=../profiles/schema/kept.schema.json';

const YOURS = [
  `# Yours are note and rides: write there what you like, here or with '${PROGRAM_NAME} shortlist note'. A ride has a day (on), your`,
  '# words (note), and what was felt from 1, not at all, to 5, very, for any of these words:',
  `# ${FELT_KEYS.join(', ')}.`,
];

const SEALED = [
  '# Sealed is all below: what was proven, when, and on which rig as it was then. Leave it as it is: the seal tells of any',
  `# number that was changed by hand. For other numbers change the profile and keep it again with '${PROGRAM_NAME} shortlist add'.`,
];

/** One ride of a kept profile. */
export type Ride = KeptFile['rides'][number];

/** What a rider changes in a file: the note anew, and a ride more; null for what stays. */
export interface RidersWords {
  note: string | null;
  ride: Ride | null;
}

/** What the text of a kept profile holds, or what is wrong with it; problems name the text as `shown`. */
export function keptOfText(text: string, shown: string): Checked<KeptFile, Problem> {
  const reading = readText('kept', text, shown);
  return reading.ok ? { ok: true, value: reading.value.value } : reading;
}

/** The text of a new file; a problem where no text would read back as this. */
export function freshKeptText(kept: KeptFile, shown: string): Checked<string, Problem> {
  const plain = asJson(kept);
  return firstThatReads([freshText(plain, false), freshText(plain, true)], plain, shown);
}

function freshText({ note, rides, ...sealed }: KeptFile, quotes: boolean): string {
  const own = [
    quotes ? `note: ${JSON.stringify(note)}\n` : entryText('note', note),
    rides.length === 0
      ? 'rides: []\n'
      : `rides:\n${rides.flatMap((ride) => rideLines(ride, quotes).map((line) => `  ${line}`.trimEnd() + '\n')).join('')}`,
  ];
  return [SCHEMA_LINE, ...YOURS, own.join(''), ...SEALED, sealedText(sealed)].join('\n');
}

/** Sections whose parts take a line each, however long. */
const LISTED = ['margins', 'limits', 'weakest', 'slips'];

function sealedText(sealed: Omit<KeptFile, 'note' | 'rides'>): string {
  return Object.entries(sealed)
    .map(([key, value]) => {
      const isListed = LISTED.includes(key);
      const document = new Document({ [key]: value });
      visit(document, {
        Seq: (_key, seq) => {
          if (seq.items.length > 0 && seq.items.every((item) => isScalar(item))) seq.flow = true;
        },
        Map: (_key, map) => {
          if (isListed && map.items.every((pair) => isScalar(pair.value))) map.flow = true;
        },
      });
      const lineWidth = isListed ? 0 : LINE_WIDTH;
      return document.toString({ lineWidth, defaultStringType: Scalar.PLAIN });
    })
    .join('');
}

/** The text with what the rider says put in; a text that holds no kept profile is told as problems. */
export function withRidersWords(text: string, words: RidersWords, shown: string): Checked<string, Problem> {
  const reading = readText('kept', text, shown);
  if (!reading.ok) return reading;
  const { document, value } = reading.value;
  const meant: KeptFile = {
    ...value,
    note: words.note ?? value.note,
    rides: words.ride === null ? value.rides : [...value.rides, words.ride],
  };
  const notes = words.note === null ? [[]] : changedNote(text, document, words.note);
  const rides = words.ride === null ? [[]] : withRideAdded(text, document, words.ride);
  const candidates = notes.flatMap((ofNote) =>
    rides.map((ofRide) => spliced(text, withLineEnds(text, [...ofNote, ...ofRide]))),
  );
  return firstThatReads(candidates, meant, shown);
}

/** Splices with the line ends that the text has. */
function withLineEnds(text: string, splices: readonly Splice[]): readonly Splice[] {
  if (!text.includes('\r\n')) return splices;
  return splices.map((splice) => ({ ...splice, text: splice.text.replaceAll(/\r?\n/g, '\r\n') }));
}

/** As JSON has it: without keys that are undefined, and without a zero below zero. */
function asJson(kept: KeptFile): KeptFile {
  return JSON.parse(JSON.stringify(kept)) as KeptFile;
}

const FITTING = `a text of at most ${MOST_BYTES} bytes`;

/** The first text that, once written, will read back as what was meant. */
function firstThatReads(
  candidates: readonly string[],
  meant: KeptFile,
  shown: string,
): Checked<string, Problem> {
  const wanted = asJson(meant);
  for (const candidate of candidates) {
    const written = Buffer.from(candidate, 'utf8');
    if (written.length > MOST_BYTES)
      return { ok: false, faults: [fileProblem(shown, FITTING, `one of ${written.length}`)] };
    const again = keptOfText(written.toString('utf8'), shown);
    if (again.ok && isDeepStrictEqual(asJson(again.value), wanted)) {
      return { ok: true, value: candidate };
    }
  }
  const expected = 'a text in which note and rides can be written without touching anything else';
  return {
    ok: false,
    faults: [fileProblem(shown, expected, 'one laid out so that they cannot: write them in by hand')],
  };
}
