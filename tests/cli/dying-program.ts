/**
 * A copy of the built program in which one cell ends its thread, whoever asks for it.
 */
import { cpSync, symlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { putFile, tempFolder } from '../store/temp-folder.js';
import { PROGRAM } from './run-program.js';

const BUILT = dirname(PROGRAM);

/** Makes the copy, whose threads end themselves in trials with this in their keys; answers its entry. */
export function dyingProgram(dies: { scenario?: string; rider?: string; chargePercent?: number }): string {
  const folder = tempFolder();
  cpSync(join(BUILT, '..', 'package.json'), join(folder, 'package.json'));
  symlinkSync(join(BUILT, '..', 'node_modules'), join(folder, 'node_modules'));
  for (const name of ['main.js', 'chunks']) {
    cpSync(join(BUILT, name), join(folder, 'dist', name), { recursive: true });
  }
  const work = pathToFileURL(join(BUILT, 'tasks', 'worker.js')).href;
  putFile(
    folder,
    'dist/tasks/worker.js',
    `import { cells as compute } from ${JSON.stringify(work)};
     export * from ${JSON.stringify(work)};
     const dies = ${JSON.stringify(dies)};
     export function cells(task) {
       const isDeadly = ({ key }) => Object.entries(dies).every(([name, value]) => key[name] === value);
       if (task.trials.some(isDeadly)) process.exit(9);
       return compute(task);
     }`,
  );
  return join(folder, 'dist', 'main.js');
}
