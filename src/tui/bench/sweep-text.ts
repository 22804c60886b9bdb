/**
 * Every view of the Sweep screen but its form as text: its lines at a width, and which of them are in sight.
 */
import { createPaint, type Paint } from '../../show/colour.js';
import { CAUTION } from '../../show/cautions.js';
import { frontWords } from '../../show/sweep-front-words.js';
import { mapWords } from '../../show/sweep-map-words.js';
import { bestSoFarWords, finalistWords, type Sections } from '../../show/sweep-words.js';
import { writer } from '../../show/why-lines.js';
import type { Act } from './binding.js';
import type { BenchState } from './state.js';
import { currentCandidate, finalView, mapSpecOf, scatterSpecOf, viewInFront } from './sweep-items.js';
import { candidateText } from './sweep-read-out.js';
import { keptText, progressText } from './sweep-words.js';
import { pageAt, readAt, textHeight, type TextPage } from './text-page.js';

/** The view in front in lines, none wider than the terminal; empty where it has no text of its own. */
export function sweepTextLines(state: BenchState, paint: Paint): string[] {
  const { size, options } = state;
  const { say } = writer({ width: size.columns, symbols: options.symbols, paint });
  const [first = [], ...others] = sectionsOf(state);
  const [heading, ...rest] = first;
  if (heading === undefined) return [];
  return [
    ...say(heading).map(paint.bold),
    ...rest.flatMap((text) => say(text)),
    ...others
      .filter(({ length }) => length > 0)
      .flatMap((section) => ['', ...section.flatMap((text) => say(text))]),
    '',
    ...say(CAUTION).map(paint.dim),
  ];
}

function sectionsOf(state: BenchState): Sections {
  const view = viewInFront(state);
  const { run } = state.sweep;
  if (run === null || view === 'ranges') return [];
  const here = [candidateText(state)].filter((text) => text !== '');
  const cursor = here.length === 0 ? [] : ['Under the cursor:', ...here];
  if (view === 'live') return [[progressText(run), keptText(state, run)], cursor, liveWords(state)];
  if (view === 'finalists') return finalistSections(state, here);
  const [first = [], ...others] = plotWords(state, view);
  return [first, cursor, ...others];
}

function liveWords({ sweep: { run } }: BenchState): string[] {
  if (run === null || run.best.length === 0) return ['Nobody is known yet.'];
  return ['The best so far:', ...bestSoFarWords(run.plan.ranges, run.best)];
}

function finalistSections(state: BenchState, here: readonly string[]): Sections {
  const outcome = state.sweep.run?.outcome;
  if (!outcome) return [];
  const view = finalView(outcome);
  const name = currentCandidate(state)?.name;
  const at = view.finalists.findIndex(({ result }) => result.name === name);
  const [first = [], ...others] = finalistWords(view, at === -1 ? null : at);
  return at === -1 && here.length > 0 ? [first, here, ...others] : [first, ...others];
}

function plotWords(state: BenchState, view: 'map' | 'front'): Sections {
  if (view === 'map') {
    const spec = mapSpecOf(state);
    return spec === null ? [] : mapWords(spec);
  }
  const spec = scatterSpecOf(state);
  return spec === null ? [] : frontWords(spec);
}

const NO_PAINT = createPaint('none');

/** The lines in sight; null where pictures are. */
export function sweepPage(state: BenchState): TextPage | null {
  const { read } = state.sweep;
  if (read === null || viewInFront(state) === 'ranges') return null;
  return pageAt(sweepTextLines(state, NO_PAINT), { read, height: textHeight(state) });
}

function withRead(state: BenchState, read: number | null): BenchState {
  return { ...state, sweep: { ...state.sweep, read } };
}

/** Says the view in words, from the first line on. */
export const openWords: Act = (state) => withRead(state, 0);

/** Draws the pictures again. */
export const closeWords: Act = (state) => withRead(state, null);

/** Scrolls by so many lines; it stops at the ends. */
export function scrollWords(by: number): Act {
  return (state) => scrolled(state, () => by);
}

/** Scrolls by so many pages. */
export function turnWords(by: number): Act {
  return (state) => scrolled(state, ({ height }) => by * height);
}

function scrolled(state: BenchState, by: (page: TextPage) => number): BenchState {
  const { read } = state.sweep;
  if (read === null) return state;
  const lines = sweepTextLines(state, NO_PAINT);
  const height = textHeight(state);
  const page = pageAt(lines, { read, height });
  return withRead(state, readAt(lines, { top: page.top + by(page), height }));
}
