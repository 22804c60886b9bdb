/**
 * Does a screen grow with the frames that it has shown? 10,000 changing frames in a process of its own; what is alive
 * after a collection is compared with what was after 1,000.
 */
import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { bundled, ROOT } from '../../bundled.js';

const PROGRAM = `
import { EventEmitter } from 'node:events';
import { createScreen } from './src/tui/terminal/screen.ts';
let updateCount = 0;
const out = Object.assign(new EventEmitter(), { columns: 120, rows: 40, write: () => { updateCount++; return updateCount % 7 > 0; } });
const screen = createScreen(out);
const line = (count, row) => \`\\u001b[38;5;\${count % 256}mrow \${row} of frame \${count} \${(count * row) % 9973} ° ⣿ \${row % 8 ? '' : '世'}\\u001b[39m\`;
const lines = (count, rowCount) => Array.from({ length: rowCount }, (_, row) => line(count, row));
const aliveAt = {};
for (let count = 1; count <= 10_000; count++) {
  if (count % 8 === 0) screen.stdout.write(lines(count, 40).join('\\n'));
  screen.paint(5, lines(count, 10));
  await null;
  out.emit('drain');
  if (count === 1000 || count === 10_000) {
    globalThis.gc();
    aliveAt[count] = process.memoryUsage().heapUsed;
  }
}
console.log(JSON.stringify({ updateCount, grownBytes: aliveAt[10_000] - aliveAt[1000] }));
`;

it('stays within 5 MB over 9,000 frames', () => {
  const printed = execFileSync(process.execPath, ['--expose-gc', '--input-type=module'], {
    input: bundled(PROGRAM),
    cwd: ROOT,
    encoding: 'utf8',
  });
  const { updateCount, grownBytes } = JSON.parse(printed) as { updateCount: number; grownBytes: number };
  expect(updateCount).toBeGreaterThan(9000);
  expect(grownBytes).toBeLessThan(5e6);
});
