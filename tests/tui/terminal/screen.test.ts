/** Does the terminal show what the screen says, whatever was on it before, and is it told no more than needed? */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createScreen, type Screen } from '../../../src/tui/terminal/screen.js';
import { FakeTerminal } from './fake-terminal.js';
import { randomActs } from './random-frames.js';

const ESC = '\u001b';
const CLEARS = new RegExp(`${ESC}\\[[0-3]?J|${ESC}c|[\\n\\r\\u000b\\u000c]`);

/** A cell on which nothing is to be seen. */
const BLANK = { glyph: ' ', look: '0 0 0 -1' };

let terminal: FakeTerminal;
let screen: Screen;

beforeEach(() => {
  terminal = new FakeTerminal(20, 5);
  screen = createScreen(terminal);
});

afterEach(() => {
  screen.close();
});

const lastWrite = () => terminal.writes.at(-1)!.replaceAll(ESC, '^');

/** The cells that a wider terminal of its own shows when it is told everything at once, cut to the columns. */
async function cellsWhenFresh(lines: string[]): Promise<unknown> {
  const { columns, rows } = terminal;
  const fresh = new FakeTerminal(columns + 300, rows);
  lines.forEach((line, row) => fresh.write(`${ESC}[m${ESC}[${row + 1}H${line}`));
  await fresh.settled();
  return fresh.cells().map((row) => {
    const isLastCut = row[columns]!.glyph === '';
    return isLastCut ? [...row.slice(0, columns - 1), BLANK] : row.slice(0, columns);
  });
}

it('300 random frames, paints and sizes stand on the terminal as they should', async () => {
  const nextAct = randomActs(2026);
  let painted: { top: number; lines: string[] } = { top: 0, lines: [] };
  let frame: string[] = [];
  for (let count = 0; count < 300; count++) {
    const act = nextAct({ columns: terminal.columns, rows: terminal.rows });
    if (act.size !== undefined) await terminal.resize(act.size.columns, act.size.rows);
    if (act.frame !== undefined) screen.stdout.write((frame = act.frame).join('\n'));
    if (act.painted !== undefined) screen.paint((painted = act.painted).top, painted.lines);
    await terminal.settled();
    const lines = Array.from(
      { length: terminal.rows },
      (_, row) => painted.lines[row - painted.top] ?? frame[row] ?? '',
    );
    expect(terminal.text()).toEqual(screen.shown());
    expect(terminal.cells()).toEqual(await cellsWhenFresh(lines));
  }
  expect(terminal.writes.length).toBeGreaterThan(200);
  expect(terminal.writes.filter((write) => CLEARS.test(write))).toEqual([]);
});

describe('a frame', () => {
  it('is cut to the size', async () => {
    screen.stdout.write(Array.from({ length: 9 }, (_, row) => `${row}`.repeat(30)).join('\n'));
    await terminal.settled();
    expect(terminal.text()).toEqual(['0', '1', '2', '3', '4'].map((digit) => digit.repeat(20)));
    expect(screen.shown()).toEqual(terminal.text());
  });

  it('is sent once, and only what changed of the next', async () => {
    screen.stdout.write('speed 10\nsame');
    await terminal.settled();
    screen.stdout.write('speed 10\nsame');
    await terminal.settled();
    expect(terminal.writes).toHaveLength(1);
    screen.stdout.write('speed 12\nsame');
    await terminal.settled();
    expect(terminal.writes).toHaveLength(2);
    expect(lastWrite()).toBe('^[?2026h^[?7l^[m^[1;8H2^[m^[?7h^[?2026l');
  });

  it('that looks the same is not sent', async () => {
    screen.stdout.write(`${ESC}[1m${ESC}[31mfell ${ESC}[39m${ESC}[22m`);
    await terminal.settled();
    screen.stdout.write(`${ESC}[31;1mfell${ESC}[0m    `);
    await terminal.settled();
    expect(terminal.writes).toHaveLength(1);
  });

  it('erases the end of a row in one go', async () => {
    screen.stdout.write('a longer text');
    await terminal.settled();
    screen.stdout.write('a');
    await terminal.settled();
    expect(lastWrite()).toBe('^[?2026h^[?7l^[m^[1;3H^[K^[m^[?7h^[?2026l');
  });

  it('with glyphs that the terminal shows wider or narrower keeps all others in their columns', async () => {
    screen.stdout.write('abcdefgh\n12345678');
    await terminal.settled();
    screen.stdout.write('a👩‍👩‍👧‍👦d😀gh\n12345678');
    await terminal.settled();
    const row = terminal.cells()[0]!.map(({ glyph }) => glyph);
    expect([row[0], row[3], row[5], row[6], row[7], row[8]]).toEqual(['a', 'd', ' ', 'g', 'h', ' ']);
    expect(terminal.text()[1]).toBe('12345678');
  });

  it('is none where Ink only switches the cursor on at its end', async () => {
    screen.stdout.write('kept');
    screen.stdout.write(`${ESC}[?25h`);
    await terminal.settled();
    expect(terminal.text()[0]).toBe('kept');
  });
});

