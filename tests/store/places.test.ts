/**
 * Is the right folder worked in, and are paths shown as a person would write them?
 */
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  findPlaces,
  folderOf,
  kindOfFolder,
  programFolder,
  programVersion,
  shownPath,
} from '../../src/store/places.js';
import { putFile, tempFolder } from './temp-folder.js';

describe('the working folder', () => {
  it('is the current one when it has a folder of profiles', () => {
    const folder = tempFolder();
    mkdirSync(join(folder, 'profiles'));
    expect(findPlaces(folder)).toEqual({ workingFolder: folder, currentFolder: folder, isStarterSet: false });
  });

  it('is the starter set when there is none, or only a file of that name', () => {
    const empty = tempFolder();
    expect(findPlaces(empty)).toEqual({
      workingFolder: programFolder(),
      currentFolder: empty,
      isStarterSet: true,
    });
    putFile(empty, 'profiles', 'no folder');
    expect(findPlaces(empty).isStarterSet).toBe(true);
  });

  it('has a folder for every kind, and a folder tells its kind', () => {
    const places = { workingFolder: join('/', 'w') };
    expect(folderOf(places, 'profile')).toBe(join('/', 'w', 'profiles', 'gains'));
    expect(folderOf(places, 'scenario')).toBe(join('/', 'w', 'scenarios'));
    expect(kindOfFolder(folderOf(places, 'board'))).toBe('board');
    expect(kindOfFolder(join('/', 'w'))).toBeNull();
  });
});

describe('the program', () => {
  it('stands below its package.json and takes its version from there', () => {
    const text = readFileSync(join(programFolder(), 'package.json'), 'utf8');
    expect(JSON.parse(text)).toMatchObject({ name: 'underfoot', version: programVersion() });
    expect(existsSync(join(programFolder(), 'src', 'main.ts'))).toBe(true);
  });
});

describe('a path', () => {
  const places = { currentFolder: join('/', 'home', 'kim') };

  it('is relative inside the current folder', () => {
    expect(shownPath(places, join('/', 'home', 'kim', 'profiles', 'a.yaml'))).toBe('profiles/a.yaml');
    expect(shownPath(places, join('/', 'home', 'kim', '..a.yaml'))).toBe('..a.yaml');
  });

  it('is absolute outside', () => {
    expect(shownPath(places, join('/', 'home', 'a.yaml'))).toBe(join('/', 'home', 'a.yaml'));
    expect(shownPath(places, join('/', 'home', 'kim'))).toBe(join('/', 'home', 'kim'));
  });
});
