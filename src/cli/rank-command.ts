/**
 * The command `rank`: which profile to try first on this rig, and why not the others?
 */
import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { Option, type Command } from 'commander';
import { ROW_ORDERS, type RowColumn, type RowOrder } from '../measure/row-order.js';
import { COST_NAMES } from '../measure/scales.js';
import type { Problem } from '../quantity/problem.js';
import { checkLine } from '../show/check-line.js';
import { createPaint } from '../show/colour.js';
import { numberText } from '../show/quantities.js';
import { rankCsv } from '../show/rank-csv.js';
import { rankLines, type RankTableOptions } from '../show/rank-table.js';
import type { Solver } from '../simulate/run.js';
import { findPlaces, isFolder } from '../store/places.js';
import { fileProblem } from '../store/system-fault.js';
import { writeNewFile } from '../store/write-new-file.js';
import type { RankPlan } from '../tasks/plan.js';
import { rank } from '../tasks/rank.js';
import { rankReport, rankView, type RankResult } from '../tasks/rank-report.js';
import { checkAgainstReference } from '../tasks/reference-check.js';
import { ALL, DEFAULT_RIDER, planFor } from '../tasks/select.js';
import { EXIT } from './exit-codes.js';
import { outputWidth, printJson, printRemark, printResult, tellProblems, STANDARD_OUTPUT } from './output.js';
import { tellFailedCell } from './failed-cell.js';
import { createProgress, type Progress } from './progress.js';
import {
  chargesHelp,
  drawingOptions,
  paintFor,
  parseCharges,
  parseNames,
  parseSeedCount,
  parseThreads,
  parseWeights,
  selectedCells,
  solverOption,
  threadsOfMachine,
  type CellFlags,
  type DrawingFlags,
} from './run-arguments.js';

const PLAIN = createPaint('none');

interface RankFlags extends DrawingFlags, CellFlags {
  solver: Solver;
  workers?: number;
  sort: RowColumn;
  reverse?: true;
  json?: true;
  csv?: string;
  force?: true;
}

function planFrom(profiles: readonly string[], flags: RankFlags) {
  return planFor(findPlaces(process.cwd()), {
    ...selectedCells(flags, [null]),
    profiles: profiles.length > 0 ? profiles : null,
    solver: flags.solver,
  });
}

/** What already speaks against the CSV file, told before anything is computed. */
function csvProblems({ csv, force }: RankFlags): Problem[] {
  if (csv === undefined || csv === STANDARD_OUTPUT) return [];
  const folder = dirname(csv);
  if (!isFolder(folder)) return [fileProblem(csv, 'a path in a folder that exists', `no folder ${folder}`)];
  if (force || !existsSync(csv)) return [];
  return [fileProblem(csv, 'a new file, or --force to replace one', 'a file that is there already')];
}

async function rankProfiles(profiles: string[], flags: RankFlags, command: Command): Promise<void> {
  if (flags.json && flags.csv === STANDARD_OUTPUT) {
    command.error('error: expected one thing for the standard output: --json or --csv -');
  }
  const planned = planFrom(profiles, flags);
  const problems = csvProblems(flags);
  if (!planned.ok || problems.length > 0) {
    tellProblems([...(planned.ok ? [] : planned.faults), ...problems]);
    return;
  }
  const progress = createProgress(process.stderr);
  try {
    await rankAndCheck(planned.value, progress, flags);
  } catch (error) {
    progress.clear();
    tellFailedCell(error, planned.value);
  }
}

/** Ranks, prints, and checks what was printed. */
async function rankAndCheck(plan: RankPlan, progress: Progress, flags: RankFlags): Promise<void> {
  const order: RowOrder = { by: flags.sort, reversed: flags.reverse === true };
  const threads = flags.workers ?? threadsOfMachine();
  const ranked = await rank(plan, {
    threads,
    onProfile: ({ name, failures, cells, score }) =>
      progress.row(`${name}: falls ${failures}/${cells.length}, score ${numberText(score, 'ratio')}`),
    onCells: notes(progress, 'runs'),
  });
  progress.clear();
  await printRanking({ plan, ranked, order }, flags);
  const onCells = notes(progress, 'runs again with odex');
  const check =
    plan.solver === 'reference' ? null : await checkAgainstReference(plan, ranked, { threads, onCells });
  progress.clear();
  printCheck({ plan, ranked, check, order }, flags);
}

