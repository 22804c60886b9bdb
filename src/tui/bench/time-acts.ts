/**
 * What keys do with time and runs on Trace and Compare.
 */
import { firstCutRow, nextMark, peakRow, previousMark } from '../../measure/moments.js';
import { partingOf } from '../../measure/parting.js';
import type { TimeSpan } from '../../show/plot-frame.js';
import { measuredSpan, runMarks, tapeSpan } from '../../show/run-view.js';
import type { Look } from '../../tasks/looks.js';
import type { Act } from './binding.js';
import type { BenchState, Playhead } from './state.js';

/** Seconds of a run in one of ours. */
export const RATES = [0.05, 0.1, 0.25, 0.5, 1, 2, 4] as const;

/** Part of what is in sight that one step of scrubbing covers. */
const SCRUB_SHARE = 1 / 100;

/** Zooming in goes down to this length, s. */
const LEAST_SPAN_S = 0.05;

const ZOOM = 2;

function withPlayhead(state: BenchState, playhead: Partial<Playhead>): BenchState {
  return { ...state, playhead: { ...state.playhead, ...playhead } };
}

/** The run that time is read on: the longest of those looked at. */
export function leadingLook({ looks }: Pick<BenchState, 'looks'>): Look | null {
  const there = looks.filter((look) => look !== null);
  return there.toSorted((a, b) => b.tape.length - a.tape.length)[0] ?? null;
}

/** The whole time of what is looked at. */
export function wholeSpan(state: Pick<BenchState, 'looks'>): TimeSpan | null {
  const look = leadingLook(state);
  return look === null ? null : tapeSpan(look.tape);
}

/** The time in sight. */
export function spanInSight(state: Pick<BenchState, 'looks' | 'playhead'>): TimeSpan | null {
  return state.playhead.span ?? wholeSpan(state);
}

/** The moment at the cursor [s]. */
export function cursorS(state: Pick<BenchState, 'looks' | 'playhead'>): number {
  const { timeS } = state.playhead;
  const look = leadingLook(state);
  const whole = wholeSpan(state);
  if (look === null || whole === null) return timeS ?? 0;
  const wanted = timeS ?? peakRow(look.tape, look.window) * look.tape.tickS;
  return Math.min(whole.toS, Math.max(whole.fromS, wanted));
}

/** A stretch of time moved to a start, as far as it stays within the whole; null where it is as long as that. */
function moved({ fromS, toS }: TimeSpan, startS: number, whole: TimeSpan): TimeSpan | null {
  const lengthS = toS - fromS;
  if (lengthS >= whole.toS - whole.fromS) return null;
  const nowS = Math.max(whole.fromS, Math.min(whole.toS - lengthS, startS));
  return { fromS: nowS, toS: Math.min(whole.toS, nowS + lengthS) };
}

/** What is in sight, moved on where the moment lies outside of it. */
function pageTo(span: TimeSpan | null, timeS: number, whole: TimeSpan): TimeSpan | null {
  if (span === null || (timeS >= span.fromS && timeS <= span.toS)) return span;
  const lengthS = span.toS - span.fromS;
  const share = timeS > span.toS ? 0.1 : 0.9;
  return moved(span, timeS - share * lengthS, whole);
}

/** The state with its cursor at a moment [s]. */
export function at(state: BenchState, timeS: number): BenchState {
  const whole = wholeSpan(state);
  if (whole === null) return state;
  const within = Math.min(whole.toS, Math.max(whole.fromS, timeS));
  return withPlayhead(state, { timeS: within, span: pageTo(state.playhead.span, within, whole) });
}

/** The state when so much of our time has gone by while a run plays [s]. */
export function played(state: BenchState, elapsedS: number): BenchState {
  const { playing, rate } = state.playhead;
  const whole = wholeSpan(state);
  if (!playing || whole === null) return state;
  const next = at(state, cursorS(state) + elapsedS * rate);
  return cursorS(next) >= whole.toS ? withPlayhead(next, { playing: false }) : next;
}

/** Plays or pauses; from the end it plays from the start. */
export const togglePlaying: Act = (state) => {
  const whole = wholeSpan(state);
  if (whole === null) return state;
  if (state.playhead.playing) return withPlayhead(state, { playing: false });
  const from = cursorS(state) >= whole.toS ? at(state, whole.fromS) : at(state, cursorS(state));
  return withPlayhead(from, { playing: true });
};

/** Plays slower or faster. */
export function changeRate(by: 1 | -1): Act {
  return (state) => {
    const here = RATES.findIndex((rate) => rate === state.playhead.rate);
    const rate = RATES[Math.min(RATES.length - 1, Math.max(0, here + by))]!;
    return withPlayhead(state, { rate });
  };
}

