/**
 * How do choices become a plan, and does undo bring back what was there?
 */
import { describe, expect, it } from 'vitest';
import { PROFILE_FIELDS, readField } from '../../../src/quantity/profile-fields.js';
import { edited, editedProfiles, firstSetup, replanned, withEdit } from '../../../src/tui/bench/choices.js';
import { changesOf } from '../../../src/tui/bench/gains-acts.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { afterKeys, rankedState, someShelf, someState } from './some-state.js';

const field = (key: string) => PROFILE_FIELDS.find((known) => known.key === key)!;
const PROPORTIONAL = field('proportionalAPerDeg');
const gainNow = (state: BenchState, name: string) =>
  readField(state.work!.plan.profiles.find((profile) => profile.name === name)!.value, PROPORTIONAL);
const withGain = (state: BenchState, value: number | undefined, profile = 'wool') =>
  withEdit(state, { profile, field: PROPORTIONAL }, value);

describe('the first setup', () => {
  it('is the first board, one rider, every scenario, the charges of the scenarios', () => {
    expect(firstSetup(someShelf(), {})).toEqual({
      board: 'brick',
      riders: ['kim'],
      charges: [null],
      scenarios: null,
    });
  });

  it('takes what was asked for', () => {
    const asked = { board: 'pebble', riders: ['lee'], charges: [20], scenarios: ['level'] };
    expect(firstSetup(someShelf(), asked)).toEqual(asked);
  });
});

describe('a plan', () => {
  it('holds what the setup names, in its order, with every profile', () => {
    const state = someState({ setup: { riders: ['lee', 'kim'], scenarios: ['level'], charges: [20, null] } });
    const { plan, trials } = state.work!;
    expect(plan.riders.map(({ name }) => name)).toEqual(['lee', 'kim']);
    expect(plan.profiles.map(({ name }) => name)).toEqual(['felt', 'silk', 'wool']);
    expect(trials.map(({ key }) => `${key.scenario}/${key.rider}/${key.chargePercent}`)).toEqual([
      'level/lee/20',
      'level/lee/80',
      'level/kim/20',
      'level/kim/80',
    ]);
  });

  it('follows all scenarios and all riders, those to come too', () => {
    const first = { ...someShelf().scenario[0]!, name: 'alley' };
    const third = { ...someShelf().rider[0]!, name: 'moe' };
    const more = someShelf({
      scenario: [first, ...someShelf().scenario],
      rider: [...someShelf().rider, third],
    });
    const { plan } = replanned(someState({ setup: { riders: null } }), { shelf: more }).work!;
    expect(plan.scenarios.map(({ name }) => name)).toEqual(['alley', 'kerb', 'level']);
    expect(plan.riders.map(({ name }) => name)).toEqual(['kim', 'lee', 'moe']);
  });

  it('runs every seed', () => {
    const { trials } = someState({ options: { seeds: [1, 2, 3] } }).work!;
    expect(new Set(trials.map(({ key }) => key.seed))).toEqual(new Set([1, 2, 3]));
  });

  it.each(['board', 'rider', 'profile', 'scenario'] as const)('is none without a %s', (kind) => {
    expect(replanned(someState(), { shelf: someShelf({ [kind]: [] }) }).work).toBeNull();
  });
});

