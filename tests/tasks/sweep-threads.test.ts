/**
 * What becomes of the work of a thread that dies? It is made once more by another; what kills that one too is told by the name of
 * its cell, and what the others have done is kept.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { CellResult } from '../../src/measure/profile-result.js';
import { openCrew, type CellTask, type Crew } from '../../src/tasks/crew.js';
import { CellFailed, runTasks } from '../../src/tasks/labour.js';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { bundled, ROOT } from '../bundled.js';
import { putFile, tempFolder } from '../store/temp-folder.js';
import { crewHere } from './crew-here.js';
import { smallPlan } from './small-plan.js';

/** Ways for a thread to die, as statements in it. */
const DEATHS = {
  'ends itself': 'process.exit(7);',
  'throws in its work': "throw new Error('no such number');",
  'throws later': "setImmediate(() => { throw new Error('too late'); }); return new Promise(() => {});",
};

/** Where the program for the threads stands once it is built. */
const WORKER = pathToFileURL(join(ROOT, 'dist', 'tasks', 'worker.js')).href;

/** A program for threads that dies in the cells of the drop with seed 2: once, or whenever it comes there. */
function dyingWork(death: string, often: 'once' | 'always'): string {
  const folder = tempFolder();
  const been = JSON.stringify(join(folder, 'been'));
  const dies = often === 'always' ? 'true' : `!existsSync(${been})`;
  return putFile(
    folder,
    'work.mjs',
    `import { existsSync, writeFileSync } from 'node:fs';
     import { cells as compute } from ${JSON.stringify(WORKER)};
     const isMeant = ({ key }) => key.scenario === 'kerb' && key.seed === 2;
     export function cells(task) {
       if (task.trials.some(isMeant) && ${dies}) {
         writeFileSync(${been}, '');
         ${death}
       }
       return compute(task);
     }`,
  );
}

function tasksOf(plan: RankPlan, trialsEach = 1): CellTask[] {
  const trials = trialsOf(plan);
  return plan.profiles.flatMap(({ value: profile }) =>
    Array.from({ length: trials.length / trialsEach }, (_, index): CellTask => {
      const own = trials.slice(index * trialsEach, (index + 1) * trialsEach);
      return { profile, trials: own, solver: 'fixed' };
    }),
  );
}

async function opened(size: number, work: string): Promise<Crew> {
  const crew = await openCrew(size, work);
  onTestFinished(() => crew.close());
  return crew;
}

async function cellsOf(tasks: readonly CellTask[], crew: Crew): Promise<CellResult[][]> {
  const results: CellResult[][] = [];
  await runTasks(tasks, { threads: crew, onDone: (index, cells) => (results[index] = cells) });
  return results;
}

describe.each(Object.entries(DEATHS))('a thread that %s', (_, death) => {
  it.each([1, 3])('once, of %i: another makes its cells, and all are what they always are', async (size) => {
    const tasks = tasksOf(smallPlan(), 2);
    const work = dyingWork(death, 'once');
    const cells = await cellsOf(tasks, await opened(size, work));
    expect(existsSync(join(work, '..', 'been'))).toBe(true);
    expect(cells).toEqual(await cellsOf(tasks, crewHere()));
  });

  it('again and again: its cell is named, the others are kept, no further one is begun', async () => {
    const plan = smallPlan();
    const tasks = tasksOf(plan, 4);
    const crew = await opened(2, dyingWork(death, 'always'));
    const told: number[] = [];
    const ending = runTasks(tasks.slice(0, 2), { threads: crew, onDone: (index) => told.push(index) });
    await expect(ending).rejects.toBeInstanceOf(CellFailed);
    await expect(ending).rejects.toMatchObject({
      message: expect.stringMatching(
        /^kerb, kim, \d+ %, seed 2: (its thread ended|no such number|too late)$/,
      ),
      trial: { key: { scenario: 'kerb', seed: 2 } },
    });
    expect(told).toEqual([]);
    // The crew is whole again.
    const level = tasksOf({ ...plan, scenarios: plan.scenarios.slice(0, 1) });
    expect(await cellsOf(level, crew)).toHaveLength(level.length);
  });
});

describe('threads', () => {
  it('that die in one cell keep the results of all that was begun before', async () => {
    const tasks = tasksOf(smallPlan());
    const crew = await opened(2, dyingWork(DEATHS['ends itself'], 'always'));
    const told: number[] = [];
    const ending = runTasks(tasks, { threads: crew, onDone: (index) => told.push(index) });
    await expect(ending).rejects.toBeInstanceOf(CellFailed);
    // The fourth is the drop with seed 2; those before it are begun before it.
    expect(told.filter((index) => index < 3).sort()).toEqual([0, 1, 2]);
    expect(told).not.toContain(3);
  });

  it('that cannot be begun are told of, and nothing waits for ever', async () => {
    const crew = await opened(2, join(tempFolder(), 'nothing.mjs'));
    await expect(cellsOf(tasksOf(smallPlan()), crew)).rejects.toThrow(/seed 1: Cannot find module/);
    await expect(crew.cells(tasksOf(smallPlan())[0]!)).rejects.toThrow(/Cannot find module/);
  });

  it('are left when they are closed, whatever they have in hand', async () => {
    const crew = await openCrew(2, dyingWork('for (;;);', 'always'));
    const [task] = tasksOf(smallPlan(), 4);
    const waiting = expect(crew.cells(task!)).rejects.toThrow(/Terminating/);
    await crew.close();
    await waiting;
    await expect(crew.cells(task!)).rejects.toThrow('the threads are closed');
  });

  it('whose memory is used up are replaced like others', () => {
    const program = `
      import { openCrew } from './src/tasks/crew.ts';
      import { runTasks } from './src/tasks/labour.ts';
      import { trialsOf } from './src/tasks/plan.ts';
      import { smallPlan } from './tests/tasks/small-plan.ts';
      const plan = smallPlan();
      const { value: profile } = plan.profiles[0];
      const tasks = trialsOf(plan).map((trial) => ({ profile, trials: [trial], solver: 'fixed' }));
      for (const work of process.argv.slice(1)) {
        const crew = await openCrew(2, work);
        let done = 0;
        try {
          await runTasks(tasks, { threads: crew, onDone: () => done++ });
          console.log('done', done);
        } catch (error) {
          console.log(error.message);
        }
        await crew.close();
      }`;
    const death = 'const all = []; for (;;) all.push(new Array(1e5).fill(Math.random()));';
    const { stdout, status } = spawnSync(
      process.execPath,
      [
        '--max-old-space-size=96',
        '--eval',
        bundled(program),
        dyingWork(death, 'once'),
        dyingWork(death, 'always'),
      ],
      { cwd: ROOT, encoding: 'utf8' },
    );
    expect([status, stdout.split('\n')[0]]).toEqual([0, 'done 4']);
    expect(stdout).toMatch(/\nkerb, kim, \d+ %, seed 2: .*memory limit/);
  });
});
