/**
 * The command `bench`: the full-screen program. What is on its screens is another room's; here flags become a request.
 */
import { Option, type Command } from 'commander';
import { SPEED_UNITS, type SpeedUnit } from '../show/quantities.js';
import type { Solver } from '../simulate/run.js';
import { findPlaces, PROGRAM_NAME } from '../store/places.js';
import type { BenchEnd, BenchRequest } from '../tasks/bench-request.js';
import { ALL, DEFAULT_RIDER } from '../tasks/select.js';
import { EXIT } from './exit-codes.js';
import { printRemark, tellProblems } from './output.js';
import {
  chargesHelp,
  drawingOptions,
  paintFor,
  parseCharges,
  parseNames,
  parseSeedCount,
  parseThreads,
  solverOption,
  threadsOfMachine,
  type DrawingFlags,
} from './run-arguments.js';

/** Opens the bench on the terminal, and answers once it is left. */
export type OpenBench = (request: BenchRequest) => Promise<BenchEnd>;

interface BenchFlags extends DrawingFlags {
  board?: string;
  rider?: string[];
  scenarios?: string[];
  seeds?: number[];
  charge?: (number | null)[];
  solver: Solver;
  workers?: number;
  speedUnit: SpeedUnit;
  animation: boolean;
}

/** What the variable CI says where there is no CI job. */
const NOT_IN_CI = ['', '0', 'false'];

/** True where the bench can be drawn: a person reads and types, on more than a line printer, and not in a CI job. */
export function isOnTerminal(): boolean {
  const { CI = '', TERM } = process.env;
  const isTerminal = process.stdin.isTTY === true && process.stdout.isTTY === true;
  return isTerminal && TERM !== 'dumb' && NOT_IN_CI.includes(CI);
}

async function bench(flags: BenchFlags, openBench: OpenBench): Promise<void> {
  if (!isOnTerminal()) {
    printRemark([`error: the bench needs a terminal; the same table is printed by ${PROGRAM_NAME} rank`]);
    process.exitCode = EXIT.badInput;
    return;
  }
  const { board, rider: riders, scenarios, charge: charges, seeds, workers } = flags;
  const end = await openBench({
    places: findPlaces(process.cwd()),
    setup: {
      ...(board && { board }),
      ...(riders && { riders: riders.includes(ALL) ? null : riders }),
      ...(scenarios && { scenarios }),
      ...(charges && { charges }),
    },
    seeds: seeds ?? [1],
    solver: flags.solver,
    threads: workers ?? threadsOfMachine(),
    paint: paintFor(flags),
    symbols: flags.symbols,
    speedUnit: flags.speedUnit,
    animation: flags.animation,
  });
  if (end.kind === 'not opened') tellProblems(end.problems);
  if (end.kind === 'interrupted') process.exitCode = EXIT.interrupted;
  if (end.kind === 'hung up') process.exitCode = EXIT.hungUp;
}

/** Adds `bench` to the program; a function that opens it comes from outside. */
export function addBenchCommand(program: Command, openBench: OpenBench): void {
  const { colour, background, symbols } = drawingOptions();
  program
    .command('bench')
    .summary('the full-screen bench; what a bare underfoot opens')
    .description(
      'Opens the bench: profiles rank themselves while you watch; look at any run, compare profiles, change one number ' +
        'and see what it does. The key ? shows every key.',
    )
    .option('--board <name>', 'board to begin with; left out: the first by name')
    .option(
      '--rider <names>',
      `riders to begin with, divided by commas, or ${ALL}; left out: ${DEFAULT_RIDER}`,
      parseNames,
    )
    .option('--scenarios <names>', 'scenarios to begin with, divided by commas; left out: all', parseNames)
    .option('--seeds <count>', 'so many seeds of chance; left out: 1', parseSeedCount)
    .option('--charge <percents>', chargesHelp(), parseCharges)
    .addOption(solverOption('fixed'))
    .option('--workers <count>', 'threads to compute with; left out: one for each core', parseThreads)
    .addOption(new Option('--speed-unit <unit>', 'unit of speeds').choices(SPEED_UNITS).default('km/h'))
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .option('--no-animation', 'nothing moves by itself')
    .addHelpText('before', `Example: ${PROGRAM_NAME} bench --board yak --rider heavy\n`)
    .action((flags: BenchFlags) => bench(flags, openBench));
}
