/** Is the edge that is told the one that the runs have, whoever runs them? */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Edge, EdgeReport, RiderEdges } from '../../src/explain/edge-found.js';
import { liftStarts, pushTakesA } from '../../src/explain/edge-headroom.js';
import { edgeKinds, type EdgeName } from '../../src/explain/edge-scenarios.js';
import { UPPER, UPPER_FULL } from '../../src/control/ceilings.js';
import { REQUESTED } from '../../src/control/law.js';
import { steadyRide } from '../../src/linear/steady-ride.js';
import { prepareTrial } from '../../src/simulate/trial.js';
import { findEdge } from '../../src/tasks/edge.js';
import { edgeReport } from '../../src/tasks/edge-report.js';
import { measureProfile } from '../../src/tasks/evaluate.js';
import type { RankPlan } from '../../src/tasks/plan.js';
import { crewHere } from './crew-here.js';
import { planWith, profileWith } from './explained-plan.js';

const plan = planWith(profileWith());
let report: EdgeReport;
let kim: RiderEdges;
let told: number[];

beforeAll(async () => {
  told = [];
  report = await findEdge(plan, { threads: 1, onRuns: (done) => told.push(done) });
  kim = report.riders[0]!;
});

const edgeNamed = ({ edges }: RiderEdges, name: EdgeName) => edges.find((edge) => edge.name === name)!;

/** A rider of a plan, by his place, on his ride under a seed. */
const makingsOf = ({ rider = 0, seed = 1, from = plan }) => ({
  profile: from.profiles[0]!.value,
  board: from.board.value,
  rider: from.riders[rider]!.value,
  scenario: from.scenarios[0]!.value,
  seed,
  noiseRatio: 1,
});

/** The run at a size of one of the kinds of edge. */
function rideAt(index: number, size: number, ridden: Parameters<typeof makingsOf>[0] = {}) {
  const { change } = edgeKinds((ridden.from ?? plan).board.value)[index]!;
  const { profile, ...circumstances } = change(makingsOf(ridden), size);
  return measureProfile(prepareTrial(circumstances), profile, { solver: 'fixed' });
}

/** The plan with its board changed. */
function planWithPack(pack: Partial<RankPlan['board']['value']['pack']>): RankPlan {
  const { name, value } = plan.board;
  return { ...plan, board: { name, value: { ...value, pack: { ...value.pack, ...pack } } } };
}

describe('the edge', () => {
  it('is that of the runs at the sizes told: one holds out, the other ends as told', () => {
    kim.edges.forEach(({ survived, failed, ending }: Edge, index) => {
      const { kind, atS } = ending ?? {};
      expect(survived).not.toBeNull();
      expect(rideAt(index, survived!).outcome.kind).toBe('upright');
      if (failed !== null) expect(rideAt(index, failed).outcome).toMatchObject({ kind, atS });
    });
    expect(kim.edges.filter(({ failed }) => failed !== null).length).toBeGreaterThan(5);
  });

  it('counts its runs one by one', () => {
    expect(told).toEqual(told.map((_, index) => index + 1));
    expect(told.length).toBeGreaterThan(kim.edges.length);
  });

  it('is the same from a crew', async () => {
    expect(await findEdge(plan, { threads: crewHere(2) })).toEqual(report);
  });

  it('is nearer in speed with the emptier pack', () => {
    const [full, low] = kim.edges.filter(({ name }) => name === 'speed');
    expect(low!.chargePercent).toBeLessThan(full!.chargePercent);
    expect(low!.survived).toBeLessThan(full!.survived!);
  });

  it('comes nearer with fewer cells: less speed, less sag to lose, an earlier lift', async () => {
    const weak = await findEdge(planWithPack({ seriesCells: plan.board.value.pack.seriesCells - 4 }), {
      threads: 1,
    });
    for (const name of ['speed', 'pack sag'] as const) {
      expect(edgeNamed(weak.riders[0]!, name).survived).toBeLessThan(edgeNamed(kim, name).survived!);
    }
    expect(weak.riders[0]!.lifts[0]!.speedKmPerH).toBeLessThan(kim.lifts[0]!.speedKmPerH!);
  });

  it('stops at a signal, with its reason', async () => {
    const stop = new AbortController();
    const reason = new Error('enough');
    const found = findEdge(plan, { threads: 1, signal: stop.signal, onRuns: () => stop.abort(reason) });
    await expect(found).rejects.toBe(reason);
  });
});

describe('a profile too weak to stand', () => {
  it('has no edge, and nothing is known about its lift', async () => {
    const { riders } = await findEdge(
      planWith(profileWith({ proportionalAPerDeg: 0.5, rateAPerDegPerS: 0.01 })),
      { threads: 1 },
    );
    const [weak] = riders;
    for (const { survived, failed, ending } of weak!.edges.filter(({ pushNS }) => pushNS !== null)) {
      expect([survived, failed]).toEqual([null, 0]);
      expect(ending!.kind).not.toBe('upright');
    }
    expect(weak!.lifts.map(({ neededShare, speedKmPerH }) => [neededShare, speedKmPerH])).toEqual([
      [null, null],
      [null, null],
    ]);
  });
});

