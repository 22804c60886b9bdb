/**
 * What do keys do with time and runs on Trace and Compare?
 */
import { describe, expect, it } from 'vitest';
import { firstCutRow, peakRow } from '../../../src/measure/moments.js';
import { measuredSpan } from '../../../src/show/run-view.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { cursorS, played, RATES, spanInSight, wholeSpan } from '../../../src/tui/bench/time-acts.js';
import { afterKeys, afterKeysSettled, afterTyping, rankedState, runOf } from './some-state.js';

/** Trace of a profile in the second scenario (level, 3 s) or the first (kerb, 4 s). */
function tracing(profile: string, scenario: 'kerb' | 'level'): BenchState {
  const found = afterKeys(afterTyping(afterKeys(rankedState(), '/'), profile), 'return');
  return afterKeysSettled(found, scenario === 'kerb' ? 'l return' : 'l l return');
}

const wool = tracing('wool', 'kerb');
const { tape, view, window, marks } = runOf('wool', 'kerb');
const { tickS } = tape;
const peakS = peakRow(tape, window) * tickS;
const whole = wholeSpan(wool)!;
const lengthS = whole.toS - whole.fromS;
const edgeS = marks.find(({ name }) => name === 'kerb')!.timeS;

describe('the cursor on Trace', () => {
  it('begins at the peak of what was measured', () => {
    expect(cursorS(wool)).toBe(peakS);
    expect(wool.playhead.timeS).toBeNull();
  });

  it.each([
    ['home', whole.fromS],
    ['end', whole.toS],
    ['home right', lengthS / 100],
    ['home l l h', lengthS / 100],
    ['home shift+right', lengthS / 10],
    ['home } {', 0],
    ['home left', 0],
    ['end right', whole.toS],
    ['home .', tickS],
    ['home . . ,', tickS],
    ['home ,', 0],
    ['home n', edgeS],
    ['end N', edgeS],
    ['home p', peakS],
  ])('after %j is at %d s', (keys, timeS) => {
    expect(cursorS(afterKeys(wool, keys))).toBeCloseTo(timeS, 9);
  });

  it('says the name of the event, and that there is no other', () => {
    expect(afterKeys(wool, 'home n').notice).toEqual({ text: 'kerb', isFault: false });
    const none = afterKeys(wool, 'end n');
    expect(none.notice?.text).toBe('no next event');
    expect(cursorS(none)).toBe(whole.toS);
  });

  it('goes to the first cut, or says that there is none', () => {
    for (const name of ['wool', 'silk', 'felt']) {
      const state = tracing(name, 'kerb');
      const row = firstCutRow(runOf(name, 'kerb').tape);
      const after = afterKeys(state, 'c');
      if (row === null) expect(after.notice?.text).toContain('no ceiling cuts');
      else expect(cursorS(after)).toBeCloseTo(row * tickS, 9);
    }
  });

  it('steps to a tick from between two of them', () => {
    const between = { ...wool, playhead: { ...wool.playhead, timeS: 1 + 0.4 * tickS } };
    expect(cursorS(afterKeys(between, '.'))).toBeCloseTo(1 + tickS, 9);
  });

  it('waits while no run is there, and says nothing that is not so', () => {
    const early = { ...wool, looks: [] };
    for (const { keys } of [{ keys: 'left right . , home end space z Z a m n N p c { }' }]) {
      for (const key of keys.split(' ')) {
        const next = afterKeys(early, key);
        expect(next.playhead).toMatchObject({ timeS: null, span: null, playing: false });
        expect(next.notice).toBeNull();
      }
    }
  });
});

describe('playing', () => {
  const playing = afterKeys(wool, 'home space');

  it('moves by its rate, and stops at the end', () => {
    expect(playing.playhead).toMatchObject({ playing: true, rate: 1 });
    expect(cursorS(played(playing, 0.5))).toBeCloseTo(0.5, 9);
    expect(cursorS(played(afterKeys(playing, '- -'), 0.5))).toBeCloseTo(0.125, 9);
    const ended = played(playing, 60);
    expect(ended.playhead).toMatchObject({ playing: false, timeS: whole.toS });
  });

  it('pauses where it is, begins again from the start at the end', () => {
    const paused = afterKeys(played(playing, 0.5), 'space');
    expect(paused.playhead.playing).toBe(false);
    expect(played(paused, 1)).toBe(paused);
    expect(cursorS(afterKeys(wool, 'end space'))).toBe(whole.fromS);
  });

  it.each(['.', ',', 'j', 'down', 'escape'])('ends with %s', (key) => {
    expect(afterKeys(playing, key).playhead.playing).toBe(false);
  });

  it('has slowest and quickest rates', () => {
    expect(afterKeys(wool, '- '.repeat(20)).playhead.rate).toBe(RATES[0]);
    expect(afterKeys(wool, '+ '.repeat(20)).playhead.rate).toBe(RATES.at(-1));
    expect(afterKeys(wool, '= -').playhead.rate).toBe(1);
  });

  it('is off where nothing may move by itself', () => {
    const state = afterKeysSettled(rankedState({ options: { animation: false } }), 'return space');
    expect(state.playhead.playing).toBe(false);
    expect(state.notice?.text).toContain('--no-animation');
  });
});

describe('zooming', () => {
  it('halves what is in sight about the cursor, and doubles it again', () => {
    const at = afterKeys(wool, 'home shift+right shift+right shift+right');
    const span = spanInSight(afterKeys(at, 'z'))!;
    expect(span.toS - span.fromS).toBeCloseTo(lengthS / 2, 9);
    expect((cursorS(at) - span.fromS) / (span.toS - span.fromS)).toBeCloseTo(0.3, 9);
    expect(afterKeys(at, 'z z Z Z').playhead.span).toBeNull();
    expect(afterKeys(at, 'Z').playhead.span).toBeNull();
    expect(afterKeys(at, 'z z 0').playhead.span).toBeNull();
  });

  it('ends at a twentieth of a second', () => {
    const span = spanInSight(afterKeys(wool, 'z '.repeat(30)))!;
    expect(span.toS - span.fromS).toBeCloseTo(0.05, 9);
  });

  it('lets the page follow the cursor, within the run', () => {
    const close = afterKeys(wool, 'home z z z');
    for (const keys of ['end', 'home', 'n', 'p', '} } }']) {
      const next = afterKeys(close, keys);
      const span = spanInSight(next)!;
      expect(span.toS - span.fromS).toBeCloseTo(lengthS / 8, 9);
      expect(span.fromS).toBeGreaterThanOrEqual(whole.fromS);
      expect(span.toS).toBeLessThanOrEqual(whole.toS);
      expect(cursorS(next)).toBeGreaterThanOrEqual(span.fromS);
      expect(cursorS(next)).toBeLessThanOrEqual(span.toS);
    }
  });

  it('shows the measured stretch alone, with the cursor in it', () => {
    const state = afterKeys(wool, 'home m');
    expect(state.playhead.span).toEqual(measuredSpan(view));
    expect(cursorS(state)).toBe(measuredSpan(view)!.fromS);
    expect(cursorS(afterKeys(wool, 'm'))).toBe(peakS);
  });
});
