/**
 * Does any sequence of keys, pastes and news leave a state that makes sense?
 */
import fc from 'fast-check';
import { describe, expect } from 'vitest';
import { undo } from '../../../src/tui/bench/choices.js';
import { explained, resized, shelved, swept } from '../../../src/tui/bench/hear.js';
import { keyList } from '../../../src/tui/bench/key-list.js';
import { KEYMAP } from '../../../src/tui/bench/keymap.js';
import { placeOf, press } from '../../../src/tui/bench/press.js';
import { shownRows } from '../../../src/tui/bench/rows.js';
import { shellSentence } from '../../../src/tui/bench/shell-command.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { played } from '../../../src/tui/bench/time-acts.js';
import type { SweepPlan } from '../../../src/tasks/sweep-plan.js';
import { keepingOn, keepingOver } from '../../../src/tui/bench/hear-shortlist.js';
import { KEPT, SHEETS, withKept, withPreview } from '../draw/drawn-shortlist.js';
import { outcomeFor } from '../draw/drawn-sweep.js';
import { answerFor } from '../draw/drawn-why.js';
import { holds } from '../../properties/properties.js';
import { expectSound } from './expect-sound.js';
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

const SHELF = { ...someShelf(), kept: KEPT, sheet: SHEETS };

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

const NAMES = 'brick pebble kim lee felt silk wool kerb level evening-one evening-two spare slab'.split(' ');

/** The files without some of them, now with a problem and now without. */
const files = fc
  .record({
    gone: fc.subarray(NAMES, { maxLength: 5 }),
    isFaulty: fc.boolean(),
  })
  .map(({ gone, isFaulty }) => {
    const there = <T extends { name: string }>(list: readonly T[]) =>
      list.filter(({ name }) => !gone.includes(name));
    const { board, rider, profile, scenario, sheet, kept } = SHELF;
    const problem = {
      file: 'shortlist/evening-one.yaml',
      line: null,
      column: null,
      key: '',
      expected: 'a',
      received: 'b',
    };
    const shelf = {
      board: there(board),
      rider: there(rider),
      profile: there(profile),
      scenario: there(scenario),
      sheet: there(sheet),
      kept: there(kept),
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

/** The proof of the first that waits goes on, or comes to its end. */
function withKeepingNews(state: BenchState, isEnded: boolean): BenchState {
  const [first] = state.shortlist.queue;
  if (first === undefined) return state;
  return isEnded
    ? keepingOver(state, first.plan)
    : keepingOn(state, first.plan, { stage: 'trying slips', done: 1, all: 3 });
}

const news = fc.oneof(
  fc
    .boolean()
    .map((isEnded) =>
      happening(isEnded ? 'end of a proof' : 'news of a proof', (state) => withKeepingNews(state, isEnded)),
    ),
  fc.constant(happening('a preview', (state) => withPreview(state))),
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
    'L',
    'L v v v',
    'L down c return',
    'a return L',
    'a',
    'L n',
  )
  .map((keys) =>
    keys === '' ? someState() : withLooks(withAnswer(afterKeysSettled(withKept(rankedState()), keys))),
  );

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
