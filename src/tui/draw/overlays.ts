/**
 * What opens over the panel or over the whole screen: numbers of a profile, lists to choose from, help, problems.
 */
import { PROFILE_FIELDS, readField } from '../../quantity/profile-fields.js';
import { padded, textWidth } from '../../show/fit-text.js';
import { GLYPHS } from '../../show/glyphs.js';
import { problemLines } from '../../show/problems.js';
import { figureTexts } from '../../show/rank-row.js';
import { table } from '../../show/table.js';
import { choosesMany, itemsInSight, markedItems } from '../bench/chooser-acts.js';
import { fieldText, gainsView } from '../bench/gains-acts.js';
import { keyList } from '../bench/key-list.js';
import { shownRows } from '../bench/rows.js';
import { PLAIN } from '../bench/sweep-form.js';
import { shellSentence } from '../bench/shell-command.js';
import type { BenchOptions, BenchState, Chooser } from '../bench/state.js';
import { ordinal } from './panel.js';
import { inSight, say, sayInOne, type Area } from './say.js';

const marker = ({ symbols }: BenchOptions) => (symbols === 'ascii' ? '>' : '▸');

/** Where the numbers stood before they were changed: a draft has no file yet. */
function beforeText({ choices }: BenchState, name: string): string {
  return choices.draft?.name === name ? 'as found' : 'in its file';
}

/** What the editor says of the row that it moves. */
function movingText(state: BenchState, name: string): string {
  const row = shownRows(state).find((shown) => shown.name === name);
  if (!row?.result || row.rank === null) return `${name}: being computed`;
  const { score, overshoot, settling, cut, falls } = figureTexts(row.result);
  const now = `${ordinal(row.rank)}, falls ${falls}, score ${score}, overshoot ${overshoot}, settling ${settling}, cut ${cut}`;
  if (row.unedited === null) return `${name}: ${now}`;
  const before = figureTexts(row.unedited.result);
  return `${name}: ${now}; ${beforeText(state, name)} ${ordinal(row.unedited.rank)}, falls ${before.falls}, score ${before.score}, overshoot ${before.overshoot}, settling ${before.settling}, cut ${before.cut}`;
}

/** The numbers of a profile, the one under the cursor explained. */
export function gainsRows(state: BenchState, { width, height }: Area): string[] {
  const view = gainsView(state);
  if (view === null) return [];
  const { options } = state;
  const head = say(movingText(state, view.name), width, options)
    .slice(0, height >= 8 ? 3 : 1)
    .map(options.paint.bold);
  const range = `From ${view.field.min} to ${fieldText(view.field.max, view.field)}.`;
  const foot = height < 5 ? [] : say(`${view.field.says}. ${range}`, width, options).slice(0, 2);
  const fields = inSight(
    view.fields,
    view.fields.indexOf(view.field),
    Math.max(1, height - head.length - foot.length),
  );
  const rows = table({
    columns: [
      { header: '', align: 'left' },
      { header: 'number', align: 'left', shrinks: true },
      { header: 'now', align: 'left' },
      { header: beforeText(state, view.name), align: 'left' },
    ],
    rows: fields.map((field) => {
      const isHere = field === view.field;
      const [now, asFile] = [readField(view.now, field), readField(view.asFile, field)];
      const isChanged = now !== asFile;
      return [
        [{ text: isHere ? marker(options) : ' ', style: 'accent' }],
        [{ text: field.path.slice(1).join('.'), style: isHere ? 'bold' : null }],
        [{ text: fieldText(now, field) + (isChanged ? ' ~' : ''), style: isChanged ? 'warn' : null }],
        [{ text: isChanged ? fieldText(asFile, field) : '', style: 'dim' }],
      ];
    }),
    paint: options.paint,
    maxWidth: width,
    ellipsis: GLYPHS[options.symbols].ellipsis,
  }).slice(1);
  return [...head, ...rows, ...foot].slice(0, height);
}

const LIST_TITLES: Readonly<Record<Chooser['kind'], string>> = {
  board: 'Board',
  rider: 'Riders',
  pack: 'Charge of the pack; or type others, in %',
  scenarios: 'Scenarios',
  from: 'Profile that candidates share all else with',
  numbers: 'Numbers that are swept',
  sheet: 'Controller sheet that the numbers go through',
};

