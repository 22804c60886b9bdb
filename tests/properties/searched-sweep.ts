/**
 * What a sweep searches out, without all that is told of finalists beside their cells: quick enough to be done by the hundred.
 */
import { search } from '../../src/sweep/search.js';
import { trialsOf } from '../../src/tasks/plan.js';
import { createLedger, runKey, type SweepLine, type SweepRun } from '../../src/tasks/sweep-ledger.js';
import type { SweepPlan } from '../../src/tasks/sweep-plan.js';
import { judgeFor, resultOf } from '../../src/tasks/sweep.js';

/** What a search finds, from nothing or from lines that are known. */
export async function searched(plan: SweepPlan, known: readonly string[] = []) {
  const made: string[] = [];
  const trials = trialsOf(plan.cells).map((_, trial) => trial);
  const lines = known.map((line) => JSON.parse(line) as SweepLine);
  const ledger = createLedger(
    trialsOf(plan.cells),
    new Map(lines.map((line) => [runKey(line), line])),
    (line) => made.push(line),
  );
  const searching = search(
    { ...plan, base: plan.base.value, cellOrder: trials },
    await judgeFor(plan, ledger),
  );
  for (let next = searching.next(); ; next = searching.next()) {
    if (next.done) {
      const { finalists, tried } = next.value;
      const results = finalists.map((candidate) => resultOf(plan, ledger, { candidate, cells: trials }));
      return { finalists, tried, results, made, lines: ledger.lines() };
    }
    const { candidates, cells } = next.value;
    const runs = candidates.flatMap(({ profile, values: numbers }) =>
      cells.map((trial): SweepRun => ({ profile, numbers, trial, how: 'fixed' })),
    );
    await ledger.run(runs, { threads: 1 });
  }
}
