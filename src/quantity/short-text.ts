/**
 * How do the numbers of a profile fit into a line that a camera reads? `UF1 P20 R1.2 I0 … 7K2M-Q9DX`: a mark with a version,
 * one tag and number a field, the short hash of the numbers; in the 45 characters that a QR code packs two into 11 bits
 * (ISO/IEC 18004, alphanumeric mode). What the profile does not have is left out; defaults are written, so that a text on
 * the lid of a board means the same when a later version has others.
 */
import { checkValue } from './check.js';
import type { Checked, Complaint } from './problem.js';
import { PROFILE_FIELDS, readField, type ProfileField } from './profile-fields.js';
import type { ProfileFile } from './profile-file.js';
import { quoted } from './received.js';

/** The mark that a short text begins with, its version in it. */
export const SHORT_TEXT_MARK = 'UF1';

/** The letter of each number of a profile, by its key; none is E, which stands for a power of ten. */
export const SHORT_TAGS: Readonly<Record<string, string>> = {
  proportionalAPerDeg: 'P',
  rateAPerDegPerS: 'R',
  integralAPerDegS: 'I',
  progressiveStiffnessPerDeg: 'K',
  integralLimitA: 'L',
  slewLimitAPerS: 'S',
  driveCeilingA: 'D',
  brakeCeilingA: 'B',
  gyroLowPassHz: 'G',
  blendTimeS: 'T',
  restTrimNoseUpDeg: 'N',
  engageRampS: 'W',
  filterTimeS: 'F',
  currentShare: 'C',
  noseUpDegPerA: 'U',
  belowPercent: 'H',
  upToDeg: 'M',
  rateDegPerS: 'V',
};

/** What the numbers of a profile hash to; the hash is computed where files are. */
export type HashOfNumbers = (profile: ProfileFile) => string;

const HASH = /^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/;
const NUMBER = /^-?\d+(?:\.\d+)?(?:E[+-]?\d+)?$/;
const EXAMPLE = `${SHORT_TEXT_MARK} P20 R1.2 7K2M-Q9DX`;

function tagOf({ key }: ProfileField): string {
  const tag = SHORT_TAGS[key];
  if (tag === undefined) throw new Error(`no tag for ${key}`);
  return tag;
}

/** The numbers of a profile as one line, closed by their short hash; a number is the shortest that reads back as the same. */
export function shortText(profile: ProfileFile, hash: string): string {
  const words = PROFILE_FIELDS.flatMap((field) => {
    const value = readField(profile, field);
    return value === undefined ? [] : [`${tagOf(field)}${value}`];
  });
  return [SHORT_TEXT_MARK, ...words, hash].join(' ').toUpperCase();
}

/** A word of the text with the field that it is for. */
interface Reading {
  field: ProfileField;
  value: number;
}

function readWord(word: string): Checked<Reading, Complaint> {
  const tag = word.slice(0, 1);
  const field = PROFILE_FIELDS.find((known) => tagOf(known) === tag);
  if (field === undefined) {
    const tags = PROFILE_FIELDS.map(tagOf).join(', ');
    const expected = `a number after one of the letters ${tags}`;
    return { ok: false, faults: [{ path: [tag], expected, received: quoted(word) }] };
  }
  const digits = word.slice(1);
  const value = Number(digits);
  if (NUMBER.test(digits) && Number.isFinite(value)) return { ok: true, value: { field, value } };
  const expected = `${tag} and a number such as ${tag}1.25`;
  return { ok: false, faults: [{ path: field.path, expected, received: quoted(word) }] };
}

/** The words between mark and hash as a raw profile, and what is wrong with them one by one. */
function readWords(words: readonly string[]): { raw: Record<string, unknown>; faults: Complaint[] } {
  const raw: Record<string, unknown> = { gains: {} };
  const faults: Complaint[] = [];
  const seen = new Set<string>();
  for (const word of words) {
    const reading = readWord(word);
    if (!reading.ok) {
      faults.push(...reading.faults);
      continue;
    }
    const { field, value } = reading.value;
    if (seen.has(field.key)) {
      const expected = `the letter ${tagOf(field)} once`;
      faults.push({ path: field.path, expected, received: `${quoted(word)} after another one` });
      continue;
    }
    seen.add(field.key);
    let section = raw;
    for (const step of field.path.slice(0, -1)) section = (section[step] ??= {}) as Record<string, unknown>;
    section[field.path.at(-1)!] = value;
  }
  return { raw, faults };
}

const samePath = (one: readonly PropertyKey[], other: readonly PropertyKey[]) =>
  one.length === other.length && one.every((step, index) => step === other[index]);

/** The faults at both ends of the text. */
function endFaults(mark: string, hash: string): Complaint[] {
  const faults: Complaint[] = [];
  if (mark !== SHORT_TEXT_MARK) {
    const expected = `${SHORT_TEXT_MARK} at the beginning, as in ${EXAMPLE}`;
    faults.push({ path: ['mark'], expected, received: mark === '' ? 'nothing' : quoted(mark) });
  }
  if (!HASH.test(hash)) {
    const expected = `the short hash at the end, as in ${EXAMPLE}`;
    faults.push({ path: ['hash'], expected, received: hash === '' ? 'nothing' : quoted(hash) });
  }
  return faults;
}

/**
 * The profile that a short text holds, or everything that is wrong with it; small letters and more than one space count as
 * the usual ones. Its summary says where it is from.
 */
export function readShortText(text: string, hashOf: HashOfNumbers): Checked<ProfileFile, Complaint> {
  const words = text.trim().toUpperCase().split(/\s+/);
  const [mark = '', ...rest] = words;
  const last = rest.at(-1) ?? '';
  const isClosed = HASH.test(last) || !NUMBER.test(last.slice(1));
  const hash = isClosed ? last : '';
  const { raw, faults: wordFaults } = readWords(isClosed ? rest.slice(0, -1) : rest);
  const checked = checkValue('profile', {
    ...raw,
    summary: `From a short text, ${hash.toLowerCase()}`.slice(0, 80),
  });
  const unread = wordFaults.map(({ path }) => path);
  const fieldFaults = (checked.ok ? [] : checked.faults).filter(
    ({ path }) => !unread.some((other) => samePath(path, other)),
  );
  const faults = [...endFaults(mark, hash), ...wordFaults, ...fieldFaults];
  if (!checked.ok || faults.length > 0) return { ok: false, faults };
  const found = hashOf(checked.value).toUpperCase();
  if (found === hash) return { ok: true, value: checked.value };
  const expected = `${found}, the hash of these numbers`;
  return { ok: false, faults: [{ path: ['hash'], expected, received: quoted(hash) }] };
}
