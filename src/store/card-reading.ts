/**
 * Which numbers does a ride card in text hold, and are they still those that were printed? Spaces, upper and lower case may differ,
 * as they do where a person types a card off; a number that differs is found by its hash. What stands below the hash is not read.
 */
import { checkValue } from '../quantity/check.js';
import { isName } from '../quantity/field.js';
import type { Checked, Complaint, Problem } from '../quantity/problem.js';
import { PROFILE_FIELDS, readField, type ProfileField } from '../quantity/profile-fields.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { quoted } from '../quantity/received.js';
import { suggestion } from '../quantity/suggestion.js';
import { HASH_DIGITS, numbersHash } from './short-hash.js';

/** What a card holds: the name on it, the profile's numbers by their keys in the units of the keys, and their hash. */
export interface CardReading {
  name: string;
  numbers: Record<string, number>;
  hash: string;
}

const TITLE = /^\s*ride\s+card\b[\s:]*(.*?)\s*$/i;
const NUMBERS = /^\s*numbers\s*:?\s*$/i;
const HASH = /^\s*hash\s+of\s+these\s+numbers\b[\s:]*(.*?)\s*$/i;
const NUMBER_LINE =
  /^\s*([a-z][a-z\s]*?)[\s:=]*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)(?![\d.,])\s*(.*?)\s*$/i;

/** Letters that Crockford's base 32 reads as digits. */
const READ_AS: Readonly<Record<string, string>> = { o: '0', i: '1', l: '1' };

const HASH_EXPECTED = 'the line "hash of these numbers" with a hash such as 7k2m-q9dx';

/** A line of the card, counted from 1. */
interface Line {
  text: string;
  number: number;
}

/** A number line that was understood. */
interface ReadNumber {
  field: ProfileField;
  value: number;
  line: Line;
}

type Fault = Omit<Problem, 'file'>;

function faultAt(
  line: Line | null,
  fault: Pick<Fault, 'key' | 'expected' | 'received' | 'suggestion'>,
): Fault {
  const column = line === null ? null : line.text.search(/\S|$/) + 1;
  return { line: line?.number ?? null, column, ...fault };
}

function linesOf(text: string): Line[] {
  return text
    .replace(/^\uFEFF/, '')
    .replaceAll('\u2212', '-')
    .split(/\r\n|\n|\r/)
    .map((line, index) => ({ text: line, number: index + 1 }));
}

/** True for a text that is meant to be a ride card: its first line says so, or one of its lines has the hash of a card. */
export function isCardText(text: string): boolean {
  const lines = linesOf(text);
  const first = lines.find((line) => line.text.trim() !== '');
  return TITLE.test(first?.text ?? '') || lines.some((line) => HASH.test(line.text));
}

const squeezed = (text: string) => text.replace(/\s+/g, '').toLowerCase();

function readNumber(line: Line): Checked<ReadNumber, Fault> {
  const refuse = (fault: Parameters<typeof faultAt>[1]): Checked<ReadNumber, Fault> => ({
    ok: false,
    faults: [faultAt(line, fault)],
  });
  const [, word = '', digits = '', unit = ''] = NUMBER_LINE.exec(line.text) ?? [];
  const key = squeezed(word);
  if (key === '') {
    const expected = 'a key, a number with a point and its unit, such as rateAPerDegPerS 1.2 A/(deg/s)';
    return refuse({ key: keyOfLine(line), expected, received: quoted(line.text.trim()) });
  }
  const field = PROFILE_FIELDS.find((known) => known.key.toLowerCase() === key);
  if (field === undefined) {
    const keys = PROFILE_FIELDS.map((known) => known.key);
    const near = suggestion(key, keys);
    const fault = { key: '', expected: `one of the keys ${keys.join(', ')}`, received: quoted(word.trim()) };
    return refuse(near === undefined ? fault : { ...fault, suggestion: near });
  }
  if (unit !== '' && squeezed(unit) !== squeezed(field.unit)) {
    const expected = field.unit === '' ? 'no unit' : `a number in ${field.unit}`;
    return refuse({ key: field.key, expected, received: quoted(`${digits} ${unit}`) });
  }
  return { ok: true, value: { field, value: Number(digits), line } };
}

/** The key that a line begins with although the rest of it is not understood; empty where it has none. */
function keyOfLine({ text }: Line): string {
  const begin = squeezed(text);
  return PROFILE_FIELDS.find(({ key }) => begin.startsWith(key.toLowerCase()))?.key ?? '';
}

/** The numbers as a raw profile. */
function rawOf(read: readonly ReadNumber[]): Record<string, unknown> {
  const raw: Record<string, unknown> = { summary: 'From a ride card.', gains: {} };
  for (const { field, value } of read) {
    let section = raw;
    for (const step of field.path.slice(0, -1)) section = (section[step] ??= {}) as Record<string, unknown>;
    section[field.path.at(-1)!] = value;
  }
  return raw;
}

