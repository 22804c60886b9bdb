/**
 * The command `sweep`: ranges in, the few profiles worth trying out.
 */
import type { Command } from 'commander';
import { COST_NAMES } from '../measure/scales.js';
import { findPlaces } from '../store/places.js';
import { savingObstacles } from '../tasks/save-profile.js';
import { ALL } from '../tasks/select.js';
import { openSweepFile, usualSweepPath, type SweepFile } from '../tasks/sweep-file.js';
import { readParts } from '../tasks/sweep-parts.js';
import type { Shard } from '../tasks/sweep-plan.js';
import { sweepPlanFor, USUAL_CHARGES, USUAL_RIDERS, type AskedRange } from '../tasks/sweep-select.js';
import { printRemark, tellProblems } from './output.js';
import {
  chargesHelp,
  drawingOptions,
  parseCharges,
  parseNames,
  parseSeed,
  parseSeedCount,
  parseThreads,
  parseWeights,
  selectedCells,
  type CellFlags,
} from './run-arguments.js';
import {
  optionConflicts,
  parseCandidates,
  parseGrid,
  parseOdexCells,
  parsePath,
  parsePlace,
  parseRange,
  parseShard,
  type OptionsTogether,
} from './sweep-arguments.js';
import { carriedOut, type OutputFlags } from './sweep-run.js';

interface SweepFlags extends OutputFlags, CellFlags {
  from?: string;
  range?: AskedRange[];
  candidates: number;
  grid?: number;
  exhaustive?: true;
  downhill: boolean;
  seed: number;
  odexCells: number | null;
  shard?: Shard;
}

const DEFAULT_CANDIDATES = 300;
const DEFAULT_ODEX_CELLS = 4;

async function sweepProfiles(flags: SweepFlags, command: Command): Promise<void> {
  refuseConflicts(flags, command);
  const places = findPlaces(process.cwd());
  const planned = sweepPlanFor(places, {
    ...selectedCells(flags, USUAL_CHARGES),
    from: flags.from,
    ranges: flags.range ?? [],
    count: flags.candidates,
    grid: flags.grid ?? null,
    // A part cannot know whom others drop, nor who is the best of all.
    isExhaustive: flags.exhaustive === true || flags.shard !== undefined,
    isRefined: flags.downhill && flags.shard === undefined,
    seed: flags.seed,
    checkedCells: flags.odexCells,
  });
  const obstacles = flags.saveAs === undefined ? [] : savingObstacles(places, flags.saveAs);
  if (!planned.ok || obstacles.length > 0) {
    tellProblems([...(planned.ok ? [] : planned.faults), ...obstacles]);
    return;
  }
  const plan = planned.value;
  const part = flags.shard ?? null;
  const path = flags.out ?? usualSweepPath(places, plan, part);
  const file = openSweepFile(plan, { path, places, part });
  if (!file.ok) {
    tellProblems(file.faults);
    return;
  }
  tellLeftBehind(file.value);
  if (part !== null && flags.downhill && plan.grid === null) {
    printRemark(['a part never goes downhill: all parts together are what --exhaustive --no-downhill gives']);
  }
  await carriedOut({ plan, file: file.value, places, flags, part, mergedParts: null });
}

/** Ends the program where options do not go together, with all that speaks against them. */
function refuseConflicts(flags: OptionsTogether, command: Command): void {
  const conflicts = optionConflicts(flags, (name) => command.getOptionValueSource(name) === 'cli');
  if (conflicts.length > 0) command.error(conflicts.map((text) => `error: ${text}`).join('\n'));
}

async function mergeParts(paths: string[], _: OutputFlags, command: Command): Promise<void> {
  // Options of merge are also options of sweep, which takes them wherever they stand, and those that are not merge's too.
  const foreign = command.parent?.options.find((option) => {
    const isGiven = command.parent?.getOptionValueSource(option.attributeName()) === 'cli';
    return isGiven && !command.options.some(({ long }) => long === option.long);
  });
  if (foreign !== undefined) {
    command.error(`error: expected no ${foreign.long} with merge: the files say of which sweep they are`);
  }
  const flags: OutputFlags = command.optsWithGlobals();
  refuseConflicts(flags, command);
  const places = findPlaces(process.cwd());
  const parts = readParts(paths);
  const obstacles = flags.saveAs === undefined ? [] : savingObstacles(places, flags.saveAs);
  if (!parts.ok || obstacles.length > 0) {
    tellProblems([...(parts.ok ? [] : parts.faults), ...obstacles]);
    return;
  }
  const { plan, parts: mergedParts, runs: known } = parts.value;
  const file = openSweepFile(plan, { path: flags.out ?? null, places, known });
  if (!file.ok) {
    tellProblems(file.faults);
    return;
  }
  tellLeftBehind(file.value);
  await carriedOut({ plan, file: file.value, places, flags, part: null, mergedParts });
}

