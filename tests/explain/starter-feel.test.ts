/** Do the starter profiles feel as their summaries say they are meant to? */
import { describe, expect, it } from 'vitest';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { feelFrom, feelPoints } from '../../src/tasks/feel-rides.js';
import { lookAtRides } from '../../src/tasks/ride-looks.js';
import { AS_IS, runVariants } from '../../src/tasks/study.js';
import { starterPlan } from '../starter-plan.js';

const plan = starterPlan();

async function feelOfStarter(name: string): Promise<string[]> {
  const profile = plan.profiles.find((one) => one.name === name)!;
  const own: RankPlan = { ...plan, profiles: [profile] };
  const [result] = await runVariants({ plan: own, profile, trials: trialsOf(own) }, [AS_IS], { threads: 1 });
  const reports = await lookAtRides(feelPoints(own, profile.value), { threads: 1 });
  return feelFrom(own, result!.cells, reports).words.map(({ word }) => word);
}

describe('a starter profile', () => {
  it.each([
    ['linen', 'Composed', 'composed'],
    ['cotton', 'Composed and softer', 'composed'],
    ['canvas', 'Composed, with a headroom lift', 'composed'],
    ['tweed', 'Composed, with load feed-forward', 'composed'],
    ['jersey', 'Progressive', 'composed'],
    ['gauze', 'Loose', 'loose'],
    ['felt', 'Sluggish', 'sluggish'],
    ['denim', 'Stiff', 'stiff'],
    ['satin', 'Ringing', 'twitchy'],
    ['wool', 'Winding up', 'rider-coupled wobble'],
  ])('%s, meant to be %s, feels %s and no other', async (name, summary, word) => {
    const profile = plan.profiles.find((one) => one.name === name)!;
    expect(profile.value.summary.startsWith(summary)).toBe(true);
    expect(await feelOfStarter(name)).toEqual([word]);
  });

  it('taffeta, meant to be Buzzing, feels buzzy above all', async () => {
    const [word] = await feelOfStarter('taffeta');
    expect(word).toBe('buzzy');
  });
});
