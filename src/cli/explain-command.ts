/**
 * The command `explain`: why does a profile ride as it does, and what to change?
 */
import type { Command } from 'commander';
import { chargesText } from '../quantity/charges-text.js';
import type { EdgeReport } from '../explain/edge-found.js';
import { edgeLines } from '../show/why-edge.js';
import { firstFindingLines, whyLines, type WhyOptions as ShowOptions } from '../show/why-lines.js';
import type { WhyView } from '../show/why-view.js';
import type { Solver } from '../simulate/run.js';
import { findPlaces, type Places } from '../store/places.js';
import { openCrew } from '../tasks/crew.js';
import { findEdge } from '../tasks/edge.js';
import { edgeReport } from '../tasks/edge-report.js';
import type { RankPlan } from '../tasks/plan.js';
import { applyRemedy } from '../tasks/apply-remedy.js';
import { savingObstacles } from '../tasks/save-profile.js';
import { ALL, DEFAULT_RIDER, planFor } from '../tasks/select.js';
import { whyReport } from '../tasks/why-report.js';
import { why, whyView, type Purpose, type Why } from '../tasks/why.js';
import { outputWidth, printJson, printRemark, printResult, tellProblems } from './output.js';
import { tellFailedCell } from './failed-cell.js';
import { createProgress, type Progress } from './progress.js';
import {
  chargesHelp,
  drawingOptions,
  paintFor,
  parseCharges,
  parseCount,
  parseNames,
  parseSeedCount,
  parseThreads,
  selectedCells,
  solverOption,
  threadsOfMachine,
  type CellFlags,
  type DrawingFlags,
} from './run-arguments.js';

interface ExplainFlags extends DrawingFlags, CellFlags {
  workers?: number;
  solver: Solver;
  json?: true;
  apply?: number;
  saveAs?: string;
}

async function explain(profile: string, flags: ExplainFlags, command: Command): Promise<void> {
  const { apply, saveAs } = flags;
  if ((apply === undefined) !== (saveAs === undefined)) {
    command.error('error: expected --apply N and --save-as NAME together');
  }
  const places = findPlaces(process.cwd());
  const planned = planFor(places, {
    ...selectedCells(flags, [null]),
    profiles: [profile],
    solver: flags.solver,
  });
  const obstacles = saveAs === undefined ? [] : savingObstacles(places, saveAs);
  if (!planned.ok || obstacles.length > 0) {
    tellProblems([...(planned.ok ? [] : planned.faults), ...obstacles]);
    return;
  }
  const asked = { profile, board: flags.board ?? null, cells: cellWords(flags) };
  const answer = await answered(planned.value, asked, flags);
  if (answer === null) return;
  const saved = apply === undefined || saveAs === undefined ? null : { remedy: apply, name: saveAs };
  await printAnswer(answer, { places, asked, flags, saved });
}

/** The words of the command for the cells, as far as they are not the usual ones. */
function cellWords({ rider, scenarios, charge, seeds, solver }: ExplainFlags): string[] {
  return [
    ...(rider === undefined ? [] : ['--rider', rider.join(',')]),
    ...(scenarios === undefined ? [] : ['--scenarios', scenarios.join(',')]),
    ...(charge === undefined ? [] : ['--charge', chargesText(charge)]),
    ...(seeds === undefined ? [] : ['--seeds', String(seeds.length)]),
    ...(solver === 'fixed' ? [] : ['--solver', solver]),
  ];
}

/** The answer, and how far it is to the edge. */
interface Answer {
  answer: Why;
  edge: EdgeReport;
}

/**
 * Computes the answer; tells what is known on the way, and, after Ctrl-C, on the standard output. Where a cell cannot be computed
 * that is told too, and there is no answer.
 */
