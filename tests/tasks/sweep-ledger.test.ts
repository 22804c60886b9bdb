/**
 * Does a ledger make each run once, keep it before it is used, and tell the same whether it made a run or read it?
 */
import { describe, expect, it } from 'vitest';
import { trialsOf } from '../../src/tasks/plan.js';
import { createLedger, runKey, type SweepLine, type SweepRun } from '../../src/tasks/sweep-ledger.js';
import { crewHere } from './crew-here.js';
import { smallPlan } from './small-plan.js';

const plan = smallPlan();
const trials = trialsOf(plan);

const runs: SweepRun[] = plan.profiles.flatMap(({ value: profile }) =>
  trials.map((_, trial): SweepRun => {
    const { proportionalAPerDeg, rateAPerDegPerS } = profile.gains;
    return { profile, numbers: [proportionalAPerDeg, rateAPerDegPerS, null], trial, how: 'fixed' };
  }),
);

describe('a ledger', () => {
  it('makes every run once, however often and beside which others it is asked for', async () => {
    const lines: string[] = [];
    const crew = crewHere(2);
    const ledger = createLedger(trials, new Map(), (line) => lines.push(line));
    const told: number[][] = [];
    const options = { threads: crew, onRuns: (...counts: number[]) => told.push(counts) };
    expect(ledger.missing([...runs, ...runs])).toBe(12);
    await ledger.run(runs.slice(0, 5), options);
    await ledger.run([...runs, ...runs.slice(3, 9)], options);
    await ledger.run(runs, options);
    expect([crew.asked.length, lines.length, ledger.size(), ledger.missing(runs)]).toEqual([12, 12, 12, 0]);
    expect(new Set(lines.map((line) => runKey(JSON.parse(line) as SweepLine))).size).toBe(12);
    expect(told.slice(0, 5)).toEqual([1, 2, 3, 4, 5].map((done) => [done, 5]));
    expect(told.at(-1)).toEqual([18, 18]);
  });

  it('that read its runs tells the same as the one that made them, in the same order', async () => {
    const lines: string[] = [];
    const first = createLedger(trials, new Map(), (line) => lines.push(line));
    await first.run(runs, { threads: crewHere(3) });
    const known = new Map(
      lines.toReversed().map((line): [string, SweepLine] => {
        const read = JSON.parse(line) as SweepLine;
        return [runKey(read), read];
      }),
    );
    const second = createLedger(trials, known, () => {
      throw new Error('a run that was known');
    });
    await second.run(runs, { threads: 1 });
    for (const run of runs) expect(second.result(run)).toEqual(first.result(run));
    expect(second.lines()).toEqual(first.lines());
    expect([...first.lines()].sort()).toEqual([...lines].sort());
  });

  it('runs with half the step and with odex are others', async () => {
    const ledger = createLedger(trials, new Map(), () => {});
    const [run] = runs as [SweepRun];
    const ways: SweepRun[] = [run, { ...run, how: 'half step' }, { ...run, how: 'reference' }];
    const crew = crewHere();
    await ledger.run(ways, { threads: crew });
    expect(crew.asked.map(({ solver }) => solver)).toEqual(['fixed', 'fixed', 'reference']);
    const times = ways.map((way) => ledger.result(way).metrics.settlingTimeS);
    expect(new Set(times).size).toBe(3);
  });

  it('a run that was never asked for is a fault of ours', () => {
    expect(() => createLedger(trials, new Map(), () => {}).result(runs[0]!)).toThrow('not asked for');
  });

  it('a line that cannot be kept ends it, and no other is begun', async () => {
    const crew = crewHere(1);
    const ledger = createLedger(trials, new Map(), () => {
      throw new Error('no room');
    });
    await expect(ledger.run(runs, { threads: crew })).rejects.toThrow('no room');
    expect([crew.asked.length, ledger.size()]).toEqual([1, 0]);
  });
});
