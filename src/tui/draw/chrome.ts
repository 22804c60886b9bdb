/**
 * The first and the last line of every screen: what is ranked and how far it is; which keys there are now, or what is to be
 * told, or the line that is being typed.
 */
import { chargeItem, OWN_CHARGE } from '../bench/chooser-acts.js';
import { KEYMAP } from '../bench/keymap.js';
import { keyText } from '../bench/key-words.js';
import { isTyping, placeOf } from '../bench/press.js';
import type { BenchState, Entry } from '../bench/state.js';
import { textWidth } from '../../show/fit-text.js';
import { timeText } from '../../show/quantities.js';
import { atBothEnds, sayInOne } from './say.js';

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
  return checked.length < all ? `ranked; odex: ${checked.length} of ${all}` : 'ranked, odex agrees';
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
  return `${playing ? 'playing' : 'still'} at ${rate}${options.symbols === 'ascii' ? 'x' : '×'}${part}`;
}

/** The line at the top. */
export function headerRow(state: BenchState): string {
  const { options, size, shelf, screen } = state;
  const title = titleText(state);
  const problems = shelf.problems.length;
  const right = [
    problems > 0 ? `! ${problems} in files` : '',
    screen === 'rank' ? progressText(state) : playingText(state),
  ];
  const text = atBothEnds(title, right.filter((part) => part !== '').join('  '), {
    width: size.columns,
    options,
  });
  return options.paint.inverse(text.padEnd(size.columns));
}

const PROMPTS: Readonly<Record<Entry['purpose'], string>> = {
  filter: 'show profiles with',
  number: 'number',
  export: 'write the table to (.csv, .json, .txt)',
  save: 'name of the new profile',
};

/** The keys that the footer names now: those of the place, then of anywhere; those that can do nothing now are left out. */
function keysNow(state: BenchState): string[] {
  const place = placeOf(state);
  // Where letters are typed, the help has a key that types none.
  const keyOf = (keys: readonly string[]) =>
    (isTyping(place) && keys.find((key) => key.length > 1)) || keys[0]!;
  return [...KEYMAP[place].bindings, ...KEYMAP.anywhere.bindings]
    .filter(({ inFooter, off }) => inFooter && (off?.(state) ?? null) === null)
    .map(({ keys, label }) => `${keyText(keyOf(keys), state.options.symbols)} ${label}`);
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
  if (entry !== null) {
    const prompt = `${PROMPTS[entry.purpose]}: `;
    const room = Math.max(4, size.columns - textWidth(prompt) - 2);
    const shown = textWidth(entry.text) > room ? entry.text.slice(-room) : entry.text;
    return sayInOne(`${prompt}${shown}_`, size.columns, options);
  }
  const keys = keysNow(state);
  const last = keys.at(-1) ?? '';
  let line = '';
  for (const key of keys.slice(0, -1)) {
    const longer = line === '' ? key : `${line}  ${key}`;
    if (textWidth(longer) + textWidth(last) + 2 > size.columns) break;
    line = longer;
  }
  return sayInOne(line === '' ? last : `${line}  ${last}`, size.columns, options);
}
