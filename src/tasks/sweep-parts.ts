/**
 * Do these files make one sweep? Parts that several machines have run, each once and all of the same sweep; parts that are not there
 * are no fault, for what is missing can be run.
 */
import type { Checked, Problem } from '../quantity/problem.js';
import { readJournal, type JournalText } from '../store/journal.js';
import { fileProblem } from '../store/system-fault.js';
import { headFault, headIn, partText } from './sweep-head.js';
import type { KnownRuns } from './sweep-ledger.js';
import { readRuns } from './sweep-lines.js';
import { headOf, type SweepHead, type SweepPlan } from './sweep-plan.js';

/** The parts of a sweep, put together. */
export interface MergedParts {
  plan: SweepPlan;
  /** Into how many parts it was divided; null where one file has all of it. */
  parts: number | null;
  runs: KnownRuns;
}

interface PartFile {
  shown: string;
  head: SweepHead;
  lines: readonly string[];
}

const EXPECTED = 'results of a sweep, or of a part of one';

/** Reads the parts of one sweep, or tells everything that is wrong with them. */
export function readParts(paths: readonly string[]): Checked<MergedParts, Problem> {
  const faults: Problem[] = [];
  const files: PartFile[] = [];
  for (const path of paths) {
    const text = readJournal(path, path);
    const file = text.ok ? partIn(path, text.value) : text;
    if (file.ok) files.push(file.value);
    else faults.push(...file.faults);
  }
  files.forEach((file, index) => faults.push(...besideOthers(file, files.slice(0, index))));
  const [first] = files;
  if (first === undefined || faults.length > 0) return { ok: false, faults };
  const { plan } = first.head;
  const runs = readRuns(plan, files);
  if (!runs.ok) return runs;
  const parts = files.find(({ head }) => head.part !== null)?.head.part?.parts ?? null;
  return { ok: true, value: { plan, parts, runs: runs.value } };
}

function partIn(shown: string, text: JournalText | null): Checked<PartFile, Problem> {
  const fault = (received: string) => ({
    ok: false as const,
    faults: [fileProblem(shown, EXPECTED, received)],
  });
  if (text === null) return fault('nothing there');
  const head = headIn(text.head);
  if (head === null) return fault('a file that no sweep has written');
  const problem = headFault({ shown, text, expected: EXPECTED }, headOf(head.plan, head.part));
  return problem === null
    ? { ok: true, value: { shown, head, lines: text.lines } }
    : { ok: false, faults: [problem] };
}

/** What speaks against a part beside those before it. */
function besideOthers({ shown, head }: PartFile, before: readonly PartFile[]): Problem[] {
  const [first] = before;
  if (first === undefined) return [];
  if (first.head.planKey !== head.planKey) {
    return [fileProblem(shown, `a part of the same sweep as ${first.shown}`, 'results of another sweep')];
  }
  const twin = before.find(({ head: { part } }) => partText(part) === partText(head.part));
  if (twin !== undefined) {
    return [fileProblem(shown, 'each part once', `${partText(head.part)} again, as in ${twin.shown}`)];
  }
  const other = before.find(({ head: { part } }) => part !== null && part.parts !== head.part?.parts);
  if (other === undefined || head.part === null) return [];
  return [
    fileProblem(shown, `a part of ${other.head.part?.parts}, as ${other.shown}`, `${partText(head.part)}`),
  ];
}
