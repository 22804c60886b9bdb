/**
 * The entry of the program.
 */
import { watchForEndings } from './cli/endings.js';
import { runProgram } from './cli/program.js';

watchForEndings();
process.exitCode = await runProgram(process.argv.slice(2));
