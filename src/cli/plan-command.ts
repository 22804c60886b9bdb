/**
 * The command `plan`: from the stand to the first ride with full ceilings, for a shortlisted profile.
 */
import type { Command } from 'commander';
import { resolve } from 'node:path';
import { createPaint } from '../show/colour.js';
import { firstRideLines } from '../show/first-ride-lines.js';
import { firstRideSections } from '../show/first-ride-sections.js';
import { findPlaces, shownPath } from '../store/places.js';
import { writeNewFile } from '../store/write-new-file.js';
import { openCrew } from '../tasks/crew.js';
import { firstRidePlan, underRiders } from '../tasks/first-ride.js';
import { firstRideReport } from '../tasks/first-ride-report.js';
import { loadKept } from '../tasks/kept-check.js';
import { outputWidth, printJson, printRemark, printResult, tellProblems } from './output.js';
import { createProgress } from './progress.js';
import {
  drawingOptions,
  paintFor,
  parseNames,
  parseThreads,
  threadsOfMachine,
  type DrawingFlags,
} from './run-arguments.js';

/** Columns of a plan in a file, which is to be printed. */
const FILE_WIDTH = 80;

interface PlanFlags extends DrawingFlags {
  rider?: string[];
  out?: string;
  force?: true;
  json?: true;
  workers?: number;
}

async function plan(name: string, flags: PlanFlags): Promise<void> {
  const places = findPlaces(process.cwd());
  const loaded = loadKept(places, name);
  if (!loaded.ok) return tellProblems(loaded.faults);
  const kept = underRiders(loaded.value.value, flags.rider);
  if (!kept.ok) return tellProblems(kept.faults);
  const progress = createProgress(process.stderr);
  const count = flags.workers ?? threadsOfMachine();
  const crew = count > 1 ? await openCrew(count) : null;
  try {
    const made = await firstRidePlan(
      { name: loaded.value.name, value: kept.value },
      {
        threads: crew ?? count,
        onRuns: (done) => progress.note(`${done} runs and looks for the plan`),
      },
    );
    progress.clear();
    if (flags.json) return printJson(firstRideReport(made, firstRideSections(made)));
    if (flags.out === undefined) {
      const options = { width: outputWidth(), symbols: flags.symbols, paint: paintFor(flags) };
      return printResult(firstRideLines(made, options));
    }
    const options = { width: FILE_WIDTH, symbols: flags.symbols, paint: createPaint('none') };
    const path = resolve(places.currentFolder, flags.out);
    const text = `${firstRideLines(made, options).join('\n')}\n`;
    const written = await writeNewFile(path, text, { force: flags.force ?? false });
    const shown = shownPath(places, path);
    if (written.ok) printRemark([`wrote ${shown}`]);
    else tellProblems(written.faults.map((fault) => ({ ...fault, file: shown })));
  } finally {
    progress.clear();
    await crew?.close();
  }
}

/** Adds `plan NAME` to the program. */
export function addPlanCommand(program: Command): void {
  const { colour, background, symbols } = drawingOptions();
  program
    .command('plan')
    .summary('the way to the first ride with a shortlisted profile, stage by stage')
    .description(
      'The first-ride plan of a shortlisted profile: from checks with the wheel off the ground to full ceilings, each stage with ' +
        'the ceilings to set, what to check, what to expect by the simulation of this rig and its riders, and when to stop; and ' +
        'what to change if it feels loose, sluggish, stiff, twitchy or buzzy.',
    )
    .argument('<name>', 'name of a shortlisted profile')
    .option(
      '--rider <names>',
      'only these of the riders that it was proven under, with commas between',
      parseNames,
    )
    .option('--out <file>', 'write the plan to a new text file')
    .option('--force', 'replace a file that is there already')
    .option('--json', 'print the result as JSON')
    .option('--workers <count>', 'threads to compute with; left out: one for each core', parseThreads)
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot plan my-profile --out first-ride.txt\n')
    .action(plan);
}
