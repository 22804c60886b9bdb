/**
 * A working folder in which a sweep is soon done: one board, a light and a heavy rider, two short scenarios; and a sweep of it in a
 * process of its own, which can be stopped.
 */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { stringify } from 'yaml';
import { validBoard, validProfile, validRider } from '../quantity/valid-values.js';
import { putFile, tempFolder } from '../store/temp-folder.js';
import { PROGRAM } from './run-program.js';

/** Makes the folder; it is removed when the running test is finished. Answers its absolute path. */
export function sweepFolder(): string {
  const folder = tempFolder();
  const put = (name: string, value: unknown) => putFile(folder, `${name}.yaml`, stringify(value));
  put('profiles/boards/pebble', validBoard());
  put('profiles/gains/slate', validProfile());
  for (const [name, massKg] of [
    ['kim', 58],
    ['bo', 96],
  ] as const) {
    const rider = validRider();
    put(`profiles/riders/${name}`, { ...rider, body: { ...rider.body, massKg } });
  }
  put('scenarios/level', {
    summary: 'Levelling',
    durationS: 2,
    start: { noseUpDeg: 6 },
    road: [{ lengthM: 20 }],
    speeds: [{ atS: 0, speedKmPerH: 0 }],
    measure: { as: 'step', bandDeg: 1 },
  });
  put('scenarios/drop', {
    summary: 'A drop',
    durationS: 2,
    start: { speedKmPerH: 10 },
    road: [{ lengthM: 2 }, { name: 'kerb', lengthM: 20, stepUpM: -0.03 }],
    speeds: [{ atS: 0, speedKmPerH: 10 }],
    measure: { from: 'kerb', as: 'disturbance', bandDeg: 1 },
  });
  return folder;
}

/** A sweep of twenty candidates over all of the folder, from the spread to the finalists. */
export const SMALL_SWEEP = ['sweep', '--candidates', '20', '--odex-cells', '1', '--json'] as const;

/** A sweep that nobody is dropped from, so that it can be shared out: nine candidates. */
export const OPEN_SWEEP = ['sweep', '--grid', '3', '--exhaustive', '--odex-cells', '1'] as const;

/** Whole lines of a file; none where there is no file. */
export function wholeLines(path: string): string[] {
  return existsSync(path) ? readFileSync(path, 'utf8').split('\n').slice(0, -1) : [];
}

/** How a process that was to be stopped ended, and what was in its file when the signal was sent. */
export interface Stopped {
  code: number | null;
  signal: NodeJS.Signals | null;
  err: string;
  seen: string[];
}

/** Starts the program and sends a signal once its file has so many lines; answers null where it ended before. */
export async function stoppedAt(
  { folder, given, path }: { folder: string; given: readonly string[]; path: string },
  signal: NodeJS.Signals,
  lineCount: number,
): Promise<Stopped | null> {
  const child = spawn(process.execPath, [PROGRAM, ...given], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let err = '';
  child.stderr.on('data', (piece: Buffer) => (err += piece.toString()));
  const ended = new Promise<[number | null, NodeJS.Signals | null]>((resolve) => {
    child.once('close', (code, by) => resolve([code, by]));
  });
  let seen = wholeLines(path);
  while (seen.length < lineCount && child.exitCode === null) {
    await pause(1);
    seen = wholeLines(path);
  }
  const isSent = child.kill(signal);
  const [code, by] = await ended;
  return isSent ? { code, signal: by, err, seen } : null;
}