async function answered(
  plan: RankPlan,
  asked: WhyView['asked'],
  flags: ExplainFlags,
): Promise<Answer | null> {
  const progress = createProgress(process.stderr);
  let known: Why | null = null;
  const show = showOptions(flags);
  const told = { ...show, width: Math.min(show.width, (process.stderr.columns ?? 80) - 1) };
  const keepKnown = () => {
    progress.clear();
    if (known === null) printRemark(['stopped before anything was found']);
    else printStopped(known, asked, flags);
  };
  // Before the listener that ends the program.
  process.prependListener('SIGINT', keepKnown);
  const count = flags.workers ?? threadsOfMachine();
  const crew = count > 1 ? await openCrew(count) : null;
  const threads = crew ?? count;
  try {
    const answer = await why(plan, {
      threads,
      onRuns: notes(progress),
      onKnown: (found) => {
        const lines = found.explanation.isComplete ? [] : firstFindingLines(whyView(found, asked), told);
        known = found;
        for (const line of lines) progress.row(line);
      },
    });
    known = answer;
    const onRuns = (done: number) => progress.note(`${done} runs to find the edge`);
    return { answer, edge: await findEdge(plan, { threads, onRuns }) };
  } catch (error) {
    keepKnown();
    tellFailedCell(error, plan);
    return null;
  } finally {
    process.removeListener('SIGINT', keepKnown);
    await crew?.close();
    progress.clear();
  }
}

/** Prints what is known of an answer that was stopped on the way. */
function printStopped(known: Why, asked: WhyView['asked'], flags: ExplainFlags): void {
  const view = whyView(known, asked);
  const show = showOptions(flags);
  if (flags.json) printJson({ ...whyReport(known, view), edge: null });
  else printResult([...whyLines(view, show), '', stoppedSentence(known)]);
}

function stoppedSentence({ explanation, tried }: Why): string {
  if (!explanation.isComplete) return 'Stopped: only the worst runs were looked at.';
  return tried === null ? 'Stopped before changes were tried.' : 'Stopped before the edge was found.';
}

function notes(progress: Progress): (done: number, all: number, purpose: Purpose) => void {
  return (done, all, purpose) => progress.note(`${done}/${all} runs ${purpose}`);
}

interface Printing {
  asked: WhyView['asked'];
  places: Places;
  flags: ExplainFlags;
  saved: { remedy: number; name: string } | null;
}

async function printAnswer({ answer, edge }: Answer, printing: Printing): Promise<void> {
  const { places, asked, flags, saved } = printing;
  const view = whyView(answer, asked);
  const show = showOptions(flags);
  if (!flags.json) {
    printResult([...whyLines(view, show), '', ...edgeLines(edge, show)]);
  }
  const written = saved === null ? null : await applyRemedy(places, answer, saved);
  if (written !== null && !written.ok) tellProblems(written.faults);
  if (written?.ok) printRemark([`wrote ${written.value}`]);
  if (flags.json) {
    const kept = saved && written?.ok ? { remedy: saved.remedy, file: written.value } : null;
    printJson({ ...whyReport(answer, view, kept), edge: edgeReport(edge) });
  }
}

function showOptions(flags: ExplainFlags): ShowOptions {
  return { width: outputWidth(), symbols: flags.symbols, paint: paintFor(flags) };
}

/** Adds `explain PROFILE` to the program. */
export function addExplainCommand(program: Command): void {
  const { colour, background, symbols } = drawingOptions();
  program
    .command('explain')
    .summary('why a profile rides as it does, and what to change')
    .description(
      'Runs the profile again with one suspect after the other taken away (gains, filter, delay, ceilings, pack, rider, ' +
        'road), says what is to blame and where that shows, tries changes on every run, and looks how far it is to the edge.',
    )
    .argument('<profile>', 'name or path of the profile')
    .option('--board <name>', 'name or path of the board; left out: the first by name')
    .option('--rider <names>', `riders, divided by commas, or ${ALL}; left out: ${DEFAULT_RIDER}`, parseNames)
    .option('--scenarios <names>', 'scenarios, divided by commas; left out: all', parseNames)
    .option('--charge <percents>', chargesHelp(), parseCharges)
    .option('--seeds <count>', 'so many seeds of chance; left out: 1', parseSeedCount)
    .addOption(solverOption('fixed'))
    .option('--workers <count>', 'threads to compute with; left out: one for each core', parseThreads)
    .option('--apply <n>', 'keep the n-th change as a new profile', parseCount)
    .option('--save-as <name>', 'name of the new profile; never one that is there')
    .option('--json', 'print everything as JSON')
    .addOption(colour)
    .addOption(background)
    .addOption(symbols)
    .addHelpText('before', 'Example: underfoot explain satin --rider regular,light\n')
    .action(explain);
}
