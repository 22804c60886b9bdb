/** Is the edge that is told the one that the runs have, whoever runs them? */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Edge, EdgeReport } from '../../src/explain/edge-found.js';
import { edgeKinds, type EdgeName } from '../../src/explain/edge-scenarios.js';
import { UPPER, UPPER_FULL } from '../../src/control/ceilings.js';
import { REQUESTED } from '../../src/control/law.js';
import { steadyRide } from '../../src/linear/steady-ride.js';
import { run } from '../../src/simulate/run.js';
import { prepareTrial } from '../../src/simulate/trial.js';
import { findEdge } from '../../src/tasks/edge.js';
import { edgeReport } from '../../src/tasks/edge-report.js';
import type { RankPlan } from '../../src/tasks/plan.js';
import { crewHere } from './crew-here.js';
import { planWith, profileWith } from './explained-plan.js';

const plan = planWith(profileWith());
let report: EdgeReport;
let told: number[];

beforeAll(async () => {
  told = [];
  report = await findEdge(plan, { threads: 1, onRuns: (done) => told.push(done) });
});

const edgeNamed = ({ edges }: EdgeReport, name: EdgeName) => edges.find((edge) => edge.name === name)!;

/** The plan with its board changed. */
function planWithPack(pack: Partial<RankPlan['board']['value']['pack']>): RankPlan {
  const { name, value } = plan.board;
  return { ...plan, board: { name, value: { ...value, pack: { ...value.pack, ...pack } } } };
}

describe('the edge', () => {
  it('is that of the runs at the sizes told: one holds out, the other ends as told', () => {
    const kinds = edgeKinds(plan.board.value);
    report.edges.forEach(({ survived, failed, ending }: Edge, index) => {
      const outcomeAt = (size: number) => {
        const { profile, ...circumstances } = kinds[index]!.change(
          {
            profile: plan.profiles[0]!.value,
            board: plan.board.value,
            rider: plan.riders[0]!.value,
            scenario: plan.scenarios[0]!.value,
            seed: 1,
            noiseRatio: 1,
          },
          size,
        );
        return run(prepareTrial(circumstances), profile, { solver: 'fixed' }).outcome;
      };
      expect(survived).not.toBeNull();
      expect(outcomeAt(survived!).kind).toBe('upright');
      if (failed !== null) expect(outcomeAt(failed)).toMatchObject(ending!);
    });
    expect(report.edges.filter(({ failed }) => failed !== null).length).toBeGreaterThan(5);
  });

  it('counts its runs one by one', () => {
    expect(told).toEqual(told.map((_, index) => index + 1));
    expect(told.length).toBeGreaterThan(report.edges.length);
  });

  it('is the same from a crew', async () => {
    expect(await findEdge(plan, { threads: crewHere(2) })).toEqual(report);
  });

  it('is nearer in speed with the emptier pack', () => {
    const [full, low] = report.edges.filter(({ name }) => name === 'speed');
    expect(low!.chargePercent).toBeLessThan(full!.chargePercent);
    expect(low!.survived).toBeLessThan(full!.survived!);
  });

  it('comes nearer with fewer cells: less speed, less sag to lose, an earlier lift', async () => {
    const weak = await findEdge(planWithPack({ seriesCells: plan.board.value.pack.seriesCells - 4 }), {
      threads: 1,
    });
    for (const name of ['speed', 'pack sag'] as const) {
      expect(edgeNamed(weak, name).survived).toBeLessThan(edgeNamed(report, name).survived!);
    }
    expect(weak.lifts[0]!.speedKmPerH).toBeLessThan(report.lifts[0]!.speedKmPerH!);
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
    const weak = await findEdge(planWith(profileWith({ proportionalAPerDeg: 0.5, rateAPerDegPerS: 0.01 })), {
      threads: 1,
    });
    for (const { survived, failed, ending } of weak.edges.filter(({ pushNS }) => pushNS !== null)) {
      expect([survived, failed]).toEqual([null, 0]);
      expect(ending!.kind).not.toBe('upright');
    }
    expect(weak.lifts.map(({ neededShare, speedKmPerH }) => [neededShare, speedKmPerH])).toEqual([
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
    for (const { speedKmPerH, chargePercent, neededShare } of report.lifts) {
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

it('the JSON has every size with its unit, and its sentence', () => {
  const { edges, headroomLift } = edgeReport(report);
  expect(edges.map(({ name, unit, survivedIfAny }) => [name, unit, survivedIfAny])).toEqual(
    report.edges.map(({ name, unit, survived }) => [name, unit, survived]),
  );
  expect(edges.every(({ sentence }) => sentence.length > 0)).toBe(true);
  expect(headroomLift.latestStarts.map(({ chargePercent }) => chargePercent)).toEqual([80, 20]);
});
