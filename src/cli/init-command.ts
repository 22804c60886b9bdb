/**
 * The command `init`: a folder of one's own.
 */
import type { Command } from 'commander';
import { plainText } from '../show/plain-text.js';
import { startFolder } from '../tasks/start-folder.js';
import { counted, printResult, tellProblems } from './output.js';

function init(folder: string, { force }: { force?: true }): void {
  const written = startFolder(process.cwd(), folder, { force: force ?? false });
  if (!written.ok) return tellProblems(written.faults);
  const where = folder === '.' ? 'this folder' : plainText(folder);
  printResult([`${counted(written.value.length, 'file')} written to ${where}`]);
}

/** Adds `init [folder]` to the program. */
export function addInitCommand(program: Command): void {
  program
    .command('init')
    .summary('copy the starter set to a folder of your own')
    .description(
      'Copies the starter boards, riders, profiles, scenarios and the schemas for an editor to a folder. ' +
        'Nothing is written when a file is there already, unless --force says to replace it.',
    )
    .argument('[folder]', 'where to; made when it is not there', '.')
    .option('--force', 'replace files that are there already')
    .addHelpText('before', 'Example: underfoot init my-board\n')
    .action(init);
}
