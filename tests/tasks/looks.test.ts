/**
 * Are the runs that are wanted computed, once each and the newest wish first?
 */
import { describe, expect, it } from 'vitest';
import { openCrew, type Crew } from '../../src/tasks/crew.js';
import { openLooks, type LookWish } from '../../src/tasks/looks.js';
import { trialsOf, type RankPlan } from '../../src/tasks/plan.js';
import { runOnce } from '../../src/tasks/run-once.js';
import { crewHere } from './crew-here.js';
import { smallPlan } from './small-plan.js';

const plan = smallPlan({ seeds: [1, 2, 3] });
const trials = trialsOf(plan);
const wish = (profile: number, trial: number, of: RankPlan = plan): LookWish => ({
  plan: of,
  profile: of.profiles[profile]!,
  trial: trials[trial]!,
});

/** Looks, with a way to wait until some wishes are there. */
function open(crew: Crew) {
  let wake = () => {};
  let fault: unknown;
  let changes = 0;
  const looks = openLooks(crew, {
    onChange: () => {
      changes += 1;
      wake();
    },
    onFault: (error) => {
      fault = error;
      wake();
    },
  });
  const until = async (...wishes: LookWish[]) => {
    for (;;) {
      if (fault !== undefined) throw fault;
      const found = wishes.map(looks.find);
      if (found.every((look) => look !== null)) return found;
      await new Promise<void>((resolve) => (wake = resolve));
    }
  };
  return { looks, until, changes: () => changes };
}

/** A crew whose work is let through one piece at a time. */
function steppedCrew(size: number) {
  const held: (() => void)[] = [];
  const crew = crewHere(size, () => new Promise((resolve) => held.push(resolve)));
  return { crew, step: () => held.shift()!() };
}

describe('looks', () => {
  it('are the runs that a single run gives', async () => {
    const { looks, until } = open(crewHere());
    looks.want([wish(0, 0)]);
    expect(looks.find(wish(0, 0))).toBeNull();
    const [look] = await until(wish(0, 0));
    const once = runOnce(smallPlan({ seeds: [1] }));
    const { length, tickS, columns } = look!.tape;
    expect({ length, tickS }).toEqual({ length: once.tape.length, tickS: once.tape.tickS });
    expect(columns.pitchRad).toEqual(once.tape.columns.pitchRad.slice(0, length));
    expect(look).toMatchObject({ outcome: once.outcome, marks: once.marks, metrics: once.metrics });
    expect(look!.view.title).toBe('wool in level, pebble under kim');
  });

  it('are the same from a thread', async () => {
    const crew = await openCrew(1);
    try {
      const here = open(crewHere());
      const there = open(crew);
      for (const { looks } of [here, there]) looks.want([wish(1, 3)]);
      const [[one], [other]] = await Promise.all([here.until(wish(1, 3)), there.until(wish(1, 3))]);
      expect(other).toEqual(one);
    } finally {
      await crew.close();
    }
  });

  it('are computed once, and found again for a wish of the same content', async () => {
    const crew = crewHere();
    const { looks, until, changes } = open(crew);
    looks.want([wish(0, 0)]);
    looks.want([wish(0, 0)]);
    const [look] = await until(wish(0, 0));
    const again = smallPlan({ seeds: [1, 2, 3] });
    const same = { plan: again, profile: again.profiles[0]!, trial: trialsOf(again)[0]! };
    expect(looks.find(same)).toBe(look);
    looks.want([same]);
    expect(crew.asked).toHaveLength(1);
    expect(changes()).toBe(1);
  });

  it('are others for another profile, trial, solver or board', async () => {
    const { looks, until } = open(crewHere());
    looks.want([wish(0, 0)]);
    await until(wish(0, 0));
    const board = { ...plan.board, name: 'brick' };
    for (const other of [
      wish(1, 0),
      wish(0, 1),
      wish(0, 0, { ...plan, solver: 'reference' }),
      wish(0, 0, { ...plan, board }),
    ]) {
      expect(looks.find(other)).toBeNull();
    }
  });

  it('begin no more of the wishes of before once there are newer ones', async () => {
    const { crew, step } = steppedCrew(1);
    const { looks, until } = open(crew);
    looks.want([wish(0, 0), wish(0, 1), wish(0, 2)]);
    looks.want([wish(1, 0), wish(1, 1)]);
    expect(crew.asked).toHaveLength(1);
    step();
    await until(wish(0, 0));
    step();
    await until(wish(1, 0));
    step();
    await until(wish(1, 1));
    expect(crew.asked.map(({ trials: names }) => names[0])).toEqual(['level/1', 'level/1', 'level/2']);
    expect(looks.find(wish(0, 1))).toBeNull();
  });

  it('keep every hand of the crew busy, and no more', async () => {
    const { crew, step } = steppedCrew(2);
    const { looks, until } = open(crew);
    looks.want([wish(0, 0), wish(0, 1), wish(0, 2)]);
    expect(crew.asked).toHaveLength(2);
    step();
    await until(wish(0, 0));
    expect(crew.asked).toHaveLength(3);
    step();
    step();
    await until(wish(0, 0), wish(0, 1), wish(0, 2));
  });

  it('are kept, those used last', async () => {
    const crew = crewHere();
    const { looks, until } = open(crew);
    for (let index = 0; index < 18; index += 1) {
      const next = wish(index % 3, Math.floor(index / 3));
      looks.want([next]);
      await until(next);
      looks.find(wish(0, 0));
    }
    expect(looks.find(wish(0, 0))).not.toBeNull();
    expect(looks.find(wish(1, 0))).toBeNull();
    expect(looks.find(wish(2, 5))).not.toBeNull();
  });

  it('tell what went wrong', async () => {
    const { looks, until } = open(crewHere(1, () => Promise.reject(new Error('a thread broke'))));
    looks.want([wish(0, 0)]);
    await expect(until(wish(0, 0))).rejects.toThrow('a thread broke');
  });
});
