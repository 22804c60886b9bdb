/**
 * The entry of the program. The full-screen part is loaded only when it is opened.
 */
import { watchForEndings } from './cli/endings.js';
import { runProgram } from './cli/program.js';

watchForEndings();
process.exitCode = await runProgram(process.argv.slice(2), async (request) => {
  const { openBench } = await import('./tui/open-bench.js');
  return openBench(request);
});
