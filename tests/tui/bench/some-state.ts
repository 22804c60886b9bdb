/**
 * States of the bench for tests of what keys do: the small plan really ranked and really run, once, and what a session
 * would bring to a state from outside.
 */
import { profileResult, type ProfileResult } from '../../../src/measure/profile-result.js';
import { weightsWith } from '../../../src/measure/scales.js';
import { profileSchema } from '../../../src/quantity/profile-file.js';
import { createPaint } from '../../../src/show/colour.js';
import { openLooks, type Look, type LookWish } from '../../../src/tasks/looks.js';
import { rank } from '../../../src/tasks/rank.js';
import type { Shelf } from '../../../src/tasks/shelf.js';
import { firstState } from '../../../src/tui/bench/first-state.js';
import { looked, ranked } from '../../../src/tui/bench/hear.js';
import { paste, press } from '../../../src/tui/bench/press.js';
import { wishesOf } from '../../../src/tui/bench/rows.js';
import type { BenchOptions, BenchState, Setup } from '../../../src/tui/bench/state.js';
import { crewHere } from '../../tasks/crew-here.js';
import { smallPlan } from '../../tasks/small-plan.js';

const felt = profileSchema.parse({
  summary: 'Helps uphill',
  gains: { proportionalAPerDeg: 30, rateAPerDegPerS: 2 },
  shaping: { loadFeedForward: { filterTimeS: 0.8 } },
});
const small = smallPlan({ seeds: [1] });
const plan = {
  ...small,
  profiles: small.profiles.map((file) => (file.name === 'felt' ? { ...file, value: felt } : file)),
};

/** The files: two boards and riders, the profiles felt, silk (falls) and wool, the scenarios kerb and level. */
export function someShelf(parts: Partial<Shelf> = {}): Shelf {
  const byName = <T extends { name: string }>(files: readonly T[]) =>
    files.toSorted((a, b) => (a.name < b.name ? -1 : 1));
  return {
    board: [{ ...plan.board, name: 'brick' }, plan.board],
    rider: [plan.riders[0]!, { ...plan.riders[0]!, name: 'lee' }],
    profile: byName(plan.profiles),
    scenario: byName(plan.scenarios),
    sheet: [],
    kept: [],
    problems: [],
    ...parts,
  };
}

/** The options of a bench in a folder of one's own. */
export function someOptions(parts: Partial<BenchOptions> = {}): BenchOptions {
  return {
    symbols: 'braille',
    paint: createPaint('none'),
    speedUnit: 'km/h',
    animation: true,
    ownFolder: true,
    folder: '/home/kim/boards',
    solver: 'fixed',
    weights: weightsWith(),
    seeds: [1],
    ...parts,
  };
}

const results = await rank({ ...plan, scenarios: [...someShelf().scenario] }, { threads: 1 });

/** What would be known of the rows of a state's plan: the real cells of its profiles in its scenarios. */
export function resultsFor(state: BenchState): ProfileResult[] {
  const names = state.work?.plan.scenarios.map(({ name }) => name) ?? [];
  return (state.work?.plan.profiles ?? []).flatMap(({ name, value }) => {
    const cells = results
      .find((result) => result.name === name)
      ?.cells.filter(({ scenario }) => names.includes(scenario));
    return cells?.length ? [profileResult({ name, summary: value.summary }, cells, weightsWith())] : [];
  });
}

/** The state once its rows are computed. */
export function withRows(state: BenchState): BenchState {
  if (state.work === null) return state;
  const known = resultsFor(state);
  const rows = state.work.plan.profiles.map(({ name }) => ({
    name,
    result: known.find((result) => result.name === name) ?? null,
    check: null,
  }));
  return ranked(state, { plan: state.work.plan, rows, doneCells: 0, allCells: 0 }, new Map());
}

const runs = new Map<string, Look>();

async function lookFor(wish: LookWish): Promise<Look> {
  return new Promise((resolve, reject) => {
    const looks = openLooks(crewHere(), { onChange: () => resolve(looks.find(wish)!), onFault: reject });
    looks.want([wish]);
  });
}

for (const profile of someShelf().profile) {
  const { work } = someState();
  for (const trial of work!.trials) {
    const look = await lookFor({ plan: work!.plan, profile, trial });
    runs.set(`${profile.name}/${trial.key.scenario}`, look);
  }
}

/** The real run of a profile in a scenario, as their files are. */
export function runOf(profile: string, scenario: string): Look {
  return runs.get(`${profile}/${scenario}`)!;
}

/** The state once the runs that it wants are there; a profile that was made on the way rides as felt does. */
export function withLooks(state: BenchState): BenchState {
  const looks = wishesOf(state).map(({ profile, trial: { key } }) => {
    return runs.get(`${profile.name}/${key.scenario}`) ?? runOf('felt', key.scenario);
  });
  return looked(state, looks);
}

/** A state on the Rank screen with nothing computed. */
export function someState(
  parts: { shelf?: Shelf; setup?: Partial<Setup>; options?: Partial<BenchOptions> } = {},
): BenchState {
  const opened = firstState({
    size: { columns: 100, rows: 30 },
    shelf: parts.shelf ?? someShelf(),
    setup: { board: 'pebble', ...parts.setup },
    options: someOptions(parts.options),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.value;
}

/** A state on the Rank screen with every row: wool and felt in some order before silk. */
export function rankedState(parts?: Parameters<typeof someState>[0]): BenchState {
  return withLooks(withRows(someState(parts)));
}

/** A key by its name, with the text that it types. */
export function keyOf(name: string) {
  return { name, text: name === 'space' ? ' ' : [...name].length === 1 ? name : '' };
}

/** The state after keys by their names, divided by blanks, without any news from outside. */
export function afterKeys(state: BenchState, keys: string): BenchState {
  return keys
    .split(' ')
    .filter(Boolean)
    .reduce((now, name) => press(now, keyOf(name)), state);
}

/** The state after keys, with rows and runs computed after each. */
export function afterKeysSettled(state: BenchState, keys: string): BenchState {
  return keys
    .split(' ')
    .filter(Boolean)
    .reduce((now, name) => withLooks(withRows(press(now, keyOf(name)))), state);
}

/** The state after typing a text key by key. */
export function afterTyping(state: BenchState, text: string): BenchState {
  return [...text].reduce((now, letter) => press(now, keyOf(letter === ' ' ? 'space' : letter)), state);
}

/** The state after a paste. */
export const afterPaste = paste;