/** Prints and writes what is known before the check. */
async function printRanking(result: Omit<RankResult, 'check'>, flags: RankFlags): Promise<void> {
  const view = rankView(result);
  if (!flags.json && flags.csv !== STANDARD_OUTPUT) {
    printResult([...rankLines(view, tableOptions(flags)), '']);
  }
  if (flags.csv === undefined) return;
  const text = rankCsv({ ...view, order: result.order });
  if (flags.csv === STANDARD_OUTPUT) {
    process.stdout.write(text);
    return;
  }
  const written = await writeNewFile(flags.csv, text, { force: flags.force === true });
  if (written.ok) printRemark([`wrote ${written.value}`]);
  else tellProblems(written.faults);
}

/** Prints the check beside the table, or with everything else as JSON, or as a remark beside CSV. */
function printCheck(result: RankResult, flags: RankFlags): void {
  const { check } = result;
  if (flags.json) printJson(rankReport(result));
  else if (flags.csv === STANDARD_OUTPUT)
    printRemark(checkLine(check, { ...tableOptions(flags), paint: PLAIN }));
  else printResult(checkLine(check, tableOptions(flags)));
  if (check !== null && !check.agrees) process.exitCode ??= EXIT.requirementNotMet;
}

function tableOptions(flags: RankFlags): RankTableOptions {
  return { width: outputWidth(), ascii: flags.symbols === 'ascii', paint: paintFor(flags) };
}

function notes(progress: Progress, what: string): (done: number, all: number) => void {
  const startMs = performance.now();
  return (done, all) => {
    const elapsedS = (performance.now() - startMs) / 1000;
    const leftS = Math.ceil((elapsedS / done) * (all - done));
    progress.note(`${done}/${all} ${what}, ${Math.round(done / elapsedS)} a second, ${leftS} s left`);
  };
}

/** Adds `rank [profile...]` to the program. */
export function addRankCommand(program: Command): void {
  const { colour, background, symbols } = drawingOptions();
  program
    .command('rank')
    .summary('run profiles over scenarios and print the ranked table')
    .description(
      'Runs named gain profiles on one board under one or more riders through the scenarios, and ranks them: failures ' +
        'first, then a score (half the mean, half the mean of the worst fifth of the costs). Each profile’s worst run ' +
        'is then run again with the reference solver and the largest difference is printed.',
    )
    .argument('[profile...]', 'names or paths of profiles; left out: all of the working folder')
    .option('--board <name>', 'name or path of the board; left out: the first by name')
    .option('--rider <names>', `riders, divided by commas, or ${ALL}; left out: ${DEFAULT_RIDER}`, parseNames)
    .option('--scenarios <names>', 'scenarios, divided by commas; left out: all', parseNames)
    .option(
      '--seeds <count>',
      'so many seeds of chance, the same for every profile; left out: 1',
      parseSeedCount,
    )
    .option('--charge <percents>', chargesHelp(), parseCharges)
    .option('--weights <list>', `weights such as settling=3, of ${COST_NAMES.join(', ')}`, parseWeights)
    .addOption(solverOption('fixed'))
    .option('--workers <count>', 'threads to compute with; left out: one for each core', parseThreads)
    .addOption(
      new Option('--sort <column>', 'column that the rows are in the order of')
        .choices(ROW_ORDERS)
        .default('rank'),
    )
    .option('--reverse', 'the rows the other way round')
    .option('--json', 'print the result as JSON')
    .option('--csv <file>', 'write the rows as CSV; - for the standard output')
    .option('--force', 'replace a file that is there already')
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot rank --rider light,heavy --seeds 3\n')
    .action(rankProfiles);
}
