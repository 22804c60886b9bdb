/**
 * Does any sequence of keys, pastes and news leave a state that makes sense?
 */
import fc from 'fast-check';
import { describe, expect } from 'vitest';
import { undo } from '../../../src/tui/bench/choices.js';
import { itemsInSight } from '../../../src/tui/bench/chooser-acts.js';
import { gainsView } from '../../../src/tui/bench/gains-acts.js';
import { explained, resized, shelved, swept } from '../../../src/tui/bench/hear.js';
import { keyList } from '../../../src/tui/bench/key-list.js';
import { KEYMAP } from '../../../src/tui/bench/keymap.js';
import { placeOf, press } from '../../../src/tui/bench/press.js';
import { shownRows, wishesOf } from '../../../src/tui/bench/rows.js';
import { shellSentence } from '../../../src/tui/bench/shell-command.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { cursorS, played, spanInSight, wholeSpan } from '../../../src/tui/bench/time-acts.js';
import { screenRows } from '../../../src/tui/draw/screen-rows.js';
import type { SweepPlan } from '../../../src/tasks/sweep-plan.js';
import { outcomeFor } from '../draw/drawn-sweep.js';
import { answerFor } from '../draw/drawn-why.js';
import { holds } from '../../properties/properties.js';
import {
  afterKeysSettled,
  afterPaste,
  keyOf,
  rankedState,
  someShelf,
  someState,
  withLooks,
  withRows,
} from './some-state.js';

const SHELF = someShelf();

/** Something that happens, in words for a counter-example and as a step from state to state. */
interface Happening {
  toString: () => string;
  step: (state: BenchState) => BenchState;
}

const happening = (words: string, step: Happening['step']): Happening => ({ toString: () => words, step });

const KEYS = [
  ...new Set(Object.values(KEYMAP).flatMap(({ bindings }) => bindings.flatMap(({ keys }) => keys))),
  ...'0123456789abvwxyz%Éé\u{1F600}',
  'f7',
  'alt+x',
  'insert',
].filter((key) => key !== 'ctrl+c');

const key = fc.constantFrom(...KEYS).map((name) => happening(name, (state) => press(state, keyOf(name))));

/** One of the keys of the place that is in front then. */
const ownKey = fc.nat({ max: 1000 }).map((count) =>
  happening(`own key ${count}`, (state) => {
    const keys = KEYMAP[placeOf(state)].bindings.flatMap((binding) => binding.keys);
    return press(state, keyOf(keys[count % keys.length]!));
  }),
);

const pasted = fc
  .oneof(fc.string({ unit: 'grapheme', maxLength: 300 }), fc.string({ unit: 'binary' }), fc.constant('22.5'))
  .map((text) => happening(`paste ${JSON.stringify(text)}`, (state) => afterPaste(state, text)));

/** The files without some of them, now with a problem and now without. */
const files = fc
  .record({
    gone: fc.subarray(['brick', 'pebble', 'kim', 'lee', 'felt', 'silk', 'wool', 'kerb', 'level'], {
      maxLength: 4,
    }),
    isFaulty: fc.boolean(),
  })
  .map(({ gone, isFaulty }) => {
    const there = <T extends { name: string }>(list: readonly T[]) =>
      list.filter(({ name }) => !gone.includes(name));
    const { board, rider, profile, scenario } = SHELF;
    const problem = { file: 'a.yaml', line: null, column: null, key: '', expected: 'a', received: 'b' };
    const shelf = {
      board: there(board),
      rider: there(rider),
      profile: there(profile),
      scenario: there(scenario),
      sheet: [],
      kept: [],
      problems: isFaulty ? [problem] : [],
    };
    return happening(`without ${gone.join('+') || 'none'}`, (state) => shelved(state, shelf));
  });

/** The question why answered, where one is asked of a profile whose row is there. */
function withAnswer(state: BenchState): BenchState {
  const { why, rows } = state;
  const isKnown = rows.some(({ name, result }) => name === why?.plan.profiles[0]?.name && result !== null);
  return why === null || !isKnown ? state : explained(state, why.plan, { answer: answerFor(state) });
}

/** A sweep that was begun goes on, or comes to its end. */
function withSweepNews(state: BenchState, isEnded: boolean): BenchState {
  const { run } = state.sweep;
  if (run === null || run.outcome !== null) return state;
  return swept(
    state,
    run.plan,
    isEnded ? { isRunning: false, outcome: outcomeFor(run.plan) } : bestOf(run.plan),
  );
}

function bestOf(plan: SweepPlan) {
  const { finalists } = outcomeFor(plan).answer;
  return { best: finalists.map(({ candidate, result }) => ({ values: candidate.values, result })) };
}

