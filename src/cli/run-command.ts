/**
 * The command `run`: one profile in one scenario, drawn and measured.
 */
import { Option, type Command } from 'commander';
import { weightsWith } from '../measure/scales.js';
import { csvLines } from '../show/csv.js';
import { metricLines } from '../show/metric-lines.js';
import { SPEED_UNITS, type SpeedUnit } from '../show/quantities.js';
import { RUN_PLOT_SIZE, runPlot } from '../show/run-plot.js';
import { runSvg } from '../show/run-svg.js';
import type { Solver } from '../simulate/run.js';
import { findPlaces } from '../store/places.js';
import { writeNewFile } from '../store/write-new-file.js';
import { runOnce, runReport } from '../tasks/run-once.js';
import { DEFAULT_RIDER, planFor } from '../tasks/select.js';
import { namesIn, viewOf } from '../tasks/view-run.js';
import { outputWidth, printJson, printRemark, printResult, tellProblems, STANDARD_OUTPUT } from './output.js';
import {
  drawingOptions,
  paintFor,
  parseCharge,
  parseSeed,
  solverOption,
  type DrawingFlags,
} from './run-arguments.js';

interface RunFlags extends DrawingFlags {
  board?: string;
  rider?: string;
  seed?: number;
  charge?: number | null;
  solver: Solver;
  speedUnit: SpeedUnit;
  json?: true;
  csv?: string;
  svg?: string;
  force?: true;
}

async function runProfile(
  profile: string,
  scenario: string,
  flags: RunFlags,
  command: Command,
): Promise<void> {
  if ([flags.json, flags.csv === STANDARD_OUTPUT, flags.svg === STANDARD_OUTPUT].filter(Boolean).length > 1) {
    command.error('error: expected one thing for the standard output: --json, --csv - or --svg -');
  }
  const planned = planFor(findPlaces(process.cwd()), {
    board: flags.board,
    riders: flags.rider === undefined ? undefined : [flags.rider],
    profiles: [profile],
    scenarios: [scenario],
    charges: [flags.charge ?? null],
    seeds: [flags.seed ?? 1],
    solver: flags.solver,
    weights: weightsWith(),
  });
  if (!planned.ok) {
    tellProblems(planned.faults);
    return;
  }
  const run = runOnce(planned.value);
  const view = viewOf(run, namesIn(planned.value));
  await write(flags.svg, () => runSvg(view, flags), flags);
  await write(flags.csv, () => `${[...csvLines(run.tape)].join('\n')}\n`, flags);
  if (flags.csv === STANDARD_OUTPUT || flags.svg === STANDARD_OUTPUT) return;
  if (flags.json) {
    printJson(runReport(run));
    return;
  }
  const paint = paintFor(flags);
  const width = outputWidth();
  const height = Math.max(RUN_PLOT_SIZE.height, (process.stdout.rows ?? 0) - 1);
  printResult([
    ...runPlot(view, { width, height, paint, symbols: flags.symbols, speedUnit: flags.speedUnit }),
    '',
    ...metricLines(run.metrics, { paint, width }),
  ]);
}

/** Writes to a new file, or to the standard output for a hyphen. */
async function write(path: string | undefined, text: () => string, { force }: RunFlags): Promise<void> {
  if (path === undefined) return;
  if (path === STANDARD_OUTPUT) {
    process.stdout.write(text());
    return;
  }
  const written = await writeNewFile(path, text(), { force: force === true });
  if (written.ok) printRemark([`wrote ${written.value}`]);
  else tellProblems(written.faults);
}

/** Adds `run PROFILE SCENARIO` to the program. */
export function addRunCommand(program: Command): void {
  const { colour, background, symbols } = drawingOptions();
  program
    .command('run')
    .summary('run one profile in one scenario: plot and metrics')
    .description(
      'Runs one profile in one scenario with the reference solver and shows pitch, current under its ceilings and ' +
        'speed over time, and every metric.',
    )
    .argument('<profile>', 'name or path of the profile')
    .argument('<scenario>', 'name or path of the scenario')
    .option('--board <name>', 'name or path of the board; left out: the first by name')
    .option('--rider <name>', `name or path of the rider; left out: ${DEFAULT_RIDER}`)
    .option('--seed <number>', 'seed of chance; left out: 1', parseSeed)
    .option('--charge <percent>', "state of charge; left out, or own: the scenario's own", parseCharge)
    .addOption(solverOption('reference'))
    .addOption(new Option('--speed-unit <unit>', 'unit of speeds').choices(SPEED_UNITS).default('km/h'))
    .option('--json', 'print rig, scenario, profile, metrics and the whole tape as JSON')
    .option('--csv <file>', 'write the whole tape as CSV; - for the standard output')
    .option('--svg <file>', 'write the plot as SVG; - for the standard output')
    .option('--force', 'replace files that are there already')
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot run linen kerb-drop --svg kerb.svg\n')
    .action(runProfile);
}
