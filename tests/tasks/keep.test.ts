/**
 * Does a kept file say what was simulated, the same whoever computed it, and does it read back as what was proven?
 */
import { stringify } from 'yaml';
import { beforeAll, describe, expect, it } from 'vitest';
import { rowFigures, type ProfileResult } from '../../src/measure/profile-result.js';
import { weightsWith } from '../../src/measure/scales.js';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import { loadFile } from '../../src/store/load-file.js';
import { findPlaces, programFolder, programVersion } from '../../src/store/places.js';
import { numbersHash } from '../../src/store/short-hash.js';
import { findEdge } from '../../src/tasks/edge.js';
import { keep, keepPlanFor, type KeepProgress, type KeepSelection } from '../../src/tasks/keep.js';
import { loadKept } from '../../src/tasks/kept-check.js';
import type { RankPlan } from '../../src/tasks/plan.js';
import { rank } from '../../src/tasks/rank.js';
import { slipsIn } from '../../src/tasks/tolerance.js';
import { workingFolder } from '../store/working-folder.js';
import { putFile, tempFolder } from '../store/temp-folder.js';
import { smallPlan } from './small-plan.js';

const ON = new Date(Date.UTC(2026, 4, 31, 18, 20, 3, 700));

/** The small plan for one of its profiles, under two riders. */
function planOf(place: number): RankPlan {
  const plan = smallPlan();
  const [kim] = plan.riders;
  const heavier = { ...kim!.value, body: { ...kim!.value.body, massKg: 104 } };
  return {
    ...plan,
    riders: [kim!, { name: 'robin', value: heavier }],
    profiles: [plan.profiles[place]!],
    seeds: [1],
    charges: [null, 20],
  };
}

describe('a kept profile', () => {
  const plan = planOf(0);
  const heard: KeepProgress[] = [];
  let kept: KeptFile;
  let result: ProfileResult;

  beforeAll(async () => {
    kept = await keep(plan, { threads: 1, on: ON, onProgress: (progress) => heard.push(progress) });
    [result] = (await rank(plan, { threads: 1 })) as [ProfileResult];
  }, 120_000);

  it('says what was proven, when, and on what', () => {
    expect(kept).toMatchObject({
      note: '',
      rides: [],
      numbers: numbersHash(plan.profiles[0]!.value),
      origin: { from: 'wool', on: '2026-05-31T18:20:03Z', underfoot: programVersion(), scales: 1 },
      profile: plan.profiles[0]!.value,
      rig: { boardName: 'pebble', board: plan.board.value },
      cells: { scenarios: ['level', 'kerb'], chargesPercent: [null, 20], seeds: [1], count: 8 },
    });
    expect(kept.rig.riders.map(({ name }) => name)).toEqual(['kim', 'robin']);
    expect(kept.cells).not.toHaveProperty('weights');
  });

  it('has the figures of its ranking', () => {
    const row = rowFigures(result.cells);
    expect(kept.figures.score).toBeCloseTo(result.score, 3);
    expect(kept.figures).toMatchObject({ failures: result.failures, notSettled: row.notSettledCount });
    expect(kept.figures.settlingTimeS).toBeCloseTo(row.settlingTimeS!, 3);
    expect(kept.figures.overshootPercent! / row.overshootPercent!).toBeCloseTo(1, 4);
    expect(kept.figures.saturationPercent).toBeCloseTo(100 * row.saturationShare!, 3);
  });

  it('has each edge under the rider who comes to it first', async () => {
    const [kim, robin] = (await findEdge(plan, { threads: 1 })).riders;
    kept.limits.forEach((limit, index) => {
      const each = [kim!, robin!].map(({ rider, edges }) => ({ rider, ...edges[index]! }));
      const own = each.find(({ rider }) => rider === limit.rider)!;
      expect([limit.what, limit.unit]).toEqual([own.name, own.unit]);
      expect(limit.survived).toBe(own.survived);
      expect(limit.failed).toBe(own.failed);
      for (const other of each) {
        expect(other.failed ?? Infinity).toBeGreaterThanOrEqual(limit.failed ?? Infinity);
      }
    });
    expect(kept.limits).toHaveLength(kim!.edges.length);
  });

  it('is weakest in the worst run of each scenario', () => {
    expect(kept.weakest.map(({ scenario }) => scenario).toSorted()).toEqual(['kerb', 'level']);
    const { scenario, rider, chargePercent, seed } = result.worst;
    expect(kept.weakest[0]).toMatchObject({ scenario, rider, chargePercent, seed });
    expect(kept.weakest[0]!.says).toMatch(
      new RegExp(`^${scenario} with ${rider}, pack at ${chargePercent} %: .`),
    );
  });

  it('has been tried with every slip, and feels in words', () => {
    expect(kept.slips).toHaveLength(slipsIn(plan.profiles[0]!.value).length);
    expect(kept.slips[0]).toMatchObject({ slip: 'the other sign', failures: 8 });
    expect(kept.feel.rider).toBe('kim');
    expect(kept.feel.words.length).toBeGreaterThan(0);
  });

  it('tells how far it is, stage by stage', () => {
    const stages = heard.map(({ stage }) => stage).filter((stage, index, all) => stage !== all[index - 1]);
    expect(stages).toEqual([
      'running every cell',
      'looking at steady rides',
      'trying slips',
      'looking for the edge',
    ]);
    for (const stage of stages.slice(0, 3)) {
      const last = heard.filter((one) => one.stage === stage).at(-1)!;
      expect(last.done).toBe(last.all);
    }
  });

  it('has the same bytes however many threads prove it', async () => {
    expect(JSON.stringify(await keep(plan, { threads: 3, on: ON }))).toBe(JSON.stringify(kept));
  });

  it('reads back from its text as just this, with its seal whole', () => {
    const folder = tempFolder();
    const path = putFile(folder, 'shortlist/wool.yaml', stringify(kept));
    const places = { workingFolder: folder, currentFolder: folder, isStarterSet: false };
    expect(loadFile(places, 'kept', path)).toMatchObject({ ok: true, value: { value: kept } });
    expect(loadKept(places, 'wool')).toEqual({
      ok: true,
      value: { name: 'wool', path: 'shortlist/wool.yaml', value: kept },
    });
  });
});

