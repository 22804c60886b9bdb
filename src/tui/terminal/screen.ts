/**
 * What stands on the terminal? The last whole frame that was written, cut to the terminal's size, with
 * the painted rows over it. The terminal is told only what changed, in one synchronised update, and
 * never faster than it reads.
 */
import { EventEmitter } from 'node:events';
import { cellsOf, rowText, type CellRow } from './cells.js';
import { createPen, sendRow } from './row-update.js';

/** The part of a terminal's output stream that a screen needs; sizes in character cells. */
export interface ScreenOutput {
  readonly columns: number;
  readonly rows: number;
  write(text: string): boolean;
  on(event: 'resize' | 'drain', listener: () => void): unknown;
  off(event: 'resize' | 'drain', listener: () => void): unknown;
}

/** A terminal as a grid of cells. */
export interface Screen {
  /** The stream for Ink, in debug mode: each write is one whole frame. */
  readonly stdout: NodeJS.WriteStream;
  /** Puts rows of the full width over the frame, from row `top` (0 is the first) on; takes earlier ones away. */
  paint(top: number, lines: readonly string[]): void;
  /** Takes the painted rows away. */
  unpaint(): void;
  /** What stands on the terminal is unknown: every row is sent anew, without a clear. */
  forget(): void;
  /** The rows as they are to stand on the terminal, as plain text without blanks at their ends. */
  shown(): string[];
  /** Sends nothing more and lets go of the output. */
  close(): void;
}

const CONTROL = `${String.fromCodePoint(0x1b)}[`;

/**
 * Around an update: shown all at once where the terminal can do that (mode 2026), nothing wraps
 * meanwhile (mode 7), the look is plain before and after.
 */
const UPDATE = {
  begin: `${CONTROL}?2026h${CONTROL}?7l${CONTROL}m`,
  end: `${CONTROL}m${CONTROL}?7h${CONTROL}?2026l`,
};

/** Only switches of terminal modes, such as the one for the cursor that Ink sends at its end: no frame. */
const ONLY_MODES = new RegExp(`^(?:${String.fromCodePoint(0x1b)}\\[\\?\\d+[hl])+$`);

/** The size of a terminal; a usual one where it tells none. */
function sizeOf(out: ScreenOutput): { columns: number; rows: number } {
  return { columns: out.columns || 80, rows: out.rows || 24 };
}

/** What Ink takes for the terminal's stream: true size, whole frames. */
class FrameStream extends EventEmitter {
  readonly isTTY = true;

  constructor(
    private readonly out: ScreenOutput,
    private readonly onFrame: (frame: string) => void,
  ) {
    super();
  }

  get columns(): number {
    return sizeOf(this.out).columns;
  }

  get rows(): number {
    return sizeOf(this.out).rows;
  }

  write(frame: string): boolean {
    if (!ONLY_MODES.test(frame)) this.onFrame(frame);
    return true;
  }
}

/** What stands on one row of the terminal: the line as it was given, and its cells. */
interface StandingRow {
  line: string;
  cells: CellRow;
}

/** Keeps the terminal at the lines that are wanted, one a row. */
function createSender(out: ScreenOutput, wantedLines: () => string[]) {
  let standing: StandingRow[] = [];
  let isScheduled = false;
  let isOutputFull = false;
  let isClosed = false;

  const send = () => {
    isScheduled = false;
    if (isOutputFull || isClosed) return;
    const { columns, rows } = sizeOf(out);
    const isKnown = standing.length === rows && standing[0]?.cells.glyphs.length === columns;
    const pen = createPen();
    standing = wantedLines().map((line, row) => {
      const before = isKnown ? standing[row] : undefined;
      if (before?.line === line) return before;
      const cells = cellsOf(line, columns);
      sendRow(pen, row, { from: before?.cells ?? null, to: cells });
      return { line, cells };
    });
    if (pen.sent !== '') isOutputFull = !out.write(UPDATE.begin + pen.sent + UPDATE.end);
  };
  const schedule = () => {
    if (isScheduled) return;
    isScheduled = true;
    queueMicrotask(send);
  };
  const onDrain = () => {
    isOutputFull = false;
    schedule();
  };
  out.on('drain', onDrain);

  return {
    schedule,
    forget() {
      standing = [];
      schedule();
    },
    close() {
      isClosed = true;
      out.off('drain', onDrain);
    },
  };
}

/** The screen of a terminal's output stream. */
export function createScreen(out: ScreenOutput): Screen {
  let frame: string[] = [];
  let painted: { top: number; lines: readonly string[] } = { top: 0, lines: [] };
  const wantedLines = () =>
    Array.from(
      { length: sizeOf(out).rows },
      (_, row) => painted.lines[row - painted.top] ?? frame[row] ?? '',
    );

  const sender = createSender(out, wantedLines);
  const stdout = new FrameStream(out, (text) => {
    frame = text.split('\n');
    sender.schedule();
  });
  const paint = (top: number, lines: readonly string[]) => {
    painted = { top, lines: [...lines] };
    sender.schedule();
  };
  const onResize = () => {
    sender.forget();
    stdout.emit('resize');
  };
  out.on('resize', onResize);

  return {
    stdout: stdout as unknown as NodeJS.WriteStream,
    paint,
    unpaint: () => paint(0, []),
    forget: () => sender.forget(),
    shown: () => wantedLines().map((line) => rowText(cellsOf(line, sizeOf(out).columns))),
    close() {
      out.off('resize', onResize);
      sender.close();
    },
  };
}
