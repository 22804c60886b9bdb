/**
 * What does a command say of a cell that could not be computed? Which it is, of which profile, and what came in its place.
 */
import type { ProfileFile } from '../quantity/profile-file.js';
import { plainText } from '../show/plain-text.js';
import { WorkFailed } from '../tasks/share-out.js';
import { EXIT } from './exit-codes.js';
import { printRemark } from './output.js';

/**
 * Tells of a cell, or of other work, that could not be computed, and makes the program end with 1; any other error is thrown again.
 * It is told under the name of the profile that it was for, or of the first where it was for a change of one.
 */
export function tellFailedCell(
  error: unknown,
  { profiles }: { profiles: readonly { name: string; value?: ProfileFile }[] },
): void {
  if (!(error instanceof WorkFailed)) throw error;
  const { profile, message } = error;
  const name = (profiles.find(({ value }) => value === profile) ?? profiles[0])?.name ?? '';
  printRemark([plainText(`a run of ${name} could not be computed: ${message}; no fault of your files`)]);
  process.exitCode = EXIT.requirementNotMet;
}