function readNumbers(lines: readonly Line[]): Checked<ProfileFile, Fault> {
  const readings = lines.filter(({ text }) => text.trim() !== '').map(readNumber);
  const faults = readings.flatMap((reading) => (reading.ok ? [] : reading.faults));
  const read = readings.flatMap((reading) => (reading.ok ? [reading.value] : []));
  const before = new Map<string, Line>();
  for (const { field, line } of read) {
    const first = before.get(field.key);
    if (first === undefined) before.set(field.key, line);
    else {
      const received = `another one after that of line ${first.number}`;
      faults.push(faultAt(line, { key: field.key, expected: 'this key once', received }));
    }
  }
  const checked = checkValue('profile', rawOf(read));
  if (checked.ok && faults.length === 0) return checked;
  const refused = new Set(faults.map(({ key }) => key));
  const complaints = (checked.ok ? [] : checked.faults).map((complaint) => placed(complaint, before));
  return { ok: false, faults: [...faults, ...complaints.filter(({ key }) => !refused.has(key))] };
}

function placed({ path, ...said }: Complaint, lines: ReadonlyMap<string, Line>): Fault {
  const key = String(path.at(-1) ?? '');
  return faultAt(lines.get(key) ?? null, { key, ...said });
}

/** The hash as it is written, from one that a person typed; null for no hash. */
function typedHash(text: string): string | null {
  const digits = text
    .toLowerCase()
    .replace(/[\s-]/g, '')
    .replace(/[oil]/g, (letter) => READ_AS[letter]!);
  const isHash = digits.length === 8 && [...digits].every((digit) => HASH_DIGITS.includes(digit));
  return isHash ? `${digits.slice(0, 4)}-${digits.slice(4)}` : null;
}

function titleOf(lines: readonly Line[]): Checked<string, Fault> {
  const first = lines.find(({ text }) => text.trim() !== '') ?? null;
  const found = TITLE.exec(first?.text ?? '')?.[1];
  const name = squeezed(found ?? '');
  if (isName(name)) return { ok: true, value: name };
  const expected = '"Ride card" and the name of a profile';
  const received = first === null ? 'nothing' : quoted(first.text.trim());
  return { ok: false, faults: [faultAt(first, { key: '', expected, received })] };
}

function blockOf(lines: readonly Line[]): Checked<{ inner: Line[]; hash: Line }, Fault> {
  const start = lines.findIndex(({ text }) => NUMBERS.test(text));
  const end = lines.findIndex(({ text }, index) => index > start && HASH.test(text));
  if (start >= 0 && end >= 0) {
    return { ok: true, value: { inner: lines.slice(start + 1, end), hash: lines[end]! } };
  }
  const faults = [
    ...(start >= 0 ? [] : ['a line "numbers" before the numbers']),
    ...(end >= 0 ? [] : [HASH_EXPECTED]),
  ].map((expected) => faultAt(null, { key: '', expected, received: 'none' }));
  return { ok: false, faults };
}

/** The hash of the numbers if it is the one that the card has. */
function hashed(profile: ProfileFile, line: Line): Checked<string, Fault> {
  const written = HASH.exec(line.text)?.[1] ?? '';
  const typed = typedHash(written);
  const own = numbersHash(profile);
  if (typed === own) return { ok: true, value: own };
  const said =
    typed === null
      ? { expected: HASH_EXPECTED, received: written === '' ? 'nothing' : quoted(written) }
      : {
          expected: `numbers with the hash ${typed}`,
          received: `numbers with the hash ${own}: one of them, or the hash, is not as it was printed`,
        };
  return { ok: false, faults: [faultAt(line, { key: '', ...said })] };
}

/** What a ride card in text holds, or everything that is wrong with it; problems name it as `shown`. */
export function readCard(text: string, shown: string): Checked<CardReading, Problem> {
  const lines = linesOf(text);
  const title = titleOf(lines);
  const block = blockOf(lines);
  const profile: Checked<ProfileFile, Fault> = block.ok ? readNumbers(block.value.inner) : block;
  const hash = block.ok && profile.ok ? hashed(profile.value, block.value.hash) : null;
  if (title.ok && profile.ok && hash?.ok === true) {
    const numbers = PROFILE_FIELDS.flatMap((field) => {
      const value = readField(profile.value, field);
      return value === undefined ? [] : [[field.key, value] as const];
    });
    return { ok: true, value: { name: title.value, numbers: Object.fromEntries(numbers), hash: hash.value } };
  }
  const faults = [title, profile, hash].flatMap((part) => (part === null || part.ok ? [] : part.faults));
  return { ok: false, faults: faults.map((fault) => ({ file: shown, ...fault })) };
}
