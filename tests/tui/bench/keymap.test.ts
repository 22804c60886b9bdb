/**
 * Is the map of keys whole: no key twice, words for everything, every act of the bench at a key?
 */
import { describe, expect, it } from 'vitest';
import type { Binding } from '../../../src/tui/bench/binding.js';
import { keyText } from '../../../src/tui/bench/key-words.js';
import { KEYMAP, type Place } from '../../../src/tui/bench/keymap.js';
import { bindingOf, isTyping, placeOf } from '../../../src/tui/bench/press.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { KEPT, withKept, withQueue } from '../draw/drawn-shortlist.js';
import { endedSweep, runningSweep } from '../draw/drawn-sweep.js';
import { answeredWhy } from '../draw/drawn-why.js';
import { afterKeys, keyOf, rankedState, someState } from './some-state.js';

const PLACES = Object.keys(KEYMAP) as Place[];
const bindings = PLACES.flatMap((place) => KEYMAP[place].bindings.map((binding) => ({ place, binding })));

/** A state in each place. */
const inPlace: Readonly<Record<Exclude<Place, 'anywhere'>, BenchState>> = {
  rank: rankedState(),
  trace: afterKeys(rankedState(), 'return'),
  compare: afterKeys(rankedState(), 'space space c'),
  why: afterKeys(rankedState(), 'y'),
  whyText: afterKeys(answeredWhy(rankedState()), 't'),
  sweepForm: afterKeys(rankedState(), 'g'),
  sweep: endedSweep(rankedState()),
  sweepText: afterKeys(endedSweep(rankedState()), 't'),
  shortlist: afterKeys(withKept(rankedState()), 'L'),
  gains: afterKeys(rankedState(), 'e'),
  list: afterKeys(rankedState(), 'o'),
  line: afterKeys(rankedState(), '/'),
  help: afterKeys(rankedState(), '?'),
  problems: { ...rankedState(), overlay: { kind: 'problems', top: 0 } },
};

describe('the keymap', () => {
  it.each(PLACES)('binds no key twice in %s, and none that means something anywhere', (place) => {
    const keys = KEYMAP[place].bindings.flatMap((binding) => binding.keys);
    expect(new Set(keys).size).toBe(keys.length);
    if (place === 'anywhere') return;
    const anywhere = KEYMAP.anywhere.bindings.flatMap((binding) => binding.keys);
    expect(keys.filter((key) => anywhere.includes(key))).toEqual([]);
  });

  it.each(bindings)('has words for $binding.keys in $place', ({ binding: { keys, label, says } }) => {
    expect(keys.length).toBeGreaterThan(0);
    expect(label).toMatch(/^[a-z][a-z ]+$/);
    expect(label.length).toBeLessThanOrEqual(16);
    expect(says.length).toBeGreaterThan(3);
    for (const key of keys) expect(keyText(key, 'ascii')).toMatch(/^[\x21-\x7e]+$/);
  });

  it('names things by the words of the bench', () => {
    const words = bindings.map(({ binding }) => `${binding.label} ${binding.says}`).join(' ');
    for (const word of ['profile', 'scenario', 'board', 'rider', 'ceiling', 'event'])
      expect(words).toContain(word);
  });

  it.each(Object.entries(inPlace))('is asked for the keys of %s there', (place, state) => {
    expect(placeOf(state)).toBe(place);
    for (const binding of KEYMAP[place as Place].bindings) {
      for (const key of binding.keys) expect(bindingOf(state, keyOf(key))).toBe(binding);
    }
    for (const binding of KEYMAP.anywhere.bindings) {
      for (const key of binding.keys.filter((name) => !isTyping(place as Place) || keyOf(name).text === '')) {
        expect(bindingOf(state, keyOf(key))).toBe(binding);
      }
    }
  });

  it.each(['line', 'list', 'help'] as const)('leaves letters alone in %s, where they are typed', (place) => {
    for (const key of ['q', '?', 'j', 'é', '/'])
      expect(bindingOf(inPlace[place], keyOf(key))).toBeUndefined();
    expect(KEYMAP[place].typing).toBeDefined();
  });

  it('shows a way out in the footer of every place but Rank, which `q` leaves', () => {
    for (const place of Object.keys(inPlace) as Place[]) {
      const out = KEYMAP[place].bindings.filter(({ keys }) => keys.includes('escape'));
      expect(out).toHaveLength(1);
      if (place !== 'rank') expect(out[0]?.inFooter).toBe(true);
    }
  });
});

