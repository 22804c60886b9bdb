/**
 * Is it found out when somebody has changed a number of a kept file by hand, and left alone when he wrote his own words?
 */
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { checkValue } from '../../src/quantity/check.js';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import { checkFiles } from '../../src/tasks/check-files.js';
import { keptFaults, loadKept } from '../../src/tasks/kept-check.js';
import { altered, validBoard } from '../quantity/valid-values.js';
import { putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { keptFixture } from './kept-fixture.js';

const PATH = 'shortlist/slate.yaml';

/** A working folder with a kept profile. */
function folderWith(kept: KeptFile) {
  const folder = workingFolder();
  putFile(folder, PATH, stringify(kept));
  return { workingFolder: folder, currentFolder: folder, isStarterSet: false };
}

describe('a kept file', () => {
  const kept = keptFixture();

  it('is whole as it was kept, and with a note and a ride', () => {
    expect(keptFaults(kept, PATH)).toEqual([]);
    const ridden: KeptFile = {
      ...kept,
      note: 'Held well',
      rides: [{ on: '2026-06-01', note: '', felt: { stiff: 4 } }],
    };
    expect(keptFaults(ridden, PATH)).toEqual([]);
  });

  it('with a number of the profile changed tells both hashes', () => {
    const [fault, ...others] = keptFaults(altered(kept, ['profile', 'gains', 'rateAPerDegPerS'], 12), PATH);
    expect(others).toEqual([]);
    expect(fault).toMatchObject({
      file: PATH,
      key: 'profile',
      expected: `the numbers as they were proven (hash ${kept.numbers})`,
      received: expect.stringMatching(
        /^numbers with the hash \S{4}-\S{4}: changed by hand: put new numbers into a profile/,
      ),
    });
    expect(fault!.received).not.toContain(kept.numbers);
  });

  it.each([
    { path: ['figures', 'failures'], put: 0 },
    { path: ['rig', 'board', 'pack', 'dischargeCurrentA'], put: 60 },
    { path: ['cells', 'seeds', 1], put: 7 },
    { path: ['slips', 0, 'moreFailures'], put: 0 },
    { path: ['origin', 'on'], put: '2026-06-30T18:20:00Z' },
    { path: ['profile', 'summary'], put: 'Another one' },
  ])('with $path changed is known by its seal', ({ path, put }) => {
    expect(keptFaults(altered(kept, path, put), PATH)).toMatchObject([{ file: PATH, key: 'seal' }]);
  });

  it('is loaded by name or path when it is whole', () => {
    const places = folderWith(kept);
    for (const name of ['slate', PATH]) {
      expect(loadKept(places, name)).toMatchObject({ ok: true, value: { name: 'slate', path: PATH } });
    }
  });

  it('that was changed is not loaded, and found by a check of files', () => {
    const places = folderWith(altered(kept, ['figures', 'score'], 0.1));
    expect(loadKept(places, 'slate')).toMatchObject({ ok: false, faults: [{ file: PATH, key: 'seal' }] });
    for (const paths of [[], [PATH]]) {
      const { files, problems } = checkFiles(places, paths);
      expect(files.at(-1)).toEqual({ path: PATH, kind: null, name: null, problemCount: 1 });
      expect(problems).toMatchObject([{ file: PATH, key: 'seal' }]);
    }
  });

  it('that is whole passes a check of files', () => {
    const { files, problems } = checkFiles(folderWith(kept), []);
    expect(problems).toEqual([]);
    expect(files).toContainEqual({ path: PATH, kind: 'kept', name: 'slate', problemCount: 0 });
  });

  it('that is not there is told with those that are, and with how one is kept', () => {
    expect(loadKept(folderWith(kept), 'slat')).toMatchObject({
      ok: false,
      faults: [
        {
          key: 'kept',
          expected: expect.stringMatching(/\(slate\).*underfoot shortlist add PROFILE/),
          suggestion: 'slate',
        },
      ],
    });
    const none = { ...folderWith(kept), workingFolder: workingFolder() };
    expect(loadKept(none, 'slat')).toMatchObject({
      ok: false,
      faults: [{ expected: expect.stringContaining('none is kept yet') }],
    });
    // The name of a profile: how just that one is kept.
    const asProfile = loadKept(none, 'slate');
    const [fault, ...others] = asProfile.ok ? [] : asProfile.faults;
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ key: 'kept', received: 'the profile slate, which is not kept' });
    expect(fault!.expected).toContain('underfoot shortlist add slate');
  });

  it('holds its board to the rules of a board, where they stand', () => {
    const board = altered(validBoard(), ['motor', 'speedConstantRpmPerV'], 40);
    const checked = checkValue('kept', altered(kept, ['rig', 'board'], board));
    expect(checked).toMatchObject({
      ok: false,
      faults: [{ path: ['rig', 'board', 'motor', 'torqueConstantNmPerA'] }],
    });
    expect(checkValue('kept', {}).ok).toBe(false);
  });
});