function summaryOf({ shelf }: BenchState, kind: Chooser['kind'], name: string): string {
  if (kind === 'pack') return '';
  if (kind === 'numbers') return PROFILE_FIELDS.find(({ key }) => key === name)?.says ?? '';
  if (name === PLAIN)
    return 'With nothing but the gains that suit board and riders, and a lift where little is left';
  const files = {
    board: shelf.board,
    rider: shelf.rider,
    scenarios: shelf.scenario,
    from: shelf.profile,
    sheet: shelf.sheet,
  }[kind];
  return files.find((file) => file.name === name)?.value.summary.trim() ?? '';
}

/** A list to choose from. */
export function listRows(state: BenchState, chooser: Chooser, { width, height }: Area): string[] {
  const { options } = state;
  const { paint } = options;
  const ascii = options.symbols === 'ascii';
  const items = itemsInSight(chooser);
  const marked = markedItems(chooser);
  const typed = chooser.typed === '' ? '' : `, with "${chooser.typed}"`;
  const title = sayInOne(LIST_TITLES[chooser.kind] + typed, width, options);
  const widest = Math.max(0, ...chooser.items.map(textWidth));
  const rows = items.map((item, index) => {
    const isHere = index === chooser.cursor;
    const isMarked = marked.includes(item);
    const mark = choosesMany(chooser) ? (isMarked ? (ascii ? '[x] ' : '■ ') : ascii ? '[ ] ' : '□ ') : '';
    const start = `${isHere ? marker(options) : ' '} ${mark}${padded(item, widest)}`;
    const line = sayInOne(`${start}  ${summaryOf(state, chooser.kind, item)}`, width, options);
    return isHere ? paint.bold(line) : line;
  });
  const none = items.length === 0 ? say('nothing in the list has that', width, options) : [];
  return [paint.bold(title), ...inSight(rows, chooser.cursor, height - 1), ...none].slice(0, height);
}

/** Rows from `top` on, as far as there are any; the last ones stay in sight. */
function scrolled(rows: readonly string[], top: number, height: number): string[] {
  const from = Math.max(0, Math.min(top, rows.length - height));
  return rows.slice(from, from + height);
}

/** Every key, those that a search finds. */
export function helpRows(
  state: BenchState,
  overlay: { search: string; top: number },
  { width, height }: Area,
): string[] {
  const { options } = state;
  const { paint } = options;
  const found = keyList(state, overlay.search);
  const keyWidth = Math.min(
    Math.floor(width / 2),
    Math.max(0, ...found.flatMap(({ keys }) => keys.map(({ key }) => textWidth(key)))),
  );
  const rows = found.flatMap(({ title, keys }) => [
    paint.bold(sayInOne(title, width, options)),
    ...keys.flatMap(({ key, says, off }) => {
      const text = off === null ? says : `${says} (not now: ${off})`;
      const lines = say(text, width - keyWidth - 4, options);
      return lines.map((line, index) => {
        const start = `  ${padded(index === 0 ? sayInOne(key, keyWidth, options) : '', keyWidth)}  ${line}`;
        return off === null ? start : paint.dim(start);
      });
    }),
    '',
  ]);
  const none =
    found.length === 0 ? say('no key has that in its name or in what it does', width, options) : [];
  const title = sayInOne(
    overlay.search === '' ? 'All keys; type to search' : `Keys with "${overlay.search}"`,
    width,
    options,
  );
  const about = [`Files: ${options.folder}`, shellSentence(state)];
  const first = overlay.search === '' ? [...about.flatMap((text) => say(text, width, options)), ''] : [];
  return [paint.bold(title), ...scrolled([...first, ...rows, ...none], overlay.top, height - 1)];
}

/** What is wrong with files of the folder. */
export function problemRows(state: BenchState, { top }: { top: number }, { width, height }: Area): string[] {
  const { options, shelf } = state;
  const title = 'Problems in files; the last good version of each stays in use';
  const rows = problemLines(shelf.problems).flatMap((line) => say(line, width, options));
  return [options.paint.bold(sayInOne(title, width, options)), ...scrolled(rows, top, height - 1)];
}
