/**
 * What do keys do with a sweep: stop and go on, other views, one cursor over table, map and front; and how does a candidate get to
 * Rank, Trace and Why?
 */
import { describe, expect, it } from 'vitest';
import { editedProfiles, withoutChanges } from '../../../src/tui/bench/choices.js';
import { shelved, swept } from '../../../src/tui/bench/hear.js';
import { wishesOf } from '../../../src/tui/bench/rows.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import {
  currentCandidate,
  leadersOf,
  mapSpecOf,
  placesInView,
  profileOf,
  viewsOf,
} from '../../../src/tui/bench/sweep-items.js';
import { sweepText } from '../../../src/tui/bench/sweep-words.js';
import { begunSweep, endedSweep, outcomeFor, runningSweep } from '../draw/drawn-sweep.js';
import { afterKeys, afterTyping, rankedState, someShelf } from './some-state.js';

const running = runningSweep(rankedState());
const ended = endedSweep(rankedState());
const base = ended.sweep.run!.plan.base.name;
const nameOf = (state: BenchState) => currentCandidate(state)?.name;
const finalists = leadersOf(ended).map(({ name }) => name);

describe('a sweep that runs', () => {
  it('goes on while other screens are in front, and says how far it is', () => {
    const away = afterKeys(running, 'escape');
    expect(away.sweep.run).toBe(running.sweep.run);
    expect(sweepText(away)).toBe('sweep: race 2 of 3, 25 %');
    expect(afterKeys(away, 'g').sweep).toMatchObject({ view: 'live', run: running.sweep.run });
  });

  it('is stopped and goes on by the same key, in the form too', () => {
    const stopped = afterKeys(running, 'space');
    expect(stopped.sweep.run).toMatchObject({ isRunning: false, plan: running.sweep.run!.plan });
    expect(sweepText(stopped)).toBe('sweep stopped');
    expect(afterKeys(stopped, 'tab space').sweep.run).toEqual(running.sweep.run);
    expect(afterKeys(ended, 'space').notice?.text).toBe('stop or go on: the sweep has come to its end');
    expect(afterKeys(rankedState(), 'g space').notice?.text).toBe('stop or go on: no sweep was begun yet');
  });

  it('lets its best so far be taken over', () => {
    const ranked = afterKeys(running, 'down r');
    expect(editedProfiles(ranked)).toEqual([base]);
    expect(ranked.notice?.text).toContain(running.sweep.run!.best[1]!.result.name);
  });

  it('hears no news of another one', () => {
    const other = begunSweep(rankedState());
    expect(swept(other, running.sweep.run!.plan, { isRunning: false })).toBe(other);
    expect(swept(rankedState(), running.sweep.run!.plan, {}).sweep.run).toBeNull();
  });

  it('shows what came of it to who watched, and tells it to who did not', () => {
    const { plan } = running.sweep.run!;
    const outcome = outcomeFor(plan);
    const end = (state: BenchState) => swept(state, plan, { isRunning: false, outcome });
    expect(end(running).sweep.view).toBe('finalists');
    expect(end(running).notice).toBeNull();
    expect(end(afterKeys(running, 'tab')).sweep.view).toBe('ranges');
    const away = end(afterKeys(running, 'escape'));
    expect(away.notice?.text).toBe('the sweep has come to its end: g on Rank shows it');
    expect(afterKeys(away, 'g').sweep.view).toBe('finalists');
    expect(afterKeys(away, 'g tab').sweep.view).toBe('map');
  });
});

it('leaves the cursor on a finalist, and not on one who was dropped', () => {
  const { plan } = running.sweep.run!;
  const outcome = outcomeFor(plan);
  const after = (cursor: string) =>
    swept({ ...running, sweep: { ...running.sweep, cursor } }, plan, { isRunning: false, outcome }).sweep
      .cursor;
  const [, second] = outcome.answer.finalists.map(({ candidate }) => candidate.name);
  const dropped = outcome.points.find(({ fate }) => fate.kind === 'dropped')!.candidate.name;
  expect([after(second!), after(dropped)]).toEqual([second, null]);
});

