/**
 * Of which sweep is a file of results? Its first line says so.
 */
import { isDeepStrictEqual } from 'node:util';
import type { Problem } from '../quantity/problem.js';
import type { JournalText } from '../store/journal.js';
import { fileProblem } from '../store/system-fault.js';
import { contentKey } from './content-key.js';
import type { Shard, SweepHead } from './sweep-plan.js';

/** What is expected of a file that a sweep goes on with. */
export const OWN_RESULTS = 'the results of this very sweep, or a name that is free';

const NO_SWEEP = 'a file that no sweep has written';

/** A file with its first line, and what is expected of it. */
export interface FileToKnow {
  shown: string;
  text: Pick<JournalText, 'head' | 'isHeadWhole'>;
  expected: string;
}

/** What a first line says; null where it is none of a sweep. */
export function headIn(text: string): SweepHead | null {
  try {
    const content: unknown = JSON.parse(text);
    const isHead = typeof content === 'object' && content !== null && 'underfootSweep' in content;
    return isHead ? (content as SweepHead) : null;
  } catch {
    return null;
  }
}

/** What a file is of in place of what is expected; null where it is just that, or was cut off before it could say so. */
export function headFault({ shown, text, expected }: FileToKnow, own: SweepHead): Problem | null {
  const line = JSON.stringify(own);
  if (text.isHeadWhole ? text.head === line : line.startsWith(text.head)) return null;
  const fault = (received: string) => fileProblem(shown, expected, received);
  const found = headIn(text.head);
  if (found === null) return fault(NO_SWEEP);
  if (found.version !== own.version) return fault(`results of version ${found.version} of this program`);
  if (found.scalesVersion !== own.scalesVersion) return fault('results with other scales of the score');
  if (found.planKey !== contentKey(found.plan)) return fault('a first line that somebody has changed');
  if (found.planKey !== own.planKey) return fault('results of another sweep');
  return isDeepStrictEqual(found.part, own.part) ? null : fault(`results of ${partText(found.part)}`);
}

/** "part 3 of 8". */
export function partText(part: Shard | null): string {
  return part === null ? 'the whole sweep' : `part ${part.part} of ${part.parts}`;
}
