/**
 * Is a sweep carried out while it is to run, and no longer; does it go on from what is known, and is it kept where it should be?
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { Places } from '../../../src/store/places.js';
import { followSweep } from '../../../src/tui/app/sweep-following.js';
import type { BenchState } from '../../../src/tui/bench/state.js';
import { createStore } from '../../../src/tui/bench/store.js';
import type { SweepRunState } from '../../../src/tui/bench/sweep-state.js';
import { tempFolder } from '../../store/temp-folder.js';
import { crewHere, type CrewHere } from '../../tasks/crew-here.js';
import { afterKeys, rankedState } from '../bench/some-state.js';

/** A grid of few points of one number, in one scenario: nobody is searched for from the best of them. */
const ASKED = 'o return g d down down right up 3 return return';

function followed({ isStarterSet = true, folder = tempFolder() } = {}, gate?: () => Promise<void>) {
  const store = createStore(rankedState());
  const crew = crewHere(1, gate);
  const faults: unknown[] = [];
  const places: Places = { workingFolder: folder, currentFolder: folder, isStarterSet };
  const following = followSweep({ store, crew, places, onFault: (error) => faults.push(error) });
  store.subscribe(following.follow);
  const until = (isSo: (state: BenchState) => boolean) =>
    new Promise<void>((resolve) => {
      const look = () => {
        if (isSo(store.get())) resolve();
      };
      store.subscribe(look);
      look();
    });
  const press = (keys: string) => store.change((state) => afterKeys(state, keys));
  const run = () => store.get().sweep.run as SweepRunState;
  return { store, crew, faults, following, until, press, run, folder };
}

/** Runs that a crew was asked for; steady rides are no runs, and are not kept. */
const runsAsked = ({ asked }: CrewHere) => asked.filter(({ what }) => what !== 'ride').length;

const isDone = ({ sweep }: BenchState) => sweep.run?.outcome !== null && sweep.run !== null;

describe('a sweep that is followed', () => {
  it('comes to its end, with everyone who was tried, and makes no run twice when it is begun again', async () => {
    const { crew, faults, following, until, press, run } = followed();
    press(ASKED);
    await until(isDone);
    const { outcome, isRunning, kept } = run();
    expect([isRunning, kept, faults]).toEqual([false, null, []]);
    const { answer, points } = outcome!;
    expect(points.map(({ candidate }) => candidate)).toEqual(
      answer.found.tried.map(({ candidate }) => candidate),
    );
    for (const { own, fate } of points) expect(own === null).toBe(fate.kind === 'hopeless');
    for (const { candidate, result } of answer.finalists) {
      const point = points.find((one) => one.candidate === candidate)!;
      expect([point.own!.score, point.own!.failures]).toEqual([result.score, result.failures]);
    }
    const asked = runsAsked(crew);
    press('tab tab');
    press('return');
    await until(({ sweep }) => sweep.run!.plan !== answer.plan && sweep.run!.outcome !== null);
    expect(run().outcome!.answer.finalists).toEqual(answer.finalists);
    expect(runsAsked(crew)).toBe(asked);
    following.stop();
  });

  it('stops and goes on from what is known, also while another screen is in front', async () => {
    let isHeld = false;
    const held: (() => void)[] = [];
    const gate = () => (isHeld ? new Promise<void>((resolve) => held.push(resolve)) : Promise.resolve());
    const { crew, faults, following, until, press, store } = followed({}, gate);
    press(ASKED);
    await until(({ sweep }) => (sweep.run?.progress?.known ?? 0) > 3);
    isHeld = true;
    while (held.length === 0) await wait(1);
    press('space');
    const asked = crew.asked.length;
    isHeld = false;
    held.shift()!();
    await wait(30);
    expect(crew.asked).toHaveLength(asked);
    press('space');
    press('escape');
    await until(isDone);
    expect(store.get().screen).toBe('rank');
    expect(store.get().notice?.text).toContain('has come to its end');
    expect(faults).toEqual([]);
    following.stop();
  });

  it('tells of the best so far with their numbers', async () => {
    const { following, until, press, run } = followed();
    press(ASKED);
    await until(({ sweep }) => (sweep.run?.best.length ?? 0) > 0);
    const { best, plan } = run();
    for (const { values, result } of best) {
      expect(values).toHaveLength(plan.ranges.length);
      expect(result.cells.length).toBeGreaterThan(0);
    }
    expect(best.map(({ result }) => result.score)).toEqual(
      best.map(({ result }) => result.score).toSorted((a, b) => a - b),
    );
    following.stop();
  });

  it("is kept in a file where the folder is the rider's own, and goes on from there in another bench", async () => {
    const first = followed({ isStarterSet: false });
    first.press(ASKED);
    await first.until(({ sweep }) => (sweep.run?.progress?.known ?? 0) > 3);
    first.following.stop();
    const [file] = readdirSync(join(first.folder, 'sweeps'));
    expect(first.run().kept).toBe(`sweeps/${file}`);
    const lines = readFileSync(join(first.folder, 'sweeps', file!), 'utf8').split('\n').length - 2;
    expect(lines).toBeGreaterThan(3);
    const second = followed({ isStarterSet: false, folder: first.folder });
    second.press(ASKED);
    await second.until(isDone);
    expect(runsAsked(second.crew)).toBe(second.run().outcome!.answer.runs - lines);
    expect([...first.faults, ...second.faults]).toEqual([]);
    second.following.stop();
  });

  it('goes on in memory, and says so, where its file cannot be written', async () => {
    const { folder, until, press, store, following, faults } = followed({ isStarterSet: false });
    writeFileSync(join(folder, 'sweeps'), 'in the way');
    press(ASKED);
    await until(({ notice }) => notice !== null);
    expect(store.get().notice).toMatchObject({ isFault: true });
    await until(isDone);
    expect([faults, existsSync(join(folder, 'sweeps'))]).toEqual([[], true]);
    following.stop();
  });

  it('stops, says why and can be begun again where a cell cannot be computed', async () => {
    let isBroken = true;
    const gate = () => (isBroken ? Promise.reject(new Error('no crew')) : Promise.resolve());
    const { press, faults, following, until, store } = followed({}, gate);
    press(ASKED);
    await until(({ sweep }) => sweep.run?.isRunning === false);
    expect(store.get().notice?.text).toMatch(/kerb.*no crew/);
    isBroken = false;
    press('space');
    await until(({ sweep }) => (sweep.run?.best.length ?? 0) > 0);
    expect(faults).toEqual([]);
    following.stop();
  });
});
