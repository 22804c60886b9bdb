/**
 * Which rules across several fields does a file break? They run on the value as it was read, so
 * that they speak up although other fields are wrong or missing.
 */
import { crossCheckBoard } from './board-cross-check.js';
import type { FileKind } from './file-kind.js';
import { crossCheckKept } from './kept-cross-check.js';
import type { Complaint } from './problem.js';
import { crossCheckScenario } from './scenario-cross-check.js';
import { crossCheckSheet } from './sheet-cross-check.js';

const RULES_OF: { readonly [K in FileKind]: (raw: unknown) => Complaint[] } = {
  board: crossCheckBoard,
  rider: () => [],
  profile: () => [],
  scenario: crossCheckScenario,
  sheet: crossCheckSheet,
  kept: crossCheckKept,
};

/** Complaints about values of a file that do not agree with one another. */
export function crossCheck(kind: FileKind, raw: unknown): Complaint[] {
  return RULES_OF[kind](raw);
}
