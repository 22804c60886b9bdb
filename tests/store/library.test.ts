/**
 * Are files found by name and by path, and is everything wrong with them told?
 */
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { describe, expect, it } from 'vitest';
import { listKind, listKinds, load } from '../../src/store/library.js';
import { loadFileOfAnyKind } from '../../src/store/load-file.js';
import { findPlaces } from '../../src/store/places.js';
import { validProfile, validScenario } from '../quantity/valid-values.js';
import { keptFixture, putKept } from '../tasks/kept-fixture.js';
import { putFile, tempFolder } from './temp-folder.js';
import { workingFolder } from './working-folder.js';

describe('a list', () => {
  it('names the files of a kind in order', () => {
    const folder = workingFolder();
    putFile(folder, 'profiles/gains/agate.yaml', 'not even read');
    const listing = listKind(findPlaces(folder), 'profile');
    expect(listing.problems).toEqual([]);
    expect(listing.entries.map(({ kind, name }) => [kind, name])).toEqual([
      ['profile', 'agate'],
      ['profile', 'slate'],
    ]);
  });

  it('tells file names that are no names, and leaves other files alone', () => {
    const folder = workingFolder();
    const bad = [
      'Big.yaml',
      'old.yml',
      'my slate.yaml',
      'a\u001b[31m.yaml',
      `${'x'.repeat(41)}.yaml`,
      '..yaml',
      'LOUD.YAML',
    ];
    const others = ['notes.txt', '.hidden.yaml', 'slate.yaml~', 'README.md'];
    for (const name of [...bad, ...others]) putFile(folder, `profiles/gains/${name}`, '');
    const { entries, problems } = listKind(findPlaces(folder), 'profile');
    expect(entries.map(({ name }) => name)).toEqual(['slate']);
    const told = bad.filter((name) => !name.startsWith('.')).map((name) => `profiles/gains/${name}`);
    expect(problems.map(({ file }) => file).toSorted()).toEqual(told.toSorted());
  });

  it('tells a folder that is missing and a file in its place', () => {
    const folder = workingFolder();
    rmSync(join(folder, 'scenarios'), { recursive: true });
    rmSync(join(folder, 'profiles/riders'), { recursive: true });
    putFile(folder, 'profiles/riders', '');
    const { entries, problems } = listKinds(findPlaces(folder));
    expect(entries.map(({ name }) => name)).toEqual(['pebble', 'slate']);
    expect(problems).toMatchObject([
      {
        file: 'profiles/riders',
        expected: 'a folder of rider files',
        received: 'a file where a folder is needed',
      },
      { file: 'scenarios', expected: 'a folder of scenario files', received: 'nothing there' },
    ]);
  });
});

