/**
 * What becomes of runs that are looked at when their files change, and of problems in files?
 */
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../src/quantity/problem.js';
import { shelved } from '../../../src/tui/bench/hear.js';
import { wishesOf } from '../../../src/tui/bench/rows.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { cursorS } from '../../../src/tui/bench/time-acts.js';
import type { Shelf } from '../../../src/tasks/shelf.js';
import { afterKeysSettled, rankedState, someShelf, withLooks, withRows } from './some-state.js';

const shelf = someShelf();
const rankedOn = (parts: Partial<Shelf>) =>
  withLooks(withRows(shelved(rankedState({ shelf }), { ...shelf, ...parts })));
const without = <T extends { name: string }>(files: readonly T[], name: string) =>
  files.filter((file) => file.name !== name);
const problem = (key: string): Problem => ({
  file: 'profiles/gains/wool.yaml',
  line: 2,
  column: 3,
  key,
  expected: 'a number',
  received: 'text',
});
const scenarioOf = ({ work, view }: BenchState) => work?.trials[view.trial]?.key.scenario;

describe('files of what is looked at', () => {
  const tracing = afterKeysSettled(rankedState({ shelf }), 'l l return z');

  it('keep their scenario where another one is gone or new', () => {
    const first = { ...shelf.scenario[0]!, name: 'alley' };
    for (const scenario of [without(shelf.scenario, 'kerb'), [first, ...shelf.scenario]]) {
      const next = shelved(tracing, { ...shelf, scenario });
      expect(next).toMatchObject({ screen: 'trace', playhead: tracing.playhead });
      expect(scenarioOf(next)).toBe('level');
    }
  });

  it('give way to another scenario where theirs is gone, and it is told', () => {
    const next = shelved(tracing, { ...shelf, scenario: without(shelf.scenario, 'level') });
    expect(next).toMatchObject({ screen: 'trace', looks: [], playhead: { span: null, timeS: null } });
    expect(scenarioOf(next)).toBe('kerb');
    expect(next.notice?.text).toBe('level is no longer there');
    expect(cursorS(withLooks(next))).toBeGreaterThan(0);
  });

  it('give way to Rank where the profile is gone, and it is told', () => {
    const [name] = tracing.view.profiles;
    const next = shelved(tracing, { ...shelf, profile: without(shelf.profile, name!) });
    expect(next).toMatchObject({ screen: 'rank', behind: [], looks: [], playhead: { playing: false } });
    expect(next.notice?.text).toBe(`${name} is no longer there`);
    expect(wishesOf(next)).toHaveLength(1);
  });

  it('give way to Rank where the board is gone', () => {
    const next = shelved(tracing, { ...shelf, board: [] });
    expect(next).toMatchObject({ screen: 'rank', work: null, notice: { isFault: true } });
  });

  it('leave a comparison of those that are still there, of two at least', () => {
    const three = afterKeysSettled(rankedState({ shelf }), 'space space space c');
    const two = shelved(three, { ...shelf, profile: without(shelf.profile, 'silk') });
    expect(two).toMatchObject({
      screen: 'compare',
      view: {
        profiles: without(
          [...three.view.profiles].map((name) => ({ name })),
          'silk',
        ).map(({ name }) => name),
      },
    });
    expect(wishesOf(two)).toHaveLength(2);
    const one = shelved(two, { ...shelf, profile: shelf.profile.slice(0, 1) });
    expect(one.screen).toBe('rank');
  });
});

describe('problems in files', () => {
  it('are told when they are new, one of them', () => {
    const first = shelved(rankedState({ shelf }), { ...shelf, problems: [problem('a'), problem('b')] });
    expect(first.notice).toMatchObject({ isFault: true });
    expect(first.notice?.text).toContain(' a:');
    const same = shelved({ ...first, notice: null }, { ...shelf, problems: [problem('a'), problem('b')] });
    expect(same.notice).toBeNull();
    const other = shelved(same, { ...shelf, problems: [problem('a'), problem('c')] });
    expect(other.notice?.text).toContain(' c:');
  });

  it('are said to be gone with the last of them', () => {
    const faulty = shelved(rankedState({ shelf }), { ...shelf, problems: [problem('a'), problem('b')] });
    const fewer = shelved({ ...faulty, notice: null }, { ...shelf, problems: [problem('a')] });
    expect(fewer.notice).toBeNull();
    expect(shelved(fewer, { ...shelf }).notice).toEqual({
      text: 'no file has a problem any more',
      isFault: false,
    });
  });

  it('leave the rows as they are', () => {
    expect(rankedOn({ problems: [problem('a')] }).rows).toEqual(rankedState({ shelf }).rows);
  });
});
