/**
 * How do the numbers of a kept profile come into firmware that somebody wrote at home? As a header in C99 that is C++ as well,
 * with constants and macros only: a `static const float` a number, its unit in the name and its sentence above it. For what
 * the profile leaves out there is a macro that says so and no constant, so that using it stops the compiler.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import { PROFILE_FIELDS, readField, type ProfileField } from '../quantity/profile-fields.js';
import { CAUTIONS } from './cautions.js';
import { wrapped } from './fit-text.js';
import { ceilingRows } from './kept-sentences.js';
import { plainText } from './plain-text.js';

const LINE_WIDTH = 92;

/** Decimal digits that are enough to name a float, and all that its literal needs (C99 5.2.4.2.2: DECIMAL_DIG of binary32). */
const FLOAT_DIGITS = 9;

/** A key such as `gyroLowPassHz` as `gyro_low_pass_hz`. */
function snake(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

/** The section below gains and shaping that a number is in, such as `headroomLift`; null for none. */
function innerSection({ path }: ProfileField): string | null {
  return path.length > 2 ? path.at(-2)! : null;
}

/** The constant of a number of a profile: `proportional_a_per_deg`, `headroom_lift_up_to_deg`. */
export function constantName(field: ProfileField): string {
  const section = innerSection(field);
  return snake(section === null ? field.key : `${section}_${field.key}`);
}

/** The float nearest to a number, in as many digits as name it. */
function floatText(value: number): string {
  return String(Number(Math.fround(value).toPrecision(FLOAT_DIGITS)));
}

/** Significant digits of a number as it is written. */
function digitCount(text: string): number {
  return text.replace(/e.*$/, '').replace(/\D/g, '').replace(/^0+/, '').length;
}

/**
 * A number as a literal of type float: as the file has it, or where that has more digits than a float or is too small for one,
 * as the float nearest to it.
 */
export function floatLiteral(value: number): string {
  const own = String(value);
  const isTooFine = digitCount(own) > FLOAT_DIGITS || Math.fround(value) === 0;
  const text = isTooFine ? floatText(value) : own;
  return /[.e]/.test(text) ? `${text}f` : `${text}.0f`;
}

/** A text that neither ends a comment nor begins another one in it, nor has trigraphs. */
function inComment(text: string): string {
  return plainText(text).replace(/(?<=\*)(?=\/)|(?<=\/)(?=\*)|(?<=\?)(?=\?)/g, ' ');
}

function comment(text: string): string {
  return `/* ${inComment(text)} */`;
}

function constantLines(field: ProfileField, value: number): string[] {
  const unit = field.unit === '' ? '' : ` [${field.unit}]`;
  const isExact = Math.fround(value) === value;
  const flag = isExact ? '' : `; the file has ${value}, float holds ${floatText(value)}`;
  return [
    comment(`${field.says}${unit}${flag}`),
    `static const float ${constantName(field)} = ${floatLiteral(value)};`,
  ];
}

function presence(name: string, isThere: boolean): string {
  return `#define HAS_${snake(name).toUpperCase()} ${isThere ? 1 : 0}`;
}

/** A number that may be left out by itself: its macro, and the constant where it is there. */
function optionalLines(field: ProfileField, value: number | undefined): string[] {
  const macro = presence(field.key, value !== undefined);
  return value === undefined
    ? [comment(`${field.says} [${field.unit}]. Left out here.`), macro]
    : [macro, ...constantLines(field, value)];
}

/** The lines of one number, a blank one first; a section begins with its macro. */
function fieldLines(profile: KeptFile['profile'], field: ProfileField, index: number): string[] {
  const value = readField(profile, field);
  if (field.optional) return ['', ...optionalLines(field, value)];
  const section = innerSection(field);
  const isFirst = section !== null && innerSection(PROFILE_FIELDS[index - 1]!) !== section;
  const words = snake(section ?? '').replaceAll('_', ' ');
  const told = value === undefined ? ': left out here.' : '';
  const opening = isFirst ? ['', comment(`The ${words}${told}`), presence(section, value !== undefined)] : [];
  return value === undefined ? opening : [...opening, '', ...constantLines(field, value)];
}

function headLines(name: string, kept: KeptFile): string[] {
  const { origin, rig, numbers, profile } = kept;
  const ceilings = ceilingRows(kept).map(
    ({ label, value, unit, says }) => `${label} ${value} ${unit} (${says})`,
  );
  const paragraphs = [
    `The numbers of the kept profile ${name}, hash ${numbers}.`,
    profile.summary,
    `Simulated on the board ${rig.boardName}, ${origin.on}, with underfoot ${origin.underfoot}. Ceilings on current there: ` +
      `${ceilings.join(', ')}.`,
    CAUTIONS.join(' '),
    'HAS_... is 1 where the profile has this number or part, and 0 where it leaves it out: then there is no constant.',
  ];
  const lines = paragraphs.flatMap((text) => ['', ...wrapped(inComment(text), LINE_WIDTH)]).slice(1);
  return ['/*', ...lines.map((line) => ` * ${line}`.trimEnd()), ' */'];
}

/** The text of the header; its guard is made from the name. */
export function exportCHeader(name: string, kept: KeptFile): string {
  const guard = `PROFILE_${name.toUpperCase().replaceAll('-', '_')}_H`;
  return [
    ...headLines(name, kept),
    `#ifndef ${guard}`,
    `#define ${guard}`,
    '',
    `#define PROFILE_NAME "${name}"`,
    `#define PROFILE_NUMBERS "${kept.numbers}"`,
    ...PROFILE_FIELDS.flatMap((field, index) => fieldLines(kept.profile, field, index)),
    '',
    '#endif',
    '',
  ].join('\n');
}
