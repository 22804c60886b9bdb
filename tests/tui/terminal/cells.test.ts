/** Which cells does a line fill? Looks are SGR parameters; the terminal's own width of characters is string-width's. */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../../src/show/colour.js';
import { textWidth } from '../../../src/show/fit-text.js';
import { cellsOf, hasOneColumnEach, rowText } from '../../../src/tui/terminal/cells.js';

const ESC = '\u001b';

/** A row as `glyph/look` of each column, plain looks left out. */
function shorthand(line: string, columnCount: number): string[] {
  const { glyphs, looks } = cellsOf(line, columnCount);
  return glyphs.map((glyph, column) => (looks[column] === '' ? glyph : `${glyph}/${looks[column]}`));
}

describe('the cells of a line', () => {
  const rows: [what: string, line: string, cells: string[]][] = [
    ['a short text is filled up with blanks', 'ab', ['a', 'b', ' ', ' ']],
    ['a long text is cut', 'abcdef', ['a', 'b', 'c', 'd']],
    ['a colour lasts until it is ended', `${ESC}[31ma${ESC}[39mb`, ['a/31', 'b', ' ', ' ']],
    ['a colour lasts to the end', `${ESC}[31mab`, ['a/31', 'b/31', ' ', ' ']],
    ['0 and nothing end everything', `${ESC}[1;4ma${ESC}[mb${ESC}[7mc${ESC}[0md`, ['a/1;4', 'b', 'c/7', 'd']],
    ['the order of codes is one', `${ESC}[31;1ma${ESC}[0m${ESC}[1m${ESC}[31mb`, ['a/1;31', 'b/1;31', ' ', ' ']],
    ['bold and dim end together', `${ESC}[1m${ESC}[2ma${ESC}[22mb`, ['a/1;2', 'b', ' ', ' ']],
    ['a colour takes another one’s place', `${ESC}[31m${ESC}[92ma`, ['a/92', ' ', ' ', ' ']],
    ['256 colours', `${ESC}[38;5;74;1ma`, ['a/1;38;5;74', ' ', ' ', ' ']],
    ['true colours', `${ESC}[48;2;1;2;3m${ESC}[38;2;0;158;115ma`, ['a/38;2;0;158;115;48;2;1;2;3', ' ', ' ', ' ']],
    ['colours with sub-parameters', `${ESC}[38:2::1:2:3;4:3ma${ESC}[4:0mb`, ['a/4:3;38:2::1:2:3', 'b/38:2::1:2:3', ' ', ' ']],
    ['a malformed colour changes nothing', `${ESC}[1m${ESC}[38;5ma${ESC}[38mb`, ['a/1', 'b/1', ' ', ' ']],
    ['unknown codes change nothing', `${ESC}[1m${ESC}[64;200ma`, ['a/1', ' ', ' ', ' ']],
    ['missing codes are 0', `${ESC}[1m${ESC}[;31ma`, ['a/31', ' ', ' ', ' ']],
    ['a blank has no colour of its own', `${ESC}[1;31ma b`, ['a/1;31', ' ', 'b/1;31', ' ']],
    ['a blank shows what is seen without a glyph', `${ESC}[31;7m ${ESC}[27;44m ${ESC}[0;4m `, [' /7;31', ' /31;44', ' /4', ' ']],
    ['a colour index is no attribute', `${ESC}[38;5;4m a`, [' ', 'a/38;5;4', ' ', ' ']],
    ['a wide character has two cells', `${ESC}[1m世a`, ['世/1', '/1', 'a/1', ' ']],
    ['a wide character that does not fit ends the row', 'abc世d', ['a', 'b', 'c', ' ']],
    ['a mark joins what it stands on', 'e\u0301a', ['e\u0301', 'a', ' ', ' ']],
    ['a mark joins across a change of look', `e${ESC}[1m\u0301a`, ['e\u0301', 'a/1', ' ', ' ']],
    ['a mark on nothing is dropped', '\u0301a', ['a', ' ', ' ', ' ']],
    ['a mark on what was cut is dropped', 'abcde\u0301', ['a', 'b', 'c', 'd']],
    ['a wide character between others', 'a世b', ['a', '世', '', 'b']],
    ['joined characters are one', '👩\u200d🚀a', ['👩\u200d🚀', '', 'a', ' ']],
    ['a key cap is one', '1\ufe0f\u20e3a', ['1\ufe0f\u20e3', '', 'a', ' ']],
    ['braille and accents', '⣿°ü…', ['⣿', '°', 'ü', '…']],
    ['cursor moves and clears are dropped', `a${ESC}[2J${ESC}[3;4Hb${ESC}[?25h${ESC}7c`, ['a', 'b', 'c', ' ']],
    ['titles and links are dropped', `${ESC}]0;title\u0007a${ESC}]8;;http://x${ESC}\\b`, ['a', 'b', ' ', ' ']],
    ['what looks like SGR but is private is dropped', `${ESC}[>4;1ma${ESC}[?1mb`, ['a', 'b', ' ', ' ']],
    ['control characters are dropped', 'a\tb\u0000\r\n\u0085c\u200b', ['a', 'b', 'c', ' ']],
    ['a broken sequence at the end is dropped', `ab${ESC}[3`, ['a', 'b', ' ', ' ']],
    ['a lone Escape is dropped', `a${ESC}`, ['a', ' ', ' ', ' ']],
  ]; // prettier-ignore

  it.each(rows)('%s', (_, line, cells) => {
    expect(shorthand(line, 4)).toEqual(cells);
  });

  it('no columns hold nothing', () => {
    expect(cellsOf('abc', 0)).toEqual({ glyphs: [], looks: [] });
  });

  it('keeps what the paint of every depth makes', () => {
    for (const mode of ['16', '256', 'truecolor'] as const) {
      const paint = createPaint(mode);
      const row = cellsOf(`${paint.bold(paint.bad('x'))}${paint.dim('y')}z`, 3);
      expect(row.looks[0]).toMatch(/^1;(31|38;5;166|38;2;213;94;0)$/);
      expect(row.looks.slice(1)).toEqual(['2', '']);
    }
  });

  it('reads back as text', () => {
    expect(rowText(cellsOf(` a${ESC}[1m世${ESC}[7m b  `, 10))).toBe(' a世 b');
  });
});

it('each character of the short way has one column', () => {
  const characters = Array.from({ length: 0x10000 }, (_, code) => String.fromCharCode(code));
  const short = characters.filter(hasOneColumnEach);
  const others = short.filter((character) => textWidth(character) !== 1 || /\p{M}/u.test(character));
  expect(short.length).toBeGreaterThan(500);
  expect(others).toEqual([]);
});
