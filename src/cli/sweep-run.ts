/**
 * A sweep from the shell: carried out with its progress told, kept whatever ends it, and printed.
 */
import type { Problem } from '../quantity/problem.js';
import { readField } from '../quantity/profile-fields.js';
import { plainText } from '../show/plain-text.js';
import { numberText } from '../show/quantities.js';
import { sweepLines } from '../show/sweep-lines.js';
import { PROGRAM_NAME, type Places } from '../store/places.js';
import { openCrew } from '../tasks/crew.js';
import { trialsOf } from '../tasks/plan.js';
import { saveProfile } from '../tasks/save-profile.js';
import { WorkFailed } from '../tasks/share-out.js';
import { KeepingFailed, type SweepFile } from '../tasks/sweep-file.js';
import { partText } from '../tasks/sweep-head.js';
import type { Shard, SweepPlan } from '../tasks/sweep-plan.js';
import { sweepReport, sweepView } from '../tasks/sweep-report.js';
import { partsLeft, runShard } from '../tasks/sweep-shard.js';
import { sweep, type SweepAnswer, type SweepProgress } from '../tasks/sweep.js';
import { EXIT } from './exit-codes.js';
import { outputWidth, printJson, printRemark, printResult, tellProblems } from './output.js';
import { createProgress, type Progress } from './progress.js';
import { paintFor, threadsOfMachine, type DrawingFlags } from './run-arguments.js';

/** What a sweep is carried out with, and what becomes of its answer. */
export interface OutputFlags extends DrawingFlags {
  workers?: number;
  out?: string;
  json?: true;
  keep?: number;
  saveAs?: string;
}

/** A sweep to be carried out, or a part of one. */
export interface Work {
  plan: SweepPlan;
  file: SweepFile;
  places: Places;
  flags: OutputFlags;
  part: Shard | null;
  /** Into how many parts it was divided that are put together now; null where none are. */
  mergedParts: number | null;
}

/** Signals that end the program. */
const ENDINGS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Carries out a sweep or a part of it, keeping what was found whatever ends it. */
export async function carriedOut(work: Work): Promise<void> {
  const { plan, file, flags } = work;
  const progress = createProgress(process.stderr);
  const tellKept = () => {
    progress.clear();
    if (file.shown !== null)
      printRemark([`kept ${file.ledger.size()} runs in ${file.shown}; the same command goes on from there`]);
  };
  // Before the listeners that end the program.
  for (const signal of ENDINGS) process.prependListener(signal, tellKept);
  await tellKnown(work, progress);
  const count = flags.workers ?? threadsOfMachine();
  const crew = count > 1 ? await openCrew(count) : null;
  try {
    await finished(work, { threads: crew ?? count, progress });
  } catch (error) {
    const isKept = error instanceof KeepingFailed;
    if (!isKept && !(error instanceof WorkFailed)) throw error;
    tellKept();
    if (isKept) tellProblems([error.problem]);
    else tellFailure(error, plan);
  } finally {
    for (const signal of ENDINGS) process.removeListener(signal, tellKept);
    await crew?.close();
    file.close();
  }
}

/** Tells what is known before anything is run, and what has to be run here in place of a part that is not there. */
async function tellKnown({ plan, file, mergedParts }: Work, progress: Progress): Promise<void> {
  const { shown, found, ledger } = file;
  if (mergedParts !== null) {
    const left = await partsLeft(plan, ledger, mergedParts);
    printRemark(left.map((one) => `${partText(one)}: ${one.missing} runs are missing and are made here`));
  } else if (shown === null) {
    progress.row('runs are not kept: name a file with --out to go on after an interruption');
  } else if (found > 0) progress.row(`${found} runs are known already from ${shown}`);
}

/** Tells of what could not be computed: where, with which numbers, and what came in its place. */
function tellFailure({ profile, message }: WorkFailed, { ranges }: SweepPlan): void {
  const numbers = ranges.map(({ path, unit }) => {
    const value = readField(profile, { path });
    return `${path.at(-1)} ${value === undefined ? 'left out' : `${value} ${unit}`.trim()}`;
  });
  printRemark([plainText(`a run failed, and failed again: ${message}; with ${numbers.join(', ')}`)]);
  process.exitCode = EXIT.requirementNotMet;
}

