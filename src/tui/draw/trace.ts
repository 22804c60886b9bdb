/**
 * The body of Trace and of Compare: pictures at the cursor's moment, or the same in words. What does not hang on the cursor
 * is drawn once and kept.
 */
import { COMPARE_COUNT } from '../../show/compare-run.js';
import { compareRows, prepareCompare } from '../../show/compare-picture.js';
import { prepareTrace, traceRows } from '../../show/trace-picture.js';
import { comparedRuns, comparisonOf } from '../../tasks/compare.js';
import type { Look } from '../../tasks/looks.js';
import { cursorS, spanInSight } from '../bench/time-acts.js';
import type { BenchState } from '../bench/state.js';
import { noticeRows } from './entry-row.js';
import { say, type Area } from './say.js';
import { onSharedScale, pitchInTrial } from './shared-scale.js';
import { compareWordRows, traceWordRows } from './words.js';

/** Draws the body of Trace and Compare, at most as many rows as the area has. */
export type BodyDrawer = (state: BenchState, area: Area) => string[];

/** A drawer that keeps the last picture it prepared. */
export function createBodyDrawer(): BodyDrawer {
  const keepTrace = keepLast(prepareTrace);
  const keepComparison = keepLast((...looks: Look[]) => comparison(looks));
  const keepCompare = keepLast(prepareCompare);
  const keepOptions = keepLast(
    (state: BenchState['options'], width: number, height: number, span: unknown) => ({
      symbols: state.symbols,
      paint: state.paint,
      speedUnit: state.speedUnit,
      width,
      height,
      span: span as NonNullable<BenchState['playhead']['span']>,
    }),
  );
  const keepShared = keepLast(onSharedScale);
  const keepRange = keepLast((rows: BenchState['rows'], look: Look) => pitchInTrial({ rows }, look));
  const keepWhole = keepLast((fromS: number, toS: number) => ({ fromS, toS }));
  const draw: BodyDrawer = (state, area) => {
    const looks = state.looks.filter((look) => look !== null);
    const [first] = looks;
    const span = spanInSight(state);
    if (first === undefined || span === null || looks.length < state.view.profiles.length) {
      return say('The run is being computed.', area.width, state.options);
    }
    const shown = keepWhole(span.fromS, span.toS);
    const options = keepOptions(state.options, area.width, area.height, shown);
    if (state.screen === 'compare') {
      const { runs, parting } = keepComparison(...looks);
      if (runs.length < COMPARE_COUNT.least) return [];
      if (state.view.inWords) return compareWordRows({ runs, parting }, state, area);
      return compareRows(keepCompare(runs, parting, options), cursorS(state));
    }
    const view = keepShared(first, keepRange(state.rows, first));
    if (state.view.inWords) return traceWordRows(view, state, area);
    return traceRows(keepTrace(view, options), cursorS(state));
  };
  // What is told above a line that is typed stands in front of the pictures.
  return (state, area) => draw(state, area).slice(0, area.height - noticeRows(state).length);
}

/** A function that remembers its last answer while its arguments stay the same things. */
function keepLast<Given extends readonly unknown[], Answer>(make: (...given: Given) => Answer) {
  let last: { given: Given; answer: Answer } | undefined;
  return (...given: Given): Answer => {
    const same =
      last?.given.length === given.length && given.every((value, index) => value === last?.given[index]);
    if (!same) last = { given, answer: make(...given) };
    return last!.answer;
  };
}

/** Runs of several profiles in one trial, as they are compared. */
function comparison(looks: readonly Look[]) {
  const { plan, trial } = looks[0]!.wish;
  const { key } = trial;
  const compared = comparisonOf(
    {
      ...plan,
      profiles: looks.map(({ wish }) => wish.profile),
      riders: plan.riders.filter(({ name }) => name === key.rider),
      scenarios: plan.scenarios.filter(({ name }) => name === key.scenario),
      charges: [key.chargePercent],
      seeds: [key.seed],
    },
    looks,
  );
  return { runs: comparedRuns(compared), parting: compared.parting };
}
