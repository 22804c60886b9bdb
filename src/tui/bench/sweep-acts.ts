/**
 * What keys do on the Sweep screen: stop and go on, move among candidates, show other plots, and take one over to Rank, Trace and
 * Why.
 */
import type { PlanePoint } from '../../show/sweep-plane.js';
import type { Act } from './binding.js';
import { trialIndex } from './carry-over.js';
import { drafted, draftName, withNumbersOf } from './choices.js';
import { currentRow } from './rows.js';
import type { BenchState } from './state.js';
import {
  currentCandidate,
  leadersOf,
  pairsOf,
  placesInView,
  profileOf,
  SWEEP_METRICS,
  TRADES,
  viewsOf,
} from './sweep-items.js';
import { PLAIN } from './sweep-form.js';
import type { SweepState } from './sweep-state.js';
import { openWhy } from './why-acts.js';

function withSweep(state: BenchState, sweep: Partial<SweepState>): BenchState {
  return { ...state, sweep: { ...state.sweep, ...sweep } };
}

/** Opens the Sweep screen; the first time its form begins with the profile under the cursor. */
export const openSweep: Act = (state) => {
  const { run, form } = state.sweep;
  const isAsked = run !== null || form.from === PLAIN;
  const from = isAsked ? form.from : (currentRow(state)?.name ?? form.from);
  const opened = { ...state, screen: 'sweep' as const, behind: [...state.behind, state.screen], looks: [] };
  return withSweep(opened, { form: { ...form, from } });
};

/** Shows the next view; in words it is read from the first line on. */
export const nextView: Act = (state) => {
  const views = viewsOf(state);
  const view = views[(views.indexOf(state.sweep.view) + 1) % views.length]!;
  return withSweep(state, { view, read: state.sweep.read === null ? null : 0 });
};

/** Why there is no other view; null where there is. */
export function nextViewOff(state: BenchState): string | null {
  return viewsOf(state).length < 2 ? 'no sweep was begun yet' : null;
}

/** Stops the sweep, or lets it go on with what is known already. */
export const stopOrGoOn: Act = (state) => {
  const { run } = state.sweep;
  return run === null ? state : withSweep(state, { run: { ...run, isRunning: !run.isRunning } });
};

/** Why there is nothing to stop; null where there is. */
export function stoppingOff({ sweep: { run } }: BenchState): string | null {
  if (run === null) return 'no sweep was begun yet';
  return run.outcome === null ? null : 'the sweep has come to its end';
}

/** Moves among the finalists, or the best so far; it stops at the ends. */
export function moveLeader(by: number): Act {
  return (state) => {
    const leaders = leadersOf(state);
    const here = leaders.findIndex(({ name }) => name === currentCandidate(state)?.name);
    const there = Math.min(leaders.length - 1, Math.max(0, here + by));
    return withSweep(state, { cursor: leaders[there]?.name ?? null });
  };
}

/** A direction in the plane. */
type Direction = 'left' | 'right' | 'up' | 'down';

/** How far another place lies in a direction, and how far beside it. */
const AHEAD: Readonly<Record<Direction, (from: PlanePoint, to: PlanePoint) => [number, number]>> = {
  left: (from, to) => [from.x - to.x, to.y - from.y],
  right: (from, to) => [to.x - from.x, to.y - from.y],
  up: (from, to) => [to.y - from.y, to.x - from.x],
  down: (from, to) => [from.y - to.y, to.x - from.x],
};

/** What lies beside the direction counts as so many times as far. */
const BESIDE = 2;

/** Moves to the next candidate in a direction of the map or the front; up and down move along the table. */
export function moveTo(direction: Direction): Act {
  return (state) => {
    const places = placesInView(state);
    if (places.length === 0)
      return direction === 'up' || direction === 'down'
        ? moveLeader(direction === 'down' ? 1 : -1)(state)
        : state;
    const here = places.find(({ name }) => name === currentCandidate(state)?.name);
    if (here === undefined) return moveLeader(-Infinity)(state);
    const next = places
      .map(({ name, place }) => {
        const [ahead, beside] = AHEAD[direction](here.place, place);
        return {
          name,
          ahead,
          distance: Math.hypot(ahead, BESIDE * beside),
          isAside: Math.abs(beside) > ahead,
        };
      })
      .filter(({ ahead }) => ahead > 1e-9)
      .sort((a, b) => Number(a.isAside) - Number(b.isAside) || a.distance - b.distance)[0];
    return withSweep(state, { cursor: next?.name ?? here.name });
  };
}

