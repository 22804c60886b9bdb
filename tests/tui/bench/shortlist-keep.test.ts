/**
 * How does a profile get onto the shortlist from the screens: which one is meant, under which name, in which cells, and when is it
 * refused?
 */
import { describe, expect, it } from 'vitest';
import { keepingOn, keepingOver } from '../../../src/tui/bench/hear-shortlist.js';
import { shelved } from '../../../src/tui/bench/hear.js';
import { currentRow } from '../../../src/tui/bench/rows.js';
import { currentShortlistRow } from '../../../src/tui/bench/shortlist-items.js';
import { keepingText } from '../../../src/tui/bench/shortlist-words.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { currentCandidate, profileOf } from '../../../src/tui/bench/sweep-items.js';
import { keptExample } from '../../show/kept-example.js';
import { KEPT, withKept, withQueue } from '../draw/drawn-shortlist.js';
import { endedSweep } from '../draw/drawn-sweep.js';
import { afterKeys, afterTyping, rankedState, someState } from './some-state.js';

const here = (state: BenchState) => currentRow(state)!.name;
const taken = (name: string) => withKept(rankedState(), [{ name, value: keptExample() }]);

describe('the profile in front', () => {
  it.each([
    ['Rank', 'down a', 'down'],
    ['Trace', 'down return a', 'down'],
    ['Why', 'down y a', 'down'],
  ])('is kept from %s, in what Rank ranks on', (_, keys, move) => {
    const name = here(afterKeys(rankedState(), move));
    const asked = afterKeys(rankedState(), keys);
    expect(asked.entry).toEqual({ purpose: 'keep', text: name, isOffered: true });
    const { shortlist, entry, notice, work } = afterKeys(asked, 'return');
    expect(shortlist.queue).toEqual([
      { name, progress: null, plan: { ...work!.plan, profiles: [expect.objectContaining({ name })] } },
    ]);
    expect(entry).toBeNull();
    expect(notice).toEqual({ text: `${name} is being proven; L shows how far it is`, isFault: false });
  });

  it('is proven with the fixed step whatever Rank is computed with', () => {
    const state = rankedState({ options: { solver: 'reference' } });
    expect(afterKeys(state, 'a return').shortlist.queue[0]!.plan.solver).toBe('fixed');
  });

  it('keeps its changed numbers, says so in its summary, and is offered a name of its own', () => {
    const edited = afterKeys(rankedState(), 'e right escape');
    const name = here(edited);
    const asked = afterKeys(edited, 'a');
    expect(asked.entry?.text).toBe(`${name}-2`);
    const [kept] = afterKeys(asked, 'return').shortlist.queue[0]!.plan.profiles;
    const now = edited.work!.plan.profiles.find((profile) => profile.name === name)!;
    expect(kept!.value.gains).toEqual(now.value.gains);
    expect(kept!.value.summary).toMatch(
      new RegExp(`^From ${name}: proportionalAPerDeg \\d+ to [\\d.]+ A/deg\\.$`),
    );
  });

  it('of a sweep is the candidate under the cursor, in the cells of the sweep', () => {
    const ended = afterKeys(endedSweep(rankedState()), 'down');
    const { plan } = ended.sweep.run!;
    const asked = afterKeys(ended, 'a');
    expect(asked.entry?.text).toBe(`${plan.base.name}-2`);
    const [keeping] = afterKeys(asked, 'return').shortlist.queue;
    expect(keeping!.plan.scenarios).toBe(plan.cells.scenarios);
    expect(keeping!.plan.riders).toBe(plan.cells.riders);
    const candidate = profileOf(ended, currentCandidate(ended)!)!;
    expect(keeping!.plan.profiles[0]).toMatchObject({
      name: plan.base.name,
      value: { gains: candidate.gains },
    });
    expect(afterKeys(endedSweep(rankedState()), 't a').entry?.purpose).toBe('keep');
  });

  it('is the one that was asked about, whatever stands under the cursor by then', () => {
    const asked = afterKeys(rankedState(), 'a');
    const name = here(asked);
    const others = { ...asked, rank: { ...asked.rank, cursor: asked.rows.at(-1)!.name } };
    expect(afterKeys(others, 'return').shortlist.queue[0]!.plan.profiles[0]!.name).toBe(name);
  });

  it('is not asked about a second time once the line is closed', () => {
    const closed = afterKeys(rankedState(), 'a escape');
    expect(closed).toMatchObject({ entry: null, shortlist: { queue: [] } });
  });
});

