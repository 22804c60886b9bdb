/**
 * What stands in the preview of the Shortlist screen: the lines of the view in front at its width, and which of them are in sight.
 */
import { shortText } from '../../quantity/short-text.js';
import type { KeptFile } from '../../quantity/kept-file.js';
import type { Problem } from '../../quantity/problem.js';
import { cardText } from '../../show/card-text.js';
import { createPaint, type Paint } from '../../show/colour.js';
import { firstRideLines } from '../../show/first-ride-lines.js';
import { textWidth, truncated } from '../../show/fit-text.js';
import { GLYPHS } from '../../show/glyphs.js';
import { plainText } from '../../show/plain-text.js';
import { problemLine } from '../../show/problems.js';
import { qrMatrix, type QrMatrix } from '../../show/qr-matrix.js';
import { qrLines, qrWidth, withCaption } from '../../show/qr-terminal.js';
import { sheetLines } from '../../show/sheet-lines.js';
import { keptLines } from '../../show/shortlist-lines.js';
import { writer, type WhyOptions } from '../../show/why-lines.js';
import { KIND_FOLDER_OF } from '../../store/places.js';
import type { Named } from '../../tasks/plan.js';
import type { Act } from './binding.js';
import { ownFolderOff } from './own-folder.js';
import {
  currentShortlistRow,
  chosenSheet,
  previewNow,
  sheetProblem,
  type ShortlistRow,
} from './shortlist-items.js';
import { shortlistLayout } from './shortlist-layout.js';
import type { ShortlistViewName } from './shortlist-state.js';
import { previewText, stageWords } from './shortlist-words.js';
import type { BenchState } from './state.js';
import { pageAt, readAt, type TextPage } from './text-page.js';

type Kept = Named<KeptFile>;
type Lines = (state: BenchState, kept: Kept, show: WhyOptions) => string[];

/** The lines of the preview, none wider than its place. */
export function previewLines(state: BenchState, paint: Paint): string[] {
  const { width } = shortlistLayout(state).preview;
  const { symbols } = state.options;
  const show = { width, symbols, paint };
  const row = currentShortlistRow(state);
  const lines = row === undefined ? emptyLines(state, show) : linesOf(state, row, show);
  // A label or a number is never broken: what is wider than the place is cut.
  return lines.map((line) =>
    textWidth(line) <= width ? line : truncated(plainText(line), width, GLYPHS[symbols].ellipsis),
  );
}

function emptyLines(state: BenchState, show: WhyOptions): string[] {
  const { say } = writer(show);
  const off = ownFolderOff(state);
  if (off !== null) return say(`There is no shortlist here: ${off}.`);
  return say(
    'Nothing is kept yet. The key a, on Rank, Trace, Why and on what a sweep found, has a profile proven and keeps it here: ' +
      'to be carried onto a board as a ride card, through a controller sheet, or as data.',
  );
}

function linesOf(state: BenchState, row: ShortlistRow, show: WhyOptions): string[] {
  const { say, paint } = writer(show);
  if (row.kind === 'keeping') {
    const { board, riders, scenarios, profiles } = row.keeping.plan;
    const under = riders.map(({ name }) => name).join(', ');
    return [
      ...say(`${row.name} ${row.isFirst ? 'is being proven' : 'waits to be proven'}.`).map(paint.bold),
      ...say(
        `${profiles[0]!.name} on ${board.name} under ${under}, in ${scenarios.length} ${scenarios.length === 1 ? 'scenario' : 'scenarios'}.`,
      ),
      ...say(profiles[0]!.value.summary),
      ...(row.isFirst ? say(`So far: ${stageWords(row.keeping, true)}.`) : []),
      '',
      ...say(
        'Every cell is run, steady rides are looked at, a slip in each number is tried, and the edge is looked for.',
      ),
    ];
  }
  return [
    ...damageLines(row.problem, DAMAGED, show),
    ...VIEW_LINES[state.shortlist.view](state, row.kept, show),
  ];
}

const DAMAGED = 'What follows is the last whole version; nothing is written or exported from this file.';
const DAMAGED_SHEET =
  'What follows is by the last whole version of this sheet: mend its file before anything is typed.';

/** What is wrong with a file, and what is shown in spite of that; none where nothing is wrong. */
function damageLines(problem: Problem | null, words: string, show: WhyOptions): string[] {
  const { say, paint } = writer(show);
  return problem === null
    ? []
    : [...[`! ${problemLine(problem)}`, words].flatMap((text) => say(text)).map(paint.bad), ''];
}

const drawnUp = new WeakMap<object, Map<string, string[]>>();

/** The lines of a text about a thing that never changes, drawn up once for each way of showing it. */
function once(of: object, what: string, show: WhyOptions, lines: () => string[]): string[] {
  const { width, symbols, paint } = show;
  const known = drawnUp.get(of) ?? new Map<string, string[]>();
  drawnUp.set(of, known);
  const key = `${what} ${width} ${symbols} ${paint.mode} ${paint.background}`;
  const found = known.get(key) ?? lines();
  known.set(key, found);
  return found;
}

