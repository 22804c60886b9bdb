/**
 * Which squares of a QR code are dark for a text? The code itself is made by uqr, after ISO/IEC 18004; this file fixes how much
 * of it may be lost and how much light must be around it.
 */
import { encode } from 'uqr';

/** Rows of modules from the top, true for a dark one; without the quiet zone. */
export type QrMatrix = readonly (readonly boolean[])[];

/** Modules of light that the standard asks for on every side. */
export const QUIET_MODULES = 4;

/**
 * The code for a text, the smallest that still reads with 15 % of it lost (level M); where the same size has room for a higher
 * level it has that.
 */
export function qrMatrix(text: string): QrMatrix {
  return encode(text, { ecc: 'M', boostEcc: true, border: 0 }).data;
}

/** The code with its quiet zone all around. */
export function withQuietZone(matrix: QrMatrix): QrMatrix {
  const side = matrix.length + 2 * QUIET_MODULES;
  const isDark = (row: number, column: number) =>
    matrix[row - QUIET_MODULES]?.[column - QUIET_MODULES] ?? false;
  return Array.from({ length: side }, (_, row) =>
    Array.from({ length: side }, (__, column) => isDark(row, column)),
  );
}