describe('a name', () => {
  const name = here(rankedState());

  it('that is taken is not offered', () => {
    expect(afterKeys(taken(name), 'a').entry?.text).toBe(`${name}-2`);
    const two = withKept(
      rankedState(),
      [name, `${name}-2`].map((one) => ({ name: one, value: keptExample() })),
    );
    expect(afterKeys(two, 'a').entry?.text).toBe(`${name}-3`);
    expect(afterKeys(withQueue(rankedState(), name), 'a').entry?.text).toBe(`${name}-2`);
  });

  it.each([
    ['one that is kept', () => taken('tea'), 'tea', /tea is kept already; type another name/],
    ['one that waits', () => withQueue(rankedState(), 'tea'), 'tea', /tea is being proven already/],
    [
      'that of a damaged file',
      () =>
        withKept(
          rankedState(),
          [],
          [{ file: 'shortlist/tea.yaml', line: 3, column: 1, key: 'seal', expected: 'a', received: 'b' }],
        ),
      'tea',
      /a file that is damaged has the name tea/,
    ],
    ['no name', () => rankedState(), 'Ärger/../x', /expected a name of at most 40 lower-case letters/],
    ['nothing', () => rankedState(), '', /expected a name of at most 40/],
  ])('is refused at the line where it is %s, and can be typed again', (_, state, typed, says) => {
    const refused = afterKeys(afterTyping(afterKeys(state(), 'a ctrl+u'), typed), 'return');
    expect(refused.notice).toMatchObject({ isFault: true, text: expect.stringMatching(says) });
    expect(refused.entry).toMatchObject({ purpose: 'keep', text: typed });
    expect(refused.shortlist.queue.filter((one) => one.progress === null)).toEqual([]);
    const again = afterKeys(afterTyping(afterKeys(refused, 'ctrl+u'), 'other'), 'return');
    expect(again.shortlist.queue.at(-1)?.name).toBe('other');
  });
});

describe('nothing is kept', () => {
  it('in the starter set, and it is said what to do', () => {
    const state = afterKeys(rankedState({ options: { ownFolder: false } }), 'a');
    expect(state.entry).toBeNull();
    expect(state.notice?.text).toBe(
      'shortlist: the starter set stays as it is; begin in a folder made by underfoot init',
    );
    expect(afterKeys(state, 'return y a').notice?.text).toMatch(/^shortlist: the starter set/);
  });

  it('where there is no profile', () => {
    const none = afterKeys(rankedState(), '/ z z z return a');
    expect(none.notice?.text).toBe('shortlist: there is no profile in sight');
    expect(afterKeys({ ...someState(), work: null }, 'a').entry).toBeNull();
  });
});

describe('what waits', () => {
  const two = afterKeys(afterKeys(rankedState(), 'a return'), 'down a return');
  const [first, second] = two.shortlist.queue;

  it('is proven one after the other, and how far that is, is said', () => {
    expect(two.notice?.text).toMatch(/waits to be proven/);
    expect(keepingText(two)).toBe(`proving ${first!.name}, 1 waits`);
    const on = keepingOn(two, first!.plan, { stage: 'trying slips', done: 12, all: 30 });
    expect(keepingText(on)).toBe(`proving ${first!.name}: slips 40 %, 1 waits`);
    const edge = keepingOn(on, first!.plan, { stage: 'looking for the edge', done: 57, all: null });
    expect(keepingText(edge)).toBe(`proving ${first!.name}: edge 57 runs, 1 waits`);
    const over = keepingOver(edge, first!.plan);
    expect(over.shortlist.queue).toEqual([second]);
    expect(keepingText(keepingOver(over, second!.plan))).toBe('');
  });

  it('hears no news of what is not wanted any more', () => {
    const over = keepingOver(two, first!.plan);
    expect(keepingOn(over, first!.plan, { stage: 'trying slips', done: 1, all: 2 })).toBe(over);
  });

  it('is taken out by the second wish, and stays without it', () => {
    expect(currentShortlistRow(afterKeys(two, 'L'))?.name).toBe(second!.name);
    const asked = afterKeys(two, 'L up d');
    expect(asked.notice?.text).toBe(`d again takes ${first!.name} out: it is not proven then`);
    expect(afterKeys(asked, 'd').shortlist).toMatchObject({ queue: [second], cursor: second!.name });
    expect(afterKeys(asked, 'down d').shortlist.queue).toHaveLength(2);
  });

  it('asks once before the bench is left', () => {
    const asked = afterKeys(two, 'q');
    expect(asked).toMatchObject({ errands: [], leaving: true });
    expect(asked.notice?.text).toBe(
      `${first!.name} is still being proven, 1 waits: q again leaves without them`,
    );
    const one = keepingOver(two, first!.plan);
    expect(afterKeys(one, 'q').notice?.text).toBe(
      `${second!.name} is still being proven: q again leaves without it`,
    );
    expect(afterKeys(asked, 'q').errands).toEqual([{ kind: 'leave', interrupted: false }]);
    expect(afterKeys(asked, 'down q').errands).toEqual([]);
  });

  it('stays while files change', () => {
    const next = shelved(two, { ...two.files, kept: KEPT });
    expect(next.shortlist.queue).toBe(two.shortlist.queue);
  });
});
