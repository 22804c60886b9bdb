/**
 * What do keys do on the Why screen: ask, look at a finding, try a change, keep it or take it back, and what becomes of the
 * question when files and setup change?
 */
import { describe, expect, it } from 'vitest';
import { withFields } from '../../../src/quantity/profile-fields.js';
import { editedProfiles } from '../../../src/tui/bench/choices.js';
import { explained, refusedErrand, shelved } from '../../../src/tui/bench/hear.js';
import { wishesOf } from '../../../src/tui/bench/rows.js';
import { shellCommand } from '../../../src/tui/bench/shell-command.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { answerFor } from '../draw/drawn-why.js';
import { afterKeys, rankedState, someShelf, someState, withLooks } from './some-state.js';

/** The state with its question answered: two findings, then two changes. */
function answered(state: BenchState): BenchState {
  return withLooks(explained(state, state.why!.plan, { answer: answerFor(state) }));
}

const asked = afterKeys(rankedState(), 'y');
const known = answered(asked);
const name = asked.why!.plan.profiles[0]!.name;
const numbersOf = ({ work }: BenchState) =>
  work!.plan.profiles.find((profile) => profile.name === name)!.value;

describe('asking why', () => {
  it('of the profile under the cursor opens Why with a plan of that one alone', () => {
    const below = afterKeys(rankedState(), 'down y');
    expect(below).toMatchObject({ screen: 'why', behind: ['rank'], why: { answer: null, cursor: 0 } });
    expect(below.why!.plan.profiles.map((profile) => profile.name)).toEqual([below.rank.cursor]);
    expect(below.why!.plan.scenarios).toBe(below.work!.plan.scenarios);
    expect(shellCommand(asked)).toBe(`underfoot explain ${name} --board pebble --rider kim`);
  });

  it('on Trace asks of the profile that is shown, and leads back there', () => {
    const trace = afterKeys(withLooks(afterKeys(rankedState(), 'return pagedown')), 'y');
    expect(trace).toMatchObject({ screen: 'why', behind: ['rank', 'trace'] });
    expect(trace.why!.plan.profiles.map((profile) => profile.name)).toEqual(trace.view.profiles);
    expect(afterKeys(trace, 'escape')).toMatchObject({ screen: 'trace', behind: ['rank'], why: null });
  });

  it('again from the run of a finding comes back to the same answer', () => {
    const again = afterKeys(known, 'return y');
    expect(again).toMatchObject({ screen: 'why', behind: ['rank'] });
    expect(again.why).toBe(known.why);
  });

  it('of nothing says why not', () => {
    const none = afterKeys(shelved(someState(), someShelf({ profile: [] })), 'y');
    expect(none.notice?.text).toBe('why: there is no profile in sight');
  });

  it.each(['escape', 'q'])('ends with %s', (key) => {
    expect(afterKeys(known, key)).toMatchObject({ screen: 'rank', behind: [], why: null });
  });
});

describe('news of the answer', () => {
  it('to another question is none', () => {
    const other = afterKeys(rankedState(), 'down y');
    expect(explained(other, asked.why!.plan, { answer: answerFor(asked) })).toBe(other);
    expect(explained(rankedState(), asked.why!.plan, { answer: answerFor(asked) }).why).toBeNull();
  });

  it('leaves the cursor on its finding', () => {
    const answer = answerFor(asked);
    const turned = { ...answer, evidence: answer.evidence.toReversed() };
    const next = explained(afterKeys(known, 'down'), asked.why!.plan, { answer: turned });
    expect(next.why?.cursor).toBe(0);
    expect(explained(known, asked.why!.plan, { answer: turned }).why?.cursor).toBe(1);
  });

  it('does nothing where nothing is known yet', () => {
    expect(afterKeys(asked, 'return').notice?.text).toBe('look or try: nothing is found yet');
  });
});

describe('the cursor', () => {
  it.each([
    ['down', 1],
    ['down down', 2],
    ['end', 3],
    ['end down', 3],
    ['end up', 2],
    ['end home', 0],
    ['up', 0],
    ['pagedown', 3],
    ['end pageup', 0],
  ])('after %s is at %i', (keys, cursor) => {
    expect(afterKeys(known, keys).why?.cursor).toBe(cursor);
  });
});

