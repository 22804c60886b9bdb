/**
 * Which kind of file does a word on the command line mean? One or many: `profile` and `profiles`.
 */
import { InvalidArgumentError } from 'commander';
import { FILE_KINDS, isFileKind, type FileKind } from '../quantity/file-kind.js';
import { suggestion } from '../quantity/suggestion.js';

/** The words for kinds, for help texts. */
export const KIND_WORDS = FILE_KINDS.join(', ');

/** The kind that the word means; any other word is a usage error. */
export function parseKind(word: string): FileKind {
  const single = word.replace(/s$/, '');
  if (isFileKind(single)) return single;
  const near = suggestion(single, FILE_KINDS);
  throw new InvalidArgumentError(
    `Expected one of ${KIND_WORDS}.${near === undefined ? '' : ` Did you mean ${near}?`}`,
  );
}
