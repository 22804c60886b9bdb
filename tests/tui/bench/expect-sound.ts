/** Does a state of the bench make sense: is everything there that it points at, and can it be drawn? */
import { expect } from 'vitest';
import { itemsInSight } from '../../../src/tui/bench/chooser-acts.js';
import { gainsView } from '../../../src/tui/bench/gains-acts.js';
import { KEYMAP } from '../../../src/tui/bench/keymap.js';
import { placeOf } from '../../../src/tui/bench/press.js';
import { wishesOf } from '../../../src/tui/bench/rows.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { cursorS, spanInSight, wholeSpan } from '../../../src/tui/bench/time-acts.js';
import { screenRows } from '../../../src/tui/draw/screen-rows.js';

/** Expects a state to make sense. */
export function expectSound(state: BenchState): void {
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
  const queued = state.shortlist.queue.map(({ name }) => name);
  expect(new Set(queued).size).toBe(queued.length);
  if (screen === 'sweep' || screen === 'shortlist') {
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
  if (entry !== null) expect(entry.text.length).toBeLessThanOrEqual(entry.purpose === 'note' ? 1200 : 400);
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
