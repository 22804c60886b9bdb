/**
 * The entry of the program. The full-screen part is loaded only when it is opened.
 */
import { watchForEndings } from './cli/endings.js';
import { runProgram } from './cli/program.js';

/** npm starts the program in the folder of its package, and tells where it was called. */
const calledFrom = process.env['npm_lifecycle_event'] === 'start' ? process.env['INIT_CWD'] : undefined;
if (calledFrom !== undefined) process.chdir(calledFrom);

watchForEndings();
process.exitCode = await runProgram(process.argv.slice(2), async (request) => {
  const { openBench } = await import('./tui/open-bench.js');
  return openBench(request);
});
