/**
 * Is it said what is missing when files that the setup names are removed, and does what is there go on?
 */
import { describe, expect, it } from 'vitest';
import type { Shelf } from '../../../src/tasks/shelf.js';
import { shelved } from '../../../src/tui/bench/hear.js';
import { missingSentences } from '../../../src/tui/bench/missing.js';
import { shellCommand } from '../../../src/tui/bench/shell-command.js';
import { headerRow } from '../../../src/tui/draw/chrome.js';
import { screenRows } from '../../../src/tui/draw/screen-rows.js';
import { afterKeys, rankedState, someShelf } from './some-state.js';

const shelf = someShelf();
const without = (kind: 'board' | 'rider' | 'scenario' | 'profile', name: string): Shelf => ({
  ...shelf,
  [kind]: shelf[kind].filter((file) => file.name !== name),
});
const ranking = { doneCells: 2, allCells: 6 };

describe('a file that the setup names and that is removed', () => {
  it.each([
    ['board', 'pebble', 'board pebble is no longer there; b chooses another'],
    ['rider', 'kim', 'rider kim is no longer there; r chooses others'],
  ] as const)('is named with the key that chooses another: %s', (kind, name, sentence) => {
    const state = { ...rankedState({ shelf }), progress: ranking };
    const next = shelved(state, without(kind, name));
    expect(next).toMatchObject({ work: null, notice: { text: sentence, isFault: true } });
    const rows = screenRows({ ...next, notice: null });
    expect(rows.join('\n').toLowerCase()).toContain(sentence);
    expect(rows[0]).toMatch(/nothing to rank *$/);
    expect(rows[0]).not.toContain('ranking');
    expect(rows[0]).toContain('gone');
    const back = shelved(next, shelf);
    expect(back.work?.plan.board.name).toBe('pebble');
    expect(headerRow(back)).not.toContain('gone');
  });

  it('leads on by that key', () => {
    const next = shelved(rankedState({ shelf }), without('board', 'pebble'));
    expect(afterKeys(next, 'b return').work?.plan.board.name).toBe('brick');
  });

  it('is said where others are left, and the others run', () => {
    const state = rankedState({ shelf, setup: { scenarios: ['kerb', 'level'], riders: ['kim', 'lee'] } });
    const next = shelved(shelved(state, without('scenario', 'kerb')), {
      ...without('scenario', 'kerb'),
      rider: shelf.rider.slice(0, 1),
    });
    expect(next.work?.plan.scenarios.map(({ name }) => name)).toEqual(['level']);
    expect(missingSentences(next)).toEqual([
      'rider lee is no longer there; r chooses others',
      'scenario kerb is no longer there; o chooses others',
    ]);
    expect(headerRow(next)).toContain('pebble under kim; lee gone, level; kerb gone');
    expect(shellCommand(next)).toBe('underfoot rank --board pebble --rider kim --scenarios level');
  });

  it('is told once', () => {
    const next = shelved(rankedState({ shelf }), without('board', 'pebble'));
    const later = shelved({ ...next, notice: null }, { ...without('board', 'pebble'), profile: [] });
    expect(later.notice?.text).toBe(
      'no profile is left; at least one profile file without problems is needed',
    );
    expect(missingSentences(later)).toContain('board pebble is no longer there; b chooses another');
  });

  it('leaves Trace with the reason', () => {
    const next = shelved(afterKeys(rankedState({ shelf }), 'return'), without('board', 'pebble'));
    expect(next).toMatchObject({
      screen: 'rank',
      notice: { text: 'board pebble is no longer there; b chooses another' },
    });
  });
});

describe('all scenarios', () => {
  it('stay all when files come, go or get another name', () => {
    const first = rankedState({ shelf });
    const renamed = shelf.scenario.map((file) => (file.name === 'kerb' ? { ...file, name: 'edge' } : file));
    const one = shelved(first, { ...shelf, scenario: renamed });
    const more = shelved(one, { ...shelf, scenario: [...renamed, ...shelf.scenario.slice(0, 1)] });
    expect(headerRow(one)).toContain('all 2 scenarios');
    expect(headerRow(more)).toContain('all 3 scenarios');
    expect(more.work?.plan.scenarios).toHaveLength(3);
    expect([one.notice, more.notice]).toEqual([null, null]);
    expect(shellCommand(more)).toBe('underfoot rank --board pebble --rider kim');
  });

  it('stay all in a list that stands open meanwhile', () => {
    const more = { ...shelf, scenario: [{ ...shelf.scenario[0]!, name: 'alley' }, ...shelf.scenario] };
    const open = shelved(afterKeys(rankedState({ shelf }), 'o'), more);
    expect(afterKeys(open, 'space space return').choices.setup.scenarios).toBeNull();
  });
});
