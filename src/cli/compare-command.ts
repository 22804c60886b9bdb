/**
 * The command `compare`: two to four profiles in one scenario, over one another and number by number.
 */
import { Option, type Command } from 'commander';
import { weightsWith } from '../measure/scales.js';
import type { Problem } from '../quantity/problem.js';
import { compareRows, prepareCompare } from '../show/compare-picture.js';
import { COMPARE_COUNT } from '../show/compare-run.js';
import { SPEED_UNITS, type SpeedUnit } from '../show/quantities.js';
import type { Solver } from '../simulate/run.js';
import { listKind } from '../store/library.js';
import { findPlaces } from '../store/places.js';
import { comparedRuns, compareReport, runAll, type Comparison } from '../tasks/compare.js';
import { DEFAULT_RIDER, planFor } from '../tasks/select.js';
import { counted, outputWidth, printJson, printResult, tellProblems } from './output.js';
import {
  drawingOptions,
  paintFor,
  parseCharge,
  parseSeed,
  solverOption,
  type DrawingFlags,
} from './run-arguments.js';

/** Rows of the picture: enough for the whole table below lines that can be read. */
const PICTURE_ROWS = 48;

interface CompareFlags extends DrawingFlags {
  scenario?: string;
  board?: string;
  rider?: string;
  seed?: number;
  charge?: number | null;
  solver: Solver;
  speedUnit: SpeedUnit;
  json?: true;
}

function compareProfiles(profiles: string[], flags: CompareFlags): void {
  const places = findPlaces(process.cwd());
  const scenario = flags.scenario ?? listKind(places, 'scenario').entries[0]?.name;
  const planned = planFor(places, {
    board: flags.board,
    riders: flags.rider === undefined ? undefined : [flags.rider],
    profiles,
    scenarios: scenario === undefined ? null : [scenario],
    charges: [flags.charge ?? null],
    seeds: [flags.seed ?? 1],
    solver: flags.solver,
    weights: weightsWith(),
  });
  const problems = [...choiceProblems(profiles), ...(planned.ok ? [] : planned.faults)];
  if (!planned.ok || problems.length > 0) {
    tellProblems(problems);
    return;
  }
  const comparison = runAll(planned.value);
  if (flags.json) printJson(compareReport(comparison));
  else printResult(pictureOf(comparison, flags));
}

/** What is wrong with how many profiles were named, and with which twice. */
function choiceProblems(profiles: readonly string[]): Problem[] {
  const { least, most } = COMPARE_COUNT;
  const problem = (expected: string, received: string): Problem => ({
    file: '',
    line: null,
    column: null,
    key: 'profile',
    expected,
    received,
  });
  const twice = [...new Set(profiles.filter((name, index) => profiles.indexOf(name) !== index))];
  return [
    ...(profiles.length < least || profiles.length > most
      ? [problem(`${least} to ${most} profiles to compare`, counted(profiles.length, 'name'))]
      : []),
    ...twice.map((name) => problem('every profile once', `'${name}' more than once`)),
  ];
}

function pictureOf(comparison: Comparison, flags: CompareFlags): string[] {
  const { plan, runs, parting } = comparison;
  const prepared = prepareCompare(comparedRuns(comparison), parting, {
    width: outputWidth(),
    height: Math.max(PICTURE_ROWS, (process.stdout.rows ?? 0) - 1),
    symbols: flags.symbols,
    paint: paintFor(flags),
    speedUnit: flags.speedUnit,
    span: null,
    title: `In ${plan.scenarios[0]!.name}, ${plan.board.name} under ${plan.riders[0]!.name}, pack at ${runs[0]!.cell.chargePercent} %`,
  });
  return compareRows(prepared, null);
}

/** Adds `compare A B [C D]` to the program. */
export function addCompareCommand(program: Command): void {
  const { colour, background, symbols } = drawingOptions();
  program
    .command('compare')
    .summary(
      'compare two to four profiles in one scenario: lines over one another, differences number by number',
    )
    .description(
      'Runs two to four profiles in one scenario, where all meet the same road and the same chance, with the reference ' +
        'solver; shows their pitch, lean, current and speed over one another, the first moment they part, every metric ' +
        'with the better one marked, and which is better over all: who stays up, then who costs less.',
    )
    .usage('A B [C D] [options]')
    .argument('[profile...]', 'names or paths of two to four profiles')
    .option('--scenario <name>', 'name or path of the scenario; left out: the first by name')
    .option('--board <name>', 'name or path of the board; left out: the first by name')
    .option('--rider <name>', `name or path of the rider; left out: ${DEFAULT_RIDER}`)
    .option('--charge <percent>', "state of charge; left out, or own: the scenario's own", parseCharge)
    .option('--seed <number>', 'seed of chance; left out: 1', parseSeed)
    .addOption(solverOption('reference'))
    .addOption(new Option('--speed-unit <unit>', 'unit of speeds').choices(SPEED_UNITS).default('km/h'))
    .option('--json', 'print rig, scenario, profiles, metrics and the moment they part as JSON')
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot compare canvas linen --scenario kerb-drop\n')
    .action(compareProfiles);
}
