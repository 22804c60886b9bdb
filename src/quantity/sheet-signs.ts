/**
 * Which sign does a number have in a controller that counts its own way? Ours counts nose down and forward as positive and takes
 * pitch minus set-point for the error.
 *
 *   our  i = P e + D w       with pitch counted p = +-1, current c = +-1, error r = +-1 (minus for set-point minus pitch):
 *   its  i' = c i, e' = r p e, w' = +-w       so  P' = c r p P  and  D' = c D where w' = w, else -c D
 */
import { sheetQuantity, type SignRule } from './sheet-quantities.js';
import type { SheetFile, SheetRow } from './sheet-file.js';

/** A sign as a factor. */
export type Sign = 1 | -1;

/** The sign that a number which is positive here has under the controller's own way of counting. */
export function countedSign(rule: SignRule, { pitch, current, error, rate }: SheetFile['counts']): Sign {
  const ofPitch = pitch === 'nose down' ? 1 : -1;
  const ofCurrent = current === 'forward' ? 1 : -1;
  const ofError = error === 'pitch minus set-point' ? 1 : -1;
  const ofRate = rate === undefined ? ofPitch * ofError : rate === 'nose down' ? 1 : -1;
  const signs: Record<SignRule, number> = {
    gain: ofPitch * ofCurrent * ofError,
    'rate gain': ofRate * ofCurrent,
    'nose up': -ofPitch,
    'nose up per current': -ofPitch * ofCurrent,
    size: 1,
  };
  return signs[rule] > 0 ? 1 : -1;
}

/** The sign with which a number is typed: the row's own where it states one. */
export function typedSign({ counts }: Pick<SheetFile, 'counts'>, { quantity, sign }: SheetRow): Sign {
  if (sign === undefined) return countedSign(sheetQuantity(quantity).sign, counts);
  return sign === 'plus' ? 1 : -1;
}

/** The sign by which the controller takes what is typed. A size has no direction: there the row's sign is a way of writing. */
export function takenSign(sheet: Pick<SheetFile, 'counts'>, row: SheetRow): Sign {
  const { sign } = sheetQuantity(row.quantity);
  return sign === 'size' ? typedSign(sheet, row) : countedSign(sign, sheet.counts);
}
