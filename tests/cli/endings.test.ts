/**
 * Does the program end as agreed when it is stopped from outside?
 */
import { spawn } from 'node:child_process';
import { closeSync, existsSync, openSync } from 'node:fs';
import { once } from 'node:events';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { PROGRAM } from './run-program.js';

interface Stopped {
  code: number | null;
  signal: string | null;
  err: string;
}

/** Starts the program in a process that stays alive, and does something to it once it prints. */
async function stopped(by: 'SIGINT' | 'SIGTERM'): Promise<Stopped> {
  const script = `
    process.argv.push('--version');
    await import(${JSON.stringify(pathToFileURL(PROGRAM).href)});
    setInterval(() => {}, 1000);
  `;
  const child = spawn(process.execPath, ['--input-type=module', '--eval', script, 'underfoot']);
  let err = '';
  child.stderr.on('data', (piece: Buffer) => (err += piece.toString()));
  await once(child.stdout, 'data');
  child.kill(by);
  const [code, signal] = (await once(child, 'close')) as [number | null, string | null];
  return { code, signal, err };
}

describe('a signal', () => {
  it('Ctrl-C ends it with 130', async () => {
    expect(await stopped('SIGINT')).toEqual({ code: 130, signal: null, err: '' });
  });

  it('TERM ends it with 143', async () => {
    expect(await stopped('SIGTERM')).toEqual({ code: 143, signal: null, err: '' });
  });
});

it('a reader that closes the pipe ends it quietly', async () => {
  const child = spawn(process.execPath, [PROGRAM, 'schema', 'scenario']);
  let err = '';
  child.stderr.on('data', (piece: Buffer) => (err += piece.toString()));
  child.stdout.destroy();
  const [code] = (await once(child, 'close')) as [number | null];
  expect([code, err]).toEqual([0, '']);
});

it.skipIf(!existsSync('/dev/full'))('a standard output without room is told in a line', async () => {
  const full = openSync('/dev/full', 'w');
  const child = spawn(process.execPath, [PROGRAM, 'schema', 'scenario'], { stdio: ['ignore', full, 'pipe'] });
  let err = '';
  child.stderr!.on('data', (piece: Buffer) => (err += piece.toString()));
  const [code] = (await once(child, 'close')) as [number | null];
  closeSync(full);
  expect([code, err]).toEqual([
    2,
    'the standard output: expected room for the whole result, received no space left on the disk\n',
  ]);
});
