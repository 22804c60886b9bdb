/**
 * Is a question why answered while it is asked, and no longer; and is what was answered known when it is asked again?
 */
import { describe, expect, it } from 'vitest';
import { followWhy } from '../../../src/tui/app/why-following.js';
import { createStore } from '../../../src/tui/bench/store.js';
import { crewHere } from '../../tasks/crew-here.js';
import { afterKeys, rankedState } from '../bench/some-state.js';

/** A store that is followed, and what waits for its answer. */
function followed(gate?: () => Promise<void>) {
  const store = createStore(rankedState());
  const crew = crewHere(1, gate);
  const faults: unknown[] = [];
  const following = followWhy({ store, crew, onFault: (error) => faults.push(error) });
  store.subscribe(following.follow);
  const answered = () =>
    new Promise<void>((resolve) => {
      const look = () => {
        if (store.get().why?.answer?.tried) resolve();
      };
      store.subscribe(look);
      look();
    });
  const press = (keys: string) => store.change((state) => afterKeys(state, keys));
  return { store, crew, faults, following, answered, press };
}

describe('a question that is followed', () => {
  it('is answered in the end, and at once when it is asked again', async () => {
    const { store, crew, press, answered, faults, following } = followed();
    press('y');
    expect(store.get().why?.answer).toBeNull();
    await answered();
    const { answer, progress } = store.get().why!;
    expect(answer!.explanation.isComplete).toBe(true);
    expect(answer!.tried!.remedies.length).toBeGreaterThan(0);
    expect(progress!.all).toBeGreaterThan(0);
    const asked = crew.asked.length;
    press('escape');
    press('y');
    expect(store.get().why?.answer).toBe(answer);
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

  it('hands what goes wrong on', async () => {
    const { press, faults } = followed(() => Promise.reject(new Error('no crew')));
    press('y');
    await new Promise((resolve) => setTimeout(resolve));
    expect(faults).toEqual([new Error('no crew')]);
  });
});
