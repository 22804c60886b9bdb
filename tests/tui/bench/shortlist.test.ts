/**
 * What do keys do on the Shortlist screen: one cursor, five views, taking out, numbers back to Rank?
 */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../../src/show/colour.js';
import { editedProfiles } from '../../../src/tui/bench/choices.js';
import { shelved } from '../../../src/tui/bench/hear.js';
import { placeOf } from '../../../src/tui/bench/press.js';
import { wishesOf } from '../../../src/tui/bench/rows.js';
import { shellCommand } from '../../../src/tui/bench/shell-command.js';
import { currentKept, currentShortlistRow } from '../../../src/tui/bench/shortlist-items.js';
import { previewLines, previewPage } from '../../../src/tui/bench/shortlist-text.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { keptExample } from '../../show/kept-example.js';
import { KEPT, withKept, withQueue } from '../draw/drawn-shortlist.js';
import { endedSweep } from '../draw/drawn-sweep.js';
import { answeredWhy } from '../draw/drawn-why.js';
import { afterKeys, afterKeysSettled, rankedState, someState } from './some-state.js';

const kept = withKept(rankedState());
const open = afterKeys(kept, 'L');
const nameOf = (state: BenchState) => currentShortlistRow(state)?.name;
const textOf = (state: BenchState) =>
  previewLines(state, createPaint('none')).join(' ').replaceAll(/\s+/g, ' ');

describe('the screen', () => {
  it.each([
    ['rank', kept],
    ['trace', afterKeys(kept, 'return')],
    ['compare', afterKeys(kept, 'space space c')],
    ['why', answeredWhy(kept)],
    ['why', afterKeys(answeredWhy(kept), 't')],
    ['sweep', afterKeys(kept, 'g')],
    ['sweep', endedSweep(kept)],
    ['sweep', afterKeys(endedSweep(kept), 't')],
  ] as const)('is opened from %s, and left for it again', (screen, state) => {
    const there = afterKeys(state, 'L');
    expect([there.screen, placeOf(there), wishesOf(there)]).toEqual(['shortlist', 'shortlist', []]);
    const back = afterKeys(there, 'escape');
    expect([back.screen, back.behind]).toEqual([screen, state.behind]);
    expect(back.view).toEqual(state.view);
    expect(back.why).toBe(state.why);
  });

  it('stops a run that plays', () => {
    const playing = afterKeys(afterKeysSettled(kept, 'return'), 'space');
    expect(playing.playhead.playing).toBe(true);
    expect(afterKeys(playing, 'L').playhead.playing).toBe(false);
  });

  it('gives way to Rank where what stood behind it is gone', () => {
    const there = afterKeys(kept, 'return L');
    const name = there.view.profiles[0]!;
    const without = { ...there.files, profile: there.files.profile.filter((one) => one.name !== name) };
    const next = shelved(there, without);
    expect(next.screen).toBe('shortlist');
    expect(afterKeys(next, 'escape')).toMatchObject({ screen: 'rank' });
  });

  it('says how a profile gets here where nothing is kept, and where it cannot', () => {
    expect(textOf(afterKeys(rankedState(), 'L'))).toMatch(/^Nothing is kept yet. The key a, on Rank/);
    const starter = rankedState({ options: { ownFolder: false } });
    expect(textOf(afterKeys(starter, 'L'))).toMatch(/^There is no shortlist here: the starter set stays/);
    expect(afterKeys(rankedState(), 'L n').notice?.text).toBe('note: nothing is kept yet');
    expect(afterKeys(rankedState(), 'L down up d escape').screen).toBe('rank');
    expect(afterKeys({ ...someState(), work: null }, 'L').screen).toBe('shortlist');
  });
});

describe('the cursor', () => {
  it('goes over what is kept and what waits, and stops at the ends', () => {
    const state = afterKeys(withQueue(kept, 'tea'), 'L');
    expect(nameOf(state)).toBe('evening-one');
    expect(nameOf(afterKeys(state, 'down j'))).toBe('spare');
    expect(nameOf(afterKeys(state, 'down down down down'))).toBe('tea');
    expect(nameOf(afterKeys(state, 'down down down up k'))).toBe('evening-two');
    expect(nameOf(afterKeys(state, 'up'))).toBe('evening-one');
  });

  it('stays on its profile while others come, and goes to the first where its own is gone', () => {
    const second = afterKeys(open, 'down');
    const more = shelved(second, {
      ...second.files,
      kept: [{ name: 'dawn', value: keptExample() }, ...KEPT],
    });
    expect(nameOf(more)).toBe('evening-two');
    const first = shelved(open, { ...open.files, kept: [{ name: 'dawn', value: keptExample() }, ...KEPT] });
    expect(nameOf(first)).toBe('evening-one');
    const fewer = shelved(second, { ...second.files, kept: [KEPT[0]!] });
    expect(nameOf(fewer)).toBe('evening-one');
  });
});