const news = fc.oneof(
  fc
    .boolean()
    .map((isEnded) =>
      happening(isEnded ? 'end of the sweep' : 'news of the sweep', (state) => withSweepNews(state, isEnded)),
    ),
  fc.constant(happening('rows', withRows)),
  fc.constant(happening('runs', withLooks)),
  fc.constant(happening('rows and runs', (state) => withLooks(withRows(state)))),
  fc.constant(happening('an answer', withAnswer)),
  fc.constant(happening('a frame', (state) => played(state, 1 / 30))),
  fc
    .record({ columns: fc.integer({ min: 1, max: 300 }), rows: fc.integer({ min: 1, max: 90 }) })
    .map((size) => happening(`size ${size.columns}x${size.rows}`, (state) => resized(state, size))),
  files,
);

const happenings = fc.array(
  fc.oneof(
    { arbitrary: ownKey, weight: 10 },
    { arbitrary: key, weight: 4 },
    { arbitrary: pasted, weight: 1 },
    { arbitrary: news, weight: 4 },
  ),
  { maxLength: 150, size: 'max' },
);

const beginning = fc
  .constantFrom(
    '',
    'return',
    'l return end z z',
    'l space space c',
    'e',
    'e return',
    'o',
    'b',
    'p',
    '/',
    'x',
    '?',
    'e right w',
    'y',
    'return y',
    'g',
    'g return',
    'g f p l a i n return return',
    'g return t',
  )
  .map((keys) => (keys === '' ? someState() : withLooks(withAnswer(afterKeysSettled(rankedState(), keys)))));

function expectSound(state: BenchState): void {
  const { rank, view, work, shelf, screen, overlay, entry } = state;
  const profiles = shelf.profile.map(({ name }) => name);
  if (rank.cursor !== null) expect(profiles).toContain(rank.cursor);
  expect(rank.picked.filter((name) => !profiles.includes(name))).toEqual([]);
  expect(new Set(rank.picked).size).toBe(rank.picked.length);
  if (rank.column !== null) expect(work?.plan.scenarios[rank.column]).toBeDefined();
  expect(state.rows.filter(({ name }) => !profiles.includes(name))).toEqual([]);
  if (work !== null) expect(work.trials[view.trial]).toBeDefined();
  expect(placeOf(state) in KEYMAP).toBe(true);
  expect(state.why !== null).toBe(screen === 'why' || state.behind.includes('why'));
  if (screen === 'sweep') {
    expect(wishesOf(state)).toEqual([]);
    expect(screenRows(state)).toHaveLength(state.size.rows);
  } else if (screen === 'why') {
    expect(profiles).toContain(state.why?.plan.profiles[0]?.name);
    expect(work).not.toBeNull();
    expect(wishesOf(state).length).toBeLessThanOrEqual(2);
    expect(screenRows(state)).toHaveLength(state.size.rows);
  } else if (screen !== 'rank') {
    expect(work).not.toBeNull();
    expect(view.profiles.length).toBeGreaterThanOrEqual(screen === 'compare' ? 2 : 1);
    expect(view.profiles.length).toBeLessThanOrEqual(4);
    expect(wishesOf(state)).toHaveLength(view.profiles.length);
  }
  if (overlay?.kind === 'gains') expect(gainsView(state)?.field).toBeDefined();
  if (overlay?.kind === 'chooser') {
    expect(overlay.chooser.cursor).toBeGreaterThanOrEqual(0);
    expect(overlay.chooser.cursor).toBeLessThan(Math.max(1, itemsInSight(overlay.chooser).length));
  }
  if (entry !== null) expect(entry.text.length).toBeLessThanOrEqual(400);
  expectSoundTime(state);
}

function expectSoundTime(state: BenchState): void {
  const whole = wholeSpan(state);
  if (
    (state.screen !== 'trace' && state.screen !== 'compare') ||
    whole === null ||
    state.looks.length < state.view.profiles.length
  )
    return;
  const span = spanInSight(state)!;
  expect(span.toS).toBeGreaterThan(span.fromS);
  expect(span.fromS).toBeGreaterThanOrEqual(whole.fromS);
  expect(span.toS).toBeLessThanOrEqual(whole.toS);
  expect(cursorS(state)).toBeGreaterThanOrEqual(whole.fromS);
  expect(cursorS(state)).toBeLessThanOrEqual(whole.toS);
}

describe('any keys, pastes and news', () => {
  holds(
    'leave a sound state after each of them, which can be undone to the first',
    fc.property(beginning, happenings, (first, all) => {
      let state = first;
      for (const { step } of all) {
        state = step(state);
        expectSound(state);
      }
      shownRows(state);
      keyList(state, 'a');
      shellSentence(state);
      while (state.past.length > 0) state = undo(state);
      expectSound(state);
      expect(state.choices).toEqual(someState().choices);
    }),
  );
});
