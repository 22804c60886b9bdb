/**
 * The first and the last line of every screen: what is ranked and how far it is; which keys there are now, or what is to be
 * told, or the line that is being typed.
 */
import { chargeItem, OWN_CHARGE } from '../bench/chooser-acts.js';
import { KEYMAP, type Place } from '../bench/keymap.js';
import { keyText } from '../bench/key-words.js';
import { missingNames } from '../bench/missing.js';
import { isTyping, placeOf } from '../bench/press.js';
import type { BenchState } from '../bench/state.js';
import { stageText, sweepText } from '../bench/sweep-words.js';
import { currentShortlistRow } from '../bench/shortlist-items.js';
import { keepingText, previewText } from '../bench/shortlist-words.js';
import { explainingText } from '../bench/why-text.js';
import { entryRow } from './entry-row.js';
import { keyLine, type NamedKey } from './key-line.js';
import { padded } from '../../show/fit-text.js';
import { timeText } from '../../show/quantities.js';
import { atBothEnds, sayInOne } from './say.js';

/** A list of names, or how many there are; of null all of what is there. What is named and gone is said behind. */
function few(
  names: readonly string[] | null,
  { there, gone, many }: { there: readonly { name: string }[]; gone: readonly string[]; many: string },
): string {
  if (names === null) return there.length === 1 ? there[0]!.name : `all ${there.length} ${many}`;
  const run = names.filter((name) => !gone.includes(name));
  const lost =
    gone.length === 0 ? [] : [`${gone.length <= 2 ? gone.join(', ') : `${gone.length} ${many}`} gone`];
  const named = run.length <= 3 ? run.join(', ') : `${run.length} ${many}`;
  return [named, ...lost].filter((part) => part !== '').join('; ');
}

/** What is ranked: `otter under regular, pack at 40 %, all 15 scenarios`. */
export function setupText(state: Pick<BenchState, 'choices' | 'shelf' | 'options'>): string {
  const { choices, shelf, options } = state;
  const { setup } = choices;
  const gone = missingNames(state);
  const charges = setup.charges.map(chargeItem).join(', ');
  const riders = few(setup.riders, { there: shelf.rider, gone: gone.rider, many: 'riders' });
  const roads = few(setup.scenarios, { there: shelf.scenario, gone: gone.scenario, many: 'scenarios' });
  const pack = charges === OWN_CHARGE ? '' : `, pack at ${charges}`;
  const chance = options.seeds.length === 1 ? '' : `, ${options.seeds.length} seeds`;
  const board = gone.board.length === 0 ? setup.board : `${setup.board} (gone)`;
  return `${board} under ${riders}${pack}, ${roads}${chance}`;
}

/** How far the ranking is, in words. */
export function progressText({ rows, work, progress, options }: BenchState): string {
  if (work === null) return 'nothing to rank';
  const all = work.plan.profiles.length;
  const { doneCells, allCells } = progress;
  if (doneCells < allCells) return `ranking: ${doneCells} of ${allCells} runs`;
  const checked = rows.filter(({ check }) => check !== null);
  if (rows.some(({ result }) => result === null)) return 'ranking';
  if (options.solver === 'reference') return 'by odex itself';
  const off = checked.filter(({ check }) => check?.agrees === false).length;
  if (off > 0) return `odex disagrees on ${off}`;
  return checked.length < all ? `ranked; odex checked ${checked.length} of ${all}` : 'ranked, odex agrees';
}

/** What the screen in front is about. */
function titleText(state: BenchState): string {
  const { screen, view, work, options } = state;
  if (screen === 'rank') return `underfoot  ${setupText(state)}`;
  if (screen === 'sweep') return `Sweep  ${sweptText(state)}`;
  if (screen === 'shortlist') return `Shortlist  ${shortlistText(state)}`;
  if (screen === 'why') return `Why  ${state.why?.plan.profiles[0]?.name ?? ''}, ${setupText(state)}`;
  const key = work?.trials[view.trial]?.key;
  const where =
    key === undefined
      ? ''
      : ` in ${key.scenario}, ${state.choices.setup.board} under ${key.rider}, pack at ${key.chargePercent} %${options.seeds.length === 1 ? '' : `, seed ${key.seed}`}`;
  return `${screen === 'trace' ? 'Trace' : 'Compare'}  ${view.profiles.join(', ')}${where}`;
}

