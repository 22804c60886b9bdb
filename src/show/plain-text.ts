/**
 * What may be printed of a text that came from a file or an argument? Escape sequences and
 * control characters are taken out, so that a name can never move the cursor or recolour a screen.
 */

const ESCAPE = String.fromCodePoint(0x1b);
const BELL = String.fromCodePoint(0x07);

/** Operating-system commands (to BEL or ST), then control sequences, as ECMA-48 forms them. */
const SEQUENCES = new RegExp(
  `${ESCAPE}\\][^${BELL}${ESCAPE}]*(?:${BELL}|${ESCAPE}\\\\)|${ESCAPE}\\[[0-?]*[ -/]*[@-~]`,
  'g',
);

/** Nothing to take out of the usual text. */
const PRINTABLE = /^[\u0020-\u007e]*$/;

/**
 * A text without escape sequences, control and format characters; line breaks and tabs become one
 * space.
 */
export function plainText(s: string): string {
  if (PRINTABLE.test(s)) return s;
  return s
    .replace(SEQUENCES, '')
    .replace(/[\t\n\r\u2028\u2029]+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}]/gu, '');
}
