/**
 * Where should a search look next, from how the last points turned out? Covariance matrix adaptation as in N. Hansen, "The
 * CMA Evolution Strategy: A Tutorial" (arXiv 1604.00772), with the defaults of its table 1, negative weights among them; the
 * names in brackets are its symbols. Only the order of the costs counts, never their size.
 *
 * Bounds: the search itself has none. A point outside of the unit cube is folded back at its faces, as if the landscape went
 * on in mirrors; a best place on a face or in a corner is then a place like others, and found as quickly. Drawing again
 * what falls outside was tried too: in corners it stalls. So that the search never wanders off among the mirrors, its step
 * is held once the cloud fills the cube.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { normals, STREAMS, uniforms } from '../scenario/random.js';
import { ratesOf, type Rates } from './cma-rates.js';

/** A search between two generations: plain data that JSON keeps whole. */
export interface CmaState {
  seed: number;
  generation: number;
  /** Points in a generation (lambda). */
  population: number;
  /** Centre of the next generation (m), perhaps in a mirror: `centreOf` folds it back. */
  mean: number[];
  /** Overall step (sigma), in edges of the cube. */
  step: number;
  /** Shape of the steps (C), symmetric; and the paths that step and shape are learnt from (p_sigma, p_c). */
  covariance: number[][];
  stepPath: number[];
  shapePath: number[];
  /** The best point so far and the generation it came from; null before any cost was finite. */
  best: { point: number[]; cost: number; generation: number } | null;
  /** The best cost of each of the last generations, the oldest first; null where none was finite. */
  lately: (number | null)[];
}

/** The search is over when no coordinate is moved further than this, in edges of the cube: finer than any gain is set. */
const FINEST_STEP = 1e-6;

/** The widest standard deviation, in edges of the cube; that of an even spread over the whole cube is 0.29. */
const WIDEST_STEP = 0.35;

/** And when the shape is so thin that its eigenvalues lose their digits (the tutorial's ConditionCov). */
const WORST_CONDITION = 1e14;

/** A search over the unit cube from a start inside of it; `step` is its first standard deviation, about 0.3 to see it all. */
export function startSearch(wanted: {
  start: readonly number[];
  step: number;
  seed: number;
  population?: number;
}): CmaState {
  const { start, step, seed } = wanted;
  const n = start.length;
  const population = wanted.population ?? 4 + Math.floor(3 * Math.log(n));
  if (population < 4) throw new Error('a generation has at least four points');
  return {
    seed,
    generation: 0,
    population,
    mean: [...start],
    step,
    covariance: square(n, (row, column) => (row === column ? 1 : 0)),
    stepPath: start.map(() => 0),
    shapePath: start.map(() => 0),
    best: null,
    lately: [],
  };
}

/** The points of the next generation, inside of the unit cube; the same for the same state. */
export function askPoints(state: CmaState): number[][] {
  return movesOf(state).map((from) => pointAt(state, from));
}

/** The centre of the search, inside of the unit cube. */
export function centreOf({ mean }: CmaState): number[] {
  return mean.map(folded);
}

/**
 * The search after the costs of `askPoints(state)` are known, in their order. A cost that is not a finite number ranks last;
 * equal costs rank by place.
 */
export function tellCosts(state: CmaState, costs: readonly number[]): CmaState {
  if (costs.length !== state.population) throw new Error('one cost for each point of the generation');
  const rates = ratesOf(state.mean.length, state.population);
  const moves = movesOf(state);
  const order = ranked(costs);
  const ordered = order.map((place) => moves[place]!);
  const chosen = (read: (from: Move) => number[]) =>
    state.mean.map((_, row) =>
      ordered.reduce((sum, from, rank) => sum + Math.max(0, rates.weights[rank]!) * read(from)[row]!, 0),
    );
  const shift = chosen(({ move }) => move);
  const whiteShift = chosen(({ white }) => white);
  const stepPath = walked(state.stepPath, whiteShift, { rate: rates.stepPath, mass: rates.mass });
  const { ratio, isCalm } = stepLength(stepPath, rates, state.generation);
  const shapePath = walked(state.shapePath, shift, { rate: rates.shapePath, mass: isCalm ? rates.mass : 0 });
  const covariance = adapted(state.covariance, { rates, ordered, shapePath, isCalm });
  const step = state.step * Math.exp((rates.stepPath / rates.damping) * (ratio - 1));
  return {
    ...state,
    generation: state.generation + 1,
    mean: state.mean.map((m, row) => m + state.step * shift[row]!),
    step: Math.min(step, WIDEST_STEP / Math.sqrt(Math.max(...covariance.map((row, at) => row[at]!)))),
    covariance,
    stepPath,
    shapePath,
    best: bestAfter(state, ordered[0]!, costs[order[0]!]!),
    lately: [...state.lately, finite(costs[order[0]!]!)].slice(-patienceOf(state)),
  };
}

/** Why the search is over, in words; null while it goes on. */
export function hasEnded(state: CmaState): string | null {
  const { mean, step, covariance, generation, best } = state;
  if (mean.every((_, row) => step * Math.sqrt(covariance[row]![row]!) < FINEST_STEP)) {
    return 'the steps have become finer than a millionth of every range';
  }
  const patience = patienceOf(state);
  if (best === null && generation >= patience) return `no point of ${generation} generations had a cost`;
  if (best !== null && generation - best.generation > patience && isStuck(state)) {
    return `nothing better in ${patience} generations`;
  }
  const { realEigenvalues } = eigen(covariance);
  return Math.max(...realEigenvalues) > WORST_CONDITION * Math.min(...realEigenvalues)
    ? 'the valley is too thin to be computed with'
    : null;
}

