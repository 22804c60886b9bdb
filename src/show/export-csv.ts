/**
 * How are the numbers of a kept profile written as comma-separated values? A header, the name and the short hash of the
 * numbers, then a line a number with its unit and what it is; lines end and fields are quoted as RFC 4180 has it. A number
 * that is left out has an empty value.
 */
import type { KeptFile } from '../quantity/kept-file.js';
import { PROFILE_FIELDS, readField } from '../quantity/profile-fields.js';

const HEADER = ['key', 'value', 'unit', 'what'];

function written(field: string): string {
  return /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}

/** The text of the file; keys as the profile's own file has them, numbers the shortest decimals that read back as the same. */
export function exportCsv(name: string, { profile, numbers }: KeptFile): string {
  const rows = PROFILE_FIELDS.map((field) => {
    const value = readField(profile, field);
    return [field.path.join('.'), value === undefined ? '' : String(value), field.unit, field.says];
  });
  const records = [
    HEADER,
    ['name', name, '', 'Name on the shortlist'],
    ['numbers', numbers, '', 'Short hash of the numbers'],
    ...rows,
  ];
  return records.map((record) => `${record.map(written).join(',')}\r\n`).join('');
}
