/**
 * A terminal for tests: an output stream that keeps all bytes and feeds them to a terminal emulator,
 * which is the judge of what stands on the screen.
 */
import { EventEmitter } from 'node:events';
import headless from '@xterm/headless';

/** Whatever is written goes to a terminal emulator, which knows nothing of ours. */
export class FakeTerminal extends EventEmitter {
  /** Every update that was written. */
  readonly writes: string[] = [];
  /** What `write` answers: false as a stream that wants to be waited for. */
  takesMore = true;
  private readonly emulator: InstanceType<typeof headless.Terminal>;

  constructor(
    public columns: number,
    public rows: number,
  ) {
    super();
    this.emulator = new headless.Terminal({ cols: columns, rows, allowProposedApi: true });
    this.scribble('\u001b[?1049h');
  }

  write(text: string): boolean {
    this.writes.push(text);
    this.emulator.write(text);
    return this.takesMore;
  }

  /** Writes past the screen, as another program would. */
  scribble(text: string): void {
    this.emulator.write(text);
  }

  /** Changes the size as a window does. */
  async resize(columns: number, rows: number): Promise<void> {
    await this.settled();
    this.columns = columns;
    this.rows = rows;
    this.emulator.resize(columns, rows);
    this.emit('resize');
  }

  /** Waits until everything that was written stands on the screen. */
  async settled(): Promise<void> {
    await new Promise<void>((resolve) => setImmediate(() => this.emulator.write('', resolve)));
  }

  /** The rows on the screen, without blanks at their ends. */
  text(): string[] {
    return this.cells().map((row) =>
      row
        .map(({ glyph }) => glyph)
        .join('')
        .trimEnd(),
    );
  }

  /** The cells on the screen: glyph, and how it looks where that can be seen. */
  cells(): { glyph: string; look: string }[][] {
    const { active } = this.emulator.buffer;
    return Array.from({ length: this.rows }, (_, row) => {
      const line = active.getLine(row)!;
      return Array.from({ length: this.columns }, (_unused, column) => {
        const cell = line.getCell(column)!;
        const glyph = cell.getWidth() === 0 ? '' : cell.getChars() || ' ';
        const seen = [cell.isInverse(), cell.isUnderline(), cell.getBgColorMode(), cell.getBgColor()];
        const onGlyph = [
          cell.isBold(),
          cell.isDim(),
          cell.isItalic(),
          cell.getFgColorMode(),
          cell.getFgColor(),
        ];
        return { glyph, look: [...seen, ...(glyph.trim() === '' ? [] : onGlyph)].join(' ') };
      });
    });
  }
}
