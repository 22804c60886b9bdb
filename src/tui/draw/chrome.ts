/**
 * The first and the last line of every screen: what is ranked and how far it is; which keys there are now, or what is to be
 * told, or the line that is being typed.
 */
import { chargeItem, OWN_CHARGE } from '../bench/chooser-acts.js';
import { KEYMAP, type Place } from '../bench/keymap.js';
import { keyText } from '../bench/key-words.js';
import { isTyping, placeOf } from '../bench/press.js';
import type { BenchState, Entry } from '../bench/state.js';
import { padded, textWidth } from '../../show/fit-text.js';
import { timeText } from '../../show/quantities.js';
import { atBothEnds, endOf, sayInOne } from './say.js';

/** A list of names, or how many there are. */
function few(names: readonly string[], many: string): string {
  return names.length <= 3 ? names.join(', ') : `${names.length} ${many}`;
}

/** What is ranked: `otter under regular, pack at 40 %, all 15 scenarios`. */
export function setupText({ choices: { setup }, shelf }: Pick<BenchState, 'choices' | 'shelf'>): string {
  const charges = setup.charges.map(chargeItem).join(', ');
  const all = setup.scenarios.length === shelf.scenario.length;
  const roads = all ? `all ${setup.scenarios.length} scenarios` : few(setup.scenarios, 'scenarios');
  const pack = charges === OWN_CHARGE ? '' : `, pack at ${charges}`;
  return `${setup.board} under ${few(setup.riders, 'riders')}${pack}, ${roads}`;
}

/** How far the ranking is, in words. */
export function progressText({ rows, work, progress, options }: BenchState): string {
  const all = work?.plan.profiles.length ?? 0;
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
  const { screen, view, work } = state;
  if (screen === 'rank') return `underfoot  ${setupText(state)}`;
  const key = work?.trials[view.trial]?.key;
  const where =
    key === undefined
      ? ''
      : ` in ${key.scenario}, ${state.choices.setup.board} under ${key.rider}, pack at ${key.chargePercent} %`;
  return `${screen === 'trace' ? 'Trace' : 'Compare'}  ${view.profiles.join(', ')}${where}`;
}

/** How time goes on Trace and Compare: whether it plays, how fast, and what part is in sight. */
function playingText({ playhead, options }: BenchState): string {
  const { playing, rate, span } = playhead;
  const part = span === null ? '' : `, ${timeText(span.toS - span.fromS)} in sight`;
  return `${playing ? 'playing' : 'paused'} at ${rate}${options.symbols === 'ascii' ? 'x' : '×'}${part}`;
}

/** The line at the top. */
export function headerRow(state: BenchState): string {
  const { options, size, shelf, screen } = state;
  const title = titleText(state);
  const problems = shelf.problems.length;
  const right = [
    problems > 0 ? `! ${problems} problem${problems === 1 ? '' : 's'} in files` : '',
    screen === 'rank' ? progressText(state) : playingText(state),
  ];
  const text = atBothEnds(title, right.filter((part) => part !== '').join('  '), {
    width: size.columns,
    options,
  });
  return options.paint.inverse(padded(text, size.columns));
}

const PROMPTS: Readonly<Record<Entry['purpose'], string>> = {
  filter: 'show profiles with',
  number: 'number',
  export: 'write the table to (.csv, .json, .txt)',
  save: 'name of the new profile',
};

/** A key with its label, as the footer names it. */
interface NamedKey {
  text: string;
  /** True for what is named first where there is little room: the way back, and the way to all other keys. */
  isKept: boolean;
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
      }));
  return [...named(place), ...(place === 'help' ? [] : named('anywhere'))];
}

const KEY_GAP = '  ';

/** As many keys as fit into a width, in their order. */
function keyLine(keys: readonly NamedKey[], width: number): string {
  const widthOf = (shown: readonly NamedKey[]) => textWidth(shown.map(({ text }) => text).join(KEY_GAP));
  let shown = keys.filter(({ isKept }) => isKept);
  for (const key of keys) {
    const longer = keys.filter((other) => other === key || shown.includes(other));
    if (!key.isKept && widthOf(longer) > width) break;
    shown = longer;
  }
  return shown.map(({ text }) => text).join(KEY_GAP);
}

/** The line that is being typed, with the keys that end it where there is room for them. */
function entryRow(state: BenchState, entry: Entry): string {
  const { options, size } = state;
  const prompt = `${PROMPTS[entry.purpose]}: `;
  const text = `${prompt}${endOf(entry.text, Math.max(4, size.columns - textWidth(prompt) - 1))}_`;
  const keys = keyLine(keysNow(state), size.columns);
  const isRoomy = textWidth(text) + textWidth(keys) + 4 <= size.columns;
  return isRoomy
    ? atBothEnds(text, keys, { width: size.columns, options })
    : sayInOne(text, size.columns, options);
}

/** The line at the bottom. */
export function footerRow(state: BenchState): string {
  const { options, size, entry, notice } = state;
  const { paint } = options;
  if (notice !== null) {
    const style = notice.isFault ? paint.bad : paint.accent;
    const mark = notice.isFault ? '! ' : '';
    return style(sayInOne(mark + notice.text, size.columns, options));
  }
  if (entry !== null) return entryRow(state, entry);
  return sayInOne(keyLine(keysNow(state), size.columns), size.columns, options);
}
