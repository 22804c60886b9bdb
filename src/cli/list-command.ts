/**
 * The command `list`: what is there to work with?
 */
import type { Command } from 'commander';
import { FILE_KINDS, type FileKind } from '../quantity/file-kind.js';
import { listingLines } from '../show/listing.js';
import { plainText } from '../show/plain-text.js';
import { findPlaces } from '../store/places.js';
import { listLibrary } from '../tasks/list-library.js';
import { KIND_WORDS, parseKind } from './kind-argument.js';
import { outputWidth, printJson, printResult, tellProblems } from './output.js';

const HEADING_OF: { readonly [K in FileKind]: string } = {
  board: 'Boards',
  rider: 'Riders',
  profile: 'Profiles',
  scenario: 'Scenarios',
  sheet: 'Controller sheets',
  kept: 'Shortlist',
};

function list(asked: FileKind | undefined, { json }: { json?: true }): void {
  const kinds = asked === undefined ? FILE_KINDS : [asked];
  const { files, problems } = listLibrary(findPlaces(process.cwd()), kinds);
  if (json) {
    printJson({ files: files.map((file) => ({ ...file, path: plainText(file.path) })) });
  } else {
    const blocks = kinds.map((kind) => {
      const lines = listingLines(
        files.filter((file) => file.kind === kind),
        outputWidth(),
      );
      return [HEADING_OF[kind], ...(lines.length === 0 ? ['  none'] : lines)].join('\n');
    });
    printResult([blocks.join('\n\n')]);
  }
  tellProblems(problems);
}

/** Adds `list [kind]` to the program. */
export function addListCommand(program: Command): void {
  program
    .command('list')
    .summary('name the boards, riders, profiles, scenarios, sheets and kept profiles')
    .description(
      'Names what the working folder holds, each with its summary; faulty files are told as problems.',
    )
    .argument('[kind]', `only this kind: ${KIND_WORDS}`, parseKind)
    .option('--json', 'print the result as JSON')
    .addHelpText('before', 'Example: underfoot list profiles\n')
    .action(list);
}
