/** Which keys are heard for which bytes? Sequences as xterm, rxvt, PuTTY and the Linux console send them. */
import { EventEmitter } from 'node:events';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { listenToKeys, type Key } from '../../../src/tui/terminal/keys.js';

const ESC = '\u001b';

class FakeInput extends EventEmitter {
  pause = vi.fn<() => void>();

  type(...chunks: (string | number[])[]): void {
    for (const chunk of chunks) this.emit('data', Buffer.from(chunk as string));
  }
}

let input: FakeInput;
let keys: Key[];
let pastes: string[];
let stop: () => void;

beforeEach(() => {
  vi.useFakeTimers();
  input = new FakeInput();
  keys = [];
  pastes = [];
  stop = listenToKeys(input, { onKey: (key) => keys.push(key), onPaste: (text) => pastes.push(text) });
});

afterEach(() => {
  stop();
  vi.useRealTimers();
});

/** The names of the keys heard so far. */
const names = () => keys.map(({ name }) => name);

/** The names of the keys heard for chunks, once nothing more is waited for. */
function heard(...chunks: (string | number[])[]): string[] {
  input.type(...chunks);
  vi.advanceTimersByTime(1000);
  return names();
}

describe('keys', () => {
  const table: [bytes: string, names: string[]][] = [
    ['a', ['a']],
    ['A', ['A']],
    ['?', ['?']],
    ['/', ['/']],
    ['~', ['~']],
    [' ', ['space']],
    ['\r', ['return']],
    ['\n', ['return']],
    ['\t', ['tab']],
    [`${ESC}[Z`, ['shift+tab']],
    ['\u007f', ['backspace']],
    ['\b', ['backspace']],
    ['\u0003', ['ctrl+c']],
    ['\u001a', ['ctrl+z']],
    ['\u0000', ['ctrl+space']],
    ['\u001c\u001f', []],
    [ESC, ['escape']],
    [`${ESC}${ESC}`, ['escape', 'escape']],
    [`${ESC}[A${ESC}[B${ESC}[C${ESC}[D`, ['up', 'down', 'right', 'left']],
    [`${ESC}OA${ESC}OB${ESC}OC${ESC}OD`, ['up', 'down', 'right', 'left']],
    [`${ESC}[1;2A${ESC}[1;2B${ESC}[1;2C${ESC}[1;2D`, ['shift+up', 'shift+down', 'shift+right', 'shift+left']],
    [`${ESC}[a${ESC}Oc`, ['shift+up', 'ctrl+right']],
    [`${ESC}[1;5C${ESC}[1;3D${ESC}[1;8A`, ['ctrl+right', 'alt+left', 'ctrl+alt+shift+up']],
    [`${ESC}[H${ESC}[F${ESC}OH${ESC}OF`, ['home', 'end', 'home', 'end']],
    [`${ESC}[1~${ESC}[4~${ESC}[7~${ESC}[8~`, ['home', 'end', 'home', 'end']],
    [`${ESC}[2~${ESC}[3~${ESC}[5~${ESC}[6~`, ['insert', 'delete', 'pageup', 'pagedown']],
    [`${ESC}[3;5~${ESC}[3^${ESC}[3$${ESC}[3@`, ['ctrl+delete', 'ctrl+delete', 'shift+delete', 'ctrl+shift+delete']],
    [`${ESC}OP${ESC}OQ${ESC}OR${ESC}OS`, ['f1', 'f2', 'f3', 'f4']],
    [`${ESC}[[A${ESC}[[E${ESC}[11~`, ['f1', 'f5', 'f1']],
    [`${ESC}[15~${ESC}[17~${ESC}[21~${ESC}[24~`, ['f5', 'f6', 'f10', 'f12']],
    [`${ESC}[1;5P${ESC}[11;5~${ESC}O5P${ESC}O1;5P${ESC}[11^`, ['ctrl+f1', 'ctrl+f1', 'ctrl+f1', 'ctrl+f1', 'ctrl+f1']],
    [`${ESC}x`, ['alt+x']],
    [`${ESC}X${ESC}?${ESC} `, ['alt+X', 'alt+?', 'alt+space']],
    [`${ESC}\r${ESC}\u007f`, ['alt+return', 'alt+backspace']],
    [`${ESC}\u0003`, ['escape', 'ctrl+c']],
    [`${ESC}ö`, ['alt+ö']],
    [`${ESC}[`, ['alt+[']],
    [`${ESC}O`, ['alt+O']],
    [`${ESC}${ESC}[A`, ['escape', 'up']],
    ['jjk', ['j', 'j', 'k']],
    [`q${ESC}[Aq`, ['q', 'up', 'q']],
    ['é世😀', ['é', '世', '😀']],
    ['e\u0301', ['e', '\u0301']],
  ]; // prettier-ignore

  it.each(table)('%j', (bytes, expected) => {
    expect(heard(bytes)).toEqual(expected);
  });

  /** What Escape and Alt in chunks of their own would not change. */
  const cuttable = table.filter(([bytes]) =>
    bytes
      .split(ESC)
      .slice(1)
      .every((rest) => /^[[O]./.test(rest)),
  );

  it.each(cuttable)('%j byte by byte', (bytes, expected) => {
    expect(heard(...[...Buffer.from(bytes)].map((byte) => [byte]))).toEqual(expected);
  });

  it('bring the text that a text field takes', () => {
    input.type(`aZ 世é\r\t\u0003${ESC}[A${ESC}x`);
    expect(keys.map(({ text }) => text)).toEqual(['a', 'Z', ' ', '世', 'é', '', '', '', '', '']);
  });
});

describe('what is no key', () => {
  const unknown: [what: string, bytes: string | number[]][] = [
    ['mouse, SGR', `${ESC}[<0;12;5M${ESC}[<35;120;40m`],
    ['mouse, X10', `${ESC}[M !!`],
    ['mouse, X10, far right', [0x1b, 0x5b, 0x4d, 0x20, 0xc3, 0xa9]],
    ['mouse, urxvt', `${ESC}[32;12;5M`],
    ['focus', `${ESC}[I${ESC}[O`],
    ['a title', `${ESC}]0;some title\u0007`],
    ['a colour answer', `${ESC}]11;rgb:ffff/ffff/ffff${ESC}\\`],
    ['a device answer', `${ESC}[?62;22c${ESC}[>0;276;0c`],
    ['a mode answer', `${ESC}[?2026;2$y`],
    ['a cursor answer', `${ESC}[12;40R`],
    ['a version answer', `${ESC}P>|XTerm(388)${ESC}\\`],
    ['an application command', `${ESC}_Gi=31;OK${ESC}\\`],
    ['a key of another protocol', `${ESC}[57364;5u${ESC}[27;5;9~${ESC}[97;5:1u`],
    ['modifiers that no keyboard has', `${ESC}[1;10A${ESC}[1;16P`],
    ['an unknown function key', `${ESC}[25~${ESC}[99~${ESC}[201~${ESC}OZ`],
    ['bytes that are no character', [0xff, 0xfe]],
  ];

  it.each(unknown)('%s gives nothing', (_, bytes) => {
    expect(heard(bytes, 'q')).toEqual(['q']);
  });

  it.each(unknown)('%s byte by byte gives nothing', (_, bytes) => {
    expect(heard(...[...Buffer.from(bytes as string)].map((byte) => [byte]), 'q')).toEqual(['q']);
  });

  it('a report that stops short is dropped after a while', () => {
    expect(heard(`${ESC}[<0;12`)).toEqual([]);
    expect(heard('q')).toEqual(['q']);
  });

  it('a sequence that another one cuts short is dropped', () => {
    expect(heard(`${ESC}[1;${ESC}[B`)).toEqual(['down']);
  });

  it('a report without end does not hold the keys for ever', () => {
    input.type(`${ESC}]${'x'.repeat(5000)}`);
    input.type('q');
    expect(names().at(-1)).toBe('q');
  });
});

describe('the Escape key', () => {
  it('is heard within 40 ms', () => {
    input.type(ESC);
    expect(names()).toEqual([]);
    vi.advanceTimersByTime(40);
    expect(names()).toEqual(['escape']);
  });

  it('is itself when another key follows at once in a chunk of its own', () => {
    input.type(ESC, 'x');
    expect(names()).toEqual(['escape', 'x']);
  });

  it('before an arrow is itself', () => {
    input.type(ESC, `${ESC}[A`);
    expect(names()).toEqual(['escape', 'up']);
  });
});

describe('a paste', () => {
  const START = `${ESC}[200~`;
  const END = `${ESC}[201~`;

  it('is one text between keys, in one line', () => {
    input.type(`a${START}first\r\nsecond\tthird\u0003${END}b`);
    expect([pastes, names()]).toEqual([['first second third'], ['a', 'b']]);
  });

  it('holds no escape sequences', () => {
    input.type(`${START}${ESC}[31mred${ESC}[0m ${ESC}[<0;1;1M!${END}`);
    expect(pastes).toEqual(['red !']);
  });

  it('may be cut anywhere', () => {
    input.type(...[...Buffer.from(`${START}wide 世é😀${END}q`)].map((byte) => [byte]));
    expect([pastes, names()]).toEqual([['wide 世é😀'], ['q']]);
  });

  it('without an end is taken after a while, and keys are heard again', () => {
    input.type(`${START}abc`);
    vi.advanceTimersByTime(1000);
    input.type('\u0003');
    expect([pastes, names()]).toEqual([['abc'], ['ctrl+c']]);
  });
});

it('is heard from no more once that is ended', () => {
  input.type(ESC);
  stop();
  vi.advanceTimersByTime(1000);
  input.type('a');
  expect([names(), input.listenerCount('data'), input.pause.mock.calls.length]).toEqual([[], 0, 1]);
});

it('that ends the listening is the last', () => {
  stop();
  const last = listenToKeys(input, {
    onKey(key) {
      keys.push(key);
      if (key.name === 'q') last();
    },
    onPaste: (text) => pastes.push(text),
  });
  input.type(`aqb${ESC}[Ac`);
  expect(names()).toEqual(['a', 'q']);
});
