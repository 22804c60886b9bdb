/** Is the terminal put back, once, whatever ends the program? Children print into one file, so that the order is seen. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openTerminal } from '../../../src/tui/terminal/guard.js';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const TAKEN = '^[?1049h^[?25l^[?2004h';
const GIVEN_BACK = '^[?2026l^[?7h^[m^[?2004l^[?25h^[?1049l';

let folder: string;
let fd: number;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'underfoot-guard-'));
  fd = openSync(join(folder, 'terminal'), 'w');
});

afterEach(() => {
  closeSync(fd);
  rmSync(folder, { recursive: true });
});

/** What the terminal was sent, Escape shown as `^`. */
const sent = () => readFileSync(join(folder, 'terminal'), 'utf8').replaceAll('\u001b', '^');

describe('a terminal', () => {
  const modes: boolean[] = [];
  const stdin = { setRawMode: (mode: boolean) => modes.push(mode) };
  const listenerCounts = () => [process.listenerCount('exit'), process.listenerCount('SIGCONT')];

  beforeEach(() => {
    modes.length = 0;
  });

  afterEach(() => {
    vi.restoreAllMocks();
  });

  it('is taken and given back once', () => {
    const before = listenerCounts();
    const terminal = openTerminal({ stdin, stdout: { fd } });
    expect([sent(), modes]).toEqual([TAKEN, [true]]);
    terminal.close();
    terminal.close();
    expect([sent(), modes]).toEqual([TAKEN + GIVEN_BACK, [true, false]]);
    expect(listenerCounts()).toEqual(before);
  });

  it('has each of its modes switched back', () => {
    openTerminal({ stdin, stdout: { fd } }).close();
    const last = new Map([...sent().matchAll(/\^\[\?(\d+)([hl])/g)].map(([, mode, state]) => [mode, state]));
    expect(Object.fromEntries(last)).toEqual({ 7: 'h', 25: 'h', 1049: 'l', 2004: 'l', 2026: 'l' });
  });

  it('is given back for a stop and taken again afterwards', () => {
    const onResume = vi.fn<() => void>();
    const terminal = openTerminal({ stdin, stdout: { fd }, onResume });
    const kill = vi.spyOn(process, 'kill').mockImplementation(() => {
      expect([sent(), modes.at(-1)]).toEqual([TAKEN + GIVEN_BACK, false]);
      expect(onResume).not.toHaveBeenCalled();
      return true;
    });
    terminal.suspend();
    expect(kill.mock.calls).toEqual([[0, 'SIGTSTP']]);
    expect([sent(), modes.at(-1)]).toEqual([TAKEN + GIVEN_BACK + TAKEN, true]);
    expect(onResume).toHaveBeenCalledOnce();
    terminal.close();
    expect(sent()).toBe(TAKEN + GIVEN_BACK + TAKEN + GIVEN_BACK);
  });

  it('has its modes set again after a stop from outside', () => {
    const onResume = vi.fn<() => void>();
    const terminal = openTerminal({ stdin, stdout: { fd }, onResume });
    process.emit('SIGCONT');
    expect([sent(), modes]).toEqual([`${TAKEN}^[?25l^[?2004h`, [true, false, true]]);
    expect(onResume).toHaveBeenCalledOnce();
    terminal.close();
    process.emit('SIGCONT');
    expect(onResume).toHaveBeenCalledOnce();
  });

  it('that is gone makes no trouble', () => {
    const gone = {
      setRawMode() {
        throw new Error('EIO');
      },
    };
    expect(() => openTerminal({ stdin: gone, stdout: { fd: 99_999 } }).close()).not.toThrow();
  });
});

describe('a program that ends', () => {
  const [bundle] = buildSync({
    stdin: {
      contents: `
        import { watchForEndings } from './src/cli/endings.ts';
        import { openTerminal } from './src/tui/terminal/guard.ts';
        watchForEndings();
        openTerminal({ stdin: { setRawMode() {} }, stdout: process.stdout });
        process.stderr.write('OPEN');
        const endings = {
          throw: () => { throw new Error('broken'); },
          reject: () => Promise.reject(new Error('broken')),
          exit: () => process.exit(7),
          end: () => {},
        };
        const ending = endings[process.argv[2]];
        if (ending) setTimeout(ending, 10);
        else setTimeout(() => {}, 60_000) && process.send('ready');
      `,
      resolveDir: ROOT,
      loader: 'ts',
    },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
  }).outputFiles;

  /** Runs the program until it ends by itself or by a signal. */
  async function ended(by: string): Promise<{ code: number | null; after: string }> {
    const isSignal = by.startsWith('SIG');
    const child = spawn(process.execPath, ['--input-type=module', '-', by], {
      stdio: ['pipe', fd, fd, 'ipc'],
    });
    child.stdin!.end(bundle!.text);
    if (isSignal) {
      await once(child, 'message');
      child.kill(by as NodeJS.Signals);
    }
    const [code] = (await once(child, 'close')) as [number | null];
    expect(sent()).toMatch(`${TAKEN}OPEN`);
    return { code, after: sent().slice(`${TAKEN}OPEN`.length) };
  }

  it.each(['throw', 'reject'])('by an error (%s): given back before the error is printed', async (by) => {
    const { code, after } = await ended(by);
    expect(code).toBe(1);
    expect(after.startsWith(GIVEN_BACK)).toBe(true);
    expect(after.slice(GIVEN_BACK.length)).toMatch(/Error: broken/);
    expect(after.split(GIVEN_BACK)).toHaveLength(2);
  });

  it.each([
    ['exit', 7],
    ['end', 0],
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ])('by %s: given back, code %i', async (by, code) => {
    expect(await ended(by)).toEqual({ code, after: GIVEN_BACK });
  });
});