/** Generations to wait for a better point (the tutorial's Stagnation); those with no cost at all are waited for less long. */
function patienceOf({ mean, population, best }: CmaState): number {
  return (best === null ? 10 : 120) + Math.ceil((30 * mean.length) / population);
}

/** Whether the later half of the last generations was no better than the earlier: a first point can be a lucky one. */
function isStuck({ lately }: CmaState): boolean {
  const least = (costs: (number | null)[]) => Math.min(...costs.map((cost) => cost ?? Infinity));
  const half = lately.length / 2;
  return least(lately.slice(half)) >= least(lately.slice(0, half));
}

function finite(cost: number): number | null {
  return Number.isFinite(cost) ? cost : null;
}

/** A move in units of the step (y), and what it is in a cloud that is round (C^-1/2 y). */
interface Move {
  move: number[];
  white: number[];
}

function movesOf(state: CmaState): Move[] {
  const n = state.mean.length;
  const root = rootOf(state.covariance);
  const seeds = uniforms(state.seed, STREAMS.generation, state.generation + 1);
  const chance = normals(seeds[state.generation]! * 2 ** 32, STREAMS.search, state.population * n);
  return Array.from({ length: state.population }, (_, index) => {
    const white = Array.from(chance.subarray(index * n, (index + 1) * n));
    return { move: root.map((row) => sumOf(row.map((value, at) => value * white[at]!))), white };
  });
}

/** The symmetric square root of the shape (C^1/2), which is the same whichever way its axes are signed. */
function rootOf(covariance: number[][]): number[][] {
  const { eigenvectorMatrix: axes, realEigenvalues } = eigen(covariance);
  const lengths = Matrix.diag(realEigenvalues.map((value) => Math.sqrt(Math.max(0, value))));
  return axes.mmul(lengths).mmul(axes.transpose()).to2DArray();
}

function eigen(covariance: number[][]): EigenvalueDecomposition {
  return new EigenvalueDecomposition(covariance, { assumeSymmetric: true });
}

/** A path after one more shift of the mean; a mass of 0 leaves the shift out. */
function walked(path: number[], shift: number[], { rate, mass }: { rate: number; mass: number }): number[] {
  const push = Math.sqrt(rate * (2 - rate) * mass);
  return path.map((value, row) => (1 - rate) * value + push * shift[row]!);
}

/** How long the step's path is beside one by chance; calm unless it is so long that the shape should not learn it (h_sigma). */
function stepLength(path: number[], rates: Rates, generation: number): { ratio: number; isCalm: boolean } {
  const ratio = Math.hypot(...path) / rates.typical;
  const young = Math.sqrt(1 - (1 - rates.stepPath) ** (2 * (generation + 1)));
  return { ratio, isCalm: ratio / young < 1.4 + 2 / (path.length + 1) };
}

/** The shape after a generation: of the path (rank one) and of its moves, the bad ones taken away (rank mu). */
function adapted(
  covariance: number[][],
  learnt: { rates: Rates; ordered: Move[]; shapePath: number[]; isCalm: boolean },
): number[][] {
  const { rates, ordered, shapePath, isCalm } = learnt;
  const n = covariance.length;
  const stalled = isCalm ? 0 : rates.shapePath * (2 - rates.shapePath);
  const kept = 1 + rates.one * stalled - rates.one - rates.many * sumOf(rates.weights);
  const weights = rates.weights.map((weight, rank) =>
    weight >= 0 ? weight : (weight * n) / sumOf(ordered[rank]!.white.map((value) => value ** 2)),
  );
  const upper = (row: number, column: number): number => {
    const many = ordered.reduce(
      (sum, { move }, rank) => sum + weights[rank]! * move[row]! * move[column]!,
      0,
    );
    const one = shapePath[row]! * shapePath[column]!;
    return kept * covariance[row]![column]! + rates.one * one + rates.many * many;
  };
  return square(n, (row, column) => upper(Math.min(row, column), Math.max(row, column)));
}

function pointAt({ mean, step }: CmaState, { move }: Move): number[] {
  return mean.map((m, row) => folded(m + step * move[row]!));
}

function bestAfter(state: CmaState, first: Move, cost: number): CmaState['best'] {
  if (!Number.isFinite(cost) || (state.best !== null && cost >= state.best.cost)) return state.best;
  return { point: pointAt(state, first), cost, generation: state.generation };
}

/** Places by cost, the least first, those without a finite cost last. */
function ranked(costs: readonly number[]): number[] {
  const keys = costs.map((cost) => (Number.isFinite(cost) ? cost : Infinity));
  return keys.map((_, place) => place).sort((a, b) => (keys[a] === keys[b] ? a - b : keys[a]! - keys[b]!));
}

/** A coordinate folded back into 0 to 1 at the mirrors. */
function folded(value: number): number {
  const within = Math.abs(value) % 2;
  return within > 1 ? 2 - within : within;
}

function square(n: number, entry: (row: number, column: number) => number): number[][] {
  const places = Array.from({ length: n }, (_, place) => place);
  return places.map((row) => places.map((column) => entry(row, column)));
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
