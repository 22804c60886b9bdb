/** Are variants run as they say, in their order, whoever runs them? */
import { expect, it } from 'vitest';
import { trialsOf } from '../../src/tasks/plan.js';
import { AS_IS, makingsOf, runVariants, UNDER_REFERENCE, type Variant } from '../../src/tasks/study.js';
import { rank } from '../../src/tasks/rank.js';
import { crewHere } from './crew-here.js';
import { planWith, profileWith } from './explained-plan.js';

const plan = planWith(profileWith());
const [profile] = plan.profiles;
const study = { plan, profile: profile!, trials: trialsOf(plan) };
const softer: Variant = {
  name: 'softer',
  change: (makings) => ({ ...makings, profile: profileWith({ proportionalAPerDeg: 8 }) }),
};

it('the profile as it is costs what it costs in a ranking', async () => {
  const [result] = await runVariants(study, [AS_IS], { threads: 1 });
  const [ranked] = await rank(plan, { threads: 1 });
  expect(result!.cells).toEqual(ranked!.cells);
  expect(result!.score).toBe(ranked!.score);
});

it('variants come back in their order with their names, and the same from a crew', async () => {
  const told: string[] = [];
  const options = { threads: 1, onRuns: (done: number, all: number) => told.push(`${done}/${all}`) };
  const results = await runVariants(study, [softer, AS_IS, UNDER_REFERENCE], options);
  expect(results.map(({ name }) => name)).toEqual(['softer', 'as it is', 'under the reference']);
  expect(results[0]!.score).not.toBe(results[1]!.score);
  expect(told).toEqual(['1/6', '2/6', '3/6', '4/6', '5/6', '6/6']);
  expect(await runVariants(study, [softer, AS_IS, UNDER_REFERENCE], { threads: crewHere(2) })).toEqual(
    results,
  );
});

it('a change of the rig is run, and the trial keeps its name', async () => {
  const empty: Variant = {
    name: 'weak motor',
    change: (makings) => ({
      ...makings,
      board: { ...makings.board, motor: { ...makings.board.motor, driveCurrentA: 5, brakeCurrentA: 5 } },
    }),
  };
  const [weak] = await runVariants(study, [empty], { threads: 1 });
  expect(weak!.cells.map(({ key }) => key)).toEqual(['level/kim/80/1', 'kerb/kim/80/1']);
  expect(weak!.cells[1]!.metrics.saturationShare).toBeGreaterThan(0);
  expect(plan.board.value.motor.driveCurrentA).toBe(80);
});

it('a trial has its makings with the charge that it is run at', () => {
  const [trial] = trialsOf({ ...plan, charges: [35] });
  expect(makingsOf(profile!.value, trial!)).toMatchObject({
    scenario: { chargePercent: 35 },
    noiseRatio: 1,
    seed: 1,
  });
});
