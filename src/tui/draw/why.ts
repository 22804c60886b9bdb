/**
 * The body of Why: how the profile fares, what is to blame beside the run that shows it, and below them the changes that were
 * tried with what they would do.
 */
import { beside } from '../../show/beside.js';
import { CAUTION } from '../../show/cautions.js';
import { feelSentences } from '../../show/why-feel.js';
import { remedySentences, verdictSentences } from '../../show/why-remedies.js';
import { blamelessSentences, findingSentences, standingSentences } from '../../show/why-sentences.js';
import type { WhyView } from '../../show/why-view.js';
import type { BenchState, WhyState } from '../bench/state.js';
import { currentItem, isInUse } from '../bench/why-items.js';
import { viewOf } from '../bench/why-shown.js';
import { explainingText, runsText } from '../bench/why-text.js';
import { say, sayInOne, type Area } from './say.js';
import { findingRows, remedyRows } from './why-lists.js';
import { whyPlotRows } from './why-plot.js';
import { whyTextRows } from './why-text.js';

/** Fewest columns in which findings and plot stand side by side, and the part of them that is for the findings. */
const SIDE_BY_SIDE = 76;
const LEFT_SHARE = 0.54;

/** Fewest and most rows of the plot with its sentence. */
const PLOT_LEAST = 8;
const PLOT_MOST = 24;

/** Fewest rows of the body with a sentence about the whole, and with the feel. */
const WITH_HEAD = 12;
const WITH_FEEL = 26;

/** Fewest rows of the body that say what the text has besides. */
const WITH_REST = 28;

/** The body, in at most as many rows as the area has. */
export function whyRows(state: BenchState, area: Area): string[] {
  const { why } = state;
  if (why === null) return [];
  const view = viewOf(state);
  if (view === null) return waitingRows(state, why, area);
  if (why.read !== null) return whyTextRows(state, area);
  const head = headRows(state, view, area);
  const foot = footRows(state, view, area);
  const height = area.height - head.length - foot.length - (foot.length > 0 ? 1 : 0);
  const middle = middleRows(state, view, { width: area.width, height });
  const space = Array.from({ length: Math.max(0, height - middle.length) }, () => '');
  const isTight = middle.length >= height;
  return [...head, ...middle, ...(isTight ? [] : space), ...(foot.length > 0 ? [''] : []), ...foot].slice(
    0,
    area.height,
  );
}

function waitingRows({ options }: BenchState, { plan }: WhyState, { width, height }: Area): string[] {
  const name = plan.profiles[0]!.name;
  const text =
    `${name} is run as it is, and then with one suspect after the other taken away. ` +
    'What the worst runs say comes first.';
  return say(text, width, options).slice(0, height);
}

function headRows(state: BenchState, view: WhyView, { width, height }: Area): string[] {
  if (height < WITH_HEAD) return [];
  const { options } = state;
  const standing = say(standingSentences(view).join(' '), width, options);
  const feel = view.feel === null || height < WITH_FEEL ? [] : feelSentences(view.feel).slice(0, 1);
  return [
    ...clipped(standing, height < WITH_FEEL ? 2 : 3, state, width).map(options.paint.bold),
    ...feel.flatMap((text) => say(text, width, options)).slice(0, 3),
    '',
  ];
}

/** The verdict over the changes, and the changes; or how far they are. */
function footRows(state: BenchState, { tried, findings }: WhyView, { width, height }: Area): string[] {
  const { options } = state;
  const room = Math.max(2, Math.floor(height * 0.32));
  if (tried === null) {
    const text = `Changes are tried once every run has been seen: ${explainingText(state)}.`;
    return say(text, width, options).slice(0, room);
  }
  const verdict = verdictSentences(tried, findings).join(' ');
  const most = height < WITH_HEAD ? 0 : height < WITH_FEEL ? 1 : 3;
  const said = most === 0 ? [] : clipped(say(verdict, width, options), most, state, width);
  const list = remedyRows(state, tried.remedies, { width, height: room - said.length });
  const rest = height < WITH_REST ? [] : [sayInOne(restText(state), width, options)];
  const caution = height < WITH_FEEL ? [] : say(CAUTION, width, options);
  return [...said, ...list, ...[...rest, ...caution].map(options.paint.dim)];
}

/** What there is to read besides the lists. */
function restText({ why }: BenchState): string {
  const edge = why === null || why.edge !== null ? '' : `, once it is found; ${runsText(why)} so far`;
  return `t says all of it in words, and how far it is to the edge${edge}.`;
}

/** Lines as far as they fit; the last one says that there is more. */
function clipped(lines: readonly string[], most: number, { options }: BenchState, width: number): string[] {
  if (lines.length <= most) return [...lines];
  const last = sayInOne(lines.slice(Math.max(0, most - 1)).join(' '), width, options);
  return [...lines.slice(0, Math.max(0, most - 1)), ...(most > 0 ? [last] : [])];
}

function middleRows(state: BenchState, view: WhyView, { width, height }: Area): string[] {
  const isBeside = width >= SIDE_BY_SIDE && height >= PLOT_LEAST;
  const leftWidth = isBeside ? Math.floor(width * LEFT_SHARE) : width;
  const listHeight = Math.max(1, Math.floor(height * 0.4));
  const list =
    view.findings.length === 0
      ? clipped(
          say(blamelessSentences(view).join(' '), leftWidth, state.options),
          listHeight,
          state,
          leftWidth,
        )
      : findingRows(state, view, { width: leftWidth, height: listHeight });
  const gap = height >= PLOT_LEAST && list.length > 0 ? [''] : [];
  const room = height - list.length - gap.length;
  const detail = clipped(say(detailText(state, view), leftWidth, state.options), room, state, leftWidth);
  const left = [...list, ...gap, ...detail];
  if (isBeside) {
    const plot = whyPlotRows(state, { width: width - leftWidth - 2, height: Math.min(height, PLOT_MOST) });
    return beside(left, plot, { leftWidth, gap: 2 });
  }
  const rest = height - left.length - 1;
  return rest < PLOT_LEAST
    ? left
    : [...left, '', ...whyPlotRows(state, { width, height: Math.min(rest, PLOT_MOST) })];
}

/** What there is to say of what is under the cursor. */
function detailText(state: BenchState, view: WhyView): string {
  const item = currentItem(state);
  if (item === undefined) return '';
  if (item.kind === 'finding') return findingSentences(view, item.evidence).join(' ');
  const said = remedySentences(item.remedy).join(' ');
  const kept = state.options.ownFolder ? ', w keeps it as a new profile' : '';
  return isInUse(state, item.remedy)
    ? `Made in the bench now: u takes it back${kept}. ${said}`
    : `${said} Enter tries it: table, Trace and Compare show it then.`;
}