/** How many profiles are kept, and which one is under the cursor. */
function shortlistText(state: BenchState): string {
  const { length } = state.shelf.kept;
  const here = currentShortlistRow(state);
  const kept = length === 0 ? 'nothing kept yet' : `${length} kept`;
  return here === undefined ? kept : `${kept}, ${here.name}`;
}

/** What is swept: the form asks for what Rank ranks on, a sweep keeps what it was begun with. */
function sweptText(state: BenchState): string {
  const { run, view } = state.sweep;
  if (run === null || view === 'ranges') return setupText(state);
  const { board, riders, scenarios } = run.plan.cells;
  const under = riders.length <= 3 ? riders.map(({ name }) => name).join(', ') : `${riders.length} riders`;
  const roads = scenarios.length === 1 ? scenarios[0]!.name : `${scenarios.length} scenarios`;
  return `${board.name} under ${under}, ${roads}, from ${run.plan.base.name}`;
}

/** How time goes on Trace and Compare: whether it plays, how fast, and what part is in sight. */
function playingText({ playhead, options }: BenchState): string {
  const { playing, rate, span } = playhead;
  const part = span === null ? '' : `, ${timeText(span.toS - span.fromS)} in sight`;
  return `${playing ? 'playing' : 'paused'} at ${rate}${options.symbols === 'ascii' ? 'x' : '×'}${part}`;
}

/** What stands at the right of the line at the top, screen by screen. */
const RIGHT_TEXTS: Readonly<Record<BenchState['screen'], (state: BenchState) => string>> = {
  rank: progressText,
  trace: playingText,
  compare: playingText,
  why: explainingText,
  sweep: stageText,
  shortlist: previewText,
};

/** The line at the top. */
export function headerRow(state: BenchState): string {
  const { options, size, shelf, screen } = state;
  const title = titleText(state);
  const problems = shelf.problems.length;
  const right = [
    problems > 0 ? `! ${problems} problem${problems === 1 ? '' : 's'} in files` : '',
    screen === 'sweep' ? '' : sweepText(state),
    keepingText(state),
    RIGHT_TEXTS[screen](state),
  ];
  const text = atBothEnds(title, right.filter((part) => part !== '').join('  '), {
    width: size.columns,
    options,
  });
  return options.paint.inverse(padded(text, size.columns));
}

/** The keys that the footer names now: those of the place, then of anywhere; those that can do nothing now are left out. */
function keysNow(state: BenchState): NamedKey[] {
  const place = placeOf(state);
  // Where letters are typed, the help has a key that types none.
  const keyOf = (keys: readonly string[]) =>
    (isTyping(place) && keys.find((key) => key.length > 1)) || keys[0]!;
  const named = (from: Place) =>
    KEYMAP[from].bindings
      .filter(({ inFooter, off }) => inFooter && (off?.(state) ?? null) === null)
      .map(({ keys, label }) => ({
        text: `${keyText(keyOf(keys), state.options.symbols)} ${label}`,
        isKept: from === 'anywhere' || keys.includes('escape'),
        isOwn: from !== 'anywhere',
      }));
  return [...named(place), ...(place === 'help' ? [] : named('anywhere'))];
}

/** The line at the bottom. */
export function footerRow(state: BenchState): string {
  const { options, size, entry, notice } = state;
  const { paint } = options;
  if (entry !== null) return entryRow(state, entry, keysNow(state));
  if (notice !== null) {
    const style = notice.isFault ? paint.bad : paint.accent;
    const mark = notice.isFault ? '! ' : '';
    return style(sayInOne(mark + notice.text, size.columns, options));
  }
  return sayInOne(keyLine(keysNow(state), size.columns), size.columns, options);
}
