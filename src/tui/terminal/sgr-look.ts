/**
 * How does a cell look after a select-graphic-rendition sequence (ECMA-48, 8.3.117)? A look is the
 * parameters of the one sequence that makes it from plain: each attribute has a slot, slots come in
 * one order, so two looks that are alike are the same text.
 */

/** A look as SGR parameters, `1;38;5;74` for instance; empty for plain. */
export type Look = string;

/** What is switched on, a slot an attribute: the code that did it, undefined where it is off. */
export type Slots = readonly (string | undefined)[];

const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, index) => from + index);

/** The attributes in the order of their slots, with the codes that switch each on and off. */
const ATTRIBUTES = [
  { name: 'bold', on: [1], off: 22 },
  { name: 'dim', on: [2], off: 22 },
  { name: 'italic', on: [3, 20], off: 23 },
  { name: 'underlined', on: [4, 21], off: 24 },
  { name: 'blinking', on: [5, 6], off: 25 },
  { name: 'inverse', on: [7], off: 27 },
  { name: 'hidden', on: [8], off: 28 },
  { name: 'crossed out', on: [9], off: 29 },
  { name: 'font', on: range(11, 19), off: 10 },
  { name: 'foreground', on: [...range(30, 38), ...range(90, 97)], off: 39 },
  { name: 'background', on: [...range(40, 48), ...range(100, 107)], off: 49 },
  { name: 'framed', on: [51, 52], off: 54 },
  { name: 'overlined', on: [53], off: 55 },
  { name: 'underline colour', on: [58], off: 59 },
  { name: 'raised or lowered', on: [73, 74], off: 75 },
] as const;

/** Attributes without which a blank is a blank, whatever else is on. */
const SEEN_ON_BLANK: readonly string[] = [
  'underlined',
  'inverse',
  'crossed out',
  'background',
  'framed',
  'overlined',
];

const SLOT_OF_CODE = new Map<number, number>(
  ATTRIBUTES.flatMap(({ on }, slot) => on.map((code) => [code, slot] as const)),
);

/** Codes of colours that are told by the parameters or sub-parameters behind them. */
const EXTENDED_COLOURS = ['38', '48', '58'];

/** Nothing switched on. */
export const PLAIN: Slots = [];

/** How many parameters the code at an index takes, itself included; not finite where its colour is malformed. */
function parameterCount(codes: readonly string[], at: number): number {
  if (!EXTENDED_COLOURS.includes(codes[at]!)) return 1;
  const count = { 5: 3, 2: 5 }[codes[at + 1] ?? ''] ?? Infinity;
  return at + count <= codes.length ? count : Infinity;
}

/** The slots after one code, which may have sub-parameters (`4:3`) or parameters (`38;5;74`). */
function slotsAfterCode(slots: Slots, code: string): Slots {
  const number = Number.parseInt(code, 10);
  if (number === 0) return PLAIN;
  const slot = SLOT_OF_CODE.get(number);
  if (slot === undefined)
    return slots.map((on, index) => (ATTRIBUTES[index]!.off === number ? undefined : on));
  const after = [...slots];
  while (after.length < slot) after.push(undefined);
  after[slot] = code === '4:0' ? undefined : code;
  return after;
}

/** The slots after the parameters of one sequence, `1;31` for instance; what is unknown changes nothing. */
export function slotsAfter(slots: Slots, parameters: string): Slots {
  const codes = parameters.split(';').map((code) => (code.includes(':') ? code : String(Number(code))));
  let after = slots;
  for (let at = 0; at < codes.length;) {
    const count = parameterCount(codes, at);
    if (count !== Infinity) after = slotsAfterCode(after, codes.slice(at, at + count).join(';'));
    at += count;
  }
  return after;
}

/** The look of a glyph in these slots. */
export function lookOf(slots: Slots): Look {
  return slots.filter((code) => code !== undefined).join(';');
}

/** The look of a blank in these slots: plain, unless something shows without a glyph. */
export function blankLookOf(slots: Slots): Look {
  const isSeen = slots.some(
    (code, slot) => code !== undefined && SEEN_ON_BLANK.includes(ATTRIBUTES[slot]!.name),
  );
  return isSeen ? lookOf(slots) : '';
}
