/**
 * What is coloured, and how? The caller decides the mode once from environment, terminal and flag;
 * everything printed goes through the Paint made from it. Colours are the eight-colour set of
 * M. Okabe and K. Ito, "Color Universal Design" (2002), told apart with every common colour vision.
 * Colour is never alone: a verdict has a shape beside it, a line has a style of its own.
 */

/** Depths of colour that a terminal may have. */
export const COLOUR_MODES = ['none', '16', '256', 'truecolor'] as const;

/** A depth of colour. */
export type ColourMode = (typeof COLOUR_MODES)[number];

/** Values that the colour flag takes. */
export const COLOUR_FLAGS = ['auto', 'always', 'never', '16', '256', 'truecolor'] as const;

/** A value of the colour flag. */
export type ColourFlag = (typeof COLOUR_FLAGS)[number];

/** Names of the styles in which a text can be painted. */
export const STYLE_NAMES = ['ok', 'warn', 'bad', 'accent', 'dim', 'bold'] as const;

/** A style in which a text can be painted. */
export type StyleName = (typeof STYLE_NAMES)[number];

/** One function a style, from text to painted text; with mode 'none' the text comes back as it was. */
export type Paint = { readonly mode: ColourMode } & Readonly<Record<StyleName, (text: string) => string>>;

/** What a verdict can be. */
export type Verdict = 'ok' | 'warn' | 'bad';

/** Hexadecimal red, green, blue of the Okabe-Ito set. */
export const OKABE_ITO = {
  black: '#000000',
  orange: '#e69f00',
  skyBlue: '#56b4e9',
  bluishGreen: '#009e73',
  yellow: '#f0e442',
  blue: '#0072b2',
  vermillion: '#d55e00',
  reddishPurple: '#cc79a7',
} as const;

/**
 * Which colour a style has, by depth: the code of 16, the index of 256 (nearest of the colour
 * cube).
 */
export const STYLE_COLOURS = {
  ok: { hex: OKABE_ITO.bluishGreen, index256: 35, code16: 32 },
  warn: { hex: OKABE_ITO.orange, index256: 178, code16: 33 },
  bad: { hex: OKABE_ITO.vermillion, index256: 166, code16: 31 },
  accent: { hex: OKABE_ITO.skyBlue, index256: 74, code16: 36 },
} as const;

const ESCAPE = '\u001b[';

const DEPTH_OF_FORCE: Readonly<Record<string, ColourMode>> = {
  '0': 'none',
  false: 'none',
  '1': '16',
  '2': '256',
  '3': 'truecolor',
};

/** The depth that the environment claims for its terminal; 16 where it claims nothing. */
function claimedDepth(env: Readonly<Record<string, string | undefined>>): ColourMode {
  const colorTerm = env['COLORTERM'] ?? '';
  const term = env['TERM'] ?? '';
  if (colorTerm === 'truecolor' || colorTerm === '24bit' || term.endsWith('-direct')) return 'truecolor';
  return term.includes('256color') ? '256' : '16';
}

/**
 * The colour mode from environment, terminal and flag. A flag on the command line beats the
 * environment (no-color.org asks for that); NO_COLOR beats FORCE_COLOR; FORCE_COLOR beats TERM=dumb
 * and a pipe; empty variables count as absent.
 */
export function colourMode(from: {
  env: Readonly<Record<string, string | undefined>>;
  isTTY: boolean;
  flag?: ColourFlag | undefined;
}): ColourMode {
  const { env, isTTY, flag = 'auto' } = from;
  if (flag === 'never') return 'none';
  if (flag === 'always') return claimedDepth(env);
  if (flag !== 'auto') return flag;
  if (env['NO_COLOR']) return 'none';
  const force = env['FORCE_COLOR'];
  if (force) return DEPTH_OF_FORCE[force] ?? claimedDepth(env);
  if (!isTTY || env['TERM'] === 'dumb') return 'none';
  return claimedDepth(env);
}

/** The codes that switch a style on and off again. */
function codes(style: StyleName, mode: Exclude<ColourMode, 'none'>): { on: string; off: string } {
  if (style === 'bold') return { on: '1', off: '22' };
  if (style === 'dim') return { on: '2', off: '22' };
  const colour = STYLE_COLOURS[style];
  if (mode === '16') return { on: String(colour.code16), off: '39' };
  if (mode === '256') return { on: `38;5;${colour.index256}`, off: '39' };
  const parts = [1, 3, 5].map((at) => Number.parseInt(colour.hex.slice(at, at + 2), 16));
  return { on: `38;2;${parts.join(';')}`, off: '39' };
}

/** One style as a function from text to painted text; an empty text stays empty. */
function brush(style: StyleName, mode: ColourMode): (text: string) => string {
  if (mode === 'none') return (text) => text;
  const { on, off } = codes(style, mode);
  return (text) => (text === '' ? '' : `${ESCAPE}${on}m${text}${ESCAPE}${off}m`);
}

/** The paint of a mode. */
export function createPaint(mode: ColourMode): Paint {
  return {
    mode,
    ok: brush('ok', mode),
    warn: brush('warn', mode),
    bad: brush('bad', mode),
    accent: brush('accent', mode),
    dim: brush('dim', mode),
    bold: brush('bold', mode),
  };
}

/** The shape that stands beside a verdict's colour, one column wide; `ascii` for plain terminals. */
export function verdictMark(verdict: Verdict, ascii = false): string {
  const marks = ascii ? { ok: '+', warn: '!', bad: 'x' } : { ok: '✓', warn: '!', bad: '✗' };
  return marks[verdict];
}
