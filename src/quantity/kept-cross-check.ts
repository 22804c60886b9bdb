/**
 * Which values of a kept file must agree with one another? Those of the board that it holds.
 */
import { crossCheckBoard } from './board-cross-check.js';
import type { Complaint } from './problem.js';
import { valueAt } from './raw-value.js';

const BOARD = ['rig', 'board'] as const;

/** Complaints about values of a kept file that do not agree; runs on any value, faulty or not. */
export function crossCheckKept(raw: unknown): Complaint[] {
  const board = valueAt(raw, BOARD);
  // Where there is none that is a complaint of its own.
  if (board === undefined) return [];
  return crossCheckBoard(board).map(({ path, ...said }) => ({ path: [...BOARD, ...path], ...said }));
}
