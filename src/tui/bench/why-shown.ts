/**
 * What is there to show of the answer to why, with the words of a command that gives it again?
 */
import type { WhyView } from '../../show/why-view.js';
import { whyView } from '../../tasks/why.js';
import { cellWords } from './shell-command.js';
import type { BenchState } from './state.js';

/** What is shown of the answer so far; null while there is none. */
export function viewOf(state: BenchState): WhyView | null {
  const { why } = state;
  if (why === null || why.answer === null) return null;
  const { profiles, board } = why.plan;
  return whyView(why.answer, { profile: profiles[0]!.name, board: board.name, cells: cellWords(state) });
}
