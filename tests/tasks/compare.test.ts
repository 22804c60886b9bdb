/** Are compared runs the ones that `rank` and `run` know, and does the report have all that is needed to do it again? */
import { describe, expect, it } from 'vitest';
import { comparedRuns, comparisonOf, compareReport, runAll } from '../../src/tasks/compare.js';
import { rank } from '../../src/tasks/rank.js';
import { runOnce } from '../../src/tasks/run-once.js';
import { smallPlan } from './small-plan.js';

const plan = smallPlan({ scenarios: smallPlan().scenarios.slice(1), seeds: [1] });
const comparison = runAll(plan);

describe('a comparison', () => {
  it('has the run of each profile as it is alone', () => {
    expect(comparison.runs.map(({ name }) => name)).toEqual(['wool', 'silk', 'felt']);
    plan.profiles.forEach((profile, index) => {
      const { tape, outcome, metrics } = runOnce({ ...plan, profiles: [profile] });
      const run = comparison.runs[index]!;
      expect({ outcome: run.outcome, metrics: run.metrics, length: run.tape.length }).toEqual({
        outcome,
        metrics,
        length: tape.length,
      });
      const rows = tape.length;
      expect(run.tape.columns.pitchRad.subarray(0, rows)).toEqual(tape.columns.pitchRad.subarray(0, rows));
    });
  });

  it('has the cells that a ranking has', async () => {
    const ranked = await rank(plan, { threads: 1 });
    for (const { name, cell } of comparison.runs) {
      expect(cell).toEqual(ranked.find((profile) => profile.name === name)!.cells[0]);
    }
  });

  it('is the same of runs that were computed elsewhere', () => {
    const again = comparisonOf(plan, comparison.runs);
    expect(again.parting).toEqual(comparison.parting);
    expect(again.runs.map(({ cell }) => cell)).toEqual(comparison.runs.map(({ cell }) => cell));
    expect(() => comparisonOf(plan, comparison.runs.slice(1))).toThrow('each of its profiles');
  });

  it('parts where a pitch leaves the band of another, and not a row before', () => {
    const levelling = runAll(smallPlan({ profiles: smallPlan().profiles.slice(0, 2) }));
    const { row, between } = levelling.parting!;
    const pitches = (at: number) => between.map((index) => levelling.runs[index]!.tape.columns.pitchRad[at]!);
    const apart = (at: number) => Math.abs(pitches(at)[0]! - pitches(at)[1]!);
    const { bandRad } = levelling.runs[0]!.window;
    expect(row).toBeGreaterThan(0);
    expect(apart(row)).toBeGreaterThan(bandRad);
    expect(apart(row - 1)).toBeLessThanOrEqual(bandRad);
  });

  it('is drawn under the names of what met', () => {
    const [wool] = comparedRuns(comparison);
    expect(wool).toMatchObject({ name: 'wool', view: { title: 'wool in kerb, pebble under kim' } });
    expect(wool!.view.facts).toMatchObject({
      eventName: 'kerb',
      bandRad: comparison.runs[0]!.window.bandRad,
    });
  });
});

describe('its report', () => {
  const report = compareReport(comparison);

  it('has rig, scenario, profiles and metrics, the best and the parting by name, and no tape', () => {
    expect(report).toMatchObject({
      solver: 'fixed',
      seed: 1,
      rig: { board: { name: 'pebble' }, rider: { name: 'kim' } },
      scenario: { name: 'kerb', durationS: 4 },
      best: [expect.stringMatching(/wool|felt/)],
      parting: { by: expect.any(String), bandRad: comparison.runs[0]!.window.bandRad },
    });
    expect(report.profiles.map(({ name }) => name)).toEqual(['wool', 'silk', 'felt']);
    expect(report.profiles[1]!.profile).toEqual(plan.profiles[1]!.value);
    expect(Object.keys(report.parting!.pitchRad)).toEqual(['wool', 'silk', 'felt']);
    expect(report.parting!.between).toHaveLength(2);
    expect(JSON.stringify(report)).not.toContain('tape');
  });

  it('survives JSON', () => {
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });
});
