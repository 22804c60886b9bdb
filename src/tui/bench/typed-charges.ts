/**
 * Which states of charge are meant by a typed text? One or several, divided by commas or blanks; decimals have a point.
 */

/** The charges of a text [%], each from 1 to 100; none where any part of it is something else. */
export function chargesTyped(text: string): number[] {
  const parts = text.split(/[\s,%]+/).filter((part) => part !== '');
  const charges = parts.map((part) => (/^\d+(?:\.\d+)?$/.test(part) ? Number(part) : Number.NaN));
  return charges.every((charge) => charge >= 1 && charge <= 100) ? [...new Set(charges)] : [];
}