describe('where the lift should begin', () => {
  it('leaves more than is needed up to there, and no more a little beyond', () => {
    const headroomAt = (speedKmPerH: number, chargePercent: number) => {
      const { moment } = steadyRide({
        board: plan.board.value,
        rider: plan.riders[0]!.value,
        profile: plan.profiles[0]!.value,
        speedKmPerH,
        gradePercent: 0,
        chargePercent,
      });
      return (moment.ceilings[UPPER]! - moment.controller[REQUESTED]!) / moment.ceilings[UPPER_FULL]!;
    };
    for (const { speedKmPerH, chargePercent, neededShare } of kim.lifts) {
      expect(headroomAt(speedKmPerH!, chargePercent)).toBeGreaterThan(neededShare!);
      expect(headroomAt(speedKmPerH! + 1, chargePercent)).toBeLessThanOrEqual(neededShare!);
    }
  });

  it('names the share at which the own lift of the profile begins', async () => {
    expect(report.liftBelowShare).toBeNull();
    const headroomLift = { belowPercent: 25, upToDeg: 8, rateDegPerS: 10 };
    const lifted = await findEdge(planWith(profileWith({}, { headroomLift })), { threads: 1 });
    expect(lifted.liftBelowShare).toBe(0.25);
  });
});

describe('several riders and two seeds', () => {
  const [usual] = plan.riders;
  const { stance, balance } = usual!.value;
  const narrow = { ...usual!.value, stance: { ...stance, widthM: 0.1 } };
  const late = { ...usual!.value, balance: { ...balance, delayS: 0.18 } };
  const SEEDS = [1, 2];
  const several = planWith(profileWith(), {
    riders: [
      { name: 'tim', value: narrow },
      { name: 'jim', value: late },
    ],
    seeds: SEEDS,
  });
  let both: EdgeReport;
  let asked: string[];

  beforeAll(async () => {
    const crew = crewHere(2);
    both = await findEdge(several, { threads: crew });
    asked = crew.asked.flatMap(({ trials }) => trials);
  }, 60_000);

  it('hold out where each seed does, and end as the first that falls', () => {
    expect(both.seeds).toEqual(SEEDS);
    expect(both.riders.map(({ rider }) => rider)).toEqual(['tim', 'jim']);
    both.riders.forEach(({ edges }, rider) =>
      edges.forEach(({ survived, failed, ending }, index) => {
        const outcomes = (size: number) =>
          SEEDS.map((seed) => ({ seed, ...rideAt(index, size, { rider, seed, from: several }).outcome }));
        if (survived !== null) {
          expect(outcomes(survived).map(({ kind }) => kind)).toEqual(['upright', 'upright']);
        }
        if (failed !== null) {
          expect(outcomes(failed).find(({ kind }) => kind !== 'upright')).toMatchObject(ending!);
        }
      }),
    );
    const seeds = both.riders.flatMap(({ edges }) => edges.flatMap(({ ending }) => ending?.seed ?? []));
    expect(new Set(seeds)).toEqual(new Set([1, 2]));
  });

  it('are looked at side by side, each search with each seed', () => {
    const first = edgeKinds(several.board.value).flatMap(({ name }) =>
      SEEDS.map((seed) => `${name}/${seed}`),
    );
    expect(asked.slice(0, 2 * first.length)).toEqual([...first, ...first]);
  });

  it('tell the first push that is survived with a light foot', () => {
    const [tim] = both.riders;
    const index = tim!.edges.findIndex(({ name }) => name === 'push from behind');
    const { footLightFrom, survived } = tim!.edges[index]!;
    expect(footLightFrom).not.toBeNull();
    expect(footLightFrom).toBeLessThanOrEqual(survived!);
    const lightS = (size: number) =>
      SEEDS.map((seed) => rideAt(index, size, { seed, from: several }).metrics.oneFootLightS);
    expect(Math.max(...lightS(footLightFrom!))).toBeGreaterThan(0);
    expect(lightS(footLightFrom! - 1)).toEqual([0, 0]);
  });

  it('need for a lift the most that any seed needs', () => {
    both.riders.forEach(({ lifts }, rider) => {
      const needs = SEEDS.map((seed) => {
        const makings = makingsOf({ rider, seed, from: several });
        return liftStarts(makings, pushTakesA(makings), [80])[0]!.neededShare!;
      });
      expect(needs[0]).not.toBe(needs[1]);
      expect(lifts[0]!.neededShare).toBe(Math.max(...needs));
    });
  });
});

it('the JSON has every size with its unit, and its sentence', () => {
  const { seeds, riders, sentences } = edgeReport(report);
  const { edges, headroomLift } = riders[0]!;
  expect(seeds).toEqual([1]);
  expect(edges.map(({ name, unit, survivedIfAny }) => [name, unit, survivedIfAny])).toEqual(
    kim.edges.map(({ name, unit, survived }) => [name, unit, survived]),
  );
  expect(sentences).toEqual(expect.arrayContaining(edges.map(({ sentence }) => sentence)));
  expect(headroomLift.latestStarts.map(({ chargePercent }) => chargePercent)).toEqual([80, 20]);
});
