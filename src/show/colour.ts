/**
 * What is coloured, and how? The caller decides the mode once from environment, terminal and flag;
 * everything printed goes through the Paint made from it. Colours are the eight-colour set of
 * M. Okabe and K. Ito, "Color Universal Design" (2002), told apart with every common colour vision.
 * Colour is never alone: a verdict has a shape beside it, a line has a style of its own. On a light
 * background the same hues are darker, so that text is legible there too.
 */

/** Depths of colour that a terminal may have. */
export const COLOUR_MODES = ['none', '16', '256', 'truecolor'] as const;

/** A depth of colour. */
export type ColourMode = (typeof COLOUR_MODES)[number];

/** Values that the colour flag takes. */
export const COLOUR_FLAGS = ['auto', 'always', 'never', '16', '256', 'truecolor'] as const;

/** A value of the colour flag. */
export type ColourFlag = (typeof COLOUR_FLAGS)[number];

/** What a terminal's own background can be. */
export const BACKGROUNDS = ['dark', 'light'] as const;

/** A terminal's own background. */
export type Background = (typeof BACKGROUNDS)[number];

/** Values that the background flag takes. */
export const BACKGROUND_FLAGS = ['auto', ...BACKGROUNDS] as const;

/** A value of the background flag. */
export type BackgroundFlag = (typeof BACKGROUND_FLAGS)[number];

/**
 * Names of the styles in which a text can be painted: three verdicts, what matters now, four lines
 * of one plot, and three that are no colour.
 */
export const STYLE_NAMES = [
  'ok',
  'warn',
  'bad',
  'accent',
  'lineA',
  'lineB',
  'lineC',
  'lineD',
  'dim',
  'bold',
  'inverse',
] as const;

/** A style in which a text can be painted. */
export type StyleName = (typeof STYLE_NAMES)[number];

/** One function a style, from text to painted text; with mode 'none' the text comes back as it was. */
export type Paint = { readonly mode: ColourMode; readonly background: Background } & Readonly<
  Record<StyleName, (text: string) => string>
>;

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

/** A colour by depth: truecolor, the index of 256, the code of 16. */
export interface ShownColour {
  hex: string;
  index256: number;
  code16: number;
}

/** Okabe-Ito as they stand, with the nearest entries of the colour cube. */
const ON_DARK = {
  skyBlue: { hex: OKABE_ITO.skyBlue, index256: 74, code16: 36 },
  orange: { hex: OKABE_ITO.orange, index256: 178, code16: 33 },
  bluishGreen: { hex: OKABE_ITO.bluishGreen, index256: 35, code16: 32 },
  reddishPurple: { hex: OKABE_ITO.reddishPurple, index256: 175, code16: 35 },
  vermillion: { hex: OKABE_ITO.vermillion, index256: 166, code16: 31 },
} as const;

/**
 * The same with red, green and blue scaled down until their contrast on white is 4.5:1 or a little more, and entries
 * of the colour cube that have this contrast, a hue within 15 degrees, and none twice.
 */
const ON_LIGHT = {
  skyBlue: { hex: '#3b7ca1', index256: 25, code16: 36 },
  orange: { hex: '#9c6c00', index256: 94, code16: 33 },
  bluishGreen: { hex: '#008662', index256: 29, code16: 32 },
  reddishPurple: { hex: '#a36186', index256: 126, code16: 35 },
  vermillion: { hex: '#c25600', index256: 130, code16: 31 },
} as const;

/** The styles that are a colour, with the colour. */
function styleColours(colours: Record<keyof typeof ON_DARK, ShownColour>) {
  return {
    ok: colours.bluishGreen,
    warn: colours.orange,
    bad: colours.vermillion,
    accent: colours.skyBlue,
    lineA: colours.skyBlue,
    lineB: colours.orange,
    lineC: colours.bluishGreen,
    lineD: colours.reddishPurple,
  } as const;
}

/** Which colour a style has, by background. With 16 colours the terminal's own palette decides how they look. */
export const STYLE_COLOURS = { dark: styleColours(ON_DARK), light: styleColours(ON_LIGHT) } as const;

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

/**
 * The terminal's own background from environment and flag. COLORFGBG, which rxvt began and some others set, is
 * `foreground;background` or `foreground;something;background` in the numbers of the 16 colours: white (7) and the
 * bright ones (9 to 15) are light, black (0), the other plain ones and dark grey (8) are dark. Where it says nothing
 * that can be read, the background counts as dark.
 */
export function backgroundOf(
  env: Readonly<Record<string, string | undefined>>,
  flag: BackgroundFlag = 'auto',
): Background {
  if (flag !== 'auto') return flag;
  const last = (env['COLORFGBG'] ?? '').split(';').at(-1) ?? '';
  return /^(7|9|1[0-5])$/.test(last) ? 'light' : 'dark';
}

/** Where colours are shown. */
interface Surface {
  mode: Exclude<ColourMode, 'none'>;
  background: Background;
}

/** The codes that switch a style on and off again. */
function codes(style: StyleName, { mode, background }: Surface): { on: string; off: string } {
  if (style === 'bold') return { on: '1', off: '22' };
  if (style === 'dim') return { on: '2', off: '22' };
  if (style === 'inverse') return { on: '7', off: '27' };
  const colour = STYLE_COLOURS[background][style];
  if (mode === '16') return { on: String(colour.code16), off: '39' };
  if (mode === '256') return { on: `38;5;${colour.index256}`, off: '39' };
  const parts = [1, 3, 5].map((at) => Number.parseInt(colour.hex.slice(at, at + 2), 16));
  return { on: `38;2;${parts.join(';')}`, off: '39' };
}

/** The paint of a mode, in colours for that background; an empty text stays empty. */
export function createPaint(mode: ColourMode, background: Background = 'dark'): Paint {
  const brush = (style: StyleName): ((text: string) => string) => {
    if (mode === 'none') return (text) => text;
    const { on, off } = codes(style, { mode, background });
    return (text) => (text === '' ? '' : `${ESCAPE}${on}m${text}${ESCAPE}${off}m`);
  };
  return {
    mode,
    background,
    ok: brush('ok'),
    warn: brush('warn'),
    bad: brush('bad'),
    accent: brush('accent'),
    lineA: brush('lineA'),
    lineB: brush('lineB'),
    lineC: brush('lineC'),
    lineD: brush('lineD'),
    dim: brush('dim'),
    bold: brush('bold'),
    inverse: brush('inverse'),
  };
}

/** The shape that stands beside a verdict's colour, one column wide; `ascii` for plain terminals. */
export function verdictMark(verdict: Verdict, ascii = false): string {
  const marks = ascii ? { ok: '+', warn: '!', bad: 'x' } : { ok: '✓', warn: '!', bad: '✗' };
  return marks[verdict];
}