describe('views', () => {
  it('come one after the other', () => {
    const seen = ['', 'tab', 'tab tab', 'tab tab v', 'tab tab tab tab'].map(
      (keys) => afterKeys(ended, keys).sweep.view,
    );
    expect(seen).toEqual(['finalists', 'map', 'front', 'ranges', 'finalists']);
    expect(viewsOf(running)).toEqual(['live', 'ranges']);
    expect(viewsOf(endedSweep(rankedState(), { isHopeless: true }))).toEqual(['finalists', 'ranges']);
    expect(afterKeys(rankedState(), 'g tab').notice?.text).toBe('view: no sweep was begun yet');
  });

  it('have no map where one number was swept', () => {
    expect(viewsOf(endedSweep(afterKeys(rankedState(), 'g d escape')))).not.toContain('map');
  });

  it('map one metric after the other', () => {
    const map = afterKeys(ended, 'tab');
    const names = ['', 'm', 'm m', 'm m m', 'm m m m', 'm m m m m'].map((keys) =>
      mapSpecOf(afterKeys(map, keys))!.metric.name.replace(/ over .*/, ''),
    );
    expect(names).toEqual(['Score', 'Share of falls', 'Overshoot', 'Settling', 'Ticks cut', 'Score']);
    expect(mapSpecOf(map)!.metric.name).toBe('Score over 2 cells');
    expect(afterKeys(ended, 'm').notice?.text).toMatch(/^metric: only the map/);
  });

  it('have other axes: each pair of the numbers, each two of the costs', () => {
    expect(afterKeys(ended, 'tab x').notice?.text).toBe('other axes: only two numbers were swept');
    expect(afterKeys(ended, 'x').notice?.text).toMatch(/^other axes: only map and front/);
    expect(afterKeys(ended, 'tab tab x').sweep.trade).toBe(1);
    expect(afterKeys(ended, 'tab tab x x x').sweep.trade).toBe(0);
    const three = endedSweep(afterKeys(rankedState(), 'g a down down space return escape'));
    const axes = ['', 'x', 'x x', 'x x x'].map((keys) => {
      const { x, y } = mapSpecOf(afterKeys(three, `tab ${keys}`))!;
      return [x, y];
    });
    expect(axes).toEqual([
      [0, 1],
      [0, 2],
      [1, 2],
      [0, 1],
    ]);
  });
});

describe('the cursor', () => {
  it.each([
    ['', 0],
    ['down', 1],
    ['j j k', 1],
    ['up', 0],
    ['end', finalists.length - 1],
    ['end home', 0],
    ['left right', 0],
  ])('in the table after %s is on finalist %i', (keys, index) => {
    expect(nameOf(afterKeys(ended, keys))).toBe(finalists[index]);
  });

  it('is the same one in every view', () => {
    const third = afterKeys(ended, 'down down');
    for (const keys of ['tab', 'tab tab', 'tab tab tab tab'])
      expect(nameOf(afterKeys(third, keys))).toBe(finalists[2]);
    const dropped = ended.sweep.run!.outcome!.points.find(({ fate }) => fate.kind === 'dropped')!.candidate
      .name;
    const elsewhere = { ...ended, sweep: { ...ended.sweep, cursor: dropped } };
    expect(nameOf(afterKeys(elsewhere, 'tab tab'))).toBe(dropped);
    expect(nameOf(afterKeys(elsewhere, 'tab tab left'))).toBe(finalists[0]);
    const onFront = afterKeys(third, 'tab tab j');
    expect(nameOf(afterKeys(onFront, 'tab tab'))).toBe(finalists[3]);
  });

  it.each(['left', 'right', 'up', 'down'] as const)(
    'on the map goes %s to the edge, and stays there',
    (direction) => {
      let state = afterKeys(ended, 'tab');
      const placeOf = (now: BenchState) => placesInView(now).find(({ name }) => name === nameOf(now))!.place;
      for (let step = 0; step < 200; step++) {
        const next = afterKeys(state, direction);
        if (nameOf(next) === nameOf(state)) break;
        const [from, to] = [placeOf(state), placeOf(next)];
        const ahead = { left: from.x - to.x, right: to.x - from.x, up: to.y - from.y, down: from.y - to.y };
        expect(ahead[direction]).toBeGreaterThan(0);
        state = next;
      }
      const { x, y } = placeOf(state);
      const all = placesInView(state).map(({ place }) => place);
      const edge = {
        left: x === Math.min(...all.map((place) => place.x)),
        right: x === Math.max(...all.map((place) => place.x)),
        up: y === Math.max(...all.map((place) => place.y)),
        down: y === Math.min(...all.map((place) => place.y)),
      };
      expect(edge[direction]).toBe(true);
    },
  );
});

