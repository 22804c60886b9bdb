/**
 * Does a kept profile leave in every form with the numbers that were proven, and is everything wrong told at once?
 */
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { keptSchema, type KeptFile } from '../../src/quantity/kept-file.js';
import { readShortText } from '../../src/quantity/short-text.js';
import { qrMatrix } from '../../src/show/qr-matrix.js';
import { qrPath } from '../../src/show/qr-svg.js';
import { findPlaces } from '../../src/store/places.js';
import { isSameProfile, profileOfText } from '../../src/store/profile-text.js';
import { numbersHash, sealOf } from '../../src/store/short-hash.js';
import { EXPORT_FORMATS, EXPORT_FORMS, exported, type ExportAsked } from '../../src/tasks/export.js';
import { decoded, shadesOfSvg } from '../show/pixels.js';
import { fullProfile, keptOf } from '../show/exported-kept.js';
import { allPaths, putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';

const look = { mode: 'none', background: 'dark', ascii: false, width: 80 } as const;
const asked = (form: ExportAsked['form'], rest: Partial<ExportAsked> = {}): ExportAsked => ({
  form,
  format: null,
  out: null,
  look,
  ...rest,
});

const full: KeptFile = keptOf(fullProfile);
const sealed: KeptFile = { ...full, seal: sealOf(full) };

/** A working folder in which the full profile is kept as hill-1. */
function places() {
  const folder = workingFolder();
  putFile(folder, 'shortlist/hill-1.yaml', stringify(sealed));
  return findPlaces(folder);
}

function text(form: ExportAsked['form'], rest: Partial<ExportAsked> = {}): string {
  const made = exported(places(), 'hill-1', asked(form, rest));
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}

describe('every form', () => {
  it.each(EXPORT_FORMS)('%s ends with a line end and has the short hash of the numbers in it', (form) => {
    const made = text(form);
    expect(made.endsWith('\n')).toBe(true);
    expect(made.toLowerCase()).toContain(full.numbers);
  });

  it('has the name of the file, however it was asked for', () => {
    const here = places();
    const path = join(here.workingFolder, 'shortlist/hill-1.yaml');
    for (const form of EXPORT_FORMS)
      expect(exported(here, path, asked(form))).toEqual(exported(here, 'hill-1', asked(form)));
  });

  it('writes nothing by itself', () => {
    const here = places();
    const before = allPaths(here.workingFolder);
    for (const form of EXPORT_FORMS) exported(here, 'hill-1', asked(form, { out: 'hill.txt' }));
    expect(allPaths(here.workingFolder)).toEqual(before);
  });
});

describe('JSON', () => {
  it('is the whole record, checked again as what it was', () => {
    const { name, shortText, ...kept } = JSON.parse(text('json')) as Record<string, unknown>;
    expect(name).toBe('hill-1');
    expect(keptSchema.parse(kept)).toEqual(sealed);
    const read = readShortText(String(shortText), numbersHash);
    expect(read.ok && read.value.gains).toEqual(fullProfile.gains);
  });

  it('has a profile in it that is a profile file as it stands', () => {
    const { profile } = JSON.parse(text('json')) as { profile: unknown };
    const read = profileOfText(JSON.stringify(profile, null, 2), 'pasted.yaml');
    expect(read.ok && isSameProfile(read.value, fullProfile)).toBe(true);
  });
});

describe('the code', () => {
  it('is the short text as a picture, where the ending of the file says so', () => {
    const plain = text('qr', { format: 'text' });
    expect(decoded(shadesOfSvg(text('qr', { out: 'code.SVG' })))?.text).toBe(plain.trimEnd());
    expect(text('qr', { out: 'code.svg', format: 'text' })).toBe(plain);
  });

  it('has name, hash and text beside it where there are columns for them, and no line is wider', () => {
    const lines = text('qr').split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(lines.some((line) => line.endsWith('  hill-1'))).toBe(true);
    const narrow = text('qr', { look: { ...look, width: 60 } }).split('\n');
    expect(narrow.length).toBe(lines.length);
    expect(narrow.join('')).toMatch(/^[ ▀▄█]+$/);
  });
});

describe('the card', () => {
  it('comes as text, picture or page', () => {
    expect(text('card')).toContain('hill-1');
    expect(text('card', { out: 'card.svg' })).toMatch(/^<svg |^<\?xml /);
    expect(text('card', { out: 'card.html' })).toMatch(/^<!doctype html>/i);
    expect(text('card', { format: 'svg' })).toBe(text('card', { out: 'card.svg' }));
  });

  it.each(['svg', 'html'] as const)('has the code on it as %s', (format) => {
    const { path } = qrPath(qrMatrix(text('qr', { format: 'text' }).trimEnd()));
    expect(text('card', { format })).toContain(path);
  });
});

describe('what cannot be exported', () => {
  const faults = (name: string, what: ExportAsked) => {
    const made = exported(places(), name, what);
    return made.ok ? [] : made.faults.map(({ key, expected, received }) => ({ key, expected, received }));
  };

  it('is a profile that is not kept: the way there is told', () => {
    expect(faults('slate', asked('json'))).toEqual([
      {
        key: 'kept',
        expected: "a kept profile: 'underfoot shortlist add slate' proves this one and keeps it",
        received: 'the profile slate, which is not kept',
      },
    ]);
  });

  it('is told together with a format that the form has not', () => {
    expect(faults('nobody', asked('csv', { format: 'svg' })).map(({ key }) => key)).toEqual([
      'kept',
      'format',
    ]);
    expect(faults('hill-1', asked('csv', { format: 'svg' }))).toEqual([
      { key: 'format', expected: 'no format with --as csv', received: "'svg'" },
    ]);
    expect(faults('hill-1', asked('qr', { out: 'code.html' }))).toEqual([
      {
        key: 'format',
        expected: 'one of the formats terminal, svg, text with --as qr',
        received: 'a file that ends in .html',
      },
    ]);
  });

  it.each(EXPORT_FORMS)('as %s: numbers that were changed by hand', (form) => {
    const here = places();
    const changed = structuredClone(sealed);
    changed.profile.gains.proportionalAPerDeg = 205;
    putFile(here.workingFolder, 'shortlist/hill-1.yaml', stringify(changed));
    expect(exported(here, 'hill-1', asked(form)).ok).toBe(false);
  });

  it('has no format that a form does not list', () => {
    for (const form of EXPORT_FORMS) {
      for (const format of ['text', 'terminal', 'svg', 'html'] as const) {
        const known: readonly string[] = EXPORT_FORMATS[form];
        expect([form, format, faults('hill-1', asked(form, { format })).length]).toEqual([
          form,
          format,
          known.includes(format) ? 0 : 1,
        ]);
      }
    }
  });
});
