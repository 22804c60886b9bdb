/** Is what comes out of a controller sheet simulated as the controller will act on it, and judged by that? */
import { stringify } from 'yaml';
import { beforeAll, describe, expect, it } from 'vitest';
import type { SheetFile } from '../../src/quantity/sheet-file.js';
import { numbersHash } from '../../src/store/short-hash.js';
import { findPlaces } from '../../src/store/places.js';
import { keptPlan } from '../../src/tasks/kept-plan.js';
import { exportThroughSheet, throughSheet } from '../../src/tasks/through-sheet.js';
import { sheetWith, validSheet, type RawRow } from '../quantity/valid-sheet.js';
import { putFile } from '../store/temp-folder.js';
import { crewHere } from './crew-here.js';
import { profileWith } from './explained-plan.js';
import { keptFixture, putKept } from './kept-fixture.js';
import { folderOfScenarios, provenKept } from './proven-kept.js';

const HOLD: RawRow = { label: 'Hold', quantity: 'proportionalAPerDeg', unit: 'A/deg', decimals: 2 };
const CALM: RawRow = { label: 'Calm', quantity: 'rateAPerDegPerS', unit: 'A/(deg/s)', decimals: 3 };
const BLEND: RawRow = { label: 'Memory', quantity: 'blendTimeS', unit: 's', decimals: 2 };
const RATE = { loopRateHz: 800 };

let proven: Awaited<ReturnType<typeof provenKept>>;
beforeAll(async () => {
  proven = await provenKept();
});

const through = (sheet: SheetFile, options: object = {}, kept = proven) =>
  throughSheet({ ...kept, sheet: { name: 'slab', value: sheet } }, { threads: 1, ...options });

const sheet = (rows: readonly RawRow[], parts: object = {}) => sheetWith(rows, { ...RATE, ...parts });

describe('a sheet that changes nothing', () => {
  it('leaves the profile its rank, to the last bit, and looks for no culprit', async () => {
    const view = await through(sheet([HOLD, CALM, BLEND]));
    expect(view.typed).toEqual(view.proven);
    expect(view).toMatchObject({ deserves: true, refused: false, alone: [], newFalls: [], notAsKept: null });
    expect(view.runs).toBe(2);
    expect(view.numbers).toBe(numbersHash(profileWith()));
  });

  it('nor falls newly where it fell as proven', async () => {
    const falling = await provenKept(profileWith({ proportionalAPerDeg: 1, rateAPerDegPerS: 0.05 }));
    const view = await through(sheet([HOLD, CALM, BLEND]), {}, falling);
    expect(view.typed.failures).toBe(2);
    expect(view).toMatchObject({ deserves: true, newFalls: [], proven: view.typed });
  });

  it('whatever it counts in and whichever way', async () => {
    const rows = [
      { ...HOLD, unit: 'limit/rad', decimals: 9 },
      { ...CALM, unit: 'mA/(rad/tick)', decimals: 6 },
      { ...BLEND, unit: 'ticks' },
    ];
    const counts = {
      pitch: 'nose up',
      current: 'backward',
      error: 'set-point minus pitch',
      rate: 'nose down',
    };
    const view = await through(sheet(rows, { counts, currentLimitA: 80 }));
    expect(view.deserves).toBe(true);
    expect(view.scoreRatio).toBeCloseTo(1, 6);
  });

  it('hashes what is typed: the same typed is the same hash, one digit else another', async () => {
    const hashOf = async (rows: readonly RawRow[]) => (await through(sheet(rows))).typedHash;
    expect(await hashOf([HOLD, CALM])).toBe(await hashOf([HOLD, { ...CALM, note: 'Slowly.' }]));
    expect(await hashOf([HOLD, CALM])).not.toBe(await hashOf([HOLD, { ...CALM, decimals: 2 }]));
  });
});

describe('a sheet that spoils it', () => {
  it('says so with what falls, and which change costs it', async () => {
    const view = await through(sheet([{ ...HOLD, greatest: 1 }, { ...CALM, greatest: 0.05 }, BLEND]));
    expect(view.onto.actedOn.gains).toMatchObject({ proportionalAPerDeg: 1, rateAPerDegPerS: 0.05 });
    expect(view).toMatchObject({ deserves: false, refused: false });
    expect(view.typed.failures).toBeGreaterThan(view.proven.failures);
    expect(view.newFalls.length).toBe(view.typed.failures);
    expect(view.newFalls[0]).toMatchObject({
      rider: 'kim',
      seed: 1,
      ending: expect.stringMatching(/strike|off/),
    });
    // Neither fells it by itself.
    expect(view.alone.map(({ key, newFalls }) => [key, newFalls])).toEqual([
      ['proportionalAPerDeg', 0],
      ['rateAPerDegPerS', 0],
    ]);
  });

  it('tries each change by itself, the dearest first', async () => {
    const view = await through(sheet([{ ...HOLD, greatest: 19 }, { ...CALM, greatest: 0.02 }, BLEND]));
    expect(view.alone.map(({ key }) => key)).toEqual(['rateAPerDegPerS', 'proportionalAPerDeg']);
    expect(view.alone[1]!.newFalls).toBe(0);
  });

  it('a number without a place is simulated away', async () => {
    const view = await through(sheet([HOLD, BLEND]));
    expect(view.onto.unplaced.map(({ key }) => key)).toEqual(['rateAPerDegPerS']);
    expect(view.deserves).toBe(false);
    expect(view.alone.map(({ key }) => key)).toEqual(['rateAPerDegPerS']);
  });

  it('another loop rate is simulated, and is one of the changes', async () => {
    const view = await through(sheet([HOLD, { ...CALM, unit: 'A/(deg/tick)' }, BLEND], { loopRateHz: 100 }));
    expect(view.onto.actedOn).toEqual(proven.kept.value.profile);
    expect(view.provenLoopRateHz).toBe(800);
    expect(view.typed.score).not.toBe(view.proven.score);
    expect(view.alone).toEqual([{ key: 'loopRateHz', newFalls: 0, scoreRatio: view.scoreRatio }]);
    expect(view.scoreRatio).toBeGreaterThan(2);
  });
});

