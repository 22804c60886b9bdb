/**
 * The whole answer of Why as text: its lines at a width, and which of them are in sight.
 */
import { createPaint, type Paint } from '../../show/colour.js';
import { edgeLines } from '../../show/why-edge.js';
import { whyLines, writer, type WhyOptions } from '../../show/why-lines.js';
import { remedySentences } from '../../show/why-remedies.js';
import { findingSentences } from '../../show/why-sentences.js';
import type { Act } from './binding.js';
import type { BenchState, WhyState } from './state.js';
import { currentItem, type WhyItem } from './why-items.js';
import { pageAt, readAt, textHeight, type TextPage } from './text-page.js';
import { viewOf } from './why-shown.js';

/** How far an explanation is, in words. */
export function explainingText({ why }: Pick<BenchState, 'why'>): string {
  if (why === null) return 'explained';
  if (why.answer?.tried) return why.edge === null ? `finding the edge: ${runsText(why)}` : 'explained';
  if (why.progress === null) return 'explaining';
  const { done, all, purpose } = why.progress;
  return `${purpose === 'to try changes' ? 'trying changes' : 'explaining'}: ${done} of ${all} runs`;
}

/** How many runs have looked for the edge, in words. */
export function runsText({ edgeRuns }: Pick<WhyState, 'edgeRuns'>): string {
  return `${edgeRuns} ${edgeRuns === 1 ? 'run' : 'runs'}`;
}

/** The whole answer in lines, none wider than the terminal; empty while there is none. */
export function textLines(state: BenchState, paint: Paint): string[] {
  const { why, size, options } = state;
  const view = viewOf(state);
  if (why === null || view === null) return [];
  const show = { width: size.columns, symbols: options.symbols, paint };
  const lines = whyLines(view, show);
  return [...lines, ...otherChanges(state, lines, show), '', ...edgePart(why, show)];
}

/** The changes that the first part leaves out, told as it tells the best of them. */
function otherChanges(state: BenchState, lines: readonly string[], show: WhyOptions): string[] {
  const { say, paint } = writer(show);
  const remedies = state.why?.answer?.tried?.remedies ?? [];
  const paragraphs = remedies.flatMap((remedy, index) => {
    const head = headLines(state, { kind: 'remedy', index, remedy }, show);
    const style = remedy.effect.newlyFailed.length > 0 ? paint.warn : (line: string) => line;
    if (lines.includes(style(head[0]!))) return [];
    return [...head.map(style), ...say(remedySentences(remedy).slice(1).join(' '), '   ')];
  });
  return paragraphs.length === 0 ? [] : ['', ...say('The other changes that were tried:'), ...paragraphs];
}

/** The lines with which the paragraph of a finding or a change begins. */
function headLines(state: BenchState, item: WhyItem, show: WhyOptions): string[] {
  const { say } = writer(show);
  if (item.kind === 'remedy') return say(`${item.index + 1}) ${remedySentences(item.remedy)[0]!}`);
  const view = viewOf(state);
  return view === null ? [] : say(`${item.index + 1}. ${findingSentences(view, item.evidence)[0]!}`);
}

/** How far it is to the edge, or how far that is known. */
function edgePart(why: WhyState, show: WhyOptions): string[] {
  if (why.edge !== null) return edgeLines(why.edge, show);
  const { say, paint } = writer(show);
  const text = why.answer?.tried
    ? `How far from the edge: that is being looked for, ${runsText(why)} so far.`
    : `Changes and the distance to the edge come once every run has been seen: ${explainingText({ why })}.`;
  return say(text).map(paint.dim);
}

const NO_PAINT = createPaint('none');

const plainLines = (state: BenchState) => textLines(state, NO_PAINT);

/** The lines in sight; null where the lists are. */
export function textPage(state: BenchState): TextPage | null {
  const read = state.why?.read ?? null;
  return read === null ? null : pageAt(plainLines(state), { read, height: textHeight(state) });
}

/** The state with a line of the text on top, as near as the end of the text allows. */
function readFrom(state: BenchState, lines: readonly string[], top: number): BenchState {
  const { why } = state;
  const read = readAt(lines, { top, height: textHeight(state) });
  return why === null ? state : { ...state, why: { ...why, read } };
}

/** Shows the whole answer as text, at what is under the cursor. */
export const openText: Act = (state) => {
  const item = currentItem(state);
  const lines = plainLines(state);
  const { size, options } = state;
  const show = { width: size.columns, symbols: options.symbols, paint: NO_PAINT };
  const [head] = item === undefined ? [] : headLines(state, item, show);
  return readFrom(state, lines, head === undefined ? 0 : Math.max(0, lines.indexOf(head)));
};

/** Why there is no text yet; null where there is. */
export function textOff({ why }: BenchState): string | null {
  return why?.answer ? null : 'nothing is found yet';
}

/** Shows the lists again. */
export const closeText: Act = (state) =>
  state.why === null ? state : { ...state, why: { ...state.why, read: null } };

/** Scrolls by so many lines; it stops at the ends. */
export function scrollLines(by: number): Act {
  return (state) => scrolled(state, () => by);
}

/** Scrolls by so many pages. */
export function scrollPages(by: number): Act {
  return (state) => scrolled(state, ({ height }) => by * height);
}

function scrolled(state: BenchState, by: (page: TextPage) => number): BenchState {
  const read = state.why?.read ?? null;
  if (read === null) return state;
  const lines = plainLines(state);
  const page = pageAt(lines, { read, height: textHeight(state) });
  return readFrom(state, lines, page.top + by(page));
}
