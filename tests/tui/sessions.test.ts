/**
 * Does the bench do on a true terminal what it should, and leave that terminal as it was, whatever ends it? Nothing here
 * depends on how long something takes.
 */
import { cpSync, existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { programFolder } from '../../src/store/places.js';
import { PROGRAM } from '../cli/run-program.js';
import { smallFolder } from '../store/small-folder.js';
import { allPaths, tempFolder } from '../store/temp-folder.js';
import { endServer, HAS_TMUX, openSession, PROMPT, type Session } from './tmux.js';

const ESC = String.fromCodePoint(0x1b);
const CODE = /^code \d+/m;
const RANKED = /ranked/;

if (!HAS_TMUX && process.env['CI'] !== undefined) throw new Error('tmux is missing; these tests need it');

afterAll(endServer);

/** A session in which something stands on the screen already, and how its terminal is set. */
async function readySession(folder: string, columns?: number, rows?: number) {
  const session = await openSession(folder, columns, rows);
  const settings = join(tempFolder(), 'stty');
  await session.run(`stty -a > '${settings}'; echo begun-''here`);
  await session.see('begun-here');
  return { session, settings };
}

/** Switches of terminal modes in the order in which they were sent, the last of each. */
function lastModes(bytes: string): Record<string, string> {
  const switches = [...bytes.matchAll(new RegExp(`${ESC}\\[\\?(\\d+)([hl])`, 'g'))];
  return Object.fromEntries(switches.map(([, mode, to]) => [mode, to]));
}

/** Expects the program to have ended with a code, the terminal as it was before, and nothing cleared meanwhile. */
async function expectRestored({ session, settings }: Awaited<ReturnType<typeof readySession>>, code: number) {
  const screen = await session.see(new RegExp(`^code ${code}$`, 'm'));
  expect(screen).toContain('begun-here');
  await session.run(`stty -a > '${settings}2'; echo looked-''again`);
  await session.see('looked-again');
  expect(readFileSync(`${settings}2`, 'utf8')).toBe(readFileSync(settings, 'utf8'));
  expect([await session.fact('alternate_on'), await session.fact('cursor_flag')]).toEqual(['0', '1']);
  expect(lastModes(session.bytes())).toEqual({ 7: 'h', 25: 'h', 1049: 'l', 2004: 'l', 2026: 'l' });
  expect(session.bytes()).not.toMatch(new RegExp(`${ESC}\\[[0-3]?J`));
  return screen;
}

/** Plays a run for a while from the Rank screen. */
async function play(session: Session) {
  await session.press('Enter');
  await session.see(/^Trace/);
  await session.see('measured');
  await session.press('Home');
  await session.press('-', '-', '-', 'Space');
  await session.see(/playing at/);
}

/** Changes a number of the profile under the cursor. An Escape needs a pause behind it, or it is Alt with the next key. */
async function edit(session: Session) {
  await session.press('e');
  await session.see('Esc done');
  await session.press('Right', 'Escape');
  await session.seeNo('Esc done');
}

describe.skipIf(!HAS_TMUX)('a session in tmux (left out where tmux is missing)', () => {
  it('goes from Rank to Trace, plays, compares, asks for help and leaves', async () => {
    const ready = await readySession(smallFolder());
    const { session } = ready;
    await session.start();
    await session.see(RANKED);
    await play(session);
    await session.press('Space');
    await session.seeNo(/playing at/);
    await session.press('Escape');
    await session.see(/^underfoot/);
    await session.press('Space', 'Down', 'Space', 'c');
    await session.see(/^Compare/);
    await session.press('q');
    await session.see(/^underfoot/);
    await session.press('?');
    await session.see('All keys');
    await session.type('leave');
    await session.see('leave underfoot');
    await session.press('Escape');
    await session.seeNo('All keys');
    await session.press('q');
    await expectRestored(ready, 0);
  });

  it('asks once before it leaves unsaved changes behind', async () => {
    const ready = await readySession(smallFolder());
    const { session } = ready;
    await session.start();
    await session.see(RANKED);
    await edit(session);
    await session.press('q');
    await session.see('not saved');
    expect(await session.screen()).not.toMatch(CODE);
    await session.press('q');
    await expectRestored(ready, 0);
  });

  const ENDS = [
    ['TERM', 143, (session: Session) => session.kill('SIGTERM')],
    ['HUP', 129, (session: Session) => session.kill('SIGHUP')],
    ['INT', 130, (session: Session) => session.kill('SIGINT')],
    ['Ctrl-C', 130, (session: Session) => session.press('C-c')],
  ] as const;

  it.each(ENDS)(
    'gives the terminal back after %s with code %i in the middle of ranking',
    async (_, code, end) => {
      const ready = await readySession(tempFolder());
      await ready.session.start();
      await ready.session.see(/ranking/);
      await end(ready.session);
      await expectRestored(ready, code);
    },
  );

  it.each(ENDS)('gives the terminal back after %s with code %i while a run plays', async (_, code, end) => {
    const ready = await readySession(smallFolder());
    await ready.session.start();
    await ready.session.see(RANKED);
    await play(ready.session);
    await end(ready.session);
    await expectRestored(ready, code);
  });

  /** A program of its own whose threads run this in place of their work. */
  function programWith(worker: string): string {
    const own = tempFolder();
    for (const part of ['dist', 'package.json', 'profiles', 'scenarios'])
      cpSync(join(programFolder(), part), join(own, part), { recursive: true });
    symlinkSync(join(programFolder(), 'node_modules'), join(own, 'node_modules'));
    writeFileSync(join(own, 'dist/tasks/worker.js'), worker);
    return join(own, 'dist/main.js');
  }

  it('gives the terminal back, tells the error and ends with 1 when it fails inside', async () => {
    const program = programWith('export const cells = ({ trials }) => trials.map(() => ({}));\n');
    const ready = await readySession(tempFolder());
    await ready.session.start('', { program });
    expect(await expectRestored(ready, 1)).toMatch(/Cannot (read|destructure)/);
  });

  it('tells a run that cannot be computed, goes on and leaves as always', async () => {
    const program = programWith(`export const cells = () => { throw new Error('broken on purpose'); };\n`);
    const ready = await readySession(tempFolder());
    await ready.session.start('', { program });
    await ready.session.see('expected runs that can be computed');
    await ready.session.press('q');
    await expectRestored(ready, 0);
  });

  it('ends with 129 when its terminal is closed', async () => {
    const told = join(tempFolder(), 'code');
    const { session } = await readySession(tempFolder());
    await session.run(`sh -c 'trap "" HUP; "${process.execPath}" "${PROGRAM}"; echo $? > "${told}"'`);
    await session.see(/ranking/);
    await session.hangUp();
    await vi.waitUntil(() => existsSync(told) && readFileSync(told, 'utf8') !== '', { timeout: 45_000 });
    expect(readFileSync(told, 'utf8')).toBe('129\n');
  });

  it('can be stopped and goes on where it was', async () => {
    const ready = await readySession(smallFolder());
    const { session } = ready;
    await session.start();
    await session.see(RANKED);
    await session.press('C-z');
    await session.see(PROMPT);
    expect(await session.see('begun-here')).not.toContain('ranked');
    expect([await session.fact('alternate_on'), await session.fact('cursor_flag')]).toEqual(['0', '1']);
    await session.run('fg; echo "code $?"');
    await session.see(RANKED);
    expect([await session.fact('alternate_on'), await session.fact('cursor_flag')]).toEqual(['1', '0']);
    await session.press('?');
    await session.see('All keys');
    await session.press('C-c');
    await expectRestored(ready, 130);
  });

  it('follows files that change beside it, and keeps the last good version of a faulty one', async () => {
    const folder = smallFolder();
    const path = join(folder, 'profiles/gains/linen.yaml');
    const good = readFileSync(path, 'utf8');
    const { session } = await readySession(folder);
    await session.start();
    await session.see(RANKED);
    writeFileSync(join(folder, 'profiles/gains/silk.yaml'), good);
    await session.see('silk');
    writeFileSync(path, good.replace(/^( *proportionalAPerDeg:).*$/m, '$1 lots'));
    await session.see(/proportionalAPerDeg.*expected/);
    expect(await session.screen()).toContain('linen');
    await session.press('!');
    await session.see(/linen\.yaml/);
    writeFileSync(path, good);
    await session.press('Escape');
    await session.seeNo(/proportionalAPerDeg.*expected/);
    await session.press('C-c');
    await session.see(CODE);
  });

  it('takes pastes, mouse reports and unknown keys for what they are', async () => {
    const ready = await readySession(smallFolder());
    const { session } = ready;
    await session.start();
    await session.see(RANKED);
    await session.send(`${ESC}[200~qqq\nq${ESC}[201~`);
    await session.send(
      `${ESC}[<0;10;5M${ESC}[<0;10;5m${ESC}[M !!${ESC}[1;5P${ESC}[I${ESC}]11;rgb:0/0/0${ESC}\\`,
    );
    await session.press('/');
    await session.send(`${ESC}[200~lin\n${ESC}[201~${ESC}[<64;1;1M${ESC}[1;5P${ESC}[1;5P`);
    await session.see(/lin\b/);
    await session.press('Enter');
    await session.seeNo('tweed');
    await session.press('/', 'BSpace', 'BSpace', 'BSpace', 'BSpace', 'Enter');
    await session.see('tweed');
    expect(await session.screen()).toMatch(/^underfoot {2}otter under regular, all 2 scenarios /);
    await session.press('q');
    await expectRestored(ready, 0);
  });

  it('fits every size of the terminal', async () => {
    const ready = await readySession(smallFolder(), 120, 40);
    const { session } = ready;
    await session.start();
    await session.see(RANKED);
    for (const [columns, rows] of [
      [80, 24],
      [60, 20],
      [40, 10],
      [30, 6],
      [120, 40],
    ] as const) {
      await session.resize(columns, rows);
      if (columns === 30) {
        await session.see('underfoot needs');
        continue;
      }
      const isFitted = new RegExp(`^underfoot(?:.*\\n){${rows - 1}}.*all keys`);
      const lines = (await session.see(isFitted)).trimEnd().split('\n');
      expect(lines).toHaveLength(rows);
      expect(lines.filter((line) => line.startsWith('underfoot'))).toHaveLength(1);
      expect(lines.filter((line) => line.includes('all keys'))).toHaveLength(1);
    }
    await session.press('q');
    await expectRestored(ready, 0);
  });

  it('saves a changed profile and exports the table into new files, never over one', async () => {
    const folder = smallFolder();
    const { session } = await readySession(folder);
    const before = allPaths(folder);
    const gains = join(folder, 'profiles/gains');
    const old = readFileSync(join(gains, 'linen.yaml'), 'utf8');
    await session.start();
    await session.see(RANKED);
    const write = async (key: string, name: string) => {
      await session.press(key, 'C-u');
      await session.type(name);
      await session.press('Enter');
    };
    await write('x', 'table.csv');
    await session.see('wrote table.csv');
    const table = readFileSync(join(folder, 'table.csv'), 'utf8');
    expect(table.split('\n').length).toBeGreaterThan(3);
    await write('x', 'table.csv');
    await session.see(/table\.csv: expected a new file/);
    await session.press('Escape');
    await edit(session);
    await write('w', 'linen');
    await session.see(/linen\.yaml: expected a name that no profile has/);
    await write('w', 'silk');
    await session.see('wrote profiles/gains/silk.yaml');
    await session.press('C-c');
    await session.see(CODE);
    expect(allPaths(folder)).toEqual([...before, 'profiles/gains/silk.yaml', 'table.csv'].toSorted());
    expect(readFileSync(join(gains, 'linen.yaml'), 'utf8')).toBe(old);
    expect(readFileSync(join(folder, 'table.csv'), 'utf8')).toBe(table);
  });

  it('keeps to NO_COLOR, --symbols ascii and --no-animation', async () => {
    const ready = await readySession(smallFolder());
    const { session } = ready;
    await session.start('--symbols ascii --no-animation', { before: 'NO_COLOR=1' });
    await session.see(RANKED);
    await session.press('Enter');
    await session.see(/^Trace/);
    await session.see('measured');
    const screen = await session.screen({ colours: true });
    expect(screen).not.toMatch(new RegExp(`${ESC}\\[[\\d;:]*(?:[349]\\d|10\\d)[\\d;:]*m`));
    expect(await session.screen()).toMatch(/^[\n -~]*$/);
    await session.press('Space');
    await session.see('no-animation');
    await session.press('C-c');
    await expectRestored(ready, 130);
  });
});
