/**
 * Which commands does the program have, and with which code does it end? Each command is added by
 * a file of its own; a new one needs one line in COMMANDS.
 */
import { Command, CommanderError } from 'commander';
import { plainText } from '../show/plain-text.js';
import { PROGRAM_NAME, programVersion } from '../store/places.js';
import { addCheckCommand } from './check-command.js';
import { EXIT } from './exit-codes.js';
import { addInitCommand } from './init-command.js';
import { addListCommand } from './list-command.js';
import { addRankCommand } from './rank-command.js';
import { addRunCommand } from './run-command.js';
import { addSchemaCommand } from './schema-command.js';

/** Adds the commands, in the order in which the help lists them. */
const COMMANDS: readonly ((program: Command) => void)[] = [
  addRankCommand,
  addRunCommand,
  addCheckCommand,
  addListCommand,
  addInitCommand,
  addSchemaCommand,
];

/** The command that runs when none is named; the help is shown until there is such a command. */
const COMMAND_WHEN_NONE_IS_NAMED = 'rank';

function withoutControls(text: string): string {
  return text.split('\n').map(plainText).join('\n');
}

/** The program with all of its commands; usage errors throw a CommanderError. */
export function createProgram(): Command {
  const program = new Command(PROGRAM_NAME)
    .description('A bench for the control gains of a home-built one-wheeled self-balancing board')
    .version(programVersion(), '--version', 'print the version')
    .helpOption('-h, --help', 'show this help')
    .addHelpText('before', `Example: ${PROGRAM_NAME} rank\n`)
    .configureOutput({ outputError: (text, write) => write(withoutControls(text)) })
    .exitOverride();
  for (const add of COMMANDS) add(program);
  return program;
}

function argumentsOrDefault(program: Command, given: readonly string[]): readonly string[] {
  if (given.length > 0) return given;
  const isThere = program.commands.some((command) => command.name() === COMMAND_WHEN_NONE_IS_NAMED);
  return [isThere ? COMMAND_WHEN_NONE_IS_NAMED : '--help'];
}

/** Runs the program with the arguments after its name; answers the exit code. */
export async function runProgram(given: readonly string[]): Promise<number> {
  const program = createProgram();
  try {
    await program.parseAsync(argumentsOrDefault(program, given), { from: 'user' });
    return Number(process.exitCode ?? EXIT.fine);
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.fine : EXIT.badInput;
  }
}
