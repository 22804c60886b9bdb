/**
 * What do a bare `underfoot` and `underfoot bench` do where there is no terminal, and what do they say to what they do not
 * understand?
 */
import { spawnSync } from 'node:child_process';
import { Command } from 'commander';
import { describe, expect, it, vi } from 'vitest';
import { addBenchCommand } from '../../src/cli/bench-command.js';
import type { BenchRequest } from '../../src/tasks/bench-request.js';
import { smallFolder } from '../store/small-folder.js';
import { tempFolder } from '../store/temp-folder.js';
import { PROGRAM, runProgram } from './run-program.js';

const ESC = String.fromCodePoint(0x1b);
const HAS_SCRIPT = spawnSync('script', ['--version'], { encoding: 'utf8' }).stdout?.includes('util-linux');

/** Runs the program on a terminal (util-linux `script`), where output and complaints come together. */
function onTerminal(given: string, environment: Record<string, string> = {}) {
  const command = `'${process.execPath}' '${PROGRAM}' ${given}`;
  const { status, stdout } = spawnSync('script', ['-q', '-e', '-c', command, '/dev/null'], {
    cwd: smallFolder(),
    encoding: 'utf8',
    input: '',
    env: { ...process.env, SHELL: '/bin/sh', TERM: 'xterm-256color', CI: '', NO_COLOR: '1', ...environment },
  });
  return { code: status, out: stdout };
}

describe('without a terminal', () => {
  it('a bare underfoot prints the ranked table, says why on the standard error, and ends with 0', () => {
    const folder = smallFolder();
    const { code, out, err } = runProgram(folder);
    expect([code, out]).toEqual([0, runProgram(folder, 'rank').out]);
    expect(err).toMatch(/^no terminal for the bench: this is what underfoot rank prints\n/);
    expect(out + err).not.toContain(ESC);
  });

  it('underfoot bench tells the command that prints the same, and ends with 2', () => {
    expect(runProgram(tempFolder(), 'bench')).toEqual({
      code: 2,
      out: '',
      err: 'error: the bench needs a terminal; the same table is printed by underfoot rank\n',
    });
  });
});

describe.skipIf(!HAS_SCRIPT)('on a terminal', () => {
  it.each([{ TERM: 'dumb' }, { CI: 'true' }])('%o is as good as none', (environment) => {
    const bench = onTerminal('bench', environment);
    expect(bench.code).toBe(2);
    expect(bench.out).toContain('the same table is printed by underfoot rank');
    const bare = onTerminal('', environment);
    expect(bare.code).toBe(0);
    expect(bare.out).toContain('this is what underfoot rank prints');
    expect(bench.out + bare.out).not.toContain(`${ESC}[?1049h`);
  });

  it('all that is wrong with a setup is told at once, with suggestions, and nothing full-screen is begun', () => {
    const { code, out } = onTerminal('--board oter --rider regulr,nobody --scenarios shov');
    expect(code).toBe(2);
    expect(out).toMatch(/'oter'.*did you mean otter/);
    expect(out).toMatch(/'regulr'.*did you mean regular/);
    expect(out).toContain("'nobody'");
    expect(out).toMatch(/'shov'.*did you mean shove/);
    expect(out).not.toContain(ESC);
  });

  it('an unknown option is told with a suggestion', () => {
    const { code, out } = onTerminal('--bord otter');
    expect(code).toBe(2);
    expect(out).toMatch(/unknown option '--bord'[^]*--board/);
    expect(out).not.toContain(ESC);
  });
});

describe('what the bench is opened with', () => {
  const opened = async (...given: string[]) => {
    const requests: BenchRequest[] = [];
    const program = new Command();
    addBenchCommand(program, async (request) => {
      requests.push(request);
      return { kind: 'left' };
    });
    const set = (stream: { isTTY: boolean }, isTTY: boolean) =>
      Object.defineProperty(stream, 'isTTY', { value: isTTY, configurable: true });
    const before = [process.stdin.isTTY, process.stdout.isTTY] as const;
    vi.stubEnv('CI', '').stubEnv('TERM', 'xterm-256color');
    set(process.stdin, true);
    set(process.stdout, true);
    try {
      await program.parseAsync(['bench', ...given], { from: 'user' });
    } finally {
      set(process.stdin, before[0]);
      set(process.stdout, before[1]);
      vi.unstubAllEnvs();
    }
    return requests[0]!;
  };

  it('leaves out what is not named', async () => {
    expect(await opened()).toMatchObject({ setup: {}, seeds: [1] });
  });

  it('stands for every rider with all, alone or among names', async () => {
    expect((await opened('--rider', 'all')).setup).toEqual({ riders: null });
    expect((await opened('--rider', 'heavy,all')).setup).toEqual({ riders: null });
    expect((await opened('--rider', 'heavy,light')).setup).toEqual({ riders: ['heavy', 'light'] });
  });

  it('has as many seeds as are asked for', async () => {
    expect((await opened('--seeds', '3')).seeds).toEqual([1, 2, 3]);
  });
});

it('a mistyped command is still a mistyped command', () => {
  const { code, out, err } = runProgram(tempFolder(), 'rnak');
  expect([code, out]).toEqual([2, '']);
  expect(err).toMatch(/unknown command 'rnak'[^]*rank/);
});

it('the help tells of the bench', () => {
  expect(runProgram(tempFolder(), '--help').out).toMatch(/^ +bench .*full-screen/m);
  expect(runProgram(tempFolder(), 'bench', '--help').out).toMatch(/^Example: underfoot bench/);
});
