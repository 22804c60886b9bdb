/**
 * The command `plan`: from the stand to the first ride with full ceilings, for a shortlisted profile.
 */
import type { Command } from 'commander';
import type { FirstRidePlan } from '../explain/first-ride.js';
import type { KeptFile } from '../quantity/kept-file.js';
import { createPaint } from '../show/colour.js';
import { firstRideLines } from '../show/first-ride-lines.js';
import { firstRideSections } from '../show/first-ride-sections.js';
import { findPlaces, type Places } from '../store/places.js';
import { openCrew } from '../tasks/crew.js';
import { FILE_WIDTH, outProblems, writeOut } from '../tasks/export-out.js';
import { firstRidePlan, underRiders } from '../tasks/first-ride.js';
import { firstRideReport } from '../tasks/first-ride-report.js';
import { loadKept } from '../tasks/kept-check.js';
import { rigRemarks } from '../tasks/kept-rig.js';
import { tellFailedCell } from './failed-cell.js';
import { outPath, outputWidth, printJson, printRemark, printResult, tellProblems } from './output.js';
import { createProgress } from './progress.js';
import {
  drawingOptions,
  paintFor,
  parseNames,
  parseThreads,
  threadsOfMachine,
  type DrawingFlags,
} from './run-arguments.js';

interface PlanFlags extends DrawingFlags {
  rider?: string[];
  out?: string;
  force?: true;
  json?: true;
  workers?: number;
}

async function plan(name: string, flags: PlanFlags): Promise<void> {
  const places = findPlaces(process.cwd());
  const out = outPath(flags.out);
  const loaded = loadKept(places, name);
  const kept = loaded.ok ? underRiders(loaded.value.value, flags.rider) : loaded;
  const problems = outProblems(places, { out, force: flags.force === true });
  if (!loaded.ok || !kept.ok || problems.length > 0) {
    return tellProblems([...(kept.ok ? [] : kept.faults), ...problems]);
  }
  const made = await planOf({ name: loaded.value.name, value: kept.value }, flags);
  if (made === null) return;
  if (out === null) printPlan(made, flags);
  else await writePlan(places, { made, out }, flags);
  printRemark(rigRemarks(places, loaded.value));
}

/** The plan; null where a run could not be computed, which was told. */
async function planOf(
  kept: { name: string; value: KeptFile },
  { workers }: PlanFlags,
): Promise<FirstRidePlan | null> {
  const progress = createProgress(process.stderr);
  const count = workers ?? threadsOfMachine();
  const crew = count > 1 ? await openCrew(count) : null;
  try {
    return await firstRidePlan(kept, {
      threads: crew ?? count,
      onRuns: (done) => progress.note(`${done} runs and looks for the plan`),
    });
  } catch (error) {
    progress.clear();
    tellFailedCell(error, { profiles: [{ name: kept.name }] });
    return null;
  } finally {
    progress.clear();
    await crew?.close();
  }
}

function printPlan(made: FirstRidePlan, flags: PlanFlags): void {
  if (flags.json) return printJson(firstRideReport(made, firstRideSections(made)));
  printResult(firstRideLines(made, { width: outputWidth(), symbols: flags.symbols, paint: paintFor(flags) }));
}

async function writePlan(
  places: Places,
  { made, out }: { made: FirstRidePlan; out: string },
  { symbols, force, json }: PlanFlags,
): Promise<void> {
  const lines = json
    ? [JSON.stringify(firstRideReport(made, firstRideSections(made)), null, 2)]
    : firstRideLines(made, { width: FILE_WIDTH, symbols, paint: createPaint('none') });
  const written = await writeOut(places, { out, force: force === true }, `${lines.join('\n')}\n`);
  if (written.ok) printRemark([`wrote ${written.value}`]);
  else tellProblems(written.faults);
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
    .option('--out <file>', 'write the plan to a new file; left out, or -: the standard output')
    .option('--force', 'replace a file that is there already')
    .option('--json', 'print the result as JSON')
    .option('--workers <count>', 'threads to compute with; left out: one for each core', parseThreads)
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot plan my-profile --out first-ride.txt\n')
    .action(plan);
}
