/**
 * What do keys do while Why says all in words: where does the text open, how does it scroll, and what do news and another size
 * of the terminal do to it?
 */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../../src/show/colour.js';
import { explained, resized, shelved } from '../../../src/tui/bench/hear.js';
import { placeOf } from '../../../src/tui/bench/press.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { explainingText, textLines, textPage } from '../../../src/tui/bench/why-text.js';
import { sampleRemedy } from '../../show/sample-why.js';
import { answerFor } from '../draw/drawn-why.js';
import { afterKeys, rankedState, someShelf } from './some-state.js';

const SIZE = { columns: 80, rows: 24 };
const HEIGHT = SIZE.rows - 3;

const asked = resized(afterKeys(rankedState(), 'y'), SIZE);
const { plan } = asked.why!;
const answer = answerFor(asked);
const known = explained(asked, plan, { answer });

const linesOf = (state: BenchState) => textLines(state, createPaint('none'));
const topOf = (state: BenchState) => textPage(state)!.top;
const topLine = (state: BenchState) => linesOf(state)[topOf(state)]!;
const last = linesOf(known).length - HEIGHT;

describe('the whole answer in words', () => {
  it.each([
    ['t', /^1\. Too little rate gain/],
    ['down t', /^2\. The voltage ceiling/],
    ['t home', /^Why .* rides as it does/],
  ])('after %s begins with %s', (keys, line) => {
    expect(topLine(afterKeys(known, keys))).toMatch(line);
  });

  it('opens with the change under the cursor in sight', () => {
    const shown = afterKeys(known, 'end t');
    const at = linesOf(known).findIndex((line) => line.startsWith('2) Headroom lift'));
    expect(at).toBeGreaterThan(HEIGHT);
    expect(topOf(shown)).toBeLessThanOrEqual(at);
    expect(topOf(shown) + HEIGHT).toBeGreaterThan(at);
  });

  it('says why not before there is one', () => {
    const state = afterKeys(asked, 't');
    expect(state.notice?.text).toBe('in words: nothing is found yet');
    expect(state.why?.read).toBeNull();
  });

  it.each(['t', 'escape', 'q'])('gives way to the lists with %s, the cursor where it was', (key) => {
    const shown = afterKeys(known, 'down t pagedown');
    expect(placeOf(shown)).toBe('whyText');
    expect(afterKeys(shown, key)).toEqual(afterKeys(known, 'down'));
    expect(afterKeys(shown, `${key} escape`)).toMatchObject({ screen: 'rank', why: null });
  });

  it('has every change that was tried, also those that are not among the best', () => {
    const remedies = Array.from({ length: 9 }, (_, index) =>
      sampleRemedy({}, [{ path: ['gains', 'gyroLowPassHz'], unit: 'Hz', from: 40, to: 50 + index }]),
    );
    const many = explained(asked, plan, { answer: { ...answer, tried: { ...answer.tried!, remedies } } });
    const numbered = linesOf(many).filter((line) => /^\d\) /.test(line));
    expect(numbered.map((line) => [line[0], /to (\d+) Hz/.exec(line)?.[1]])).toEqual(
      remedies.map((_, index) => [String(index + 1), String(50 + index)]),
    );
    const shown = afterKeys(many, 'end t');
    const at = linesOf(many).findIndex((line) => line.startsWith('9) '));
    expect(topOf(shown)).toBeLessThanOrEqual(at);
    expect(topOf(shown) + HEIGHT).toBeGreaterThan(at);
  });
});

describe('scrolling', () => {
  it('has more than two pages to go through', () => {
    expect(last).toBeGreaterThan(HEIGHT);
  });

  it.each([
    ['home', 0],
    ['home down', 1],
    ['home j j', 2],
    ['home j j k', 1],
    ['home down up', 0],
    ['home up', 0],
    ['home pageup', 0],
    ['home pagedown', HEIGHT],
    ['home pagedown pageup', 0],
    ['end', last],
    ['end down', last],
    ['end pagedown', last],
    ['end up', last - 1],
    ['end pageup', last - HEIGHT],
    ['end home', 0],
  ])('after %s stands at line %i', (keys, top) => {
    expect(topOf(afterKeys(known, `t ${keys}`))).toBe(top);
  });

  it('comes by every line, one after the other', () => {
    let state = afterKeys(known, 't home');
    for (let top = 0; top < last; top += 1) {
      expect(topOf(state)).toBe(top);
      state = afterKeys(state, 'down');
    }
    expect(topOf(state)).toBe(last);
  });

  it('leaves the state before as it was', () => {
    const before = afterKeys(known, 't');
    const copy = structuredClone(before.why!.read);
    afterKeys(before, 'pagedown end');
    expect(before.why!.read).toBe(copy);
  });
});