const VIEW_LINES: Readonly<Record<ShortlistViewName, Lines>> = {
  summary: (_state, kept, show) =>
    once(kept.value, `summary ${kept.name}`, show, () => keptLines(kept, show)),
  card: (_state, { name, value }, show) =>
    once(value, `card ${name}`, show, () => {
      const width = Math.min(CARD_COLUMNS, show.width);
      const text = cardText(name, value, { width, ascii: show.symbols === 'ascii' });
      return text.trimEnd().split('\n').map(plainText);
    }),
  sheet: sheetViewLines,
  plan: planLines,
  qr: codeLines,
};

/** Columns of a ride card. */
const CARD_COLUMNS = 64;

function sheetViewLines(state: BenchState, kept: Kept, show: WhyOptions): string[] {
  const { say } = writer(show);
  const { shelf, shortlist } = state;
  const folder = KIND_FOLDER_OF.sheet;
  if (shelf.sheet.length === 0)
    return say(
      `There is no controller sheet in ${folder}; underfoot init writes a blank one to be filled in.`,
    );
  const sheet = chosenSheet(state);
  if (sheet === undefined) {
    const gone = shortlist.sheet === null ? '' : `The sheet ${shortlist.sheet} is no longer there. `;
    return say(
      `${gone}c chooses the sheet of the controller in front of you: the numbers as it wants them, and whether just these still ` +
        `deserve their rank. Sheets stand in ${folder}; blank.yaml there says how one is written.`,
    );
  }
  const damage = damageLines(sheetProblem(state), DAMAGED_SHEET, show);
  const answer = previewNow(state)?.answer;
  if (answer?.kind === 'sheet')
    return [...damage, ...once(answer, 'sheet', show, () => sheetLines(answer.view, show))];
  const text = `${kept.name} through ${sheet.name}: what is typed is simulated as it is typed.`;
  return [...damage, ...waitingLines(state, text, show)];
}

function planLines(state: BenchState, kept: Kept, show: WhyOptions): string[] {
  const answer = previewNow(state)?.answer;
  if (answer?.kind === 'plan') return once(answer, 'plan', show, () => firstRideLines(answer.plan, show));
  const text = `First ride with ${kept.name}: each stage is simulated with the lowest ceilings that leave headroom.`;
  return waitingLines(state, text, show);
}

/** What is being computed and how far that is, or why it cannot be. */
function waitingLines(state: BenchState, text: string, show: WhyOptions): string[] {
  const { say, paint } = writer(show);
  const problems = previewNow(state)?.problems ?? [];
  if (problems.length === 0) return [...say(text), ...say(`${previewText(state)}.`)];
  return problems.flatMap((problem) => say(`! ${problemLine(problem)}`)).map(paint.bad);
}

const codes = new WeakMap<KeptFile, QrMatrix>();

function codeLines(state: BenchState, { name, value }: Kept, show: WhyOptions): string[] {
  const { say, paint } = writer(show);
  const { height } = shortlistLayout(state).preview;
  const { profile, numbers } = value;
  const text = shortText(profile, numbers);
  const matrix = codes.get(value) ?? qrMatrix(text);
  codes.set(value, matrix);
  const { mode, background } = state.options.paint;
  const lines = qrLines(matrix, { mode, background, ascii: show.symbols === 'ascii' });
  if (qrWidth(lines) <= show.width && lines.length <= height) {
    const drawn = withCaption(lines, [name, numbers, text], show.width);
    return paint.mode === 'none' ? drawn.map((line) => line.trimEnd()) : drawn;
  }
  return [
    ...say(
      `The code takes ${qrWidth(lines)} columns and ${lines.length} rows; here are ${show.width} and ${height}. ` +
        'Take a larger window, or x writes it to an .svg file.',
    ),
    '',
    ...say(`${name}, ${numbers}: ${text}`),
  ];
}

const NO_PAINT = createPaint('none');

/** The lines in sight. */
export function previewPage(state: BenchState): TextPage {
  const { height } = shortlistLayout(state).preview;
  return pageAt(previewLines(state, NO_PAINT), { read: state.shortlist.read, height });
}

/** Scrolls the preview by so many lines; it stops at the ends. */
export function scrollPreview(by: number): Act {
  return (state) => scrolled(state, () => by);
}

/** Scrolls the preview by so many pages. */
export function turnPreview(by: number): Act {
  return (state) => scrolled(state, ({ height }) => by * height);
}

function scrolled(state: BenchState, by: (page: TextPage) => number): BenchState {
  const { height } = shortlistLayout(state).preview;
  const lines = previewLines(state, NO_PAINT);
  const page = pageAt(lines, { read: state.shortlist.read, height });
  const read = readAt(lines, { top: page.top + by(page), height });
  return { ...state, shortlist: { ...state.shortlist, read } };
}
