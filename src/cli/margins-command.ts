/**
 * The command `margins`: how much may change before the pitch loop of a profile is lost?
 */
import { Option, type Command } from 'commander';
import { marginLines } from '../show/margin-lines.js';
import { SPEED_UNITS, type SpeedUnit } from '../show/quantities.js';
import { findPlaces } from '../store/places.js';
import { lookAtMargins, marginPlan, marginReport, marginView } from '../tasks/margins.js';
import { DEFAULT_RIDER } from '../tasks/select.js';
import { outputWidth, printJson, printResult, tellProblems } from './output.js';
import { drawingOptions, paintFor, type DrawingFlags } from './run-arguments.js';

interface MarginsFlags extends DrawingFlags {
  speed?: string;
  grade?: string;
  board?: string;
  rider?: string;
  charge?: string;
  speedUnit: SpeedUnit;
  json?: true;
}

async function margins(profile: string, flags: MarginsFlags): Promise<void> {
  const { board, rider, speed, grade, charge } = flags;
  const planned = marginPlan(findPlaces(process.cwd()), { profile, board, rider, speed, grade, charge });
  if (!planned.ok) {
    tellProblems(planned.faults);
    return;
  }
  const result = await lookAtMargins(planned.value);
  if (flags.json) {
    printJson(marginReport(result));
    return;
  }
  const { symbols, speedUnit } = flags;
  printResult(
    marginLines(marginView(result), { width: outputWidth(), symbols, speedUnit, paint: paintFor(flags) }),
  );
}

/** Adds `margins PROFILE` to the program. */
export function addMarginsCommand(program: Command): void {
  const { colour, background, symbols } = drawingOptions();
  program
    .command('margins')
    .summary('how much gain, phase and delay may change before the pitch loop is lost')
    .description(
      'Linearises the ride about standing, cruising and climbing, and says how much gain, phase and delay the pitch loop ' +
        'can spare, which motions it has and who moves in them; tries every margin in the simulation.',
    )
    .argument('<profile>', 'name or path of the profile')
    .option('--speed <speeds>', 'speeds in km/h, divided by commas; left out: 0,10,20 and 10 up 8 %')
    .option('--grade <percent>', 'look at every moving speed on this grade too')
    .option('--board <name>', 'name or path of the board; left out: the first by name')
    .option('--rider <name>', `name or path of the rider; left out: ${DEFAULT_RIDER}`)
    .option('--charge <percent>', 'state of charge; left out: 80')
    .addOption(
      new Option('--speed-unit <unit>', 'unit that speeds are shown in').choices(SPEED_UNITS).default('km/h'),
    )
    .option('--json', 'print rig, profile and all numbers as JSON')
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot margins linen --speed 15 --grade 10\n')
    .action(margins);
}
