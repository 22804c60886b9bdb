/**
 * The command `rank`: which profile to try first on this rig, and why not the others?
 */
import type { Command } from 'commander';
import { COST_NAMES, weightsWith, type Weights } from '../measure/scales.js';
import type { ColourFlag } from '../show/colour.js';
import type { SymbolSet } from '../show/glyphs.js';
import { checkLine } from '../show/check-line.js';
import { numberText } from '../show/quantities.js';
import { rankLines } from '../show/rank-table.js';
import type { Solver } from '../simulate/run.js';
import { findPlaces } from '../store/places.js';
import { rank } from '../tasks/rank.js';
import { rankReport } from '../tasks/rank-report.js';
import { checkAgainstReference } from '../tasks/reference-check.js';
import { DEFAULT_RIDER, planFor } from '../tasks/select.js';
import { EXIT } from './exit-codes.js';
import { outputWidth, printJson, printResult, tellProblems } from './output.js';
import { createProgress, type Progress } from './progress.js';
import {
  drawingOptions,
  paintFor,
  parseCharges,
  parseNames,
  parseSeedCount,
  parseThreads,
  parseWeights,
  solverOption,
  threadsOfMachine,
} from './run-arguments.js';

/** Stands for every rider of the working folder. */
const ALL = 'all';

interface RankFlags {
  board?: string;
  rider?: string[];
  scenarios?: string[];
  seeds?: number[];
  charge?: number[];
  weights?: Weights;
  solver: Solver;
  workers?: number;
  json?: true;
  color: ColourFlag;
  symbols: SymbolSet;
}

async function rankProfiles(profiles: string[], flags: RankFlags): Promise<void> {
  const planned = planFor(findPlaces(process.cwd()), {
    board: flags.board,
    riders: flags.rider?.includes(ALL) ? null : flags.rider,
    profiles: profiles.length > 0 ? profiles : null,
    scenarios: flags.scenarios ?? null,
    charges: flags.charge ?? [null],
    seeds: flags.seeds ?? [1],
    solver: flags.solver,
    weights: flags.weights ?? weightsWith(),
  });
  if (!planned.ok) {
    tellProblems(planned.faults);
    return;
  }
  const plan = planned.value;
  const threads = flags.workers ?? threadsOfMachine();
  const progress = createProgress(process.stderr);
  const ranked = await rank(plan, {
    threads,
    onProfile: ({ name, failures, cells, score }) =>
      progress.row(`${name}: falls ${failures}/${cells.length}, score ${numberText(score, 'ratio')}`),
    onCells: notes(progress, 'runs'),
  });
  progress.clear();
  const paint = paintFor(flags.color);
  const ascii = flags.symbols === 'ascii';
  if (!flags.json) {
    const view = {
      board: plan.board.name,
      riders: plan.riders.map(({ name }) => name),
      seedCount: plan.seeds.length,
      scenarios: plan.scenarios.map(({ name }) => name),
      weights: plan.weights,
      profiles: ranked,
    };
    printResult([...rankLines(view, { width: outputWidth(), ascii, paint }), '']);
  }
  const check =
    plan.solver === 'reference'
      ? null
      : await checkAgainstReference(plan, ranked, {
          threads,
          onCells: notes(progress, 'runs again with odex'),
        });
  progress.clear();
  if (flags.json) printJson(rankReport(plan, ranked, check));
  else printResult(checkLine(check, { width: outputWidth(), ascii, paint }));
  if (check !== null && !check.agrees) process.exitCode = EXIT.requirementNotMet;
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
  const { colour, symbols } = drawingOptions();
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
    .option(
      '--charge <percents>',
      "states of charge in place of the scenarios' own, divided by commas",
      parseCharges,
    )
    .option('--weights <list>', `weights such as settling=3, of ${COST_NAMES.join(', ')}`, parseWeights)
    .addOption(solverOption('fixed'))
    .option('--workers <count>', 'threads to compute with; left out: one for each core', parseThreads)
    .option('--json', 'print the result as JSON')
    .addOption(colour)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot rank --rider light,heavy --seeds 3\n')
    .action(rankProfiles);
}
