/**
 * Has a plan each of its trials once, in their fixed order?
 */
import { expect, it } from 'vitest';
import { trialsOf } from '../../src/tasks/plan.js';
import { smallPlan } from './small-plan.js';

const [level, kerb] = smallPlan().scenarios;

it('a charge that a scenario has by itself and that is stated too counts once, in the place of the first', () => {
  const low = { name: 'low', value: { ...kerb!.value, chargePercent: 20 } };
  const plan = smallPlan({ scenarios: [level!, low], charges: [null, 20, 20, 50], seeds: [1, 2] });
  const keys = trialsOf(plan).map(({ key }) => `${key.scenario} ${key.chargePercent}/${key.seed}`);
  const own = level!.value.chargePercent;
  expect(keys).toEqual(
    [`level ${own}`, 'level 20', 'level 50', 'low 20', 'low 50'].flatMap((cell) => [
      `${cell}/1`,
      `${cell}/2`,
    ]),
  );
});

it('charges that are all others make every trial', () => {
  expect(trialsOf(smallPlan({ charges: [null, 20], seeds: [1, 2, 3] }))).toHaveLength(12);
});
