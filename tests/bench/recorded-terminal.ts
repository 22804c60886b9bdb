/**
 * What stands on a terminal, and when? Runs the built program on a true terminal (util-linux `script`), records its bytes
 * with their times, and replays them afterwards, so that nothing is measured while it runs but the program.
 */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
import xterm from '@xterm/headless';
import { programFolder } from '../../src/store/places.js';

/** What is run, and on how large a terminal. */
export interface RecordedProgram {
  columns: number;
  rows: number;
  /** The folder to run it in. */
  folder: string;
  given: readonly string[];
}

/** Bytes that came at once, ms after the start. */
export interface Piece {
  atMs: number;
  bytes: Buffer;
}

/** A program on a terminal, being recorded. */
export interface Recording {
  pieces: Piece[];
  /** Types bytes as they are; answers when, ms after the start. */
  type(text: string): number;
  wait(ms: number): Promise<void>;
  /** Seconds of computing that the program has used so far, all threads together. */
  cpuS(): number;
  /** Memory that it holds, MB. */
  memoryMB(): number;
  /** The code with which it ended, once it has. */
  ended: Promise<number | null>;
}

const CLOCK_TICKS_PER_S = 100;

/** The children of a process, as Linux lists them. */
function childrenOf(pid: number): number[] {
  const listed = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim();
  return listed === '' ? [] : listed.split(' ').map(Number);
}

/** Starts the program on a terminal of its own and records it. */
export function record({ columns, rows, folder, given }: RecordedProgram): Recording {
  const program = join(programFolder(), 'dist/main.js');
  const command = `stty cols ${columns} rows ${rows}; exec '${process.execPath}' '${program}' ${given.join(' ')}`;
  const startMs = performance.now();
  const child = spawn('script', ['--quiet', '--flush', '--return', '--command', command, '/dev/null'], {
    cwd: folder,
    env: { ...process.env, CI: 'false', SHELL: '/bin/sh' },
  });
  const sinceMs = () => performance.now() - startMs;
  const pieces: Piece[] = [];
  child.stdout.on('data', (bytes: Buffer) => pieces.push({ atMs: sinceMs(), bytes }));
  const own = () => childrenOf(child.pid!)[0]!;
  return {
    pieces,
    type: (text) => {
      child.stdin.write(text);
      return sinceMs();
    },
    wait: (ms) => wait(ms),
    cpuS: () => {
      const fields = readFileSync(`/proc/${own()}/stat`, 'utf8')
        .replace(/^.*\) /s, '')
        .split(' ');
      return (Number(fields[11]) + Number(fields[12])) / CLOCK_TICKS_PER_S;
    },
    memoryMB: () =>
      Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${own()}/status`, 'utf8'))?.[1] ?? NaN) / 1024,
    ended: new Promise((resolve) => child.on('close', resolve)),
  };
}

/** Replays pieces and shows the rows after each, until `see` answers true; the time of that piece [ms], Infinity if never. */
export async function whenSeen(
  { pieces }: Pick<Recording, 'pieces'>,
  { columns, rows }: Pick<RecordedProgram, 'columns' | 'rows'>,
  see: (lines: string[], atMs: number) => boolean,
): Promise<number> {
  const terminal = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true });
  for (const { atMs, bytes } of pieces) {
    await new Promise<void>((resolve) => terminal.write(bytes, resolve));
    const { active } = terminal.buffer;
    const lines = Array.from({ length: rows }, (_, row) => active.getLine(row)!.translateToString(true));
    if (see(lines, atMs)) return atMs;
  }
  return Infinity;
}