describe('a key that can do nothing', () => {
  const bare: BenchState = { ...someState(), work: null };
  const offs = bindings.filter(({ binding }) => binding.off !== undefined);

  it.each(offs)('$binding.label in $place says why, and does nothing', ({ binding }) => {
    const states = [
      bare,
      ...Object.values(inPlace),
      { ...rankedState(), overlay: inPlace.gains.overlay },
      { ...inPlace.sweepForm, work: null },
      afterKeys(inPlace.sweepForm, 'd'),
      runningSweep(rankedState()),
      afterKeys(inPlace.sweep, 'tab'),
      afterKeys(rankedState(), 'L'),
      afterKeys(withQueue(rankedState(), 'tea'), 'L'),
      afterKeys(withKept(rankedState({ options: { ownFolder: false } }), KEPT), 'L'),
    ];
    const calm = { ...rankedState(), options: { ...rankedState().options, animation: false } };
    const one = afterKeys(rankedState(), 'b');
    const reasons = [...states, calm, one].map((state) => binding.off?.(state) ?? null);
    const said = reasons.filter((reason) => reason !== null);
    expect(said.length).toBeGreaterThan(0);
    for (const reason of said) expect(reason).toMatch(/^[a-z0-9][^.]{7,}$/);
  });

  it('tells it with its name', () => {
    const state = afterKeys(rankedState(), 'c');
    expect(state).toMatchObject({ screen: 'rank', notice: { isFault: false } });
    expect(state.notice?.text).toMatch(/^compare: /);
  });

  it('that is bound to nothing does nothing but clear what was said', () => {
    const told = afterKeys(rankedState(), 'c');
    expect(afterKeys(told, 'f7')).toEqual({ ...told, notice: null });
  });
});

describe('every act of the bench', () => {
  const says = (place: Place, text: string): Binding | undefined =>
    KEYMAP[place].bindings.find((binding) => binding.says.includes(text));

  it.each([
    ['rank', 'sort by the next column'],
    ['rank', 'turn the order round'],
    ['rank', 'name or summary holds a text'],
    ['rank', 'pick the profile'],
    ['rank', 'choose the board'],
    ['rank', 'choose riders'],
    ['rank', 'choose states of charge'],
    ['rank', 'choose scenarios'],
    ['rank', 'change numbers of the profile'],
    ['rank', 'take back the last change'],
    ['rank', 'make the change again'],
    ['rank', 'write the table'],
    ['rank', 'write the changed profile'],
    ['rank', 'look at the run'],
    ['rank', 'compare the picked'],
    ['rank', 'what is wrong with files'],
    ['trace', 'play, or pause'],
    ['trace', 'one tick on'],
    ['trace', 'one tick back'],
    ['trace', 'play slower'],
    ['trace', 'play faster'],
    ['trace', 'what is in sight on'],
    ['trace', 'zoom in'],
    ['trace', 'zoom out'],
    ['trace', 'show the whole run'],
    ['trace', 'next event'],
    ['trace', 'largest pitch'],
    ['trace', 'a ceiling cuts'],
    ['trace', 'the next scenario'],
    ['trace', 'the next profile'],
    ['trace', 'in sentences'],
    ['rank', 'why the profile rides as it does'],
    ['trace', 'why the profile rides as it does'],
    ['why', 'try a change'],
    ['why', 'all of it in words'],
    ['whyText', 'a page down'],
    ['whyText', 'back to the findings'],
    ['why', 'take back the last change'],
    ['why', 'write the changed profile'],
    ['rank', 'look through ranges'],
    ['sweepForm', 'begin the sweep'],
    ['sweepForm', 'which numbers'],
    ['sweepForm', 'take the number under the cursor out'],
    ['sweepForm', 'share all else with'],
    ['sweep', 'stop the sweep, or let it go on'],
    ['sweep', 'the next view'],
    ['sweep', 'map the next metric'],
    ['sweep', 'the next two numbers'],
    ['sweep', 'the worst run of the candidate'],
    ['sweep', 'rank the candidate'],
    ['sweep', 'why the candidate rides'],
    ['sweep', 'the view in words'],
    ['sweepText', 'a page down'],
    ['sweepText', 'back to tables and plots'],
    ['sweepText', 'why the candidate rides'],
    ['rank', 'keep it on the shortlist'],
    ['trace', 'keep it on the shortlist'],
    ['why', 'keep it on the shortlist'],
    ['whyText', 'keep it on the shortlist'],
    ['sweep', 'keep it on the shortlist'],
    ['sweepText', 'keep it on the shortlist'],
    ['rank', 'open the shortlist'],
    ['compare', 'open the shortlist'],
    ['sweepForm', 'open the shortlist'],
    ['shortlist', 'the next view'],
    ['shortlist', 'write a note'],
    ['shortlist', 'rate what was felt'],
    ['shortlist', 'choose the controller sheet'],
    ['shortlist', 'to a new file'],
    ['shortlist', 'take it off the shortlist'],
    ['shortlist', 'take its numbers to Rank'],
    ['shortlist', 'what is wrong with files'],
    ['compare', 'profiles part'],
    ['compare', 'the next scenario'],
    ['anywhere', 'all keys, searchable'],
    ['anywhere', 'leave at once'],
  ] as const)('in %s: %s', (place, text) => {
    expect(says(place, text)?.keys.length).toBeGreaterThan(0);
  });
});
