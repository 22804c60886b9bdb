/**
 * Into which pieces does the stream of bytes from a terminal fall? Text, one sequence of a key, the
 * Escape key, a paste. Reports that nobody asked for (mouse, focus, answers to queries) belong to no
 * piece and are dropped whole, however they are cut into chunks. Bytes are kept one to a character
 * until it is certain what they are.
 */
import { StringDecoder } from 'node:string_decoder';

/** One piece of input; a sequence comes with its Escape, a character typed with Alt without. */
export type InputPiece =
  { kind: 'text' | 'sequence' | 'alt' | 'paste'; text: string } | { kind: 'escape'; text: '' };

const ESC = String.fromCodePoint(0x1b);
const BELL = String.fromCodePoint(0x07);
const PASTE_START = `${ESC}[200~`;
const PASTE_END = `${ESC}[201~`;

/** How long to wait for the rest of what may be the Escape key or Alt with a character, in ms. */
const ESCAPE_WAIT_MS = 30;

/** How long to wait for the rest of what no hand types, in ms. */
const REST_WAIT_MS = 500;

/** The longest report that is waited for, in bytes. */
const REPORT_LIMIT_BYTES = 4096;

/** Bytes of a character beyond ASCII, as UTF-8 has them. */
const BEYOND_ASCII =
  '(?:[\\xc2-\\xdf]|[\\xe0-\\xef][\\x80-\\xbf]|[\\xf0-\\xf4][\\x80-\\xbf]{2})[\\x80-\\xbf]';

/** What input can begin with, in the order in which it is tried. */
const FORMS: readonly { kind: 'text' | 'sequence' | 'alt' | 'report'; form: RegExp }[] = [
  { kind: 'text', form: new RegExp(`^[^${ESC}]+`) },
  { kind: 'report', form: new RegExp(`^${ESC}\\[M[^]{3}`) }, // mouse, as X10 has it
  { kind: 'report', form: new RegExp(`^${ESC}\\[[IO]`) }, // focus
  { kind: 'report', form: new RegExp(`^${ESC}\\[[<-?][0-?]*[ -/]*[@-~]`) }, // mouse and answers
  { kind: 'report', form: new RegExp(`^${ESC}[\\]P_][^${BELL}${ESC}]*(?:${BELL}|${ESC}\\\\)`) }, // answers
  { kind: 'sequence', form: new RegExp(`^${ESC}\\[\\[[A-E]`) }, // function keys of the Linux console
  { kind: 'sequence', form: new RegExp(`^${ESC}\\[\\d{1,2}\\$`) }, // with Shift, as rxvt has it
  { kind: 'sequence', form: new RegExp(`^${ESC}\\[(?![[M])[0-?]*[ -/]*[@-~]`) },
  { kind: 'sequence', form: new RegExp(`^${ESC}O[\\d;]*[A-Za-z]`) },
  { kind: 'alt', form: new RegExp(`^${ESC}(?:(?![[O\\]P_])[\\b\\r\\x20-\\x7f]|${BEYOND_ASCII})`) },
];

/** What could become one of the forms when more bytes come. */
const UNFINISHED = new RegExp(
  `^${ESC}(?:\\[\\[?|\\[M[^]{0,2}|\\[[0-?]*[ -/]*|O[\\d;]*|[\\]P_][^${BELL}${ESC}]*${ESC}?|[\\xc2-\\xf4][\\x80-\\xbf]{0,2})?$`,
);

/** What is given up where it cannot become one of the forms. */
const BROKEN = new RegExp(`^${ESC}(?:\\[[0-?]*[ -/]*|O[\\d;]*|[\\]P_][^${BELL}${ESC}]*|[\\x80-\\xff])?`);

/** After Escape alone, what goes on with a sequence when it comes in a chunk of its own. */
const GOES_ON = /^[[O\]P_]/;

const decoded = (bytes: string) => Buffer.from(bytes, 'latin1').toString('utf8');

/** Cuts chunks of bytes into pieces and hands them on as soon as they are certain. */
export class InputSplitter {
  private pending = '';
  private isPasting = false;
  private timer: NodeJS.Timeout | undefined;
  private readonly decoder = new StringDecoder('utf8');

  constructor(private readonly onPiece: (piece: InputPiece) => void) {}

  /** Takes the next chunk. */
  feed(chunk: Buffer | string): void {
    clearTimeout(this.timer);
    const bytes = (typeof chunk === 'string' ? Buffer.from(chunk) : chunk).toString('latin1');
    if (this.pending === ESC && !GOES_ON.test(bytes)) this.giveUp();
    this.pending += bytes;
    while (this.pending !== '' && this.takePiece());
    if (this.pending === '' && !this.isPasting) return;
    const mayBeTyped = this.pending.length <= 2 && !this.isPasting;
    this.timer = setTimeout(() => this.giveUp(), mayBeTyped ? ESCAPE_WAIT_MS : REST_WAIT_MS);
  }

  /** Hands on nothing more of what has come. */
  stop(): void {
    clearTimeout(this.timer);
    this.pending = '';
    this.isPasting = false;
  }

  /** Takes one piece off what is pending; false where more bytes are needed. */
  private takePiece(): boolean {
    if (this.isPasting) return this.takePaste();
    for (const { kind, form } of FORMS) {
      const text = form.exec(this.pending)?.[0];
      if (text === undefined) continue;
      this.pending = this.pending.slice(text.length);
      this.handOn(kind, text);
      return true;
    }
    if (UNFINISHED.test(this.pending) && this.pending.length <= REPORT_LIMIT_BYTES) return false;
    const broken = BROKEN.exec(this.pending)![0];
    this.pending = this.pending.slice(broken.length);
    this.handOnBroken(broken);
    return true;
  }

  private takePaste(): boolean {
    const end = this.pending.indexOf(PASTE_END);
    if (end < 0) return false;
    const text = this.pending.slice(0, end);
    this.pending = this.pending.slice(end + PASTE_END.length);
    this.isPasting = false;
    this.onPiece({ kind: 'paste', text: decoded(text) });
    return true;
  }

  private handOn(kind: 'text' | 'sequence' | 'alt' | 'report', bytes: string): void {
    if (kind === 'report') return;
    if (bytes === PASTE_START) {
      this.isPasting = true;
    } else if (kind === 'text') {
      this.onPiece({ kind, text: this.decoder.write(Buffer.from(bytes, 'latin1')) });
    } else {
      this.onPiece({ kind, text: kind === 'alt' ? decoded(bytes.slice(1)) : bytes });
    }
  }

  /** Hands on what turned out to be no sequence: keys that begin like one, or nothing. */
  private handOnBroken(bytes: string): void {
    const character = bytes.slice(1);
    if (bytes === ESC) this.onPiece({ kind: 'escape', text: '' });
    else if (character.length === 1 && GOES_ON.test(character))
      this.onPiece({ kind: 'alt', text: character });
  }

  /** No more bytes are waited for: what is pending is what was typed, or is dropped. */
  private giveUp(): void {
    const { pending, isPasting } = this;
    this.pending = '';
    this.isPasting = false;
    if (isPasting) this.onPiece({ kind: 'paste', text: decoded(pending) });
    else this.handOnBroken(pending);
  }
}