/** Moves the cursor by ticks, and pauses. */
export function step(ticks: number): Act {
  return (state) => {
    const look = leadingLook(state);
    if (look === null) return state;
    const row = Math.round(cursorS(state) / look.tape.tickS) + ticks;
    return withPlayhead(at(state, row * look.tape.tickS), { playing: false });
  };
}

/** Moves the cursor by hundredths of what is in sight. */
export function scrub(steps: number): Act {
  return (state) => {
    const span = spanInSight(state);
    return span === null ? state : at(state, cursorS(state) + steps * SCRUB_SHARE * (span.toS - span.fromS));
  };
}

/** Moves the cursor to the start or the end of the run. */
export function goTo(end: 'start' | 'end'): Act {
  return (state) => {
    const whole = wholeSpan(state);
    return whole === null ? state : at(state, end === 'start' ? whole.fromS : whole.toS);
  };
}

/** Zooms about the cursor, in or out. */
export function zoom(inwards: boolean): Act {
  return (state) => {
    const span = spanInSight(state);
    const whole = wholeSpan(state);
    if (span === null || whole === null) return state;
    const lengthS = Math.max(LEAST_SPAN_S, (span.toS - span.fromS) * (inwards ? 1 / ZOOM : ZOOM));
    const share = (cursorS(state) - span.fromS) / (span.toS - span.fromS);
    const wanted = cursorS(state) - Math.min(1, Math.max(0, share)) * lengthS;
    return withPlayhead(state, { span: moved({ fromS: 0, toS: lengthS }, wanted, whole) });
  };
}

/** Shows the whole run again. */
export const showWhole: Act = (state) => withPlayhead(state, { span: null });

/** Shows the measured stretch alone. */
export const showMeasured: Act = (state) => {
  const look = leadingLook(state);
  if (look === null) return state;
  const span = measuredSpan(look.view);
  if (span === null || span.toS <= span.fromS) {
    return { ...state, notice: { text: 'nothing was measured in this run', isFault: false } };
  }
  const inside = cursorS(state) >= span.fromS && cursorS(state) <= span.toS;
  return withPlayhead(state, { span, timeS: inside ? cursorS(state) : span.fromS });
};

/** Moves the cursor to the next or previous event. */
export function goToEvent(which: 'next' | 'previous'): Act {
  return (state) => {
    const look = leadingLook(state);
    if (look === null) return state;
    const find = which === 'next' ? nextMark : previousMark;
    const mark = find(runMarks(look.view), cursorS(state));
    if (mark === null) return { ...state, notice: { text: `no ${which} event`, isFault: false } };
    return { ...at(state, mark.timeS), notice: { text: mark.name, isFault: false } };
  };
}

/** Moves the cursor to the largest pitch of the measured stretch. */
export const goToPeak: Act = (state) => {
  const look = leadingLook(state);
  return look === null ? state : at(state, peakRow(look.tape, look.window) * look.tape.tickS);
};

/** Moves the cursor to the first tick at which a ceiling cut the request. */
export const goToFirstCut: Act = (state) => {
  const look = leadingLook(state);
  if (look === null) return state;
  const row = firstCutRow(look.tape);
  if (row === null) {
    return { ...state, notice: { text: 'no ceiling cuts the request in this run', isFault: false } };
  }
  return at(state, row * look.tape.tickS);
};

/** The first moment at which the profiles part [s], null where they never do; undefined until all of their runs are there. */
function partingS(state: BenchState): number | null | undefined {
  const there = state.looks.filter((look) => look !== null);
  if (there.length < 2 || there.length < state.view.profiles.length) return undefined;
  const tapes = there.map(({ tape }) => tape);
  return partingOf(tapes, there[0]!.window.bandRad)?.timeS ?? null;
}

/** Moves the cursor to the first moment at which the profiles part. */
export const goToParting: Act = (state) => {
  const timeS = partingS(state);
  if (timeS === null) {
    return { ...state, notice: { text: 'the profiles do not part in this scenario', isFault: false } };
  }
  return timeS === undefined ? state : at(state, timeS);
};

/**
 * The state whose runs have come: what is in sight lies within them, and a comparison without a moment yet begins where it
 * begins to matter.
 */
export function begun(state: BenchState): BenchState {
  const whole = wholeSpan(state);
  const { span, timeS } = state.playhead;
  if (whole === null || state.looks.length < state.view.profiles.length || state.looks.includes(null)) {
    return state;
  }
  const next = withPlayhead(state, { span: span === null ? null : moved(span, span.fromS, whole) });
  const startS = state.screen === 'compare' && timeS === null ? partingS(next) : null;
  return startS === null || startS === undefined ? next : at(next, startS);
}
