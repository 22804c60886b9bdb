/** Are the sheets that come with the program as they should be, and do the examples carry every starter profile? */
import { describe, expect, it } from 'vitest';
import { ontoSheet } from '../../src/quantity/onto-sheet.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { SheetFile } from '../../src/quantity/sheet-file.js';
import { SHEET_QUANTITIES, sheetQuantity } from '../../src/quantity/sheet-quantities.js';
import { UNITS_OF } from '../../src/quantity/sheet-units.js';
import { listKind, load } from '../../src/store/library.js';
import { findPlaces, programFolder } from '../../src/store/places.js';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const places = findPlaces(programFolder());

function read<K extends 'sheet' | 'profile'>(
  kind: K,
  name: string,
): K extends 'sheet' ? SheetFile : ProfileFile {
  const loaded = load(places, kind, name);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.faults));
  return loaded.value.value as K extends 'sheet' ? SheetFile : ProfileFile;
}

const names = (kind: 'sheet' | 'profile') => listKind(places, kind).entries.map(({ name }) => name);

const EXAMPLES = ['sundial', 'bellows'];

it('there is a blank one and the two examples', () => {
  expect(names('sheet')).toEqual(['bellows', 'blank', 'sundial']);
});

it('the blank one takes the three gains as they are', () => {
  const { entries } = ontoSheet(read('sheet', 'blank'), read('profile', 'wool'));
  expect(entries.map(({ text }) => text)).toEqual(['10.00', '0.600', '100.00']);
});

it('the blank one names every quantity, and every unit by itself or as one with another current', () => {
  const text = readFileSync(join(programFolder(), 'profiles/sheets/blank.yaml'), 'utf8');
  for (const key of Object.keys(SHEET_QUANTITIES)) {
    expect(text).toContain(`#   ${key} `);
    for (const unit of Object.keys(UNITS_OF[sheetQuantity(key).dimension])) {
      expect(text, unit).toContain(unit.replace(/^(?:limit|mA)(?=\/)|(?<=\/)(?:limit|mA)$/, 'A'));
    }
  }
});

describe.each(EXAMPLES)('%s', (sheetName) => {
  const sheet = read('sheet', sheetName);

  it('has a place for every number of a profile', () => {
    expect(sheet.rows.map(({ quantity }) => quantity).toSorted()).toEqual(
      Object.keys(SHEET_QUANTITIES).toSorted(),
    );
  });

  it.each(names('profile'))(
    'carries %s: no limit, no sign against its own, and at most half a percent off',
    (name) => {
      const profile = read('profile', name);
      const { entries, unplaced } = ontoSheet(sheet, profile);
      expect(unplaced).toEqual([]);
      for (const { row, ours, back, text, limited, signContradicts } of entries) {
        expect({ limited, signContradicts }, row.label).toEqual({ limited: false, signContradicts: false });
        expect(text, row.label).toMatch(/^-?\d+(?:\.\d+)?$/);
        if (ours === null) expect(back).toBeNull();
        else expect(Math.abs(back! - ours), row.label).toBeLessThanOrEqual(0.005 * Math.abs(ours));
      }
    },
  );
});
