/**
 * The command `check`: is every file as it should be?
 */
import type { Command } from 'commander';
import { plainText } from '../show/plain-text.js';
import { findPlaces } from '../store/places.js';
import { checkFiles, type CheckReport } from '../tasks/check-files.js';
import { EXIT } from './exit-codes.js';
import { counted, printJson, printRemark, printResult, tellProblems } from './output.js';

function asJson({ files, problems }: CheckReport): unknown {
  const plain = (value: unknown) => (typeof value === 'string' ? plainText(value) : value);
  const shown = (problem: object) =>
    Object.fromEntries(Object.entries(problem).map(([key, value]) => [key, plain(value)]));
  return { files: files.map(shown), problems: problems.map(shown) };
}

function check(paths: string[], { json }: { json?: true }): void {
  const report = checkFiles(findPlaces(process.cwd()), paths);
  const { files, problems } = report;
  if (json) {
    printJson(asJson(report));
    if (problems.length > 0) process.exitCode = EXIT.badInput;
    return;
  }
  tellProblems(problems);
  const looked = `${counted(files.length, 'file')} checked`;
  if (problems.length === 0) printResult([`${looked}, no problems`]);
  else printRemark([`${looked}, ${counted(problems.length, 'problem')}`]);
}

/** Adds `check [files...]` to the program. */
export function addCheckCommand(program: Command): void {
  program
    .command('check')
    .summary('say everything that is wrong with files')
    .description(
      'Checks files and tells every problem with its line and column, what was expected with its unit, ' +
        'and what came. Without files: the whole working folder. The kind of a file is told by its folder ' +
        '(boards, riders, gains, scenarios, sheets, shortlist), or else by its keys. A kept profile is held against its seal. A ride ' +
        'card as text, or the text of its code, is read as well: are its numbers still those that were printed? Ends with 2 when there is a problem.',
    )
    .argument('[files...]', 'YAML files, or ride cards as text')
    .option('--json', 'print the result as JSON')
    .addHelpText('before', 'Example: underfoot check profiles/gains/mine.yaml\n')
    .action(check);
}
