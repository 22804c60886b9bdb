/**
 * Which commands does the program have, and with which code does it end? Each command is added by
 * a file of its own; a new one needs one line in COMMANDS.
 */
import { Command, CommanderError } from 'commander';
import { plainText } from '../show/plain-text.js';
import { PROGRAM_NAME, programVersion } from '../store/places.js';
import { addBenchCommand, isOnTerminal, type OpenBench } from './bench-command.js';
import { addCheckCommand } from './check-command.js';
import { addCompareCommand } from './compare-command.js';
import { EXIT } from './exit-codes.js';
import { addExplainCommand } from './explain-command.js';
import { addExportCommand } from './export-command.js';
import { addInitCommand } from './init-command.js';
import { addListCommand } from './list-command.js';
import { addMarginsCommand } from './margins-command.js';
import { addPlanCommand } from './plan-command.js';
import { addRankCommand } from './rank-command.js';
import { addRunCommand } from './run-command.js';
import { printRemark } from './output.js';
import { addSchemaCommand } from './schema-command.js';
import { addShortlistCommand } from './shortlist-command.js';
import { addSweepCommand } from './sweep-command.js';

/** Adds the commands, in the order in which the help lists them. */
const COMMANDS: readonly ((program: Command) => void)[] = [
  addRankCommand,
  addRunCommand,
  addCompareCommand,
  addMarginsCommand,
  addExplainCommand,
  addSweepCommand,
  addShortlistCommand,
  addExportCommand,
  addPlanCommand,
  addCheckCommand,
  addListCommand,
  addInitCommand,
  addSchemaCommand,
];

function withoutControls(text: string): string {
  return text.split('\n').map(plainText).join('\n');
}

/** The program with all of its commands; usage errors throw a CommanderError. */
export function createProgram(openBench: OpenBench): Command {
  const program = new Command(PROGRAM_NAME)
    .description('A bench for the control gains of a home-built one-wheeled self-balancing board')
    .version(programVersion(), '--version', 'print the version')
    .helpOption('-h, --help', 'show this help')
    .addHelpText('before', `Example: ${PROGRAM_NAME} rank\n`)
    .configureOutput({ outputError: (text, write) => write(withoutControls(text)) })
    .exitOverride();
  addBenchCommand(program, openBench);
  for (const add of COMMANDS) add(program);
  return program;
}

/** Options that are the program's own; all others without a command are the bench's. */
const OWN_OPTIONS = ['-h', '--help', '--version'];

/** Without a command the bench is meant; where there is no terminal for it, the table that it shows first. */
function withCommand(given: readonly string[]): readonly string[] {
  const [first] = given;
  if (first === undefined && !isOnTerminal()) {
    printRemark([`no terminal for the bench: this is what ${PROGRAM_NAME} rank prints`]);
    return ['rank'];
  }
  const isForBench = first === undefined || (first.startsWith('-') && !OWN_OPTIONS.includes(first));
  return isForBench ? ['bench', ...given] : given;
}

/** Runs the program with the arguments after its name; answers the exit code. `openBench` opens the full-screen part. */
export async function runProgram(given: readonly string[], openBench: OpenBench): Promise<number> {
  const program = createProgram(openBench);
  try {
    await program.parseAsync(withCommand(given), { from: 'user' });
    return Number(process.exitCode ?? EXIT.fine);
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.fine : EXIT.badInput;
  }
}