describe('a file', () => {
  it('is loaded by name, with its defaults', () => {
    const loaded = load(findPlaces(workingFolder()), 'profile', 'slate');
    expect(loaded).toMatchObject({
      ok: true,
      value: {
        kind: 'profile',
        name: 'slate',
        path: 'profiles/gains/slate.yaml',
        value: { shaping: { blendTimeS: 1 } },
      },
    });
  });

  it('is loaded by path from the current folder', () => {
    const folder = workingFolder();
    putFile(folder, 'mine.yaml', stringify(validProfile()));
    const places = findPlaces(folder);
    for (const path of ['mine.yaml', './mine.yaml', join(folder, 'mine.yaml'), 'profiles/../mine.yaml']) {
      expect(load(places, 'profile', path)).toMatchObject({
        ok: true,
        value: { name: 'mine', path: 'mine.yaml' },
      });
    }
  });

  it('whose name is unknown is told with the names there are and the nearest', () => {
    expect(load(findPlaces(workingFolder()), 'profile', 'slat')).toEqual({
      ok: false,
      faults: [
        {
          file: '',
          line: null,
          column: null,
          key: 'profile',
          expected: 'the name of a profile (slate) or the path of a .yaml file',
          received: "'slat'",
          suggestion: 'slate',
        },
      ],
    });
  });

  it.each(['__proto__', 'constructor', '', '..'])('is not found by the name %j', (name) => {
    expect(load(findPlaces(workingFolder()), 'profile', name)).toMatchObject({ ok: false });
  });

  it('whose kind has no folder is told so', () => {
    const folder = tempFolder();
    mkdirSync(join(folder, 'profiles'));
    const loaded = load(findPlaces(folder), 'board', 'pebble');
    expect(loaded).toMatchObject({
      ok: false,
      faults: [
        { file: 'profiles/boards', received: 'nothing there' },
        { key: 'board', expected: 'the name of a board (there is none) or the path of a .yaml file' },
      ],
    });
  });

  it('at a path must have a name too', () => {
    const folder = workingFolder();
    putFile(folder, 'My Slate.yaml', stringify(validProfile()));
    const loaded = load(findPlaces(folder), 'profile', 'My Slate.yaml');
    expect(loaded).toMatchObject({
      ok: false,
      faults: [{ file: 'My Slate.yaml', received: "'My Slate.yaml'" }],
    });
  });

  it('tells faults of YAML and of the schema together, from top to bottom', () => {
    const folder = workingFolder();
    const text = [
      '# a comment',
      'gains:',
      '  proportionalAPerDeg: .nan',
      '  rateAPerDegPerS: high',
      '  rateAPerDegPerS: 1',
      '  rateAPerDeg: 1',
      '__proto__: 5',
      '',
    ].join('\n');
    putFile(folder, 'profiles/gains/slate.yaml', text);
    const loaded = load(findPlaces(folder), 'profile', 'slate');
    const faults = loaded.ok ? [] : loaded.faults;
    expect(faults.map(({ line, column, key, received }) => [line, column, key, received])).toEqual([
      [2, 1, 'summary', 'nothing'],
      [3, 3, 'gains.proportionalAPerDeg', 'NaN'],
      [4, 3, 'gains.rateAPerDegPerS', "text 'high'"],
      [5, 3, '', "the key 'rateAPerDegPerS' again"],
      [6, 3, 'gains.rateAPerDeg', "the unknown key 'rateAPerDeg'"],
      [7, 1, '__proto__', "the unknown key '__proto__'"],
    ]);
    expect(new Set(faults.map(({ file }) => file))).toEqual(new Set(['profiles/gains/slate.yaml']));
  });

  it('with a flood of faults tells a hundred and counts the rest', () => {
    const folder = workingFolder();
    const text = Array.from({ length: 3000 }, (_, i) => `unknown${i}: 1\n`).join('');
    const loaded = load(findPlaces(folder), 'profile', putFile(folder, 'flood.yaml', text));
    const faults = loaded.ok ? [] : loaded.faults;
    expect(faults).toHaveLength(101);
    expect(faults.at(-1)).toMatchObject({ file: 'flood.yaml', received: '2902 more problems' });
  });
});

describe('a file whose kind is not said', () => {
  it('has the kind of its folder', () => {
    const folder = workingFolder();
    const path = putFile(folder, 'elsewhere/riders/odd.yaml', stringify(validProfile()));
    const loaded = loadFileOfAnyKind(findPlaces(folder), path);
    expect(loaded).toMatchObject({ ok: false });
    expect(loaded.ok ? [] : loaded.faults.map(({ key }) => key)).toContain('balance');
  });

  it('has the kind that its keys tell', () => {
    const folder = workingFolder();
    const path = putFile(folder, 'some-ride.yaml', stringify(validScenario()));
    expect(loadFileOfAnyKind(findPlaces(folder), path)).toMatchObject({
      ok: true,
      value: { kind: 'scenario' },
    });
  });

  it('is told when nothing tells the kind', () => {
    const folder = workingFolder();
    const path = putFile(folder, 'riddle.yaml', 'summary: who am I\n');
    expect(loadFileOfAnyKind(findPlaces(folder), path)).toMatchObject({
      ok: false,
      faults: [
        {
          file: 'riddle.yaml',
          expected: expect.stringContaining('the keys of a board, a rider, a profile, a scenario'),
        },
      ],
    });
  });
});

describe('a profile that is kept', () => {
  it('is taken from its file by path, under the name that it is kept by', () => {
    const folder = workingFolder();
    putKept(folder, 'evening');
    const loaded = load(findPlaces(folder), 'profile', 'shortlist/evening.yaml');
    expect(loaded).toMatchObject({
      ok: true,
      value: { kind: 'profile', name: 'evening', value: keptFixture().profile },
    });
  });

  it('is refused when its numbers are not those that were proven', () => {
    const folder = workingFolder();
    const path = putKept(folder, 'evening');
    const text = readFileSync(path, 'utf8');
    putFile(
      folder,
      'shortlist/evening.yaml',
      text.replace('proportionalAPerDeg: 20', 'proportionalAPerDeg: 25'),
    );
    expect(load(findPlaces(folder), 'profile', 'shortlist/evening.yaml')).toMatchObject({
      ok: false,
      faults: [{ file: 'shortlist/evening.yaml', key: 'profile' }],
    });
  });
});
