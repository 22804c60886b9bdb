/**
 * How much sooner do two threads have the same list of cells done than one? Both crews stay open and take turns; the
 * least of several rounds counts, since others may be at work on the machine too.
 */
import { performance } from 'node:perf_hooks';
import { openCrew, type Crew } from '../../src/tasks/crew.js';
import { jobsFor, runJobs } from '../../src/tasks/jobs.js';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { print } from './figures.js';

const ROUNDS = 8;
/** Cells of a job: few, so that neither thread waits long for the other at the end of the list. */
const JOB_CELLS = 3;

/** What a list of cells took: seconds on the clock, and seconds of computing of all threads together. */
interface Taken {
  wallS: number;
  computedS: number;
}

/** Prints the time of one thread over that of two for every cell of a plan, and what the second costs in computing. */
export async function benchCrewScaling(plan: RankPlan): Promise<void> {
  const trialCount = trialsOf(plan).length;
  const profileCount = plan.profiles.length;
  const jobs = jobsFor({ profileCount, trialCount, solver: 'fixed', jobCells: JOB_CELLS });
  const takenBy = async (crew: Crew): Promise<Taken> => {
    const startMs = performance.now();
    const before = process.cpuUsage();
    await runJobs(plan, jobs, { threads: crew, onDone: () => undefined });
    const { user, system } = process.cpuUsage(before);
    return { wallS: (performance.now() - startMs) / 1000, computedS: (user + system) / 1e6 };
  };
  const [one, two] = await Promise.all([openCrew(1), openCrew(2)]);
  try {
    const alone: Taken[] = [];
    const together: Taken[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      alone.push(await takenBy(one));
      together.push(await takenBy(two));
    }
    const least = (what: keyof Taken, rounds: Taken[]) => Math.min(...rounds.map((taken) => taken[what]));
    print(`${trialCount * profileCount} cells on 1 thread`, least('wallS', alone), 's');
    const faster = least('wallS', alone) / least('wallS', together);
    print('the same cells: time with 1 thread over time with 2', faster, '');
    const dearer = least('computedS', together) / least('computedS', alone);
    print('the same cells: computing of 2 threads over that of 1', dearer, '');
  } finally {
    await Promise.all([one.close(), two.close()]);
  }
}
