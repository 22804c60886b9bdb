/**
 * Can every view of a sweep be read as text: what does it say, how is it scrolled, and which keys still do their work there?
 */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../../src/show/colour.js';
import { textWidth } from '../../../src/show/fit-text.js';
import { placeOf } from '../../../src/tui/bench/press.js';
import { resized } from '../../../src/tui/bench/hear.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { currentCandidate, leadersOf } from '../../../src/tui/bench/sweep-items.js';
import { sweepPage, sweepTextLines } from '../../../src/tui/bench/sweep-text.js';
import { begunSweep, endedSweep, runningSweep } from '../draw/drawn-sweep.js';
import { afterKeys, rankedState } from './some-state.js';

const running = runningSweep(rankedState());
const ended = endedSweep(rankedState());
const finalists = leadersOf(ended).map(({ name }) => name);
const linesOf = (state: BenchState) => sweepTextLines(state, createPaint('none'));
const textOf = (state: BenchState) => linesOf(state).join(' ').replaceAll(/\s+/g, ' ');

describe('what is said', () => {
  it('of a sweep that runs: how far it is, who is under the cursor, and the best so far', () => {
    const text = textOf(afterKeys(running, 'down t'));
    const second = currentCandidate(afterKeys(running, 'down'))!.name;
    expect(text).toMatch(/^Racing, step 2 of 3: 120 of 480 runs/);
    expect(text).toContain(`Under the cursor: ${second}: proportional`);
    expect(text).toContain(`2. ${second} with proportional`);
    expect(textOf(afterKeys(begunSweep(rankedState()), 't'))).toContain('Nobody is known yet.');
  });

  it('of the finalists: what was looked through, the one under the cursor, then all', () => {
    const text = textOf(afterKeys(ended, 'down t'));
    expect(text).toMatch(/^Board pebble, .* candidates spread over proportional/);
    expect(text.indexOf(`${finalists[1]} is weakest in`)).toBeGreaterThan(0);
    for (const [index, name] of finalists.entries()) expect(text).toContain(`${index + 1}. ${name} with`);
    const nobody = textOf(afterKeys(endedSweep(rankedState(), { isHopeless: true }), 't'));
    expect(nobody).toContain('No candidate can hold the board up by the linear view;');
  });

  it('of one who is no finalist too, where the cursor is on it', () => {
    const dropped = ended.sweep.run!.outcome!.points.find(({ fate }) => fate.kind === 'dropped')!;
    const { name } = dropped.candidate;
    const state = { ...ended, sweep: { ...ended.sweep, cursor: name } };
    for (const keys of ['t', 'tab t'])
      expect(textOf(afterKeys(state, keys))).toContain(`${name}: proportional`);
  });

  it('of the map: the metric in front, and between which numbers the falls begin', () => {
    const text = textOf(afterKeys(ended, 'tab t'));
    expect(text).toMatch(/^Score over 2 cells by proportional and rate: best /);
    expect(text).toMatch(
      /Where the falls begin, by rate: .* they stay up at proportional [\d.]+ to [\d.]+ A\/deg, and fall at .* and below/,
    );
    expect(textOf(afterKeys(ended, 'tab t m'))).toMatch(/^Share of falls over the cells of each/);
  });

  it('of the front: who is on it, and what each trades', () => {
    const text = textOf(afterKeys(ended, 'tab tab t'));
    expect(text).toMatch(/^Comfort against reserve: .* Matched by nobody in both, from the least comfort/);
    expect(textOf(afterKeys(ended, 'tab tab t x'))).toMatch(/^Comfort against agility/);
  });

  it('never that anything is safe, and fits every width in ASCII too', () => {
    for (const keys of ['t', 'tab t', 'tab tab t']) {
      for (const columns of [40, 60, 80, 120]) {
        const ascii = { ...ended, options: { ...ended.options, symbols: 'ascii' as const } };
        const lines = linesOf(afterKeys(resized(ascii, { columns, rows: 24 }), keys));
        expect(Math.max(...lines.map(textWidth))).toBeLessThanOrEqual(columns);
        expect(lines.join('\n')).toMatch(/^[\n -~]*$/);
        expect(lines.join(' ')).not.toMatch(/\bsafe/i);
      }
    }
  });
});

describe('reading', () => {
  const reading = afterKeys(resized(ended, { columns: 60, rows: 20 }), 't');

  it('scrolls by lines and pages, and stops at the ends', () => {
    const count = linesOf(reading).length;
    const topAfter = (keys: string) => sweepPage(afterKeys(reading, keys))!.top;
    expect(sweepPage(reading)).toEqual({ top: 0, height: 17, count });
    expect(topAfter('up')).toBe(0);
    expect(topAfter('down j')).toBe(2);
    expect(topAfter('down j k')).toBe(1);
    expect(topAfter('pagedown')).toBe(17);
    expect(topAfter('pagedown pageup')).toBe(0);
    expect(topAfter('end')).toBe(count - 17);
    expect(topAfter('end down')).toBe(count - 17);
    expect(topAfter('end home')).toBe(0);
  });

  it('stays at the same place at another width', () => {
    const deep = afterKeys(reading, 'pagedown');
    const page = sweepPage(deep)!;
    const wide = resized(deep, { columns: 120, rows: 20 });
    const start = linesOf(deep)[page.top]!.trim().slice(0, 20);
    const shown = linesOf(wide).slice(sweepPage(wide)!.top);
    expect(shown.slice(0, 2).join(' ')).toContain(start);
  });

  it('goes on to the next view from its first line, and ends at the form', () => {
    const map = afterKeys(reading, 'pagedown tab');
    expect([placeOf(map), map.sweep.view, sweepPage(map)!.top]).toEqual(['sweepText', 'map', 0]);
    const form = afterKeys(reading, 'tab tab tab');
    expect([placeOf(form), sweepPage(form)]).toEqual(['sweepForm', null]);
    expect(placeOf(afterKeys(form, 'tab'))).toBe('sweepText');
  });

  it('moves among the finalists, and takes one over as tables do', () => {
    expect(currentCandidate(afterKeys(reading, 'right right left'))!.name).toBe(finalists[1]);
    expect(afterKeys(reading, 'return').screen).toBe('trace');
    expect(afterKeys(reading, 'y').screen).toBe('why');
    expect(placeOf(afterKeys(reading, 'return escape'))).toBe('sweepText');
    expect(afterKeys(reading, 'r')).toMatchObject({ screen: 'rank', notice: { isFault: false } });
  });

  it.each(['escape', 't', 'q'])('gives way to tables and plots by %s', (key) => {
    const closed = afterKeys(reading, key);
    expect([closed.screen, placeOf(closed), sweepPage(closed)]).toEqual(['sweep', 'sweep', null]);
  });
});
