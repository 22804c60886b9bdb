/**
 * Does the table of numbers read back as the profile, by the rules of RFC 4180?
 */
import { describe, expect, it } from 'vitest';
import { PROFILE_FIELDS, readField } from '../../src/quantity/profile-fields.js';
import { exportCsv } from '../../src/show/export-csv.js';
import { bareProfile, fineProfile, fullProfile, keptOf } from './exported-kept.js';

/** Records by RFC 4180: quoted fields with doubled quotes, lines ended by CR LF. */
function records(text: string): string[][] {
  if (!text.endsWith('\r\n')) throw new Error('the last line is not ended');
  return text
    .slice(0, -2)
    .split('\r\n')
    .map((line) =>
      [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map(
        ([, quotedField, plain]) => quotedField?.replaceAll('""', '"') ?? plain!,
      ),
    );
}

describe('the table of numbers', () => {
  it.each([
    ['bare', bareProfile],
    ['full', fullProfile],
    ['fine', fineProfile],
  ])('of %s has one number a row, to the last digit, with unit and sentence', (name, profile) => {
    const kept = keptOf(profile);
    const [header, nameRow, hashRow, ...rows] = records(exportCsv(name, kept));
    expect(header).toEqual(['key', 'value', 'unit', 'what']);
    expect(nameRow!.slice(0, 2)).toEqual(['name', name]);
    expect(hashRow!.slice(0, 2)).toEqual(['numbers', kept.numbers]);
    expect(rows.length).toBe(PROFILE_FIELDS.length);
    rows.forEach(([key, value, unit, what], index) => {
      const field = PROFILE_FIELDS[index]!;
      expect([key, unit, what]).toEqual([field.path.join('.'), field.unit, field.says]);
      const number = readField(profile, field);
      if (number === undefined) expect(value).toBe('');
      else expect(Number(value)).toBe(number);
    });
  });
});