describe('the views', () => {
  it('follow one another and come round, each from its first line', () => {
    const views = ['', 'v', 'v v', 'v v v', 'tab v v v', 'v v v v v', 'V'].map(
      (keys) => afterKeys(open, keys).shortlist.view,
    );
    expect(views).toEqual(['summary', 'card', 'sheet', 'plan', 'qr', 'summary', 'qr']);
    expect(afterKeys(open, 'end v').shortlist.read).toBe(0);
  });

  it('say of the one under the cursor: all that is known, its card, its numbers as a code', () => {
    expect(textOf(afterKeys(open, 'down'))).toMatch(/^evening-two: numbers .*Note: Nervous over kerbs/);
    expect(textOf(afterKeys(open, 'v'))).toMatch(
      /^Ride card evening-one numbers proportionalAPerDeg 22 A\/deg/,
    );
    expect(textOf(afterKeys(open, 'V'))).toMatch(/UF1 P22 R1\.4 /);
    const small = { ...afterKeys(open, 'V'), size: { columns: 30, rows: 12 } };
    expect(textOf(small)).toMatch(
      /^The code takes \d+ columns and \d+ rows; here are 30 and \d+\. Take a larger/,
    );
  });

  it('say how far the one that waits is', () => {
    const state = afterKeys(withQueue(kept, 'tea', 'soup'), 'L down down down');
    expect(textOf(state)).toMatch(/^tea is being proven\. .* So far: trying slips, 40 %\./);
    expect(textOf(afterKeys(state, 'down'))).toMatch(/^soup waits to be proven\./);
    expect(afterKeys(state, 'v').notice?.text).toBe('view: tea is not proven yet');
    expect(afterKeys(state, 'x').notice?.text).toBe('export: tea is not proven yet');
  });

  it('are scrolled within their lines', () => {
    const { count, height } = previewPage(open);
    expect(count).toBeGreaterThan(height);
    expect(previewPage(afterKeys(open, 'pagedown')).top).toBe(Math.min(height, count - height));
    expect(previewPage(afterKeys(open, 'right right left')).top).toBe(1);
    expect(previewPage(afterKeys(open, 'end')).top).toBe(count - height);
    expect(previewPage(afterKeys(open, 'end end right pagedown')).top).toBe(count - height);
    expect(previewPage(afterKeys(open, 'end home left pageup')).top).toBe(0);
    expect(afterKeys(open, 'end down').shortlist.read).toBe(0);
  });

  it('that show a damaged file say so first, with its last whole version', () => {
    const problem = {
      file: 'shortlist/evening-two.yaml',
      line: null,
      column: null,
      key: 'seal',
      expected: 'what was proven',
      received: 'another content',
    };
    const state = afterKeys(withKept(rankedState(), KEPT, [problem]), 'L down');
    expect(textOf(state)).toMatch(/^! shortlist\/evening-two\.yaml.*seal.* evening-two: numbers/);
    for (const key of ['n', 'f', 'x', 'd'])
      expect(afterKeys(state, key).notice?.text).toMatch(/the file of evening-two is damaged$/);
    expect(afterKeys(state, 'up n').entry?.purpose).toBe('note');
    expect(afterKeys(state, '!').overlay?.kind).toBe('problems');
    expect(afterKeys(open, '!').notice?.text).toBe('problems: no file has a problem');
  });
});

describe('taking out', () => {
  it('asks once more, and not for long', () => {
    const asked = afterKeys(open, 'd');
    expect(asked).toMatchObject({ errands: [], shortlist: { removing: 'evening-one' } });
    expect(asked.notice?.text).toBe('d again takes evening-one out, with its file, note and rides');
    expect(afterKeys(asked, 'd').errands).toEqual([{ kind: 'remove', name: 'evening-one' }]);
    expect(afterKeys(asked, 'right d').errands).toEqual([]);
    expect(afterKeys(asked, 'down d').shortlist.removing).toBe('evening-two');
  });
});

describe('its numbers', () => {
  it('go to Rank as changes of the profile it came from, and can be taken back', () => {
    const from = rankedState().work!.plan.profiles[0]!.name;
    const value = keptExample({ origin: { ...KEPT[0]!.value.origin, from } });
    const state = afterKeys(withKept(rankedState(), [{ name: 'tea', value }]), 'L e');
    expect(state).toMatchObject({ screen: 'rank', behind: [], rank: { cursor: from } });
    expect(editedProfiles(state)).toEqual([from]);
    const now = state.work!.plan.profiles.find(({ name }) => name === from)!.value;
    expect(now.gains).toEqual(value.profile.gains);
    expect(state.notice?.text).toBe(`${from} has the numbers of tea now: w writes it, u takes it back`);
    expect(editedProfiles(afterKeys(state, 'u'))).toEqual([]);
    expect(afterKeys(state, 'L e').notice?.text).toBe(`${from} has the numbers of tea already`);
  });

  it('stand there as a profile of their own where that one is gone', () => {
    const state = afterKeys(open, 'e');
    expect(state.choices.draft).toMatchObject({ name: 'evening-one', value: KEPT[0]!.value.profile });
    expect(state.rank.cursor).toBe('evening-one');
    expect(afterKeys(state, 'u').choices.draft).toBeUndefined();
  });
});

describe('a shell', () => {
  it.each([
    ['L', 'underfoot shortlist show evening-one'],
    ['L v', 'underfoot export evening-one --as card'],
    ['L c down return', 'underfoot export evening-one --sheet slab'],
    ['L v v v', 'underfoot plan evening-one'],
    ['L V', 'underfoot export evening-one --as qr'],
  ])('has the same as %s', (keys, command) => {
    expect(shellCommand(afterKeys(kept, keys))).toBe(command);
  });

  it('lists where nothing is kept', () => {
    expect(shellCommand(afterKeys(rankedState(), 'L'))).toBe('underfoot shortlist list');
    expect(currentKept(afterKeys(rankedState(), 'L'))).toBeUndefined();
  });
});
