/**
 * Which letter is which profile, and what does each do at the cursor? One row a profile: how it ended, or with a
 * cursor its values at that moment, each in a column of its own so that nothing jumps while the cursor moves.
 */
import { verdictMark } from './colour.js';
import type { Paint } from './colour.js';
import { signAt, type ComparedRun } from './compare-run.js';
import { padded, textWidth, truncated } from './fit-text.js';
import { GLYPHS, type SymbolSet } from './glyphs.js';
import { plainText } from './plain-text.js';
import { writable } from './plot-frame.js';
import { currentText, leanText, pitchText, speedText, timeText, type SpeedUnit } from './quantities.js';
import { outcomeText, outcomeVerdict } from './run-sentences.js';

/** How the rows are to be written; `width` in columns. */
export interface LegendOptions {
  width: number;
  symbols: SymbolSet;
  paint: Paint;
  speedUnit: SpeedUnit;
}

/** Longest name of a profile in these rows. */
const LONGEST_NAME = 16;

/** The rows of all profiles, with the values at the cursor [s], or without one how each run ended. */
export function legendRows(
  runs: readonly ComparedRun[],
  options: LegendOptions,
  cursorS: number | null,
): string[] {
  const { paint, symbols, width } = options;
  const { ellipsis } = GLYPHS[symbols];
  const names = runs.map(({ name }) => truncated(plainText(name), LONGEST_NAME, ellipsis));
  const nameWidth = Math.max(...names.map(textWidth));
  const room = Math.max(0, width - nameWidth - 4);
  return runs.map((run, index) => {
    const { letter, style } = signAt(index);
    const said = cursorS === null ? endText(run, symbols) : momentText(run, cursorS, { ...options, room });
    const told = truncated(writable(said, GLYPHS[symbols]), room, ellipsis);
    const name = padded(names[index] ?? '', nameWidth);
    if (width < nameWidth + 6)
      return `${paint[style](letter)} ${truncated(name, width - 2, ellipsis)}`.trimEnd();
    return `${paint[style](letter)} ${paint.bold(name)}  ${told}`;
  });
}

function endText({ view, cell }: ComparedRun, symbols: SymbolSet): string {
  const mark = verdictMark(outcomeVerdict(view.outcome), symbols === 'ascii');
  const missed = cell.eventReached ? '' : ', never came to the event that is measured';
  return `${mark} ${outcomeText(view.outcome)}${missed}`;
}

/** The values at a moment; lean is left out where it does not fit. */
function momentText(
  { view }: ComparedRun,
  cursorS: number,
  { room, symbols, speedUnit }: LegendOptions & { room: number },
): string {
  const { tape, outcome } = view;
  const row = Math.max(0, Math.round(cursorS / tape.tickS));
  if (row >= tape.length) return `${timeText(cursorS)}  has ended: ${outcomeText(outcome)}`;
  const at = (column: 'pitchRad' | 'leanRad' | 'currentA' | 'speedMPerS') => tape.columns[column][row] ?? NaN;
  const fixed = (text: string, width: number) => padded(writable(text, GLYPHS[symbols]), width);
  const degreeWidth = GLYPHS[symbols].degree.length;
  const pitch = fixed(pitchText(at('pitchRad')), 14 + degreeWidth);
  const lean = fixed(
    `leans ${leanText(at('leanRad'))}`.replace('leans upright', 'upright'),
    18 + degreeWidth,
  );
  const current = padded(currentText(at('currentA')), 8, 'right');
  const speed = padded(speedText(at('speedMPerS'), speedUnit), 9, 'right');
  const time = timeText(cursorS);
  const whole = [time, pitch, lean, current, speed].join('  ');
  return textWidth(whole) <= room ? whole : [time, pitch, current, speed].join('  ');
}
