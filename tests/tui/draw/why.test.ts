/**
 * What does the Why screen show: findings beside the run that shows them, changes with what they would do, and before and
 * after over one another once a change is made?
 */
import { describe, expect, it } from 'vitest';
import { explained } from '../../../src/tui/bench/hear.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { drawnRows } from './drawn-frame.js';
import { afterKeys, drawnState, type Wanted } from './drawn-state.js';
import { answeredWhy } from './drawn-why.js';

const at = (columns: number, rows: number, options: Wanted['options'] = {}) =>
  drawnState({ size: { columns, rows }, options });
const textOf = async (state: BenchState) => (await drawnRows(state)).join('\n');
const flat = (text: string) => text.replaceAll(/\s+/g, ' ');

describe('Why, before anything is known', () => {
  it('says what is done and how far it is', async () => {
    const asked = afterKeys(at(80, 24), 'y');
    expect(flat(await textOf(asked))).toContain(
      'Why plain-one, pebble under kim, all 4 scenarios explaining plain-one is run as it is, and then with one suspect',
    );
    const progress = { done: 120, all: 640, purpose: 'to find what is to blame' as const };
    const [header] = await drawnRows(explained(asked, asked.why!.plan, { progress }));
    expect(header).toMatch(/explaining: 120 of 640 runs$/);
  });

  it('shows what the worst runs say, and that changes are still to come', async () => {
    const text = flat(await textOf(answeredWhy(at(80, 24), { isComplete: false })));
    expect(text).toContain('1. Too little rate gain 63 % 1');
    expect(text).toContain('Changes are tried once every run has been seen: explaining.');
  });
});

describe.each([
  [80, 24],
  [120, 40],
] as const)('Why at %i x %i', (columns, rows) => {
  const state = answeredWhy(at(columns, rows));

  it('has findings on the left, the run of the one under the cursor on the right, changes below', async () => {
    const shown = await drawnRows(state);
    const rowOf = (text: string) => shown.findIndex((row) => row.includes(text));
    expect(shown[rowOf('to blame')]).toMatch(/^ +to blame +share +falls +kerb with kim\. Pitch peaks nose/);
    expect(shown[rowOf('Too little rate gain')]).toMatch(/^▸ +1\. Too little rate gain +63 % +1 /);
    expect(rowOf('level ┤')).toBeGreaterThan(rowOf('to blame'));
    expect(shown[rowOf('level ┤')]!.indexOf('┤')).toBeGreaterThan(columns / 2);
    expect(rowOf('1) Rate gain')).toBeGreaterThan(rowOf('level ┤'));
    expect(shown[rowOf('1) Rate gain')]).toMatch(/1 to 0 +2\.51 to 0\.44 +movement of the request$/);
  });

  it('tells of the change under the cursor what gets better and what gets worse', async () => {
    const text = flat(
      (await drawnRows(afterKeys(state, 'end'))).map((row) => row.slice(0, columns * 0.54)).join(' '),
    );
    expect(text).toContain('falls from 1 to 0, score from 2.51 to 0.44. Better: settling 4.09 to 0.59 s.');
    expect(text).toContain('Worse: movement of the request 50 to 71 A/s.');
    expect(text).toContain('Enter tries it');
  });

  it('shows before and after over one another once a change is made, and alone again after undo', async () => {
    const made = afterKeys(state, 'end', 'return');
    const text = await textOf(made);
    expect(flat(text)).toMatch(/A before: upright, .*B .*after: upright, largest tilt/);
    expect(text).toMatch(/▸ +2\) made: Headroom lift/);
    expect(text).toContain('Made in the bench now');
    const undone = await textOf(afterKeys(made, 'u'));
    expect(undone).not.toMatch(/A before|made: /);
  });
});

describe('Why where there is little room', () => {
  it('at 40 x 10 keeps the finding, what it says, and a change with its scores, in ASCII', async () => {
    const text = await textOf(answeredWhy(at(40, 10, { symbols: 'ascii' })));
    expect(text).toMatch(/^> +1\. Too little rate gain +63 % +1$/m);
    expect(flat(text)).toContain(
      'Too little rate gain (rate gain 0.02 A/(deg/s), the reference set has 1.18)',
    );
    expect(text).toMatch(/1\) Rate gain from .* 2\.51 to 0\.44$/m);
    expect(text).toMatch(/^[\n\x20-\x7e]*$/);
  });

  it('says where nothing is to blame', async () => {
    const text = flat(await textOf(answeredWhy(at(60, 20), { findings: 0 })));
    expect(text).toMatch(/Not explained|Nobody is to blame/);
  });
});
