/**
 * Is a question why answered while it is asked, and no longer, and is the edge looked for after that; and is what was answered
 * known when it is asked again?
 */
import { describe, expect, it } from 'vitest';
import { followWhy } from '../../../src/tui/app/why-following.js';
import type { WhyState } from '../../../src/tui/bench/state.js';
import { createStore } from '../../../src/tui/bench/store.js';
import { crewHere } from '../../tasks/crew-here.js';
import { edgeFor } from '../real-edge.js';
import { afterKeys, rankedState } from '../bench/some-state.js';

const isAnswered = (why: WhyState | null) => why?.answer?.tried !== null && why?.answer?.tried !== undefined;
const hasEdge = (why: WhyState | null) => why !== null && why.edge !== null;
const afterNews = () => new Promise((resolve) => setTimeout(resolve, 150));

/** A store that is followed, and what waits for its answer. */
function followed(gate?: () => Promise<void>) {
  const store = createStore(rankedState());
  const crew = crewHere(1, gate);
  const faults: unknown[] = [];
  const following = followWhy({ store, crew, onFault: (error) => faults.push(error) });
  store.subscribe(following.follow);
  const until = (isSo: (why: WhyState | null) => boolean) =>
    new Promise<void>((resolve) => {
      const look = () => {
        if (isSo(store.get().why)) resolve();
      };
      store.subscribe(look);
      look();
    });
  const press = (keys: string) => store.change((state) => afterKeys(state, keys));
  return { store, crew, faults, following, until, press };
}

describe('a question that is followed', () => {
  it('is answered in the end, and at once when it is asked again', async () => {
    const { store, crew, press, until, faults, following } = followed();
    press('y');
    expect(store.get().why?.answer).toBeNull();
    await until(isAnswered);
    const { answer, progress, edge: none } = store.get().why!;
    expect(answer!.explanation.isComplete).toBe(true);
    expect(answer!.tried!.remedies.length).toBeGreaterThan(0);
    expect(progress!.all).toBeGreaterThan(0);
    expect(none).toBeNull();
    await until(hasEdge);
    const { edge } = store.get().why!;
    expect(store.get().why?.answer).toBe(answer);
    const asked = crew.asked.length;
    press('escape');
    press('y');
    expect(store.get().why).toMatchObject({ answer, edge });
    await afterNews();
    expect([crew.asked.length, faults]).toEqual([asked, []]);
    following.stop();
  });

  it.each(['escape', 'escape down y'])('begins no further run after %s', async (keys) => {
    let open = () => {};
    const { crew, press, faults, following } = followed(() => new Promise((resolve) => (open = resolve)));
    press('y');
    expect(crew.asked).toHaveLength(1);
    const [first] = crew.asked;
    const finish = open;
    press(keys);
    finish();
    await new Promise((resolve) => setTimeout(resolve));
    expect(crew.asked.filter(({ summary }) => summary === first!.summary)).toHaveLength(1);
    expect(faults).toEqual([]);
    following.stop();
  });

  it('has the edge of the very plan that was asked about, and counts the runs to it', async () => {
    const { store, press, until, following } = followed();
    const counts: number[] = [];
    store.subscribe(() => counts.push(store.get().why?.edgeRuns ?? 0));
    press('down y');
    await until(hasEdge);
    expect(store.get().why!.edge).toEqual(await edgeFor(store.get()));
    const told = counts.filter((count) => count > 0);
    expect(told.length).toBeGreaterThan(0);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
    following.stop();
  });

  it.each([
    ['the end of the bench', (_press: (keys: string) => void, stop: () => void) => stop()],
    ['another question', (press: (keys: string) => void) => press('escape down y')],
    ['leaving', (press: (keys: string) => void) => press('escape')],
  ])('looks no further for the edge after %s, and tells nothing of it', async (_, leave) => {
    const held: (() => void)[] = [];
    let isHeld = false;
    const gate = () => (isHeld ? new Promise<void>((resolve) => held.push(resolve)) : Promise.resolve());
    const { store, crew, press, until, faults, following } = followed(gate);
    press('y');
    const name = store.get().why!.plan.profiles[0]!.value.summary;
    await until((why) => {
      isHeld ||= isAnswered(why);
      return isHeld;
    });
    while (held.length === 0) await new Promise((resolve) => setTimeout(resolve));
    leave(press, following.stop);
    const after = store.get();
    const asked = crew.asked.filter(({ summary }) => summary === name).length;
    held.shift()!();
    await afterNews();
    expect(crew.asked.filter(({ summary }) => summary === name)).toHaveLength(asked);
    expect(store.get()).toBe(after);
    expect(faults).toEqual([]);
    following.stop();
  });

  it('looks for the edge alone where the answer is known, and the edge is not', async () => {
    const { store, crew, press, until, following } = followed();
    press('y');
    await until(isAnswered);
    const { answer } = store.get().why!;
    press('escape');
    const asked = crew.asked.length;
    press('y');
    expect(store.get().why).toMatchObject({ answer, edge: null });
    await until(hasEdge);
    expect(store.get().why?.answer).toBe(answer);
    const scenarios = new Set(crew.asked.slice(asked).flatMap(({ trials }) => trials));
    expect([...scenarios].filter((trial) => /^(kerb|level)\//.test(trial))).toEqual([]);
    expect(scenarios.size).toBeGreaterThan(0);
    following.stop();
  });

  it('a cell that cannot be computed is told, Rank is in front again, and the question can be asked anew', async () => {
    let isBroken = true;
    const gate = () => (isBroken ? Promise.reject(new Error('no crew')) : Promise.resolve());
    const { store, press, until, faults, following } = followed(gate);
    press('y');
    await until((why) => why === null);
    expect(store.get()).toMatchObject({
      screen: 'rank',
      notice: { isFault: true, text: expect.stringMatching(/^why: .*Esc and y try again.*no crew/) },
    });
    isBroken = false;
    press('y');
    await until((why) => why?.answer !== null);
    expect(faults).toEqual([]);
    following.stop();
  });

  it('a cell that cannot be computed leaves what is known in front', async () => {
    let isBroken = false;
    const gate = () => (isBroken ? Promise.reject(new Error('no crew')) : Promise.resolve());
    const { store, press, until, following } = followed(gate);
    press('y');
    await until((why) => why?.answer?.explanation.isComplete === true);
    isBroken = true;
    await until(() => store.get().notice !== null);
    const { screen, why } = store.get();
    expect([screen, why?.answer?.explanation.isComplete]).toEqual(['why', true]);
    following.stop();
  });

  it('hands errors of ours on', async () => {
    const { store, press, faults } = followed();
    store.change((state) => ({
      ...afterKeys(state, 'y'),
      why: { ...afterKeys(state, 'y').why!, plan: { ...state.work!.plan, profiles: [] } },
    }));
    press('');
    while (faults.length === 0) await new Promise((resolve) => setTimeout(resolve));
    expect(faults).toHaveLength(1);
  });
});
