/** States of the bench for tests of what is drawn: made-up names, metrics and runs, as many of each as a test wants. */
import { profileResult, type ProfileResult } from '../../../src/measure/profile-result.js';
import { weightsWith } from '../../../src/measure/scales.js';
import { createPaint } from '../../../src/show/colour.js';
import { firstState } from '../../../src/tui/bench/first-state.js';
import { press } from '../../../src/tui/bench/press.js';
import { wishesOf } from '../../../src/tui/bench/rows.js';
import type { BenchOptions, BenchState } from '../../../src/tui/bench/state.js';
import type { Look, LookWish } from '../../../src/tasks/looks.js';
import type { PlannedTrial } from '../../../src/tasks/plan.js';
import { CALM } from '../../measure/some-metrics.js';
import { sampleTrace } from '../../show/sample-trace.js';
import { smallPlan } from '../../tasks/small-plan.js';

/** What a state is made of; the results of a profile get better with its place in the list unless all of them fall. */
export interface Wanted {
  size: BenchState['size'];
  options?: Partial<BenchOptions>;
  profiles?: readonly string[];
  scenarios?: readonly string[];
  summary?: string;
  /** Profiles that are computed; all unless stated. */
  computed?: number;
  allFall?: boolean;
}

const FIVE = ['plain-one', 'quick-one', 'slow-one', 'shaky-one', 'weak-one'];
const FOUR = ['kerb', 'level', 'long-hill', 'wet-leaves'];

function outcomeOf(profile: number, scenario: number, { allFall = false }: Wanted) {
  const falls = allFall || (profile > 2 && scenario % 4 === profile % 4);
  return falls ? { kind: 'nose strike' as const, atS: 3.21 } : { kind: 'upright' as const, atS: 8 };
}

/** The made-up result of a profile in the trials of a plan. */
function resultOf(
  { name, place }: { name: string; place: number },
  trials: readonly PlannedTrial[],
  wanted: Wanted,
): ProfileResult {
  const cells = trials.map(({ key }, at) => ({
    ...key,
    outcome: outcomeOf(place, at, wanted),
    eventReached: true,
    metrics: {
      ...CALM,
      reboundPercent: 4 * place + at,
      settlingTimeS: place === 2 && at === 1 ? null : 0.25 * (place + 1),
      saturationShare: 0.01 * place,
      leastHeadroomShare: 0.5,
    },
  }));
  return profileResult({ name, summary: wanted.summary ?? 'Made for tests' }, cells, weightsWith());
}

/** The state with its rows computed, as far as that is wanted. */
export function drawnState(wanted: Wanted): BenchState {
  const { profiles = FIVE, scenarios = FOUR, summary = 'Made for tests of what is drawn.' } = wanted;
  const { board, riders, profiles: some, scenarios: roads } = smallPlan();
  const shelf = {
    board: [board],
    rider: riders,
    profile: profiles.map((name) => ({ name, value: { ...some[0]!.value, summary } })),
    scenario: scenarios.map((name) => ({ name, value: roads[0]!.value })),
    sheet: [],
    kept: [],
    problems: [],
  };
  const options: BenchOptions = {
    symbols: 'braille',
    paint: createPaint('none'),
    speedUnit: 'km/h',
    animation: true,
    ownFolder: true,
    folder: '/home/kim/boards',
    solver: 'fixed',
    weights: weightsWith(),
    seeds: [1],
    ...wanted.options,
  };
  const opened = firstState({ size: wanted.size, shelf, setup: {}, options });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { trials } = opened.value.work!;
  const computed = wanted.computed ?? profiles.length;
  const rows = profiles.map((name, place) => ({
    name,
    result: place < computed ? resultOf({ name, place }, trials, wanted) : null,
    check: null,
  }));
  const progress = { doneCells: computed * trials.length, allCells: profiles.length * trials.length };
  return withLooks({ ...opened.value, rows, progress });
}

/** The made-up run of a wish: the same for every profile. */
function lookOf(wish: LookWish): Look {
  const view = sampleTrace();
  const { tape, outcome, road } = view;
  const { firstRow, endRow } = view;
  return {
    wish,
    view,
    tape,
    marks: [],
    outcome,
    road,
    window: { kind: 'disturbance', firstRow, endRow, bandRad: view.facts.bandRad },
    metrics: { ...CALM, settlingTimeS: 1.9, reboundPercent: 31 },
    scenario: wish.trial.circumstances.scenario,
  };
}

/** The state with every run that it wants to show. */
export function withLooks(state: BenchState): BenchState {
  return { ...state, looks: wishesOf(state).map(lookOf) };
}

/** The state after keys by their names; one character types itself. */
export function afterKeys(state: BenchState, ...names: readonly string[]): BenchState {
  return names.reduce((now, name) => {
    const text = name.length === 1 ? name : name === 'space' ? ' ' : '';
    return withLooks(press(now, { name, text }));
  }, state);
}
