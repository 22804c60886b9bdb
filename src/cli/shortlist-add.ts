/**
 * The command `shortlist add`: a profile is proven and kept.
 */
import type { Command } from 'commander';
import { COST_NAMES } from '../measure/scales.js';
import { plainText } from '../show/plain-text.js';
import { keptLines } from '../show/shortlist-lines.js';
import { findPlaces, PROGRAM_NAME, type Places } from '../store/places.js';
import { keepPlanFor, type KeepProgress } from '../tasks/keep.js';
import type { RankPlan } from '../tasks/plan.js';
import { ALL } from '../tasks/select.js';
import {
  addingObstacles,
  addToShortlist,
  placeProblems,
  type Added,
  type ToKeep,
} from '../tasks/shortlist.js';
import { USUAL_CHARGES } from '../tasks/sweep-select.js';
import { tellFailedCell } from './failed-cell.js';
import { outputWidth, printJson, printRemark, printResult, tellProblems } from './output.js';
import { createProgress, type Progress } from './progress.js';
import {
  chargesHelp,
  paintFor,
  parseCharges,
  parseNames,
  parseSeedCount,
  parseThreads,
  parseWeights,
  selectedCells,
  threadsOfMachine,
  type CellFlags,
  type DrawingFlags,
} from './run-arguments.js';

interface AddFlags extends DrawingFlags, CellFlags {
  as?: string;
  note?: string;
  workers?: number;
  force?: true;
  json?: true;
}

async function add(profile: string, flags: AddFlags): Promise<void> {
  const places = findPlaces(process.cwd());
  const planned = keepPlanFor(places, {
    profile,
    ...selectedCells(flags, USUAL_CHARGES),
  });
  const name = flags.as ?? (planned.ok ? planned.value.profiles[0]?.name : undefined);
  const words = { note: flags.note ?? null, force: flags.force === true };
  const obstacles =
    name === undefined ? placeProblems(places, null) : addingObstacles(places, { name, ...words });
  if (!planned.ok || name === undefined || obstacles.length > 0) {
    tellProblems([...(planned.ok ? [] : planned.faults), ...obstacles]);
    return;
  }
  await addAndTell(places, { name, ...words, plan: planned.value }, flags);
}

async function addAndTell(
  places: Places,
  asked: ToKeep & { plan: RankPlan },
  flags: AddFlags,
): Promise<void> {
  const progress = createProgress(process.stderr);
  const tellStopped = () => {
    progress.clear();
    printRemark(['stopped: nothing was kept']);
  };
  // Before the listener that ends the program.
  process.prependListener('SIGINT', tellStopped);
  try {
    const added = await addToShortlist(places, asked, {
      threads: flags.workers ?? threadsOfMachine(),
      onProgress: notes(progress),
    });
    progress.clear();
    if (added.ok) printAdded(added.value, flags);
    else tellProblems(added.faults);
  } catch (error) {
    progress.clear();
    tellFailedCell(error, asked.plan);
  } finally {
    process.removeListener('SIGINT', tellStopped);
  }
}

function notes(progress: Progress): (news: KeepProgress) => void {
  let told = '';
  return ({ stage, done, all }) => {
    const text = `${stage}: ${all === null ? `${done} runs` : `${done}/${all}`}`;
    if (stage !== told) progress.row(stage);
    told = stage;
    progress.note(text);
  };
}

function printAdded({ name, value, replaced, ...added }: Added, flags: AddFlags): void {
  const path = plainText(added.path);
  if (flags.json) printJson({ name, path, value, hasReplaced: replaced !== null });
  else {
    const options = { width: outputWidth(), symbols: flags.symbols, paint: paintFor(flags) };
    printResult(keptLines({ name, value }, options));
  }
  const isNewNote = replaced !== null && replaced.note !== '' && replaced.note !== value.note;
  const rides = replaced === null ? 0 : replaced.rides.length;
  printRemark([
    `wrote ${path}`,
    ...(rides > 0 ? [`its ${rides === 1 ? 'ride was' : `${rides} rides were`} taken over`] : []),
    ...(isNewNote ? [`the note was: ${plainText(replaced.note)}`] : []),
    `next: ${PROGRAM_NAME} export ${name} --as card, or --sheet SHEET for your controller; then ${PROGRAM_NAME} plan ${name}`,
  ]);
}

/** Makes a command `add`. */
export function addAddCommand(command: Command): void {
  command
    .summary('prove a profile and keep it')
    .description(
      'Runs a profile in every cell, looks at its steady rides, tries a slip in each of its numbers and looks for the edge, and keeps all ' +
        'of it as shortlist/NAME.yaml. With --force a file that is whole is replaced, and its note and rides stay; one that is damaged or ' +
        "was changed by hand is never written over: move it away, or 'shortlist remove --force' it.",
    )
    .argument('<profile>', 'name or path of the profile')
    .option('--as <name>', "name to keep it under; left out: the profile's")
    .option('--note <text>', 'your words about it')
    .option('--board <name>', 'name or path of the board; left out: the first by name')
    .option(
      '--rider <names>',
      `riders, divided by commas, or ${ALL}; left out: of several weights and practice`,
      parseNames,
    )
    .option('--scenarios <names>', 'scenarios, divided by commas; left out: all', parseNames)
    .option('--charge <percents>', chargesHelp(USUAL_CHARGES), parseCharges)
    .option('--seeds <count>', 'so many seeds of chance in every cell; left out: 1', parseSeedCount)
    .option('--weights <list>', `weights such as settling=3, of ${COST_NAMES.join(', ')}`, parseWeights)
    .option('--workers <count>', 'threads to compute with; left out: one for each core', parseThreads)
    .option('--force', 'replace what is kept under that name')
    .addHelpText('before', `Example: ${PROGRAM_NAME} shortlist add linen --as evening-one --note 'calm'\n`)
    .action(add);
}