describe('a candidate', () => {
  const profile = profileOf(ended, currentCandidate(ended)!)!;
  const numbersOf = ({ work }: BenchState) => work!.plan.profiles.find(({ name }) => name === base)!.value;

  it('goes to Rank as the profile with changed numbers, in one step that undo takes back', () => {
    const ranked = afterKeys(ended, 'r');
    expect(ranked).toMatchObject({ screen: 'rank', behind: [], rank: { cursor: base, filter: '' } });
    expect(numbersOf(ranked)).toEqual(profile);
    expect(ranked.notice?.text).toBe(
      `${base} has the numbers of ${finalists[0]} now: w writes it, u takes it back`,
    );
    expect(numbersOf(afterKeys(ranked, 'u'))).toEqual(numbersOf(ended));
    expect(afterKeys(ranked, 'w').entry).toMatchObject({ purpose: 'save', text: `${base}-2` });
    expect(afterKeys(ranked, 'g')).toMatchObject({ screen: 'sweep', sweep: ended.sweep });
  });

  it('takes the place of the one before', () => {
    const second = afterKeys(ended, 'r g down r');
    expect(second.past).toHaveLength(2);
    expect(numbersOf(second)).toEqual(profileOf(ended, leadersOf(ended)[1]!));
    expect(afterKeys(ended, 'r g r').past).toHaveLength(1);
  });

  it('goes to Trace in its worst cell, and back', () => {
    const trace = afterKeys(ended, 'return');
    const { worst } = currentCandidate(ended)!.result!;
    expect(trace).toMatchObject({ screen: 'trace', behind: ['rank', 'sweep'], view: { profiles: [base] } });
    expect(trace.work!.trials[trace.view.trial]!.key).toMatchObject({
      scenario: worst.scenario,
      rider: worst.rider,
    });
    expect(wishesOf(trace)[0]!.profile.value).toEqual(profile);
    expect(afterKeys(trace, 'escape')).toMatchObject({
      screen: 'sweep',
      behind: ['rank'],
      sweep: ended.sweep,
    });
  });

  it('goes to Why, and back', () => {
    const why = afterKeys(ended, 'y');
    expect(why).toMatchObject({ screen: 'why', behind: ['rank', 'sweep'] });
    expect(why.why!.plan.profiles).toEqual([{ name: base, value: profile }]);
    expect(afterKeys(why, 'escape')).toMatchObject({ screen: 'sweep', why: null });
  });

  it('that was not run has no run to look at', () => {
    const hopeless = ended.sweep.run!.outcome!.points.find(({ own }) => own === null)!;
    const state = { ...ended, sweep: { ...ended.sweep, cursor: hopeless.candidate.name } };
    expect(afterKeys(state, 'return').notice?.text).toBe('look: it cannot hold the board up and was not run');
    expect(afterKeys(state, 'r').screen).toBe('rank');
  });

  it('cannot be taken over where its profile is gone, nor looked at where its cell is', () => {
    const { profile: profiles, scenario } = someShelf();
    const gone = shelved(ended, someShelf({ profile: profiles.filter(({ name }) => name !== base) }));
    expect(afterKeys(gone, 'r').notice?.text).toBe(`rank it: ${base} is no longer there`);
    const { worst } = currentCandidate(ended)!.result!;
    const other = shelved(
      ended,
      someShelf({ scenario: scenario.filter(({ name }) => name !== worst.scenario) }),
    );
    expect(afterKeys(other, 'return').notice?.text).toMatch(/^look: its worst cell is no part of what Rank/);
    expect(afterKeys(running, 'r').screen).toBe('rank');
    expect(afterKeys(begunSweep(rankedState()), 'r').notice?.text).toBe('rank it: there is no candidate yet');
  });
});

