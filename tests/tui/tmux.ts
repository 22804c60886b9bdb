/**
 * A true terminal session: a shell inside tmux, in which the built program is started, typed at and looked at. The server
 * is one of its own, so that nobody else's sessions are touched.
 */
import { execFile, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { promisify } from 'node:util';
import { onTestFinished } from 'vitest';
import { PROGRAM } from '../cli/run-program.js';

/** True where tmux can be run. */
export const HAS_TMUX = spawnSync('tmux', ['-V']).status === 0;

const SOCKET = `underfoot-test-${process.pid}`;

/** How long something may take to appear, ms: far more than it does. */
const LIMIT_MS = 45_000;

const LOOK_AGAIN_MS = 25;

/** What the shell says when it waits for a command; the program never does. */
export const PROMPT = 'ready>';

const execute = promisify(execFile);

async function tmux(...given: string[]): Promise<string> {
  const { stdout } = await execute('tmux', ['-L', SOCKET, '-f', '/dev/null', ...given]);
  return stdout;
}

/** Ends the server with all of its sessions. */
export async function endServer(): Promise<void> {
  await tmux('kill-server').catch(() => undefined); // it ends by itself with its last session
}

/** A shell on a terminal. */
export interface Session {
  /** Types keys by tmux's names for them, `Enter`, `Down`, `C-c`; or characters. */
  press: (...keys: string[]) => Promise<void>;
  /** Types a text as it is. */
  type: (text: string) => Promise<void>;
  /** Sends bytes to the program. */
  send: (bytes: string) => Promise<void>;
  /** What stands on the terminal; with its colours as escape sequences if asked for. */
  screen: (asked?: { colours: true }) => Promise<string>;
  /** Waits until the screen shows something; answers that screen. */
  see: (wanted: RegExp | string) => Promise<string>;
  /** Waits until the screen shows something no more. */
  seeNo: (unwanted: RegExp | string) => Promise<string>;
  resize: (columns: number, rows: number) => Promise<void>;
  /** A thing that tmux knows of the terminal, such as `cursor_flag`. */
  fact: (name: string) => Promise<string>;
  /** Types a command of the shell. */
  run: (command: string) => Promise<void>;
  /** Starts the program; its exit code will be told as `code 0`. */
  start: (given?: string, how?: { before?: string; program?: string }) => Promise<void>;
  /** Sends a signal to the program that was started. */
  kill: (signal: NodeJS.Signals) => void;
  /** All bytes that the terminal was sent since the session began. */
  bytes: () => string;
  /** Takes the terminal away, as closing its window does. */
  hangUp: () => Promise<void>;
}

let count = 0;

/** Whether a screen shows a text or matches. */
function shows(screen: string, wanted: RegExp | string): boolean {
  return typeof wanted === 'string' ? screen.includes(wanted) : wanted.test(screen);
}

function sessionOf(name: string, own: string): Session {
  const screen: Session['screen'] = (asked) =>
    tmux('capture-pane', '-p', ...(asked?.colours ? ['-e'] : []), '-t', name);
  const until = async (what: string, isSo: (screen: string) => boolean) => {
    const endMs = performance.now() + LIMIT_MS;
    for (;;) {
      const seen = await screen();
      if (isSo(seen)) return seen;
      if (performance.now() > endMs) throw new Error(`waited in vain ${what}; the screen:\n${seen}`);
      await wait(LOOK_AGAIN_MS);
    }
  };
  const fact = async (of: string) => (await tmux('display-message', '-p', '-t', name, `#{${of}}`)).trim();
  const press = async (...keys: string[]) => {
    await tmux('send-keys', '-t', name, ...keys);
  };
  const type = async (text: string) => {
    await tmux('send-keys', '-l', '-t', name, '--', text);
  };
  const run = async (command: string) => {
    await type(command);
    await press('Enter');
  };
  return {
    press,
    type,
    screen,
    fact,
    run,
    send: async (bytes) => {
      const hex = [...Buffer.from(bytes)].map((byte) => byte.toString(16).padStart(2, '0'));
      await tmux('send-keys', '-t', name, '-H', ...hex);
    },
    see: (wanted) => until(`for ${wanted}`, (seen) => shows(seen, wanted)),
    seeNo: (unwanted) => until(`for ${unwanted} to go`, (seen) => !shows(seen, unwanted)),
    resize: async (columns, rows) => {
      await tmux('resize-window', '-t', name, '-x', String(columns), '-y', String(rows));
    },
    start: (given = '', { before = '', program = PROGRAM } = {}) =>
      run(
        `${before} sh -c 'echo $$ > "${own}/pid"; exec "${process.execPath}" "${program}" ${given}'; echo "code $?"`,
      ),
    kill: (signal) => process.kill(Number(readFileSync(join(own, 'pid'), 'utf8')), signal),
    bytes: () => readFileSync(join(own, 'bytes'), 'latin1'),
    hangUp: async () => {
      await tmux('kill-session', '-t', name);
    },
  };
}

/** Opens a shell in a folder on a terminal of so many columns and rows; it is gone when the running test is finished. */
export async function openSession(folder: string, columns = 100, rows = 30): Promise<Session> {
  count += 1;
  const name = `s${count}`;
  const own = mkdtempSync(join(tmpdir(), 'underfoot-terminal-'));
  const unset = ['CI', 'NO_COLOR', 'FORCE_COLOR', 'COLORFGBG'].flatMap((variable) => ['-u', variable]);
  const shell = ['env', ...unset, 'ENV=', `PS1=${PROMPT} `, 'sh', '-i'];
  const size = ['-x', String(columns), '-y', String(rows)];
  await tmux('new-session', '-d', '-s', name, '-c', folder, ...size, ...shell);
  await tmux('pipe-pane', '-t', name, '-O', `cat > '${own}/bytes'`);
  onTestFinished(async () => {
    await tmux('kill-session', '-t', name).catch(() => undefined); // it may be gone already
    rmSync(own, { recursive: true, force: true });
  });
  const session = sessionOf(name, own);
  await session.see(PROMPT);
  return session;
}
