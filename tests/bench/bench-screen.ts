/**
 * How fast is the bench on a terminal? Prints figures; judges nothing. Least values of several repetitions, since others
 * may be at work on the machine too.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startFolder } from '../../src/tasks/start-folder.js';
import { record, whenSeen, type Recording } from './recorded-terminal.js';

const SIZE = { columns: 120, rows: 40 };
const REPETITIONS = 5;
const PROFILES = 200;
const PRESSES = 40;

const ESCAPE = String.fromCodePoint(0x1b);
const DOWN = `${ESCAPE}[B`;

const least = (numbers: readonly number[]) => Math.min(...numbers);
const middle = (numbers: readonly number[]) => numbers.toSorted((a, b) => a - b)[numbers.length >> 1]!;

function print(what: string, value: number, unit: string): void {
  console.log(`${what.padEnd(58)}${value.toPrecision(4).padStart(10)} ${unit}`);
}

/** A folder with the starter set, and so many copies of its profiles. */
function folderOf(profileCount: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'underfoot-bench-'));
  startFolder(folder, '.', { force: false });
  const gains = join(folder, 'profiles/gains');
  const names = readdirSync(gains).filter((name) => name.endsWith('.yaml'));
  for (let index = 0; index < profileCount - names.length; index++) {
    const from = join(gains, names[index % names.length]!);
    writeFileSync(join(gains, `copy-${index}.yaml`), readFileSync(from));
  }
  return folder;
}

async function leave(recording: Recording): Promise<void> {
  recording.type(String.fromCodePoint(3));
  await recording.ended;
}

/** From the start to the first frame, the first row and the last one, ms. */
async function start(folder: string): Promise<{ frameMs: number; rowMs: number; tableMs: number }> {
  const recording = record({ ...SIZE, folder, given: [] });
  await recording.wait(6000);
  await leave(recording);
  const seen = (see: (lines: string[]) => boolean) => whenSeen(recording, SIZE, see);
  return {
    frameMs: await seen(
      (lines) => lines[0]!.includes('underfoot') && lines.some((line) => /canvas/.test(line)),
    ),
    rowMs: await seen((lines) => lines.some((line) => /^\W*\d+ +canvas /.test(line))),
    tableMs: await seen((lines) => lines[0]!.includes('ranked')),
  };
}

/** Presses a key again and again while a long ranking runs: ms from each press until the cursor stands elsewhere. */
async function waits(folder: string): Promise<number[]> {
  const recording = record({ ...SIZE, folder, given: [] });
  await recording.wait(3000);
  const pressedMs: number[] = [];
  for (let press = 0; press < PRESSES; press++) {
    pressedMs.push(recording.type(DOWN));
    await recording.wait(120 + 7 * (press % 10));
  }
  await leave(recording);
  const movedMs: number[] = [];
  let under: string | undefined;
  await whenSeen(recording, SIZE, (lines, atMs) => {
    const name = /▸\W*\d* +([a-z][a-z0-9-]+)/.exec(lines.join('\n'))?.[1];
    if (name !== under) movedMs.push(atMs);
    under = name;
    return false;
  });
  return pressedMs.flatMap((atMs) => {
    const moved = movedMs.find((candidate) => candidate > atMs);
    return moved === undefined ? [] : [moved - atMs];
  });
}

/** Seconds of computing in a second while a run plays with the side view beside it, and the memory gained, MB. */
async function playing(folder: string): Promise<{ shares: number[]; gainedMB: number }> {
  const recording = record({ ...SIZE, folder, given: [] });
  await recording.wait(8000);
  recording.type('\r');
  await recording.wait(1500);
  recording.type(`----${ESCAPE}[H `);
  await recording.wait(1500);
  const shares: number[] = [];
  const beforeMB = recording.memoryMB();
  for (let part = 0; part < 4; part++) {
    const before = recording.cpuS();
    await recording.wait(5000);
    shares.push((recording.cpuS() - before) / 5);
  }
  const gainedMB = recording.memoryMB() - beforeMB;
  await leave(recording);
  return { shares, gainedMB };
}

/** Prints how the bench does on a terminal. */
export async function benchScreen(): Promise<void> {
  const few = folderOf(0);
  const many = folderOf(PROFILES);
  try {
    const starts = [];
    for (let repetition = 0; repetition < REPETITIONS; repetition++) starts.push(await start(few));
    print('bench: first frame', least(starts.map(({ frameMs }) => frameMs)), 'ms');
    print('bench: first row', least(starts.map(({ rowMs }) => rowMs)), 'ms');
    print('bench: all rows', least(starts.map(({ tableMs }) => tableMs)), 'ms');
    const waited = await waits(many);
    print(`bench: key to screen while ranking ${PROFILES} profiles, median`, middle(waited), 'ms');
    print(`bench: key to screen while ranking ${PROFILES} profiles, longest`, Math.max(...waited), 'ms');
    const { shares, gainedMB } = await playing(few);
    print('bench: a run playing, computing in a second', least(shares), 's/s');
    print('bench: a run playing for 20 s, memory gained', gainedMB, 'MB');
  } finally {
    for (const folder of [few, many]) rmSync(folder, { recursive: true });
  }
}