it('a limit of the controller below the board is simulated, one above it is not', async () => {
  const rows = [{ ...HOLD, unit: 'limit/deg', decimals: 6 }, CALM, BLEND];
  const low = await through(sheet(rows, { currentLimitA: 6 }));
  expect(low.hasLowerLimit).toBe(true);
  expect(low.alone.map(({ key }) => key)).toContain('currentLimitA');
  const high = await through(sheet(rows, { currentLimitA: 200 }));
  expect(high).toMatchObject({ hasLowerLimit: false, typed: high.proven });
});

describe('signs are refused by simulation', () => {
  it.each([
    ['the proportional gain', [{ ...HOLD, sign: 'minus' }, CALM, BLEND], {}],
    ['the rate gain', [HOLD, { ...CALM, sign: 'minus' }, BLEND], {}],
    [
      'both, as the sheet counts nose up',
      [
        { ...HOLD, sign: 'plus' },
        { ...CALM, sign: 'plus' },
      ],
      { pitch: 'nose up' },
    ],
  ])('%s', async (_what, rows, ways) => {
    const counts = { pitch: 'nose down', current: 'forward', ...ways };
    const view = await through(sheet(rows, { counts }));
    expect(view).toMatchObject({ refused: true, deserves: false });
    expect(view.typed.failures).toBe(view.runs);
    // It falls on the way, not because it could not even start.
    for (const { atS } of view.newFalls) expect(atS).toBeGreaterThan(0.05);
  });

  it('a sign that contradicts and fells nothing is not refused', async () => {
    const own = await provenKept(profileWith({}, { restTrimNoseUpDeg: 0.1 }));
    const level = { label: 'Level', quantity: 'restTrimNoseUpDeg', unit: 'deg', sign: 'plus' };
    const view = await through(sheet([HOLD, CALM, BLEND, level]), {}, own);
    expect(view.onto.entries[3]).toMatchObject({ signContradicts: true, back: -0.1 });
    expect(view.refused).toBe(false);
  });
});

it('is the same from a crew, tells how far it is, and stops when it is told to', async () => {
  const spoiled = sheet([HOLD, { ...CALM, greatest: 0.02 }]);
  const told: [number, number][] = [];
  const onProgress = (done: number, all: number) => told.push([done, all]);
  const here = await through(spoiled, { onProgress });
  expect(await through(spoiled, { threads: crewHere(2) })).toEqual(here);
  expect(told.map(([done]) => done)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(told.at(-1)).toEqual([6, 6]);
  const signal = AbortSignal.abort(new Error('enough'));
  await expect(through(spoiled, { signal })).rejects.toThrow('enough');
});

describe('from a folder', () => {
  const saved = (parts: Partial<Parameters<typeof keptFixture>[0]> = {}) => {
    const folder = folderOfScenarios(proven);
    const { profile, rig, cells, figures } = proven.kept.value;
    putKept(folder, 'evening', keptFixture({ profile, rig, cells, figures, ...parts }));
    putFile(folder, 'profiles/sheets/slab.yaml', stringify({ ...validSheet([HOLD, CALM, BLEND]), ...RATE }));
    return folder;
  };
  const exported = (folder: string, name = 'evening', by = 'slab') =>
    exportThroughSheet(findPlaces(folder), { name, sheet: by, threads: 1 });

  it('the cells are rebuilt from the kept rig and the scenarios there', async () => {
    const result = await exported(saved());
    expect(result).toMatchObject({
      ok: true,
      value: { name: 'evening', sheetName: 'slab', notAsKept: null, deserves: true },
    });
  });

  it('scenarios that hold something else are told', async () => {
    const folder = saved();
    const [level] = proven.plan.scenarios;
    putFile(folder, 'scenarios/level.yaml', stringify({ ...level!.value, start: { noseUpDeg: 5 } }));
    expect(await exported(folder)).toMatchObject({ ok: true, value: { notAsKept: 'other scenarios' } });
  });

  it('figures that do not come out again are told', async () => {
    const folder = saved({ figures: { ...proven.kept.value.figures, score: 0.5 } });
    expect(await exported(folder)).toMatchObject({ ok: true, value: { notAsKept: 'other figures' } });
  });

  it('everything that is missing or faulty is told at once', async () => {
    const folder = saved();
    putFile(folder, 'profiles/sheets/bad.yaml', stringify(validSheet([{ ...HOLD, unit: 'Hz' }])));
    putKept(
      folder,
      'lost',
      keptFixture({ cells: { ...proven.kept.value.cells, scenarios: ['moon', 'level'] } }),
    );
    const result = await exported(folder, 'lost', 'bad');
    expect(result.ok ? [] : result.faults.map(({ key, file }) => [key, file])).toEqual([
      ['rows[0].unit', expect.stringContaining('bad.yaml')],
      ['scenario', ''],
    ]);
    const none = await exported(folder, 'nobody', 'nothing');
    expect(none.ok ? [] : none.faults.map(({ key }) => key)).toEqual(['kept', 'sheet']);
  });

  it('a plan has the weights that it was proven with', () => {
    const cells = { ...proven.kept.value.cells, weights: { settling: 5 } };
    const planned = keptPlan(findPlaces(saved()), { name: 'evening', value: keptFixture({ cells }) });
    expect(planned.ok && planned.value.plan.weights).toMatchObject({ settling: 5, overshoot: 2 });
  });
});