describe('an edit', () => {
  it('changes the plan and not the file', () => {
    const state = withGain(someState(), 22);
    expect(gainNow(state, 'wool')).toBe(22);
    expect(editedProfiles(state)).toEqual(['wool']);
    expect(changesOf(state, 'wool')).toBe('proportionalAPerDeg 20 to 22 A/deg');
    expect(changesOf(state, 'felt')).toBe('');
  });

  it('replaces the one before of the same number, and can be taken back', () => {
    const state = withGain(withGain(withGain(someState(), 22), 25, 'felt'), 24);
    expect(state.choices.edits).toHaveLength(2);
    expect(gainNow(state, 'wool')).toBe(24);
    const back = withGain(state, undefined);
    expect(gainNow(back, 'wool')).toBe(20);
    expect(editedProfiles(back)).toEqual(['felt']);
  });

  it('leaves every other profile the very same', () => {
    const before = someState();
    const after = withGain(before, 22);
    for (const [index, profile] of after.work!.plan.profiles.entries()) {
      if (profile.name !== 'wool') expect(profile).toBe(before.work!.plan.profiles[index]);
    }
  });

  it('that says what the file says is none', () => {
    const [profile] = someShelf().profile.filter(({ name }) => name === 'wool');
    const same = [{ profile: 'wool', field: 'gains.proportionalAPerDeg', value: 20 }];
    expect(edited(profile!, same)).toBe(profile);
    const state = someState();
    expect(editedProfiles({ ...state, choices: { ...state.choices, edits: same } })).toEqual([]);
  });

  it('that no longer fits its file is left out', () => {
    const shelf = someShelf();
    const state = withEdit(someState(), { profile: 'felt', field: field('currentShare') }, 0.5);
    expect(editedProfiles(state)).toEqual(['felt']);
    const bare = { ...shelf.profile[2]!, name: 'felt' };
    const next = replanned(state, { shelf: someShelf({ profile: [bare, ...shelf.profile.slice(1)] }) });
    expect(next.work!.plan.profiles[0]).toBe(bare);
    expect(editedProfiles(next)).toEqual([]);
  });

  it('of a profile whose file is gone comes back with it', () => {
    const shelf = someShelf();
    const state = withGain(someState({ shelf }), 22);
    const gone = replanned(state, { shelf: someShelf({ profile: shelf.profile.slice(0, 2) }) });
    expect(editedProfiles(gone)).toEqual([]);
    expect(gainNow(replanned(gone, { shelf }), 'wool')).toBe(22);
  });
});

describe('undo', () => {
  it('goes back step by step and on again', () => {
    const first = someState();
    const steps = [first, withGain(first, 22)];
    steps.push(withGain(steps[1]!, 25), afterKeys(withGain(steps[1]!, 25), 'b up return'));
    let state = steps.at(-1)!;
    expect(state.choices.setup.board).toBe('brick');
    for (const before of steps.slice(0, -1).toReversed()) {
      state = afterKeys(state, 'u');
      expect(state.choices).toEqual(before.choices);
    }
    expect(afterKeys(state, 'u').notice?.text).toBe('undo: nothing to undo');
    for (const after of steps.slice(1)) {
      state = afterKeys(state, 'U');
      expect(state.choices).toEqual(after.choices);
    }
    expect(afterKeys(state, 'U').notice?.text).toBe('redo: nothing to redo');
  });

  it('forgets what was undone once something else is chosen', () => {
    const state = withGain(afterKeys(withGain(someState(), 22), 'u'), 30);
    expect(state.future).toEqual([]);
    expect(gainNow(afterKeys(state, 'u'), 'wool')).toBe(20);
  });

  it('remembers the last two hundred steps', () => {
    const state = Array.from({ length: 210 }, (_, index) => 21 + index).reduce<BenchState>(
      (now, gain) => withGain(now, gain),
      someState(),
    );
    const undone = afterKeys(state, 'u '.repeat(210));
    expect(undone.past).toEqual([]);
    expect(gainNow(undone, 'wool')).toBe(30);
  });
});

describe('another plan', () => {
  it('keeps rows, cursor and column when only a number was changed', () => {
    const state = afterKeys(rankedState(), 'j l space');
    const next = withGain(state, 22);
    expect(next.rows).toEqual(state.rows);
    expect(next.rank).toEqual(state.rank);
  });

  it('keeps no row of another rig, but cursor, picks and column by their names', () => {
    const state = afterKeys(rankedState(), 'j l l space');
    const next = afterKeys(state, 'b up return');
    expect(next.rows).toEqual([]);
    expect(next.rank).toEqual(state.rank);
    expect(afterKeys(next, 'u').rank).toEqual(state.rank);
  });

  it('moves the column with its scenario, and lets it go with it', () => {
    const state = afterKeys(rankedState(), 'l l');
    const onlyLevel = afterKeys(state, 'o down space up space down space return');
    expect(onlyLevel.choices.setup.scenarios).toEqual(['level']);
    expect(onlyLevel.rank.column).toBe(0);
    expect(afterKeys(onlyLevel, 'u').rank.column).toBe(1);
    expect(afterKeys(state, 'l l o down space return').rank.column).toBe(0);
    expect(afterKeys(state, 'o down space return').rank.column).toBeNull();
  });
});