describe('another size of the terminal', () => {
  const state = afterKeys(known, 't home pagedown down down');
  const word = topLine(state).trim().split(' ')[0]!;

  it.each([
    [70, 22],
    [60, 20],
    [40, 10],
  ])('leaves the same words on top at %i x %i', (columns, rows) => {
    const other = resized(state, { columns, rows });
    expect(word.length).toBeGreaterThan(2);
    expect(topLine(other).split(' ')).toContain(word);
    expect(topLine(resized(other, SIZE))).toBe(topLine(state));
  });

  it('shows the whole text from its beginning where there is room for it', () => {
    const other = resized(state, { columns: 120, rows: 90 });
    expect(textPage(other)).toMatchObject({ top: 0, count: linesOf(other).length });
    expect(topOf(afterKeys(other, 'end'))).toBe(0);
    expect(topLine(resized(other, SIZE))).toBe(topLine(state));
  });

  it('keeps to the end of the text, and scrolls back from there at once', () => {
    const end = afterKeys(known, 't end');
    const higher = resized(end, { columns: 80, rows: 30 });
    expect(topOf(higher)).toBe(linesOf(known).length - 27);
    expect(topOf(afterKeys(higher, 'up'))).toBe(topOf(higher) - 1);
  });
});

describe('news', () => {
  const first = explained(asked, plan, { answer: answerFor(asked, { isComplete: false }) });

  it('of the whole answer leads who reads to the same finding in it', () => {
    const reading = afterKeys(resized(first, { columns: 80, rows: 10 }), 'down t');
    expect(topLine(reading)).toMatch(/^2\. /);
    const told = explained(reading, plan, { answer });
    expect(topLine(told)).toMatch(/^2\. The voltage ceiling/);
    expect(told.why?.cursor).toBe(1);
  });

  it('of the whole answer leaves the beginning where it is, and the lists', () => {
    const begun = afterKeys(first, 't home');
    expect(topOf(explained(begun, plan, { answer }))).toBe(0);
    expect(explained(first, plan, { answer }).why?.read).toBeNull();
  });

  it('of runs moves nothing', () => {
    const shown = afterKeys(known, 't pagedown');
    const told = explained(shown, plan, { edgeRuns: 1234 });
    expect(topOf(told)).toBe(topOf(shown));
    expect(told.why?.cursor).toBe(0);
  });

  it('tells how far it is', () => {
    expect(explainingText(asked)).toBe('explaining');
    expect(explainingText(first)).toBe('explaining');
    expect(explainingText(known)).toBe('finding the edge: 0 runs');
    expect(explainingText(explained(known, plan, { edgeRuns: 1 }))).toBe('finding the edge: 1 run');
    const progress = { done: 3, all: 9, purpose: 'to try changes' as const };
    expect(explainingText(explained(first, plan, { progress }))).toBe('trying changes: 3 of 9 runs');
    expect(linesOf(first).join(' ')).toContain('come once every run has been seen: explaining.');
    expect(linesOf(explained(known, plan, { edgeRuns: 57 })).at(-1)).toBe(
      'How far from the edge: that is being looked for, 57 runs so far.',
    );
  });

  it('of another file asks again, and shows the lists', () => {
    const shown = afterKeys(known, 't end');
    const shelf = someShelf();
    const rider = shelf.rider.map((one) => ({ ...one }));
    expect(shelved(shown, { ...shelf, rider }).why).toMatchObject({
      answer: null,
      edge: null,
      edgeRuns: 0,
      read: null,
    });
  });
});
