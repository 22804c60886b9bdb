/**
 * Progress on the standard error: rows as they come. On a terminal they are taken away again when the result follows;
 * into a file or a pipe they go line by line.
 */
const ESCAPE = '\u001b[';

/** Where progress is told. */
export interface Progress {
  /** A line that stays until the result is there. */
  row(line: string): void;
  /** A note that the next one replaces; on terminals only, ten times a second at the most. */
  note(line: string): void;
  /** Takes away what was only progress. */
  clear(): void;
}

const NOTE_PAUSE_MS = 100;

/** Progress on a stream. */
export function createProgress(stream: NodeJS.WriteStream): Progress {
  const live = stream.isTTY === true && process.env['TERM'] !== 'dumb';
  const width = Math.max(20, (stream.columns ?? 80) - 1);
  let rows = 0;
  let noted = false;
  let lastNoteMs = -Infinity;
  const eraseNote = () => {
    if (noted) stream.write(`\r${ESCAPE}2K`);
    noted = false;
  };
  return {
    row(line) {
      eraseNote();
      stream.write(`${line.slice(0, width)}\n`);
      rows++;
    },
    note(line) {
      const nowMs = performance.now();
      if (!live || nowMs - lastNoteMs < NOTE_PAUSE_MS) return;
      lastNoteMs = nowMs;
      stream.write(`\r${ESCAPE}2K${line.slice(0, width)}`);
      noted = true;
    },
    clear() {
      eraseNote();
      if (live && rows > 0) stream.write(`${ESCAPE}${rows}A${ESCAPE}J`);
      rows = 0;
    },
  };
}
