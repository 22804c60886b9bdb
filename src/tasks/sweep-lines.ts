/**
 * What do the lines of a file of results say? Each is a run as this program writes it, of a cell that the sweep has; what is not is
 * told with its place, and no run has two results.
 */
import { isDeepStrictEqual } from 'node:util';
import { COST_TERMS } from '../measure/scales.js';
import type { CellResult } from '../measure/profile-result.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { trialsOf } from './plan.js';
import { HOWS, runKey, type KnownRuns, type SweepLine } from './sweep-ledger.js';
import type { SweepPlan } from './sweep-plan.js';

/** Lines of one file, as they stand below its first. */
export interface LinesOfFile {
  shown: string;
  lines: readonly string[];
}

/** Faulty lines of a file that are told one by one. */
const FAULTS_TOLD = 5;

/** The runs of a sweep that files hold, beside those known already; or everything that is wrong with the lines. */
export function readRuns(
  plan: SweepPlan,
  files: readonly LinesOfFile[],
  known: KnownRuns = new Map(),
): Checked<Map<string, SweepLine>, Problem> {
  const runs = new Map(known);
  const trialCount = trialsOf(plan.cells).length;
  const isOfPlan = ({ trial, numbers }: SweepLine) =>
    trial >= 0 && trial < trialCount && numbers.length === plan.ranges.length;
  const faults = files.flatMap(({ shown, lines }) => {
    const own = lines.flatMap((text, index): Problem[] => {
      const fault = (expected: string): Problem[] => [lineFault(shown, index, { expected, text })];
      const line = lineIn(text);
      if (line === null) return fault('a result as this program writes it');
      if (!isOfPlan(line)) return fault('a result of a cell of this sweep');
      const other = runs.get(runKey(line));
      if (other !== undefined && !isDeepStrictEqual(other, line)) {
        return fault('the same result as elsewhere for the same run');
      }
      runs.set(runKey(line), line);
      return [];
    });
    return own.length <= FAULTS_TOLD ? own : [...own.slice(0, FAULTS_TOLD), moreFaults(shown, own.length)];
  });
  return faults.length === 0 ? { ok: true, value: runs } : { ok: false, faults };
}

const SHOWN_OF_LINE = 40;

function lineFault(
  shown: string,
  index: number,
  { expected, text }: { expected: string; text: string },
): Problem {
  const received = text.length > SHOWN_OF_LINE ? `${text.slice(0, SHOWN_OF_LINE)}...` : text;
  return {
    file: shown,
    line: index + 2,
    column: null,
    key: '',
    expected,
    received: received === '' ? 'nothing' : received,
  };
}

function moreFaults(shown: string, count: number): Problem {
  const received = `${count - FAULTS_TOLD} more lines that are none`;
  return { file: shown, line: null, column: null, key: '', expected: 'results', received };
}

function lineIn(text: string): SweepLine | null {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    return null;
  }
  return isLine(content) ? content : null;
}

function isLine(content: unknown): content is SweepLine {
  if (typeof content !== 'object' || content === null) return false;
  const { how, trial, numbers, outcome, eventReached, metrics } = content as Record<string, unknown>;
  return (
    HOWS.some((one) => one === how) &&
    Number.isInteger(trial) &&
    Array.isArray(numbers) &&
    numbers.every((number) => number === null || typeof number === 'number') &&
    typeof outcome === 'object' &&
    outcome !== null &&
    typeof eventReached === 'boolean' &&
    typeof metrics === 'object' &&
    metrics !== null &&
    COST_TERMS.every(({ read }) => read(metrics as CellResult['metrics']) !== undefined)
  );
}