/** Tells of files that nothing needs, which are not ours to remove. */
function tellLeftBehind({ leftBehind }: SweepFile): void {
  printRemark(
    leftBehind.map((file) => `${file} is a copy, or was left by a run that was killed: nothing reads it`),
  );
}

/** Adds `sweep` and `sweep merge FILES` to the program. */
export function addSweepCommand(program: Command): void {
  const { colour, background, symbols } = drawingOptions();
  const withOutput = (command: Command) =>
    command
      .option('--workers <count>', 'threads to compute with; left out: one for each core', parseThreads)
      .option(
        '--out <file>',
        'file in which runs are kept as they come; left out: in sweeps/ of your folder',
        parsePath,
      )
      .option('--keep <n>', 'keep the n-th finalist as a new profile; with --save-as', parsePlace)
      .option('--save-as <name>', 'name of the new profile; never one that is there')
      .option('--json', 'print everything as JSON')
      .addOption(colour)
      .addOption(background)
      .addOption(symbols);
  const command = withOutput(
    program
      .command('sweep')
      .summary('look through ranges of gains for the few profiles worth trying')
      .description(
        'Spreads candidates over ranges of gains, races them over scenarios, riders and states of the pack, goes on downhill from the ' +
          'best, and looks at the finalists from all sides. Runs are kept as they come: the same command goes on after an interruption.',
      )
      .option('--board <name>', 'name or path of the board; left out: the first by name')
      .option(
        '--rider <names>',
        `riders, divided by commas, or ${ALL}; left out: ${USUAL_RIDERS.join(', ')}, as far as there`,
        parseNames,
      )
      .option('--scenarios <names>', 'scenarios, divided by commas; left out: all', parseNames)
      .option('--charge <percents>', chargesHelp(USUAL_CHARGES), parseCharges)
      .option('--seeds <count>', 'so many seeds of chance in every cell; left out: 1', parseSeedCount)
      .option('--weights <list>', `weights such as settling=3, of ${COST_NAMES.join(', ')}`, parseWeights)
      .option(
        '--from <profile>',
        'profile that candidates share all else with; left out: a plain one made for the rig',
      )
      .option(
        '--range <range>',
        'a number of a profile and its ends, such as rateAPerDegPerS=0.2..3; once for each; left out: what suits the rig',
        parseRange,
      )
      .option(
        '--candidates <count>',
        'candidates spread over the ranges',
        parseCandidates,
        DEFAULT_CANDIDATES,
      )
      .option('--grid <points>', 'so many points along each range in place of a spread', parseGrid)
      .option('--exhaustive', 'run every candidate in every cell, to prove the race')
      .option('--no-downhill', 'do not go on from the best')
      .option('--seed <seed>', 'seed of the search itself', parseSeed, 1)
      .option(
        '--odex-cells <count>',
        `hardest cells of each finalist run again with odex, or ${ALL}`,
        parseOdexCells,
        DEFAULT_ODEX_CELLS,
      )
      .option(
        '--shard <part>',
        'run one part of the whole, such as 3/8; with --exhaustive or --grid, and never downhill',
        parseShard,
      ),
  )
    .addHelpText(
      'before',
      'Example: underfoot sweep --range proportionalAPerDeg=5..40 --range rateAPerDegPerS=0.2..3\n',
    )
    .action(sweepProfiles);
  withOutput(
    command
      .command('merge')
      .summary('put the parts of a sweep together')
      .description(
        'Reads the files of all parts, runs what is still missing, and answers as the whole sweep would.',
      )
      .argument('<files...>', 'files of results, one for each part'),
  ).action(mergeParts);
}
