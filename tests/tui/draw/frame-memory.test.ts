/**
 * Does drawing through React and Ink keep its memory? Ten thousand frames of the Rank screen, every one another, in a process of
 * its own with the production build of React, as the built program has it.
 */
import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { bundled, ROOT } from '../../bundled.js';

const PROGRAM = `
const { createElement } = await import('react');
const { render } = await import('ink');
const { createStore } = await import('./src/tui/bench/store.ts');
const { createScreen } = await import('./src/tui/terminal/screen.ts');
const { Bench } = await import('./src/tui/app/bench.tsx');
const { drawnState } = await import('./tests/tui/draw/drawn-state.ts');
const size = { columns: 60, rows: 20 };
let bytes = 0;
const screen = createScreen({ ...size, write: (text) => ((bytes += text.length), true), on() {}, off() {} });
const store = createStore(drawnState({ size }));
const options = { stdout: screen.stdout, debug: true, patchConsole: false, exitOnCtrlC: false };
render(createElement(Bench, { store }), options);
const heapMB = () => (globalThis.gc(), process.memoryUsage().heapUsed / 1e6);
const heaps = [];
for (let frame = 1; frame <= 10000; frame += 1) {
  store.change((state) => ({
    ...state,
    progress: { doneCells: frame, allCells: 20000 },
    notice: { text: 'frame ' + frame, isFault: false },
    rank: { ...state.rank, cursor: state.rows[frame % state.rows.length].name },
  }));
  await new Promise((resolve) => setImmediate(resolve));
  if (frame === 1000 || frame === 10000) heaps.push(heapMB());
}
console.log(JSON.stringify({ heaps, bytes }));
process.exit(0);
`;

it('stays within 5 MB from the thousandth to the ten-thousandth frame', { timeout: 300_000 }, () => {
  const { stdout, stderr } = spawnSync(process.execPath, ['--expose-gc', '--input-type=module'], {
    input: bundled(PROGRAM),
    cwd: ROOT,
    encoding: 'utf8',
    env: { ...process.env, NODE_ENV: 'production', CI: 'false' },
  });
  expect(stderr).toBe('');
  const { heaps, bytes } = JSON.parse(stdout) as { heaps: [number, number]; bytes: number };
  // Every frame was really another one.
  expect(bytes).toBeGreaterThan(10_000 * 20);
  expect(heaps[1] - heaps[0]).toBeLessThan(5);
});
