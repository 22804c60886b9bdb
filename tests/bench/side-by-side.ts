/**
 * How does the kernel do beside other programs that make the same ride? Our other integrator, a program in plain C that
 * is compiled on the spot, and SciPy under the witness of tests/reference. Seconds of computing, not of the clock; what
 * is not installed is said and left out.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Moment } from '../../src/simulate/moment.js';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { programFolder } from '../../src/store/places.js';
import { computingS, median, print } from './figures.js';
import { caseOf, numbersOf, rideOurs, sameRide, type SameRide } from './same-ride.js';

const PROFILE = 'linen';
const SCENARIOS = ['kerb-drop', 'shove'];
const ROUNDS = 5;
const LEAST_S = 0.5;

const HERE = join(programFolder(), 'tests/bench');
const C_COMPILER = process.env['CC'] ?? 'cc';
const PYTHON = process.env['PYTHON'] ?? 'python3';

/** What a program from outside made of the ride: ticks, seconds of computing, and the state at the end. */
interface Ridden {
  ticks: number;
  rideS: number;
  state: number[];
}

/** Prints the same rides by everybody, as ratios to the kernel. */
export function benchSideBySide(plan: RankPlan): void {
  const folder = mkdtempSync(join(tmpdir(), 'underfoot-bench-'));
  try {
    const program = compiled(folder);
    const hasScipy = spawnSync(PYTHON, ['-c', 'import numpy, scipy, sympy']).status === 0;
    const profile = plan.profiles.find(({ name }) => name === PROFILE)!;
    for (const scenario of SCENARIOS) {
      const planned = trialsOf(plan).find(({ key }) => key.scenario === scenario)!;
      const ride = sameRide(`${PROFILE} in ${scenario}`, planned.circumstances, profile.value);
      besideKernel(ride, { folder, program });
      if (hasScipy) besideScipy(ride, folder);
    }
    if (program === undefined)
      console.log(`not here: a C compiler (${C_COMPILER}) for the program in plain C`);
    if (!hasScipy) console.log(`not here: ${PYTHON} with NumPy, SciPy and SymPy for solve_ivp`);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The program in plain C, compiled; undefined where there is nothing to compile it with. */
function compiled(folder: string): string | undefined {
  const program = join(folder, 'balance');
  const source = join(HERE, 'plain-c/balance.c');
  const { error, status } = spawnSync(
    C_COMPILER,
    ['-O2', '-std=c99', '-ffp-contract=off', '-o', program, source, '-lm'],
    { stdio: ['ignore', 'ignore', 'inherit'] },
  );
  return error === undefined && status === 0 ? program : undefined;
}

/** Kernel, C and odex by turns, so that what else goes on in the machine is the same for all. */
function besideKernel(
  ride: SameRide,
  { folder, program }: { folder: string; program: string | undefined },
): void {
  const numbers = join(folder, 'numbers.txt');
  writeFileSync(numbers, numbersOf(ride));
  kernelS(ride);
  const rates: number[] = [];
  const odex: number[] = [];
  const inC: number[] = [];
  let endInC: Ridden | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const ownS = kernelS(ride);
    rates.push((rideOurs(ride, 'fixed').tick * ride.trial.tickS) / ownS);
    odex.push(ownS / computingS(() => rideOurs(ride, 'reference')));
    if (program === undefined) continue;
    endInC = riddenInC(program, numbers);
    inC.push(ownS / endInC.rideS);
  }
  const kernel = rideOurs(ride, 'fixed');
  console.log(`${ride.title}, ${kernel.tick} ticks, noise off; speed over that of our kernel:`);
  print('  our kernel', median(rates), 's/s of computing');
  if (endInC !== undefined) {
    print('  plain C, Runge-Kutta once a tick', median(inC), '');
    printApart('our kernel', kernel, endInC);
  }
  print('  odex, begun anew at every tick', median(odex), '');
}

/** Seconds of computing for a ride by the kernel. */
function kernelS(ride: SameRide): number {
  let rides = 0;
  let sumS = 0;
  while (sumS < LEAST_S) {
    sumS += computingS(() => rideOurs(ride, 'fixed'));
    rides++;
  }
  return sumS / rides;
}

function riddenInC(program: string, numbers: string): Ridden {
  const { stdout, status } = spawnSync(program, [numbers], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (status !== 0) throw new Error('the program in plain C did not ride');
  const [ticks, rideS, , ...state] = stdout.trim().split(' ').map(Number) as [number, number, ...number[]];
  return { ticks, rideS, state };
}

/** SciPy once, for it takes its time, and the kernel before and after it. */
function besideScipy(ride: SameRide, folder: string): void {
  const file = join(folder, 'case.json');
  writeFileSync(file, JSON.stringify(caseOf(ride)));
  const beforeS = kernelS(ride);
  const { stdout, status } = spawnSync(PYTHON, [join(HERE, 'ride_per_tick.py'), file], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (status !== 0) {
    console.log(`  SciPy: ${PYTHON} did not ride`);
    return;
  }
  const ridden = JSON.parse(stdout) as Ridden;
  print('  SciPy solve_ivp, begun anew at every tick', (beforeS + kernelS(ride)) / 2 / ridden.rideS, '');
  printApart('odex', rideOurs(ride, 'reference'), ridden);
}

/** Largest difference between the states at the end of two rides, each in its own unit: m, rad, m/s or rad/s. */
function printApart(whose: string, ours: Moment, { ticks, state }: Ridden): void {
  if (ticks !== ours.tick) console.log(`    ended at tick ${ticks}, ${whose} at ${ours.tick}`);
  const apart = state.map((value, index) => Math.abs(value - ours.state[index]!));
  print(`    state at the end, largest difference from ${whose}`, Math.max(...apart), 'm, rad, per s');
}
