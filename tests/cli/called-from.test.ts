/**
 * In which folder does the program work when npm starts it? In the one where npm was called, not in the one of its package.
 */
import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { putFile, tempFolder } from '../store/temp-folder.js';
import { PROGRAM } from './run-program.js';

function listed(env: Record<string, string>): string {
  const { stdout } = spawnSync(process.execPath, [PROGRAM, 'list', 'profile'], {
    cwd: tempFolder(),
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  return stdout;
}

it('works where `npm start` was called, and elsewhere where it is', () => {
  const folder = tempFolder();
  const profile = 'summary: Mine\ngains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1 }\n';
  putFile(folder, 'profiles/gains/mine.yaml', profile);
  expect(listed({ npm_lifecycle_event: 'start', INIT_CWD: folder })).toContain('mine');
  expect(listed({ npm_lifecycle_event: 'test', INIT_CWD: folder })).not.toContain('mine');
});