describe('a candidate of a sweep that began with the plain profile', () => {
  const plain = afterKeys(afterTyping(afterKeys(rankedState(), 'g f'), 'plain'), 'return');
  const done = endedSweep(afterKeys(plain, 'escape'));
  const profile = (state: BenchState, name = 'plain') =>
    state.work!.plan.profiles.find((one) => one.name === name)?.value;

  it('comes to Rank as a profile of its own, which undo takes away', () => {
    const ranked = afterKeys(done, 'r');
    expect(ranked).toMatchObject({ screen: 'rank', rank: { cursor: 'plain' } });
    expect(ranked.notice?.text).toBe(
      `plain has the numbers of ${finalists[0]} now: w writes it, u takes it back`,
    );
    expect(profile(ranked)).toEqual(profileOf(done, currentCandidate(done)!));
    expect(editedProfiles(ranked)).toEqual(['plain']);
    expect(afterKeys(ranked, 'w').entry).toMatchObject({ purpose: 'save', text: 'plain' });
    expect(profile(afterKeys(ranked, 'u'))).toBeUndefined();
    expect(afterKeys(ranked, 'u').choices).toEqual(done.choices);
    expect(profile(afterKeys(ranked, 'u U'))).toEqual(profile(ranked));
  });

  it('takes the place of the one before, and can be edited', () => {
    const second = afterKeys(done, 'r g down r');
    expect(second.work!.plan.profiles).toHaveLength(done.work!.plan.profiles.length + 1);
    expect(profile(second)).toEqual(profileOf(done, leadersOf(done)[1]!));
    expect(afterKeys(done, 'r g r').past).toHaveLength(1);
    const edited = afterKeys(second, 'e right escape');
    expect(profile(edited)).not.toEqual(profile(second));
    expect(profile(afterKeys(edited, 'g r'))).toEqual(profile(second));
  });

  it('goes to Trace and to Why, and back', () => {
    const trace = afterKeys(done, 'return');
    expect(trace).toMatchObject({ screen: 'trace', view: { profiles: ['plain'] } });
    expect(wishesOf(trace)[0]!.profile.name).toBe('plain');
    const why = afterKeys(done, 'y');
    expect(why.why!.plan.profiles[0]!.name).toBe('plain');
    expect(afterKeys(why, 'escape')).toMatchObject({ screen: 'sweep', why: null });
  });

  it('stays among the files when they are read again, under a name that none of them has', () => {
    const ranked = afterKeys(done, 'r');
    const shelf = someShelf();
    const again = shelved(ranked, someShelf());
    expect(profile(again)).toEqual(profile(ranked));
    expect(shelved(again, again.files)).toBe(again);
    const taken = shelved(ranked, {
      ...shelf,
      profile: [...shelf.profile, { ...shelf.profile[0]!, name: 'plain' }],
    });
    expect(profile(taken)).toEqual(shelf.profile[0]!.value);
    expect(editedProfiles(taken)).toEqual([]);
    const other = afterKeys(taken, 'g r');
    expect(other.rank.cursor).toBe('plain-2');
    expect(profile(other, 'plain-2')).toEqual(profile(ranked));
  });

  it('is gone once it is saved under another name', () => {
    const { choices } = afterKeys(done, 'r e right escape');
    expect(withoutChanges(choices, 'plain')).toEqual(done.choices);
    expect(withoutChanges(choices, 'wool')).toEqual(choices);
  });
});
