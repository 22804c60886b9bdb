/**
 * Does a ranking that follows its plan compute no more than it must, and come to what a ranking from nothing comes to?
 */
import { describe, expect, it } from 'vitest';
import { rankProfiles } from '../../src/measure/score.js';
import { profileSchema } from '../../src/quantity/profile-file.js';
import { openCrew, type Crew } from '../../src/tasks/crew.js';
import type { RankPlan } from '../../src/tasks/plan.js';
import { rank } from '../../src/tasks/rank.js';
import { checkAgainstReference } from '../../src/tasks/reference-check.js';
import { openStandingRank, type Standing } from '../../src/tasks/standing-rank.js';
import { crewHere } from './crew-here.js';
import { smallPlan } from './small-plan.js';

const resultsOf = ({ rows }: Standing) => rows.flatMap(({ result }) => (result === null ? [] : [result]));
const isComputed = ({ rows }: Standing) => rows.every(({ result }) => result !== null);
const isChecked = ({ rows }: Standing) => rows.every(({ check }) => check !== null);

/** A standing ranking with what it told, and a way to wait for something that it tells. */
function follow(crew: Crew) {
  const told: Standing[] = [];
  let waiting: (() => void)[] = [];
  let fault: unknown;
  const wake = () => waiting.splice(0).forEach((resolve) => resolve());
  const standing = openStandingRank(crew, {
    onChange: (news) => {
      told.push(news);
      wake();
    },
    onFault: (error) => {
      fault = error;
      wake();
    },
  });
  const until = async (plan: RankPlan, isMeant: (news: Standing) => boolean): Promise<Standing> => {
    for (;;) {
      if (fault !== undefined) throw fault;
      const found = told.findLast((news) => news.plan === plan);
      if (found !== undefined && isMeant(found)) return found;
      await new Promise<void>((resolve) => (waiting = [...waiting, resolve]));
    }
  };
  return { standing, told, until, faults: () => fault };
}

/** The plan with another gain for wool. */
function changed(plan: RankPlan, proportionalAPerDeg: number): RankPlan {
  const profiles = plan.profiles.map(({ name, value }) =>
    name === 'wool'
      ? { name, value: { ...value, gains: { ...value.gains, proportionalAPerDeg } } }
      : { name, value },
  );
  return { ...plan, profiles };
}

