/** Does a way out that was found keep the ride up when it is simulated again, and the next size not? */
import { expect, it } from 'vitest';
import type { Finding } from '../../src/explain/blame.js';
import { LEVERS } from '../../src/explain/levers.js';
import { waysOut } from '../../src/explain/ways-out.js';
import { starterPlan } from '../starter-plan.js';
import { explain } from '../../src/tasks/explain.js';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { AS_IS, makingsOf, runVariants, UNDER_REFERENCE } from '../../src/tasks/study.js';
import { findWaysOut } from '../../src/tasks/ways-out.js';

/** A rider who corrects himself much too late, over a kerb: no numbers in a profile are for that. */
function latePlan(): RankPlan {
  const plan = starterPlan();
  const late = plan.riders.map(({ name, value }) => ({
    name,
    value: { ...value, balance: { ...value.balance, delayS: 0.26 } },
  }));
  return {
    ...plan,
    riders: late,
    profiles: plan.profiles.filter(({ name }) => name === 'linen'),
    scenarios: plan.scenarios.filter(({ name }) => name === 'kerb-drop' || name === 'shove'),
  };
}

it('a way out ends where the ride falls again', { timeout: 60_000 }, async () => {
  const plan = latePlan();
  const explanation = await explain(plan, { threads: 1 });
  const limits = explanation.blame.findings.filter(({ cause }) => cause === "the rider's delay");
  expect(limits).toHaveLength(1);
  const [found] = await findWaysOut(plan, { explanation, limits }, { threads: 1 });
  const { isUnderReference, cells, ways } = found!;
  expect(cells.length).toBeGreaterThan(0);
  const [way] = ways;
  expect(way).toMatchObject({ lever: "the rider's delay", now: 0.26, helpsTo: 0.14 });
  const { helpsFrom } = way!;
  expect(helpsFrom).toBeGreaterThan(0.14);
  const from = isUnderReference ? UNDER_REFERENCE : AS_IS;
  const trials = trialsOf(plan).filter(({ key }) => cells.some(({ scenario }) => scenario === key.scenario));
  const step = LEVERS["the rider's delay"].step();
  const made = trials.map((trial) => makingsOf(explanation.profile.value, trial));
  const { change } = waysOut("the rider's delay", made)[0]!;
  const [there, beyond] = await runVariants(
    { plan, profile: explanation.profile, trials },
    [helpsFrom!, helpsFrom! + step].map((size) => ({
      name: 'again',
      change: (makings) => change(from.change(makings), size),
    })),
    { threads: 1 },
  );
  expect(there!.failures).toBe(0);
  expect(beyond!.failures).toBeGreaterThan(0);
});

it('nothing is looked for where a limit fells no run', async () => {
  const plan = starterPlan();
  const explanation = await explain(
    {
      ...plan,
      profiles: plan.profiles.filter(({ name }) => name === 'linen'),
      scenarios: plan.scenarios.filter(({ name }) => name === 'shove'),
    },
    { threads: 1 },
  );
  const limits: Finding[] = [
    {
      cause: 'grip',
      family: 'road',
      relief: 1,
      share: 1,
      failuresCured: 0,
      cured: [],
      sureness: 'sure',
      rival: null,
    },
  ];
  expect(await findWaysOut(plan, { explanation, limits }, { threads: 1 })).toEqual([
    { cause: 'grip', isUnderReference: false, cells: [], ways: [] },
  ]);
});
