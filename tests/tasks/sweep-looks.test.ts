/**
 * Is every finalist looked at from all sides, the same whoever computes it, and does a signal end the looking? Is the profile that all
 * share told of before all of its cells are known?
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { rideLook } from '../../src/linear/ride-report.js';
import type { ProfileResult } from '../../src/measure/profile-result.js';
import { openCrew } from '../../src/tasks/crew.js';
import { feelPoints } from '../../src/tasks/feel-rides.js';
import { finalistPoints } from '../../src/tasks/finalist-rides.js';
import { trialsOf } from '../../src/tasks/plan.js';
import { lookAtRides } from '../../src/tasks/ride-looks.js';
import type { Labour, WorkFailed } from '../../src/tasks/share-out.js';
import { createLedger } from '../../src/tasks/sweep-ledger.js';
import type { SweepPlan } from '../../src/tasks/sweep-plan.js';
import { sweep, type SweepAnswer, type SweepOptions, type SweepProgress } from '../../src/tasks/sweep.js';
import { crewHere, type CrewHere } from './crew-here.js';
import { smallPlan } from './small-plan.js';

const PATIENCE_MS = 120_000;

const small = smallPlan();
const [kim] = small.riders;
const lee = { name: 'lee', value: { ...kim!.value, body: { ...kim!.value.body, massKg: 104 } } };
const plan: SweepPlan = {
  cells: { ...small, riders: [lee, { ...kim!, name: 'regular' }], seeds: [1], profiles: [] },
  base: small.profiles[0]!,
  ranges: [
    { path: ['gains', 'proportionalAPerDeg'], unit: 'A/deg', min: 10, max: 40 },
    { path: ['gains', 'rateAPerDegPerS'], unit: 'A/(deg/s)', min: 0.6, max: 2.4 },
  ],
  count: 3,
  grid: null,
  isExhaustive: true,
  isRefined: false,
  seed: 3,
  checkedCells: 0,
};

async function swept(threads: Labour, options: Partial<SweepOptions> = {}): Promise<SweepAnswer> {
  const ledger = createLedger(trialsOf(plan.cells), new Map(), () => {});
  return sweep(plan, ledger, { threads, ...options });
}

const ridesOf = ({ asked }: CrewHere) =>
  asked.filter(({ what }) => what === 'ride').map(({ trials }) => trials[0]);

describe('the looks at finalists', () => {
  const crew = crewHere(2);
  const told: SweepProgress[] = [];
  const base: ProfileResult[] = [];
  let answer: SweepAnswer;
  beforeAll(async () => {
    answer = await swept(crew, {
      onProgress: (progress) => told.push(progress),
      onBase: (result) => base.push(result),
    });
  }, PATIENCE_MS);

  it('are at every one of them, from all sides', () => {
    expect(answer.finalists.length).toBeGreaterThan(2);
    for (const { margins, feel, slips } of answer.finalists) {
      expect(['lee', 'regular']).toContain(margins!.disk.rider);
      expect(feel.rider).toBe('regular');
      expect(feel.words.length).toBeGreaterThan(0);
      expect(new Set(slips.map(({ range }) => range))).toEqual(new Set([0, 1]));
    }
  });

  it('have the margins and the words of its own rides', () => {
    for (const { candidate, margins } of [answer.finalists[0]!, answer.finalists.at(-1)!]) {
      const points = finalistPoints(plan.cells, candidate);
      expect(points.map(({ rider, speedKmPerH }) => [rider.body.massKg, speedKmPerH])).toEqual([
        [104, 12],
        [kim!.value.body.massKg, 12],
        ...[0, 10, 20].map((speed) => [kim!.value.body.massKg, speed]),
      ]);
      const disks = points.slice(0, 2).map((point) => rideLook(point)!.margins.disk.value);
      expect(margins!.disk.value).toBe(Math.min(...disks));
    }
  });

  it('are the work of the crew: one ride for each rider, three for the feel', () => {
    const points = answer.finalists.flatMap(({ candidate }) => finalistPoints(plan.cells, candidate));
    expect(ridesOf(crew)).toEqual(points.map(({ speedKmPerH }) => `${speedKmPerH} km/h`));
  });

  it('are counted with the runs', () => {
    const looking = told.filter(({ stage }) => stage === 'looking at the finalists');
    const { length } = answer.finalists;
    expect(new Set(looking.map(({ all }) => all)).size).toBe(1);
    const { done, all } = looking.at(-1)!;
    expect(done).toBe(all);
    const counts = looking.map((progress) => progress.done);
    expect(counts).toEqual(counts.toSorted((a, b) => a - b));
    const ofRides = counts.slice(-5 * length);
    expect(ofRides[0]! - counts.at(-5 * length - 1)!).toBeGreaterThan(1);
    expect(ofRides).toEqual(ofRides.map((_, k) => all - (ofRides.length - 1 - k) * (all - ofRides.at(-2)!)));
  });

  it.each(['one thread', 'this one and another', 'a crew of three'])('are the same from %s', async (who) => {
    const threads = who === 'one thread' ? 1 : who === 'a crew of three' ? await openCrew(3) : 2;
    const other = await swept(threads);
    if (typeof threads !== 'number') await threads.close();
    expect(other.finalists).toEqual(answer.finalists);
  });

  it('end with a signal, and no further ride is begun', async () => {
    const control = new AbortController();
    const watched = crewHere(1, async () => {
      if (ridesOf(watched).length === 3) control.abort();
    });
    await expect(swept(watched, { signal: control.signal })).rejects.toMatchObject({ name: 'AbortError' });
    expect(ridesOf(watched)).toHaveLength(3);
  });

  it('are preceded by how the shared profile does: one cell of each scenario under the usual rider, then all', () => {
    const [first, all, ...more] = base;
    expect(more).toEqual([]);
    expect(first!.cells.map(({ scenario, rider }) => [scenario, rider])).toEqual([
      ['level', 'regular'],
      ['kerb', 'regular'],
    ]);
    expect(all!.cells).toHaveLength(4);
    expect(crew.asked.slice(0, 4).map(({ trials }) => trials[0])).toEqual([
      'level/1',
      'kerb/1',
      'level/1',
      'kerb/1',
    ]);
  });
});

describe('a ride that cannot be looked at', () => {
  const points = feelPoints(plan.cells, plan.base.value);
  const failing = (times: number) => {
    const crew = crewHere();
    let left = times;
    const ride: typeof crew.ride = async (point) => {
      if (point.speedKmPerH === 10 && left-- > 0) throw new Error('its thread ended');
      return crew.ride(point);
    };
    return { ...crew, ride };
  };

  it('once is looked at again', async () => {
    const reports = await lookAtRides(points, { threads: failing(1) });
    expect(reports).toEqual(points.map((point) => rideLook(point)));
  });

  it('twice is told with its place and the profile', async () => {
    const error = await lookAtRides(points, { threads: failing(2) }).catch((reason: unknown) => reason);
    expect((error as WorkFailed).message).toMatch(
      /^steady ride at 10 km\/h, rider of \d+ kg: its thread ended$/,
    );
    expect((error as WorkFailed).profile).toBe(plan.base.value);
  });

  it('for a ceiling in the way has no report', async () => {
    const fast = { ...points[0]!, speedKmPerH: 60 };
    expect(await lookAtRides([fast], { threads: 1 })).toEqual([null]);
  });
});
