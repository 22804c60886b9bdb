/** Is the one thing that was spoiled found, with what it was found by? */
import { describe, expect, it } from 'vitest';
import { evidenceOf } from '../../src/tasks/evidence.js';
import { explain, type Explanation } from '../../src/tasks/explain.js';
import { planWith, profileWith } from './explained-plan.js';

const RINGING = planWith(profileWith({ rateAPerDegPerS: 0.02 }));

describe('an explanation', () => {
  it('blames the rate gain of a profile without damping, by runs that were made', async () => {
    const said = await explain(RINGING, { threads: 1 });
    expect(said.blame.findings[0]).toMatchObject({ cause: 'too little rate gain', family: 'profile' });
    const removal = said.removals.find(({ cause }) => cause === 'too little rate gain')!;
    const meanCost = ({ cells }: Explanation['result']) =>
      cells.reduce((sum, { cost }) => sum + cost, 0) / cells.length;
    const relief = meanCost(said.result) - meanCost(removal.result!);
    expect(said.blame.findings[0]!.relief).toBeCloseTo(relief, 12);
    expect(removal.underReference).toBeNull();
  });

  it('asks no suspect at all where profile and rig are composed, and blames nothing', async () => {
    const said = await explain(planWith(profileWith()), { threads: 1 });
    expect(said.blame.findings).toEqual([]);
    expect(said.removals).toEqual([]);
  });

  it('tells first what the worst cells say, where there are many', async () => {
    const heard: Explanation[] = [];
    const plan = { ...RINGING, seeds: [1, 2, 3] };
    const whole = await explain(plan, { threads: 1, onFirst: (first) => heard.push(first) });
    expect(heard.map(({ isComplete, result }) => [isComplete, result.cells.length])).toEqual([[false, 4]]);
    expect([whole.isComplete, whole.result.cells.length]).toEqual([true, 6]);
    const costs = whole.result.cells.map(({ cost }) => cost).toSorted((a, b) => b - a);
    expect(heard[0]!.result.cells.map(({ cost }) => cost).toSorted((a, b) => b - a)).toEqual(
      costs.slice(0, 4),
    );
  });

  it('ends with the reason of a signal', async () => {
    const signal = AbortSignal.abort(new Error('enough'));
    await expect(explain(RINGING, { threads: 1, signal })).rejects.toThrow('enough');
  });
});

describe('evidence', () => {
  it('is the cell with the greatest relief, its number and its moment', async () => {
    const said = await explain(RINGING, { threads: 1 });
    const [evidence] = evidenceOf(RINGING, said);
    const removal = said.removals.find(({ cause }) => cause === 'too little rate gain')!.result!;
    const reliefs = said.result.cells.map(({ cost }, index) => cost - removal.cells[index]!.cost);
    const most = said.result.cells[reliefs.indexOf(Math.max(...reliefs))]!;
    expect(evidence).toMatchObject({
      causes: ['too little rate gain'],
      isUnderReference: false,
      number: { name: 'rate gain', value: 0.02, unit: 'A/(deg/s)' },
      cell: { key: most.key },
      without: { key: most.key },
    });
    const { peakNoseDownRad, peakNoseUpRad } = most.metrics;
    expect(Math.abs(evidence!.moment.peak.pitchRad)).toBeCloseTo(
      Math.max(peakNoseDownRad, peakNoseUpRad),
      12,
    );
  });

  it('of the rig is looked for under the reference where the profile is to blame for more', async () => {
    const { motor } = RINGING.board.value;
    const weak = { ...RINGING.board.value, motor: { ...motor, driveCurrentA: 6, brakeCurrentA: 6 } };
    const plan = { ...RINGING, board: { name: 'weak', value: weak } };
    const said = await explain(plan, { threads: 1 });
    const rig = evidenceOf(plan, said).find(({ finding }) => finding.family === 'power')!;
    expect(rig.causes).toEqual(['current ceiling']);
    expect(rig.isUnderReference).toBe(said.blame.isProfileToBlame);
    expect(rig.moment.firstCut).toMatchObject({ ceiling: expect.stringMatching(/drive|brake/) });
  });
});