describe('painted rows', () => {
  it('lie over the frame and come with it in one update', async () => {
    screen.stdout.write('0\n1111\n2\n3\n4');
    screen.paint(1, ['x', '']);
    await terminal.settled();
    expect(terminal.text()).toEqual(['0', 'x', '', '3', '4']);
    expect(terminal.writes).toHaveLength(1);
  });

  it('stay when the frame changes and go when they are taken away', async () => {
    screen.stdout.write('0\n1\n2');
    screen.paint(1, ['x']);
    screen.stdout.write('a\nb\nc');
    await terminal.settled();
    expect(terminal.text().slice(0, 3)).toEqual(['a', 'x', 'c']);
    screen.unpaint();
    await terminal.settled();
    expect(terminal.text().slice(0, 3)).toEqual(['a', 'b', 'c']);
  });

  it('beyond the screen are left out', async () => {
    screen.paint(-1, ['over', 'first']);
    await terminal.settled();
    expect(screen.shown()).toEqual(['first', '', '', '', '']);
    screen.paint(4, ['last', 'below']);
    await terminal.settled();
    expect(terminal.text()).toEqual(['', '', '', '', 'last']);
  });
});

describe('an unknown terminal', () => {
  it('is written anew in every row, without a clear', async () => {
    screen.stdout.write('one\n\nthree');
    await terminal.settled();
    terminal.scribble(`${ESC}[H${ESC}[7m${'#'.repeat(99)}`);
    screen.forget();
    await terminal.settled();
    expect(terminal.text()).toEqual(['one', '', 'three', '', '']);
    expect(lastWrite()).not.toMatch(/J/);
  });

  it('is what a resize leaves; Ink hears of it and sees the true size', async () => {
    const seen: number[][] = [];
    const onResize = () => seen.push([screen.stdout.columns, screen.stdout.rows]);
    screen.stdout.on('resize', onResize);
    screen.stdout.write('a row of twenty cells');
    await terminal.settled();
    await terminal.resize(10, 3);
    await terminal.settled();
    expect(terminal.text()).toEqual(['a row of t', '', '']);
    screen.stdout.off('resize', onResize);
    await terminal.resize(30, 6);
    expect(seen).toEqual([[10, 3]]);
  });
});

it('a size that changed before anyone was told is noticed', async () => {
  screen.stdout.write('one\ntwo');
  await terminal.settled();
  terminal.columns = 15;
  terminal.scribble(`${ESC}[Hgarbage`);
  screen.stdout.write('one\ntwo');
  await terminal.settled();
  expect(terminal.text().slice(0, 2)).toEqual(['one', 'two']);
});

describe('a terminal that reads slowly', () => {
  it('gets only the newest state once it has read', async () => {
    terminal.takesMore = false;
    screen.stdout.write('first');
    await terminal.settled();
    screen.stdout.write('second');
    await terminal.settled();
    screen.stdout.write('third');
    await terminal.settled();
    expect(terminal.writes).toHaveLength(1);
    terminal.takesMore = true;
    terminal.emit('drain');
    await terminal.settled();
    expect(terminal.writes).toHaveLength(2);
    expect(terminal.text()[0]).toBe('third');
    terminal.emit('drain');
    await terminal.settled();
    expect(terminal.writes).toHaveLength(2);
  });
});

it('a closed screen sends nothing and listens to nothing', async () => {
  screen.stdout.write('late');
  screen.close();
  screen.stdout.write('later');
  await terminal.settled();
  expect(terminal.writes).toEqual([]);
  expect(terminal.eventNames()).toEqual([]);
});
