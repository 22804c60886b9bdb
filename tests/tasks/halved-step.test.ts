/**
 * Is the ranking a matter of the step? Half of it must change no order between profiles that are further apart than a
 * stated tolerance, on the whole starter set.
 */
import { describe, expect, it } from 'vitest';
import { profileResult, type ProfileResult } from '../../src/measure/profile-result.js';
import { rankProfiles } from '../../src/measure/score.js';
import { prepareTrial } from '../../src/simulate/trial.js';
import { measureProfile } from '../../src/tasks/evaluate.js';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { starterPlan } from '../starter-plan.js';

/** Scores closer than this may change places. */
const SCORE_TOLERANCE = 0.01;

function ranking(plan: RankPlan, stepsPerTick: number): ProfileResult[] {
  const trials = trialsOf(plan).map(({ key, circumstances }) => ({
    key,
    trial: prepareTrial(circumstances),
  }));
  return plan.profiles.map(({ name, value }) => {
    const cells = trials.map(({ key, trial }) => {
      const { outcome, metrics } = measureProfile(trial, value, { solver: 'fixed', stepsPerTick });
      return { ...key, outcome, metrics, eventReached: metrics.measuredS > 0 };
    });
    return profileResult({ name, summary: value.summary }, cells, plan.weights);
  });
}

describe('half the step', () => {
  it('keeps every outcome, and the order of all that are further apart than the tolerance', () => {
    const plan = starterPlan();
    const whole = ranking(plan, 1);
    const half = ranking(plan, 2);
    const outcomes = (results: ProfileResult[]) =>
      results.map(({ cells }) => cells.map(({ outcome }) => outcome.kind));
    expect(outcomes(half)).toEqual(outcomes(whole));
    const placeIn = new Map(rankProfiles(half).map(({ name }, place) => [name, place]));
    const ordered = rankProfiles(whole);
    for (const [place, better] of ordered.entries()) {
      for (const worse of ordered.slice(place + 1)) {
        const apart = worse.failures > better.failures || worse.score - better.score > SCORE_TOLERANCE;
        if (apart) expect(placeIn.get(better.name)!).toBeLessThan(placeIn.get(worse.name)!);
      }
    }
    whole.forEach(({ score }, index) =>
      expect(Math.abs(half[index]!.score - score)).toBeLessThan(SCORE_TOLERANCE),
    );
  });
});
