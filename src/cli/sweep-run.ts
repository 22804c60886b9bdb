/**
 * A sweep from the shell: carried out with its progress told, kept whatever ends it, and printed.
 */
import type { Problem } from '../quantity/problem.js';
import { readField } from '../quantity/profile-fields.js';
import { plainText } from '../show/plain-text.js';
import { numberText } from '../show/quantities.js';
import { sweepLines } from '../show/sweep-lines.js';
import { baseText, cellsText } from '../show/sweep-words.js';
import { PROGRAM_NAME, shownPath, type Places } from '../store/places.js';
import { openCrew } from '../tasks/crew.js';
import { trialsOf } from '../tasks/plan.js';
import { saveProfile } from '../tasks/save-profile.js';
import { WorkFailed } from '../tasks/share-out.js';
import { KeepingFailed, type SweepFile } from '../tasks/sweep-file.js';
import { partText } from '../tasks/sweep-head.js';
import type { Shard, SweepPlan } from '../tasks/sweep-plan.js';
import { sweepReport, sweepView } from '../tasks/sweep-report.js';
import { partsLeft, runShard } from '../tasks/sweep-shard.js';
import { sweep, type Leader, type SweepAnswer, type SweepProgress } from '../tasks/sweep.js';
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
    onBase: (base) => progress.row(baseText(base, cellCount)),
    onBest: bestRows(progress),
  });
  progress.clear();
  const isKept = await told(file.finish());
  await printAnswer(answer, { places, flags, shown: isKept ? file.shown : null });
}

/** A row for the best so far whenever it is another, or over more cells. */
function bestRows(progress: Progress): (best: readonly Leader[]) => void {
  let last = '';
  return ([first]) => {
    if (first === undefined) return;
    const { name, failures, cells, score } = first.result;
    const row = `best over ${cellsText(cells.length)}: ${name}, falls ${failures}, score ${numberText(score, 'ratio')}`;
    if (row !== last) progress.row(row);
    last = row;
  };
}

/** Tells of a problem where there is one; true where there is none. */
async function told(problem: Promise<Problem | null>): Promise<boolean> {
  const fault = await problem;
  if (fault !== null) tellProblems([fault]);
  return fault === null;
}

async function printAnswer(
  answer: SweepAnswer,
  { places, flags, shown }: { places: Places; flags: OutputFlags; shown: string | null },
): Promise<void> {
  if (flags.json) printJson(sweepReport(answer));
  else {
    const options = { width: outputWidth(), symbols: flags.symbols, paint: paintFor(flags) };
    printResult(sweepLines(sweepView(answer), options));
  }
  if (shown !== null) printRemark([`all runs are in ${shown}`]);
  const { keep, saveAs } = flags;
  if (keep === undefined || saveAs === undefined) {
    if (!flags.json) printRemark([nextRemark(answer, places)]);
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
        expected:
          answer.finalists.length === 0
            ? 'a sweep with finalists'
            : `a finalist from 1 to ${answer.finalists.length}`,
        received: String(keep),
      },
    ]);
    return;
  }
  const { profile } = finalist.candidate;
  const summary = `Found by a sweep on ${answer.plan.cells.board.name}: falls ${finalist.result.failures} of ${finalist.result.cells.length}, score ${numberText(finalist.result.score, 'ratio')}.`;
  const saved = await saveProfile(places, { from: null, name: saveAs, profile: { ...profile, summary } });
  if (saved.ok) printRemark([`wrote ${shownPath(places, saved.value)}: ${keptRemark(saveAs)}`]);
  else tellProblems(saved.faults);
}

const OTHER_RANGES = 'without --range, those are taken that suit board and riders';

/** What can be done with a finalist once it is a profile. */
const keptRemark = (name: string) =>
  `'${PROGRAM_NAME} rank' shows it among the others, '${PROGRAM_NAME} shortlist add ${name}' keeps it for the board`;

/** What can be done next: keep a finalist, or look elsewhere where there is none. */
function nextRemark({ finalists: [first] }: SweepAnswer, { isStarterSet }: Places): string {
  if (first === undefined) return OTHER_RANGES;
  if (isStarterSet)
    return `to keep one as a profile, sweep in a folder of your own: ${PROGRAM_NAME} init makes one`;
  const how = 'the same command with --keep 1 --save-as NAME';
  return first.result.failures === 0
    ? `to keep the first as a profile of yours: ${how}`
    : `even the first falls; to keep it as a profile all the same: ${how}`;
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