describe('a standing ranking', () => {
  it('tells of a row cell by cell before its result is complete, the same cells that the result then has', async () => {
    // More trials than one job has.
    const plan = smallPlan({ seeds: [1, 2, 3, 4, 5, 6, 7] });
    const { standing, told, until } = follow(crewHere());
    standing.want(plan);
    await until(plan, isComputed);
    const parts = told
      .flatMap(({ rows }) => rows.filter(({ name }) => name === 'wool'))
      .map(({ some }) => some);
    const partial = parts.find((cells) => cells !== undefined);
    const whole = told.at(-1)!.rows.find(({ name }) => name === 'wool')!.result!.cells;
    expect(partial!.length).toBeGreaterThan(0);
    expect(partial!.length).toBeLessThan(whole.length);
    for (const cell of partial!) expect(whole).toContainEqual(cell);
    expect(told.at(-1)!.rows.every((row) => row.some === undefined)).toBe(true);
  });

  it('comes to what a ranking comes to, and to its check', async () => {
    const plan = smallPlan();
    const { standing, told, until } = follow(crewHere());
    standing.want(plan);
    const last = await until(plan, isChecked);
    const ranked = await rank(plan, { threads: 1 });
    expect(rankProfiles(resultsOf(last))).toEqual(ranked);
    expect(last.rows.map(({ name }) => name)).toEqual(plan.profiles.map(({ name }) => name));
    for (const { result, check } of last.rows) {
      expect(check).toEqual(await checkAgainstReference(plan, [result!], { threads: 1 }));
    }
    expect(told[0]?.rows.every(({ result }) => result === null)).toBe(true);
    expect(last).toMatchObject({ doneCells: 12, allCells: 12 });
  });

  it('comes to the same with threads', async () => {
    const crew = await openCrew(2);
    try {
      const plan = smallPlan();
      const { standing, until } = follow(crew);
      standing.want(plan);
      const last = await until(plan, isChecked);
      expect(rankProfiles(resultsOf(last))).toEqual(await rank(plan, { threads: 1 }));
    } finally {
      await crew.close();
    }
  });

  it('tells of rows as they come, those there already among them', async () => {
    const plan = smallPlan();
    const { standing, told, until } = follow(crewHere());
    standing.want(plan);
    await until(plan, isComputed);
    const counts = told.map((news) => resultsOf(news).length);
    expect([...new Set(counts)]).toEqual([0, 1, 2, 3]);
  });

  it('computes only what is new', async () => {
    const plan = smallPlan();
    const crew = crewHere();
    const { standing, until } = follow(crew);
    standing.want(plan);
    await until(plan, isChecked);
    const before = crew.asked.length;
    const next = changed(plan, 24);
    standing.want(next);
    const last = await until(next, isChecked);
    const since = crew.asked.slice(before);
    expect(since.map(({ solver, trials }) => [solver, trials.length])).toEqual([
      ['fixed', 4],
      ['reference', 1],
    ]);
    expect(last).toMatchObject({ doneCells: 4, allCells: 4 });
    expect(rankProfiles(resultsOf(last))).toEqual(await rank(next, { threads: 1 }));
  });

  it('answers from memory at once for what was seen', async () => {
    const plan = smallPlan();
    const crew = crewHere();
    const { standing, told, until } = follow(crew);
    standing.want(plan);
    const first = await until(plan, isChecked);
    const next = changed(plan, 24);
    standing.want(next);
    await until(next, isChecked);
    const before = crew.asked.length;
    const again = smallPlan(); // the same in content, another value
    standing.want(again);
    expect(told.at(-1)).toMatchObject({ plan: again, rows: first.rows });
    expect(standing.known(again, again.profiles[0]!)).toEqual(first.rows[0]!.result);
    expect(standing.known(smallPlan({ seeds: [9] }), again.profiles[0]!)).toBeNull();
    await Promise.resolve();
    expect(crew.asked).toHaveLength(before);
  });

  it('takes another rig for something new', async () => {
    const plan = smallPlan({ seeds: [1] });
    const { standing, until } = follow(crewHere());
    standing.want(plan);
    await until(plan, isComputed);
    const other = smallPlan({ seeds: [1], charges: [20] });
    standing.want(other);
    const last = await until(other, isComputed);
    expect(rankProfiles(resultsOf(last))).toEqual(await rank(other, { threads: 1 }));
  });

  it('takes another summary under the same numbers for something new', async () => {
    const plan = smallPlan({ seeds: [1] });
    const { standing, until } = follow(crewHere());
    standing.want(plan);
    await until(plan, isComputed);
    const [wool] = plan.profiles;
    const value = profileSchema.parse({ ...wool!.value, summary: 'Said otherwise' });
    const other = { ...plan, profiles: [{ name: 'wool', value }] };
    standing.want(other);
    const last = await until(other, isComputed);
    expect(last.rows[0]?.result?.summary).toBe('Said otherwise');
  });

  it('drops what is no longer wanted', async () => {
    const plan = smallPlan();
    const gate = gateOf();
    const crew = crewHere(1, gate.wait);
    const { standing, told, until, faults } = follow(crew);
    standing.want(plan);
    await gate.knocked();
    const next = smallPlan({ profiles: plan.profiles.slice(2) });
    standing.want(next);
    gate.open();
    await until(next, isChecked);
    expect(crew.asked.filter(({ solver }) => solver === 'fixed')).toHaveLength(2);
    expect(told.filter((news) => news.plan === plan).every((news) => resultsOf(news).length === 0)).toBe(
      true,
    );
    expect(faults()).toBeUndefined();
  });

  it('computes no more after it was closed', async () => {
    const gate = gateOf();
    const crew = crewHere(1, gate.wait);
    const { standing, told, faults } = follow(crew);
    standing.want(smallPlan());
    await gate.knocked();
    standing.close();
    gate.open();
    await new Promise((resolve) => setImmediate(resolve));
    expect(crew.asked).toHaveLength(1);
    expect(told).toHaveLength(1);
    expect(faults()).toBeUndefined();
  });

  it('tells what went wrong', async () => {
    const crew = crewHere(1, () => Promise.reject(new Error('a thread broke')));
    const { standing, until } = follow(crew);
    const plan = smallPlan();
    standing.want(plan);
    await expect(until(plan, isComputed)).rejects.toThrow('a thread broke');
  });

  it('makes no check of runs that the reference itself made', async () => {
    const plan = smallPlan({ solver: 'reference', seeds: [1] });
    const crew = crewHere();
    const { standing, until } = follow(crew);
    standing.want(plan);
    const last = await until(plan, isComputed);
    await new Promise((resolve) => setImmediate(resolve));
    expect(crew.asked).toHaveLength(3);
    expect(last.rows.every(({ check }) => check === null)).toBe(true);
  });
});

/** A gate that holds a crew up until it is opened. */
function gateOf() {
  let open = () => {};
  let knock = () => {};
  const opened = new Promise<void>((resolve) => (open = resolve));
  const knocked = new Promise<void>((resolve) => (knock = resolve));
  return {
    wait: () => {
      knock();
      return opened;
    },
    open: () => open(),
    knocked: () => knocked,
  };
}