describe('a profile that falls', () => {
  it('is kept with whom it is not for, and with weights that are not the usual ones', async () => {
    const plan = { ...planOf(1), charges: [null], weights: weightsWith({ settling: 4 }) };
    const kept = await keep(plan, { threads: 1, on: ON });
    expect(kept.figures.failures).toBeGreaterThan(0);
    expect(kept.figures.notFor.length).toBeGreaterThan(0);
    expect(kept.cells.weights).toEqual({ settling: 4 });
    expect(kept.weakest[0]!.says).toMatch(/(strike|rider off) at \d/);
  });

  it('is not waited for when a signal comes', async () => {
    const stop = new AbortController();
    const onProgress = () => stop.abort(new Error('enough'));
    await expect(keep(planOf(1), { threads: 1, signal: stop.signal, onProgress })).rejects.toThrow('enough');
  });
});

describe('the plan to keep a profile', () => {
  const asked: KeepSelection = {
    board: undefined,
    riders: undefined,
    profile: 'linen',
    scenarios: null,
    charges: [null, 20],
    seeds: [1],
    weights: weightsWith(),
  };

  it('has the riders of a sweep where none is named', () => {
    const planned = keepPlanFor(findPlaces(programFolder()), asked);
    expect(planned).toMatchObject({ ok: true, value: { profiles: [{ name: 'linen' }], solver: 'fixed' } });
    expect(planned.ok && planned.value.riders.map(({ name }) => name)).toEqual([
      'light',
      'regular',
      'heavy',
      'first-timer',
    ]);
  });

  it('tells everything that is wrong at once', () => {
    const places = findPlaces(workingFolder());
    const planned = keepPlanFor(places, { ...asked, profile: 'slat', board: 'none', riders: ['kin'] });
    expect(planned.ok ? [] : planned.faults.map(({ key, received }) => [key, received])).toEqual([
      ['board', "'none'"],
      ['rider', "'kin'"],
      ['profile', "'slat'"],
    ]);
  });
});
