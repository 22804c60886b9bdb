/**
 * Is a ranking a matter of the profiles alone? Not of threads, of the order of inputs, or of which others are there.
 */
import { describe, expect, it } from 'vitest';
import { rank } from '../../src/tasks/rank.js';
import { jobsFor } from '../../src/tasks/jobs.js';
import { RANK_ORDER } from '../../src/measure/row-order.js';
import { rankReport } from '../../src/tasks/rank-report.js';
import { trialsOf } from '../../src/tasks/plan.js';
import { smallPlan } from './small-plan.js';

describe('a ranking', () => {
  it('puts who stays up before who falls', async () => {
    const ranked = await rank(smallPlan(), { threads: 1 });
    expect(ranked.map(({ name }) => name).at(-1)).toBe('silk');
    expect(ranked.at(-1)!.failures).toBeGreaterThan(0);
    expect(ranked[0]!.failures).toBe(0);
  });

  it('has the same bytes twice and with 1, 2 and 4 threads', async () => {
    const plan = smallPlan({ seeds: [1, 2, 3, 4, 5, 6, 7] });
    const bytes = async (threads: number) =>
      JSON.stringify(
        rankReport({ plan, ranked: await rank(plan, { threads }), check: null, order: RANK_ORDER }),
      );
    const once = await bytes(1);
    expect(await bytes(1)).toBe(once);
    expect(await bytes(2)).toBe(once);
    expect(await bytes(4)).toBe(once);
  });

  it('gives each profile the same score whichever others are there, in whatever order', async () => {
    const plan = smallPlan();
    const all = await rank(plan, { threads: 1 });
    for (const profile of plan.profiles) {
      const [alone] = await rank(smallPlan({ profiles: [profile] }), { threads: 1 });
      expect(alone).toEqual(all.find(({ name }) => name === profile.name));
    }
    const turned = await rank(smallPlan({ profiles: plan.profiles.toReversed() }), { threads: 1 });
    expect(turned).toEqual(all);
  });

  it('counts a run that never comes to its event as a failure', async () => {
    const plan = smallPlan();
    const kerb = plan.scenarios[1]!;
    const far = { ...kerb.value, road: [{ ...kerb.value.road[0]!, lengthM: 100 }, kerb.value.road[1]!] };
    const [wool] = await rank(
      smallPlan({ profiles: plan.profiles.slice(0, 1), scenarios: [{ name: 'far', value: far }] }),
      { threads: 1 },
    );
    expect(wool!.worst).toMatchObject({ failed: true, eventReached: false, outcome: { kind: 'upright' } });
    expect(wool!.failures).toBe(2);
  });

  it('tells of every profile when its last cell is in, and of all cells', async () => {
    const heard: string[] = [];
    let last = [0, 0];
    await rank(smallPlan(), {
      threads: 1,
      onProfile: ({ name }) => heard.push(name),
      onCells: (done, all) => (last = [done, all]),
    });
    expect(heard).toEqual(['wool', 'silk', 'felt']);
    expect(last).toEqual([12, 12]);
  });

  it('runs a state of charge in place of the scenario’s own', () => {
    const charges = trialsOf(smallPlan({ charges: [null, 15] })).map(({ key }) => key.chargePercent);
    expect(new Set(charges)).toEqual(new Set([80, 15]));
  });
});

describe('jobs', () => {
  it('hold every cell once', () => {
    const cells = jobsFor({ profileCount: 3, trialCount: 150, solver: 'fixed' }).flatMap(
      ({ profileIndex, trialIndices }) => trialIndices.map((trialIndex) => `${profileIndex}/${trialIndex}`),
    );
    expect(cells).toHaveLength(450);
    expect(new Set(cells).size).toBe(450);
  });
});