/** Maps the next metric. */
export const nextMetric: Act = (state) =>
  withSweep(state, { metric: (state.sweep.metric + 1) % SWEEP_METRICS.length });

/** Why no other metric can be mapped; null where one can. */
export function metricOff({ sweep }: BenchState): string | null {
  return sweep.view === 'map' ? null : 'only the map shows one metric at a time';
}

/** Shows the next pair: of swept numbers on the map, of what is traded on the front. */
export const nextPair: Act = (state) => {
  const { view, run, pair, trade } = state.sweep;
  if (view === 'front') return withSweep(state, { trade: (trade + 1) % TRADES.length });
  return withSweep(state, { pair: (pair + 1) % Math.max(1, run === null ? 1 : pairsOf(run).length) });
};

/** Why there is no other pair; null where there is. */
export function pairOff({ sweep: { view, run } }: BenchState): string | null {
  if (view === 'front') return null;
  if (view !== 'map' || run === null) return 'only map and front have two axes';
  return pairsOf(run).length < 2 ? 'only two numbers were swept' : null;
}

/** Why the candidate under the cursor cannot be taken over; null where it can. */
export function takingOff(state: BenchState): string | null {
  const { run } = state.sweep;
  if (run === null || currentCandidate(state) === undefined) {
    return run?.outcome ? 'nobody is left of this sweep' : 'there is no candidate yet';
  }
  const { name } = run.plan.base;
  if (state.work === null) return 'a board, riders and scenarios are needed first';
  if (run.isPlain) return null;
  return state.shelf.profile.some((profile) => profile.name === name) ? null : `${name} is no longer there`;
}

/** The profile that has the numbers of a candidate once it is taken over; one of its own where the sweep began with none of a file. */
function takenName(state: BenchState): string {
  const run = state.sweep.run!;
  const { name } = run.plan.base;
  return run.isPlain ? draftName(state, name) : name;
}

/** The state with a profile that has the numbers of the candidate under the cursor, and the cursor of Rank on it. */
function taken(state: BenchState): BenchState {
  const candidate = currentCandidate(state);
  const profile = candidate === undefined ? null : profileOf(state, candidate);
  if (profile === null) return state;
  const name = takenName(state);
  const next = state.sweep.run!.isPlain
    ? drafted(state, { name, value: profile })
    : withNumbersOf(state, name, profile);
  return { ...next, rank: { ...next.rank, cursor: name, column: null, filter: '' } };
}

/** Ranks the candidate: it stands in the table as the profile from which the sweep began, with changed numbers. */
export const takeToRank: Act = (state) => {
  const name = takenName(state);
  const keeping = state.options.ownFolder ? 'w writes it, u takes it back' : 'u takes it back';
  const text = `${name} has the numbers of ${currentCandidate(state)?.name ?? ''} now: ${keeping}`;
  return { ...taken(state), screen: 'rank', behind: [], looks: [], notice: { text, isFault: false } };
};

const worstTrial = (state: BenchState) => trialIndex(state.work, currentCandidate(state)?.result?.worst);

/** Why there is no run of the candidate to look at; null where there is. */
export function worstOff(state: BenchState): string | null {
  const candidate = currentCandidate(state);
  const off = takingOff(state);
  if (off !== null || candidate === undefined) return off;
  if (candidate.result === null) return 'it cannot hold the board up and was not run';
  return worstTrial(state) === -1 ? 'its worst cell is no part of what Rank ranks on now' : null;
}

/** Looks at the worst run of the candidate. */
export const takeToTrace: Act = (state) => {
  const trial = worstTrial(state);
  const next = taken(state);
  return {
    ...next,
    screen: 'trace',
    behind: [...state.behind, 'sweep'],
    view: { ...next.view, profiles: [takenName(state)], trial: Math.max(0, trial) },
    playhead: { ...next.playhead, timeS: null, playing: false, span: null },
    looks: [],
  };
};

/** Asks why the candidate rides as it does. */
export const takeToWhy: Act = (state) => openWhy(taken(state));
