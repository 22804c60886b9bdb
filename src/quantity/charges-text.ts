/**
 * How are states of charge typed on a command line? Percents with commas between, and a word for what each scenario has by itself.
 */

/** Stands for the state of charge that each scenario has by itself. */
export const OWN_CHARGE_WORD = 'own';

/** States of charge as they are typed; null stands for each scenario's own, %. */
export function chargesText(charges: readonly (number | null)[]): string {
  return charges.map((charge) => charge ?? OWN_CHARGE_WORD).join(',');
}