async function finished(
  { plan, file, places, flags, part }: Work,
  { threads, progress }: { threads: Parameters<typeof sweep>[2]['threads']; progress: Progress },
): Promise<void> {
  if (part !== null) {
    const tell = progressNotes(progress);
    const stage = partText(part);
    const own = await runShard(plan, file.ledger, {
      ...part,
      threads,
      onRuns: (done, all) => tell({ stage, step: 1, steps: 1, done, all }),
    });
    progress.clear();
    await told(file.finish());
    printResult([`${stage}: ${own} candidates, ${file.ledger.size()} runs in ${file.shown ?? 'no file'}`]);
    if (file.shown !== null) printRemark([`all parts together: ${PROGRAM_NAME} sweep merge FILES`]);
    return;
  }
  const cellCount = trialsOf(plan.cells).length;
  const answer = await sweep(plan, file.ledger, {
    threads,
    onProgress: progressNotes(progress),
    onBase: ({ name, failures, cells, score }) =>
      progress.row(
        `${name}, from which all begin, over ${cells.length} of ${cellCount} cells: falls ${failures}, score ${numberText(score, 'ratio')}`,
      ),
    onBest: ([first]) => {
      if (first === undefined) return;
      const { name, failures, cells, score } = first;
      progress.row(
        `best over ${cells.length} cells: ${name}, falls ${failures}, score ${numberText(score, 'ratio')}`,
      );
    },
  });
  progress.clear();
  await told(file.finish());
  await printAnswer(answer, { places, flags, file });
}

async function told(problem: Promise<Problem | null>): Promise<void> {
  const fault = await problem;
  if (fault !== null) tellProblems([fault]);
}

async function printAnswer(
  answer: SweepAnswer,
  { places, flags, file }: { places: Places; flags: OutputFlags; file: SweepFile },
): Promise<void> {
  if (flags.json) printJson(sweepReport(answer));
  else {
    const options = { width: outputWidth(), symbols: flags.symbols, paint: paintFor(flags) };
    printResult(sweepLines(sweepView(answer), options));
  }
  if (file.shown !== null) printRemark([`all runs are in ${file.shown}`]);
  const { keep, saveAs } = flags;
  if (keep === undefined || saveAs === undefined) {
    if (!flags.json && answer.finalists.length > 0) printRemark([keepingRemark(places)]);
    return;
  }
  const finalist = answer.finalists[keep - 1];
  if (finalist === undefined) {
    tellProblems([
      {
        file: '',
        line: null,
        column: null,
        key: 'keep',
        expected: `a finalist from 1 to ${answer.finalists.length}`,
        received: String(keep),
      },
    ]);
    return;
  }
  const { profile } = finalist.candidate;
  const summary = `Found by a sweep on ${answer.plan.cells.board.name}: falls ${finalist.result.failures} of ${finalist.result.cells.length}, score ${numberText(finalist.result.score, 'ratio')}.`;
  const saved = await saveProfile(places, { from: null, name: saveAs, profile: { ...profile, summary } });
  if (saved.ok) printRemark([`wrote ${saved.value}`]);
  else tellProblems(saved.faults);
}

/** How a finalist is kept. */
function keepingRemark({ isStarterSet }: Places): string {
  return isStarterSet
    ? `to keep one as a profile, sweep in a folder of your own: ${PROGRAM_NAME} init makes one`
    : 'to keep the first as a profile of yours: the same command with --keep 1 --save-as NAME';
}

/** How far a step is, under the name of its stage. */
interface StepProgress extends Omit<SweepProgress, 'stage' | 'known'> {
  stage: string;
}

function progressNotes(progress: Progress): (news: StepProgress) => void {
  let stage = '';
  let startMs = 0;
  let from = 0;
  return ({ stage: now, step, steps, done, all }) => {
    const name = steps > 1 ? `${now}, ${step} of ${steps}` : now;
    if (name !== stage) {
      stage = name;
      startMs = performance.now();
      from = done - 1;
    }
    const elapsedS = (performance.now() - startMs) / 1000;
    const rate = (done - from) / Math.max(elapsedS, 1e-3);
    progress.note(
      `${name}: ${done}/${all} runs, ${Math.round(rate)} a second, ${Math.ceil((all - done) / rate)} s left of this step`,
    );
  };
}
