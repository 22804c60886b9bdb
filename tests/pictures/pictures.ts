/**
 * Makes the pictures of the README from what the program really prints and shows, and its table of keys from the keymap.
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { frameSvg } from '../../src/show/frame-svg.js';
import { format, resolveConfig } from 'prettier';
import { programFolder } from '../../src/store/places.js';
import { keyTable } from '../../src/tui/bench/key-list.js';
import { openFramed } from './bench-frames.js';

const COLUMN_COUNT = 100;

/** The terminal that the pictures of the bench show. */
const BENCH_SIZE = { columns: 112, rows: 38 };

function picture(file: string, title: string, given: string[]): void {
  const { stdout } = spawnSync(process.execPath, [join(programFolder(), 'dist/main.js'), ...given], {
    cwd: programFolder(),
    encoding: 'utf8',
    env: {
      ...process.env,
      COLUMNS: String(COLUMN_COUNT),
      NO_COLOR: '',
      FORCE_COLOR: '3',
      COLORTERM: 'truecolor',
    },
  });
  const lines = [`$ underfoot ${given.join(' ')}`, '', ...stdout.trimEnd().split('\n')];
  writeFileSync(
    join(programFolder(), '.github', file),
    frameSvg(lines, { title, columnCount: COLUMN_COUNT }),
  );
}

picture('rank.svg', 'The ranked table of the starter profiles', ['rank']);
picture('run.svg', 'One run: pitch, current under its ceilings and speed', ['run', 'linen', 'low-pack-run']);

/** The ride card of a profile that is kept for the occasion. */
function cardPicture(): void {
  const folder = mkdtempSync(join(tmpdir(), 'underfoot-picture-'));
  try {
    const run = (...given: string[]) => {
      const program = join(programFolder(), 'dist/main.js');
      const { status, stderr } = spawnSync(process.execPath, [program, ...given], {
        cwd: folder,
        encoding: 'utf8',
      });
      if (status !== 0) throw new Error(`${given.join(' ')}: ${stderr}`);
    };
    run('init');
    run('shortlist', 'add', 'canvas', '--rider', 'light,regular,heavy');
    run('export', 'canvas', '--as', 'card', '--out', 'card.svg');
    copyFileSync(join(folder, 'card.svg'), join(programFolder(), '.github/ride-card.svg'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The Rank screen with the cursor on a profile that falls in places, and the run in which a good one falls. */
async function benchPictures(): Promise<void> {
  const bench = await openFramed(BENCH_SIZE);
  const draw = async (file: string, title: string, keys: string[]) => {
    const svg = frameSvg(await bench.frame(keys), { title, columnCount: BENCH_SIZE.columns });
    writeFileSync(join(programFolder(), '.github', file), svg);
  };
  await draw('bench-rank.svg', 'The Rank screen of the bench', ['end']);
  await draw('bench-trace.svg', 'The Trace screen of the bench', ['home', 'down', 'down', 'down', 'return']);
  await draw('bench-why.svg', 'The Why screen of the bench', ['escape', 'end', 'y']);
  await bench.close();
}

/** Puts the table of keys between its marks in the README. */
async function keysInReadme(): Promise<void> {
  const path = join(programFolder(), 'README.md');
  const readme = readFileSync(path, 'utf8');
  const marks = /(<!-- keys -->)[^]*(<!-- \/keys -->)/;
  const written = readme.replace(
    marks,
    (_all, begin: string, end: string) => `${begin}\n\n${keyTable()}\n\n${end}`,
  );
  writeFileSync(path, await format(written, { ...(await resolveConfig(path)), filepath: path }));
}

cardPicture();
await benchPictures();
await keysInReadme();
