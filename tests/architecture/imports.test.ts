/**
 * Holds the house to its plan: imports point down the ranks, rooms of one rank leave each other alone, outside packages stay in
 * their rooms, and files stay readable in one sitting.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const SOURCE = resolve(dirname(fileURLToPath(import.meta.url)), '../../src');

/** Rank of each room and what it may take from outside; `node` allows the built-in modules. */
const ROOMS: Record<string, { rank: number; packages: string[]; node?: boolean }> = {
  quantity: { rank: 0, packages: ['zod', 'fastest-levenshtein'] },
  model: { rank: 1, packages: [] },
  scenario: { rank: 1, packages: ['pure-rand'] },
  control: { rank: 2, packages: [] },
  simulate: { rank: 3, packages: [] },
  linear: { rank: 4, packages: ['ml-matrix'] },
  measure: { rank: 4, packages: [] },
  sweep: { rank: 5, packages: ['ml-matrix'] },
  explain: { rank: 5, packages: [] },
  show: { rank: 6, packages: ['string-width', 'uqr'] },
  store: { rank: 6, packages: ['yaml', 'write-file-atomic'], node: true },
  tasks: { rank: 7, packages: ['tinypool'], node: true },
  cli: { rank: 8, packages: ['commander'], node: true },
  tui: { rank: 8, packages: ['ink', 'react'], node: true },
  'main.ts': { rank: 9, packages: [], node: true },
};

/** odex is CommonJS without declarations; the one file that knows it needs `require`. */
const EXCEPTIONS: Record<string, string[]> = { 'simulate/reference.ts': ['node:module'] };

/** Inside of the bench, imports point down too. */
const BENCH_RANKS: Record<string, number> = { terminal: 0, bench: 1, draw: 2, app: 3, 'open-bench.ts': 4 };

const LINE_LIMIT = 250;

interface Import {
  file: string;
  from: string;
}

function sourceFiles(): string[] {
  return readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => path.split(sep).join('/'))
    .sort();
}

function importsOf(file: string): Import[] {
  const text = readFileSync(join(SOURCE, file), 'utf8');
  const pattern =
    /^(?:import|export|\})[^;']*?\bfrom\s+'([^']+)'|^import\s+'([^']+)'|\bimport\(\s*'([^']+)'/gm;
  return [...text.matchAll(pattern)].map(([, from, bare, lazy]) => ({ file, from: (from ?? bare ?? lazy)! }));
}

const roomOf = (file: string) => file.split('/')[0]!;

function faultOf({ file, from }: Import): string | null {
  const room = ROOMS[roomOf(file)];
  if (room === undefined) return `${file} is in no room of the plan`;
  if (from.startsWith('.')) {
    const target = relative(SOURCE, resolve(SOURCE, dirname(file), from))
      .split(sep)
      .join('/');
    const other = ROOMS[roomOf(target)];
    if (other === undefined) return `${file} imports ${target}, which is in no room of the plan`;
    if (roomOf(file) === 'tui' && roomOf(target) === 'tui') return faultInBench(file, target);
    if (roomOf(target) === roomOf(file) || other.rank < room.rank) return null;
    return `${file} (rank ${room.rank}) imports ${target} (rank ${other.rank})`;
  }
  if (EXCEPTIONS[file]?.includes(from)) return null;
  if (from.startsWith('node:')) return room.node ? null : `${file} imports ${from}`;
  const name = from.split('/')[0]!;
  return room.packages.includes(name) ? null : `${file} imports the package ${name}`;
}

function faultInBench(file: string, target: string): string | null {
  const [part, otherPart] = [file, target].map((path) => path.split('/')[1]!.replace(/\.js$/, '.ts'));
  const [rank, otherRank] = [BENCH_RANKS[part!], BENCH_RANKS[otherPart!]];
  if (rank === undefined || otherRank === undefined) return `${file} or ${target} is in no part of the bench`;
  return part === otherPart || otherRank < rank ? null : `${file} imports ${target}`;
}

describe('the plan of the house', () => {
  const files = sourceFiles();
  const imports = files.flatMap(importsOf);

  it('finds the sources and their imports', () => {
    expect(files.length).toBeGreaterThan(50);
    expect(imports.length).toBeGreaterThan(files.length);
  });

  it('has no import against the ranks', () => {
    expect(imports.map(faultOf).filter((fault) => fault !== null)).toEqual([]);
  });

  it('sees an import against the ranks', () => {
    expect(faultOf({ file: 'model/tyre.ts', from: '../scenario/road.js' })).toContain('rank 1');
    expect(faultOf({ file: 'model/tyre.ts', from: 'node:fs' })).toContain('node:fs');
    expect(faultOf({ file: 'show/plot.ts', from: 'yaml' })).toContain('yaml');
    expect(faultOf({ file: 'model/tyre.ts', from: '../quantity/units.js' })).toBeNull();
    expect(faultOf({ file: 'tui/bench/rows.ts', from: '../draw/table.js' })).toContain('draw/table');
    expect(faultOf({ file: 'tui/draw/table.ts', from: '../bench/rows.js' })).toBeNull();
  });

  it('uses every package in exactly the rooms that may', () => {
    const manifest = JSON.parse(readFileSync(join(SOURCE, '../package.json'), 'utf8')) as {
      dependencies: Record<string, string>;
    };
    const allowed = new Set([...Object.values(ROOMS).flatMap(({ packages }) => packages), 'odex']);
    expect(Object.keys(manifest.dependencies).filter((name) => !allowed.has(name))).toEqual([]);
    const pinned = Object.values(manifest.dependencies).every((version) => /^\d+\.\d+\.\d+$/.test(version));
    expect(pinned).toBe(true);
  });

  it('keeps every file readable in one sitting', () => {
    const long = files
      .map((file) => ({ file, lines: readFileSync(join(SOURCE, file), 'utf8').split('\n').length }))
      .filter(({ lines }) => lines > LINE_LIMIT);
    expect(long).toEqual([]);
  });

  it('begins every file with what it answers', () => {
    expect(files.filter((file) => !readFileSync(join(SOURCE, file), 'utf8').startsWith('/**'))).toEqual([]);
  });
});
