/**
 * Which keys were pressed? Names for them come from Node's own parser; it gets one key at a time, and
 * only sequences that it reads to their end, so nothing of an unknown one is ever taken for text.
 */
import { emitKeypressEvents } from 'node:readline';
import { Readable } from 'node:stream';
import { plainText } from '../../show/plain-text.js';
import { InputSplitter, type InputPiece } from './input-pieces.js';

/**
 * A key: its name (`a`, `A`, `?`, `space`, `return`, `shift+tab`, `ctrl+c`, `ctrl+alt+shift+up`), and the
 * text that a text field would take, empty for none.
 */
export interface Key {
  name: string;
  text: string;
}

/** What is done with input. */
export interface KeyListener {
  onKey(key: Key): void;
  /** Takes pasted text: one line, without control characters. */
  onPaste(text: string): void;
}

/** The part of a terminal's input stream that is listened to. */
export interface KeySource {
  on(event: 'data', listener: (chunk: Buffer | string) => void): unknown;
  off(event: 'data', listener: (chunk: Buffer | string) => void): unknown;
  pause(): unknown;
}

/** What Node's parser says about a key. */
interface ParsedKey {
  name?: string;
  ctrl: boolean;
  meta: boolean;
  shift: boolean;
}

const ESC = String.fromCodePoint(0x1b);

/** Sequences that Node's parser reads to their end. */
const READABLE = new RegExp(
  `^${ESC}(?:\\[\\[[A-E]|\\[\\d{1,2}(?:;\\d)?~|\\[(?:\\d;)?\\d?[A-Za-z]|O\\d?[A-Za-z])$`,
);

/** Final characters with which rxvt tells modifiers, as the parameters that xterm has for them. */
const RXVT_MODIFIERS: Readonly<Record<string, string>> = { $: ';2~', '^': ';5~', '@': ';6~' };
const RXVT_SEQUENCE = new RegExp(`^${ESC}\\[(\\d{1,2})([$^@])$`);
const LONG_O_SEQUENCE = new RegExp(`^${ESC}O1;`);

/** Names that Node has for a key, where ours differ; null for those that are no keys here. */
const OTHER_NAMES: Readonly<Record<string, string | null>> = {
  enter: 'return',
  '`': 'space',
  clear: null,
  undefined: null,
};

/** A sequence as xterm would send it. */
function asXterm(sequence: string): string {
  return sequence
    .replace(RXVT_SEQUENCE, (_, digits: string, final: string) => `${ESC}[${digits}${RXVT_MODIFIERS[final]}`)
    .replace(LONG_O_SEQUENCE, `${ESC}[1;`);
}

/** Node's parser as a function from one control character or sequence to a key. */
function createParser(): (input: string) => ParsedKey | undefined {
  const source = new Readable({ read() {} });
  let parsed: ParsedKey | undefined;
  source.on('keypress', (_text: string | undefined, key: ParsedKey) => (parsed = key));
  emitKeypressEvents(source);
  return (input) => {
    parsed = undefined;
    source.emit('data', input);
    return parsed;
  };
}

/** The name of a key with its modifiers; null where it has none. */
function nameOf(key: ParsedKey | undefined): string | null {
  const own = key?.name ?? 'undefined';
  const name = own in OTHER_NAMES ? OTHER_NAMES[own]! : own;
  if (key === undefined || name === null) return null;
  return (key.ctrl ? 'ctrl+' : '') + (key.meta ? 'alt+' : '') + (key.shift ? 'shift+' : '') + name;
}

/** The keys of one piece of input. */
function keysOf(piece: InputPiece, parse: (input: string) => ParsedKey | undefined): Key[] {
  const ofCharacter = (character: string, alt: boolean): Key[] => {
    if (character === '\ufffd') return []; // bytes that are no character
    if (/\p{Cc}/u.test(character)) {
      const parsed = parse(character);
      const name = nameOf(parsed && { ...parsed, meta: alt });
      return name === null ? [] : [{ name, text: '' }];
    }
    const name = character === ' ' ? 'space' : character;
    return [alt ? { name: `alt+${name}`, text: '' } : { name, text: character }];
  };
  if (piece.kind === 'escape') return [{ name: 'escape', text: '' }];
  if (piece.kind === 'text') return [...piece.text].flatMap((character) => ofCharacter(character, false));
  if (piece.kind === 'alt') return ofCharacter(piece.text, true);
  const sequence = asXterm(piece.text);
  const name = READABLE.test(sequence) ? nameOf(parse(sequence)) : null;
  return name === null ? [] : [{ name, text: '' }];
}

/** Listens to the keys of a terminal in raw mode; the function that comes back ends that. */
export function listenToKeys(stdin: KeySource, { onKey, onPaste }: KeyListener): () => void {
  const parse = createParser();
  let isListening = true;
  const splitter = new InputSplitter((piece) => {
    if (piece.kind === 'paste') onPaste(plainText(piece.text));
    else keysOf(piece, parse).forEach((key) => isListening && onKey(key));
  });
  const onData = (chunk: Buffer | string) => splitter.feed(chunk);
  stdin.on('data', onData);
  return () => {
    isListening = false;
    stdin.off('data', onData);
    stdin.pause();
    splitter.stop();
  };
}