describe('a finding', () => {
  it('leads to its run at its moment, and back to it', () => {
    const { cell, moment } = known.why!.answer!.evidence[0]!;
    const trace = afterKeys(known, 'return');
    expect(trace).toMatchObject({
      screen: 'trace',
      behind: ['rank', 'why'],
      view: { profiles: [name] },
      playhead: { timeS: moment.peak.timeS, playing: false },
    });
    expect(trace.work!.trials[trace.view.trial]!.key.scenario).toBe(cell.scenario);
    const back = afterKeys(trace, 'escape');
    expect(back).toMatchObject({ screen: 'why', behind: ['rank'] });
    expect(back.why).toBe(known.why);
  });

  it('wants the run of its cell', () => {
    const { cell } = known.why!.answer!.evidence[0]!;
    expect(wishesOf(known).map(({ trial, profile }) => [trial.key.scenario, profile.name])).toEqual([
      [cell.scenario, name],
    ]);
  });
});

describe('a change', () => {
  const [gain, lift] = known.why!.answer!.tried!.remedies;

  it('becomes the numbers of the profile in one step that undo takes back', () => {
    const made = afterKeys(known, 'down down return');
    expect(numbersOf(made)).toEqual(gain!.profile);
    expect(editedProfiles(made)).toEqual([name]);
    expect(made.past).toHaveLength(1);
    expect(made.why).toEqual({ ...known.why, cursor: 2 });
    expect(numbersOf(afterKeys(made, 'u'))).toEqual(numbersOf(known));
    expect(numbersOf(afterKeys(made, 'u U'))).toEqual(gain!.profile);
  });

  it('may be a section that the file does not have, and takes the place of another one', () => {
    const both = afterKeys(known, 'down down return down return');
    expect(numbersOf(both)).toEqual(lift!.profile);
    expect(numbersOf(both).shaping.headroomLift).toEqual({ belowPercent: 30, upToDeg: 4, rateDegPerS: 10 });
    expect(numbersOf(afterKeys(both, 'u'))).toEqual(gain!.profile);
  });

  it('that is made already says so', () => {
    expect(afterKeys(known, 'end return return').notice?.text).toBe(
      'look or try: this change is made already; u takes it back',
    );
  });

  it('wants the runs before and after', () => {
    const wishes = wishesOf(afterKeys(known, 'end return'));
    expect(wishes.map(({ profile }) => profile.value)).toEqual([numbersOf(known), lift!.profile]);
    expect(wishes[0]!.trial).toBe(wishes[1]!.trial);
  });

  it('can be kept as a new profile; a name that is refused stays in its line', () => {
    const line = afterKeys(known, 'end return w');
    expect(line.entry).toMatchObject({ purpose: 'save', text: `${name}-2` });
    const saving = afterKeys(line, 'return');
    expect(saving.errands).toEqual([{ kind: 'save', from: name, name: `${name}-2` }]);
    const problem = { file: 'x', line: null, column: null, key: '', expected: 'a', received: 'b' };
    expect(refusedErrand(saving, saving.errands[0]!, [problem]).entry?.text).toBe(`${name}-2`);
    expect(afterKeys(known, 'w').notice?.text).toBe('save as: this profile is as in its file');
  });

  it('can take a section away as a whole', () => {
    const lifted = withFields(
      numbersOf(known),
      gain!.edits.map(({ path, to }) => ({ path, value: to })),
    )!;
    const without = lift!.edits.map(({ path }) => ({ path, value: null }));
    expect(withFields(lift!.profile, without)).toEqual(numbersOf(known));
    expect(withFields(lifted, [{ path: ['gains', 'rateAPerDegPerS'], value: null }])).toBeNull();
  });
});

describe('files and setup that change meanwhile', () => {
  const shelf = someShelf();
  const changed = shelf.profile.map((profile) => (profile.name === name ? { ...profile } : profile));

  it.each([
    ['its file', { ...shelf, profile: changed }],
    ['a rider file', { ...shelf, rider: shelf.rider.map((rider) => ({ ...rider })) }],
  ])('ask again where %s is another one', (_, next) => {
    const state = shelved(known, next);
    expect(state.why).toMatchObject({ answer: null, cursor: 0, progress: null });
    expect(state.why!.plan.profiles[0]!.name).toBe(name);
  });

  it('leave the answer alone where another profile changes', () => {
    const others = shelf.profile.map((profile) => (profile.name === name ? profile : { ...profile }));
    expect(shelved(known, { ...shelf, profile: others }).why).toBe(known.why);
  });

  it('lead back to Rank where the profile is gone, also from the run of a finding', () => {
    const gone = { ...shelf, profile: shelf.profile.filter((profile) => profile.name !== name) };
    const state = shelved(known, gone);
    expect(state).toMatchObject({ screen: 'rank', behind: [], why: null });
    expect(state.notice?.text).toBe(`${name} is no longer there`);
    expect(shelved(afterKeys(known, 'return'), gone)).toMatchObject({
      screen: 'rank',
      behind: [],
      why: null,
    });
  });
});
