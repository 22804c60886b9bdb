/**
 * Any profile that is valid: every number that it may have, with few digits or with as many as a number can have.
 */
import fc from 'fast-check';
import { PROFILE_FIELDS, type ProfileField } from '../../src/quantity/profile-fields.js';
import { profileSchema, type ProfileFile } from '../../src/quantity/profile-file.js';

const MOST_STEPS = 1000;

/** A number in the range of a field; never minus zero, which no file is meant to hold. */
function drawnNumber({ min, max }: ProfileField): fc.Arbitrary<number> {
  const few = fc
    .integer({ min: 0, max: MOST_STEPS })
    .map((step) => Number((min + ((max - min) * step) / MOST_STEPS).toPrecision(4)))
    .map((value) => Math.min(max, Math.max(min, value)));
  return fc.oneof(few, fc.double({ min, max, noNaN: true })).map((value) => value + 0);
}

/** Sections that a profile may be without, by the number that they cannot be without. */
const SECTIONS = ['loadFeedForward', 'headroomLift'];

function drawnNumbers(): fc.Arbitrary<Map<ProfileField, number>> {
  const drawn = fc.tuple(
    ...PROFILE_FIELDS.map((field) => fc.record({ value: drawnNumber(field), isGiven: fc.boolean() })),
  );
  return fc.record({ drawn, sections: fc.subarray(SECTIONS) }).map(({ drawn: all, sections }) => {
    const given = PROFILE_FIELDS.map((field, index) => ({ field, ...all[index]! })).filter(
      ({ field, isGiven }) => {
        const inner = field.path.length > 2 ? field.path[1]! : null;
        return inner === null ? isGiven || !field.optional : sections.includes(inner);
      },
    );
    return new Map(given.map(({ field, value }) => [field, value]));
  });
}

/** Any valid profile. */
export const drawnProfile: fc.Arbitrary<ProfileFile> = drawnNumbers().map((numbers) => {
  const raw: Record<string, unknown> = { summary: 'Drawn.' };
  for (const [{ path }, value] of numbers) {
    let section = raw;
    for (const step of path.slice(0, -1)) section = (section[step] ??= {}) as Record<string, unknown>;
    section[path.at(-1)!] = value;
  }
  return profileSchema.parse(raw);
});
