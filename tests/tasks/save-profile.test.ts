/**
 * Does a changed profile become a file of its own, and does nothing else change?
 */
import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { load } from '../../src/store/library.js';
import { findPlaces } from '../../src/store/places.js';
import { saveProfile } from '../../src/tasks/save-profile.js';
import { allPaths, putFile, tempFolder } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';

function profileAt(folder: string, name: string): ProfileFile {
  const loaded = load(findPlaces(folder), 'profile', name);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.faults));
  return loaded.value.value;
}

function firmer(folder: string): ProfileFile {
  const profile = profileAt(folder, 'slate');
  return { ...profile, gains: { ...profile.gains, proportionalAPerDeg: 31 } };
}

describe('saving a profile', () => {
  it('writes a new file from the one it was changed from', async () => {
    const folder = workingFolder();
    const from = putFile(folder, 'profiles/gains/slate.yaml', COMMENTED);
    const profile = firmer(folder);
    const saved = await saveProfile(findPlaces(folder), { from: 'slate', name: 'slate-2', profile });
    const path = join(folder, 'profiles/gains/slate-2.yaml');
    expect(saved).toEqual({ ok: true, value: path });
    expect(readFileSync(path, 'utf8')).toBe(COMMENTED.replace('20', '31'));
    expect(readFileSync(from, 'utf8')).toBe(COMMENTED);
    expect(profileAt(folder, 'slate-2')).toEqual(profile);
  });

  it.each([null, 'elsewhere', '../boards/pebble'])('writes a fresh file from %j', async (from) => {
    const folder = workingFolder();
    const profile = firmer(folder);
    expect(await saveProfile(findPlaces(folder), { from, name: 'new', profile })).toMatchObject({ ok: true });
    expect(profileAt(folder, 'new')).toEqual(profile);
    const text = readFileSync(join(folder, 'profiles/gains/new.yaml'), 'utf8');
    expect(text).toMatch(/^# yaml-language-server: /);
  });

  it('never writes over a file, nor through a link', async () => {
    const folder = workingFolder();
    const profile = firmer(folder);
    symlinkSync('nowhere.yaml', join(folder, 'profiles/gains/link.yaml'));
    mkdirSync(join(folder, 'profiles/gains/folder.yaml'));
    const before = readFileSync(join(folder, 'profiles/gains/slate.yaml'), 'utf8');
    for (const name of ['slate', 'link', 'folder']) {
      expect(await saveProfile(findPlaces(folder), { from: 'slate', name, profile })).toMatchObject({
        ok: false,
        faults: [{ file: `profiles/gains/${name}.yaml`, expected: 'a name that no profile has yet' }],
      });
    }
    expect(readFileSync(join(folder, 'profiles/gains/slate.yaml'), 'utf8')).toBe(before);
  });

  it.each(['', '..', '../x', 'Slate', 'a b', '-x', 'x'.repeat(41), 'x.yaml'])(
    'refuses the name %j',
    async (name) => {
      const folder = workingFolder();
      const before = allPaths(folder);
      expect(
        await saveProfile(findPlaces(folder), { from: 'slate', name, profile: firmer(folder) }),
      ).toMatchObject({ ok: false, faults: [{ key: 'name' }] });
      expect(allPaths(folder)).toEqual(before);
    },
  );

  it('writes nothing in the starter set, and tells every problem at once', async () => {
    const profile = firmer(workingFolder());
    const empty = tempFolder();
    const saved = await saveProfile(findPlaces(empty), { from: 'linen', name: 'Not a name', profile });
    expect(saved).toMatchObject({
      ok: false,
      faults: [{ expected: expect.stringContaining('underfoot init') }, { key: 'name' }],
    });
    expect(allPaths(empty)).toEqual([]);
  });

  it('refuses values that no profile file may hold', async () => {
    const folder = workingFolder();
    const profile = { ...firmer(folder), gains: { ...firmer(folder).gains, rateAPerDegPerS: -1 } };
    for (const from of ['slate', null]) {
      const before = allPaths(folder);
      expect(await saveProfile(findPlaces(folder), { from, name: 'new', profile })).toMatchObject({
        ok: false,
        faults: [{ file: 'profiles/gains/new.yaml', key: 'gains.rateAPerDegPerS' }],
      });
      expect(allPaths(folder)).toEqual(before);
    }
  });

  it('tells what is wrong with the file that it was changed from', async () => {
    const folder = workingFolder();
    const profile = firmer(folder);
    putFile(folder, 'profiles/gains/slate.yaml', 'gains: [');
    const saved = await saveProfile(findPlaces(folder), { from: 'slate', name: 'new', profile });
    expect(saved).toMatchObject({ ok: false, faults: [{ file: 'profiles/gains/slate.yaml', line: 1 }] });
  });

  it('leaves nothing behind where it cannot write', async () => {
    const folder = workingFolder();
    const profile = firmer(folder);
    const gains = join(folder, 'profiles/gains');
    rmSync(gains, { recursive: true });
    expect(await saveProfile(findPlaces(folder), { from: 'slate', name: 'new', profile })).toMatchObject({
      ok: false,
      faults: [{ file: 'profiles/gains/new.yaml', received: expect.stringContaining('no folder') }],
    });
    writeFileSync(gains, 'a file');
    const before = allPaths(folder);
    expect(await saveProfile(findPlaces(folder), { from: null, name: 'new', profile })).toMatchObject({
      ok: false,
      faults: [{ file: 'profiles/gains/new.yaml' }],
    });
    expect(allPaths(folder)).toEqual(before);
  });
});

const COMMENTED = `# mine
summary: Firm
gains:
  proportionalAPerDeg: 20 # soft enough
  rateAPerDegPerS: 1.2
`;
