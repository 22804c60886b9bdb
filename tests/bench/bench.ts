/**
 * How fast is it? Prints figures; judges nothing. Rates are simulated seconds per wall second on one core, medians of
 * several repetitions after a warm-up; per second of computing where others at work on the machine would disturb.
 */
import { spawn } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import { join } from 'node:path';
import { measureProfile } from '../../src/tasks/evaluate.js';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { run, type RunOptions } from '../../src/simulate/run.js';
import { prepareTrial, type Trial } from '../../src/simulate/trial.js';
import { programFolder } from '../../src/store/places.js';
import { starterPlan } from '../starter-plan.js';
import { benchScreen } from './bench-screen.js';
import { benchSweep } from './bench-sweep.js';
import { benchCrewScaling } from './crew-scaling.js';
import { computingS, median, print } from './figures.js';
import { benchSideBySide } from './side-by-side.js';

const REPETITIONS = 7;

function timeS(work: () => void): number {
  const startMs = performance.now();
  work();
  return (performance.now() - startMs) / 1000;
}

/** How quickly some work went: simulated seconds per second on the wall, and per second of computing. */
interface Rate {
  perWallS: number;
  perComputingS: number;
}

/** The rate over a set of trials. */
function rate(trials: readonly Trial[], profile: RankPlan['profiles'][number], options: RunOptions): Rate {
  let simulatedS = 0;
  let computedS = 0;
  const wallS = timeS(() => {
    computedS = computingS(() => {
      for (const trial of trials) simulatedS += run(trial, profile.value, options).outcome.atS;
    });
  });
  return { perWallS: simulatedS / wallS, perComputingS: simulatedS / computedS };
}

function benchKernel(plan: RankPlan): void {
  const profile = plan.profiles[0]!;
  const planned = trialsOf(plan);
  print(
    'preparing a trial: road, script, noise',
    median(planned.map(({ circumstances }) => timeS(() => prepareTrial(circumstances)))) * 1000,
    'ms',
  );
  const trials = planned.map(({ circumstances }) => prepareTrial(circumstances));
  const capacity = Math.max(...trials.map(({ script }) => script.tickCount + 1));
  const { tape } = run(
    trials.find(({ script }) => script.tickCount + 1 === capacity)!,
    profile.value,
    { solver: 'fixed' },
  );
  const options: RunOptions = { solver: 'fixed', tape };
  const cold = rate(trials, profile, options);
  const rates = Array.from({ length: REPETITIONS }, () => rate(trials, profile, options));
  print('fixed step, first pass (cold)', cold.perWallS, 's/s');
  const loop = `fixed step, loop at ${plan.board.value.controller.loopRateHz} Hz`;
  print(loop, median(rates.map(({ perWallS }) => perWallS)), 's/s');
  print(`${loop}, by computing`, median(rates.map(({ perComputingS }) => perComputingS)), 's/s');
  benchMeasuring(trials, profile, options);
  print(
    'reference (odex), same loop',
    rate(trials.slice(0, 4), profile, { solver: 'reference' }).perWallS,
    's/s',
  );

  const heapBefore = process.memoryUsage().heapUsed;
  let ticks = 0;
  for (const trial of trials) {
    run(trial, profile.value, options);
    ticks += trial.script.tickCount;
  }
  print(
    'heap growth over a tick, garbage not collected',
    (process.memoryUsage().heapUsed - heapBefore) / ticks,
    'bytes',
  );
}

/** What measuring adds to simulating, both by turns, in seconds of computing: with code not compiled yet, and after that. */
function benchMeasuring(
  trials: readonly Trial[],
  { value }: RankPlan['profiles'][number],
  options: RunOptions,
): void {
  const shares: number[] = [];
  for (let repetition = 0; repetition <= 2 * REPETITIONS; repetition++) {
    const measured = computingS(() => trials.forEach((trial) => measureProfile(trial, value, options)));
    const plain = computingS(() => trials.forEach((trial) => run(trial, value, options)));
    shares.push(measured / plain - 1);
  }
  print('measuring a run, over simulating it, first pass (cold)', shares[0]!, '');
  print('measuring a run, over simulating it', median(shares.slice(1)), '');
}

/** Runs `rank` as its user does; seconds to the first row on the standard error, to the table, and to the end. */
async function benchRank(rankArguments: string[]): Promise<{ rowS: number; tableS: number; endS: number }> {
  const startMs = performance.now();
  const child = spawn(process.execPath, [join(programFolder(), 'dist/main.js'), 'rank', ...rankArguments], {
    cwd: programFolder(),
  });
  const sinceS = () => (performance.now() - startMs) / 1000;
  let rowS = Infinity;
  let tableS = Infinity;
  child.stderr.on('data', () => (rowS = Math.min(rowS, sinceS())));
  child.stdout.on('data', () => (tableS = Math.min(tableS, sinceS())));
  await new Promise((resolve) => child.on('close', resolve));
  return { rowS, tableS, endS: sinceS() };
}

const plan = starterPlan();
benchKernel(plan);
benchSideBySide(plan);
await benchCrewScaling(plan);
const small = [
  ...plan.profiles.slice(0, 8).map(({ name }) => name),
  '--scenarios',
  plan.scenarios
    .slice(0, 12)
    .map(({ name }) => name)
    .join(','),
];
const runs = [];
for (let repetition = 0; repetition < 3; repetition++) runs.push(await benchRank(small));
print('rank, 8 profiles x 12 scenarios: first row', median(runs.map(({ rowS }) => rowS)), 's');
print('rank, 8 profiles x 12 scenarios: the table', median(runs.map(({ tableS }) => tableS)), 's');
print('rank, 8 profiles x 12 scenarios: with the odex check', median(runs.map(({ endS }) => endS)), 's');
const ratios = [];
for (let repetition = 0; repetition < 3; repetition++) {
  const one = await benchRank([...small, '--seeds', '4', '--workers', '1']);
  const two = await benchRank([...small, '--seeds', '4', '--workers', '2']);
  ratios.push(one.tableS / two.tableS);
}
print('rank, 4 seeds: time with 1 thread over time with 2', median(ratios), '');
await benchSweep();
await benchScreen();
