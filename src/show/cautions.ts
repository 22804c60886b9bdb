/**
 * What has everything that comes from a simulation to say of itself? The cautions, in full for what is carried to the board,
 * in two sentences below every table.
 */

/** What every ranking has to say of itself. */
export const CAUTION =
  'Simulated with the numbers given: it proves nothing about the machine. Ride a new profile first with low ceilings, ' +
  'helmet, wrist and knee protection, on open private ground, with someone nearby.';

/** What goes with numbers that are carried to a board, the most important first; one short sentence each. */
export const CAUTIONS: readonly string[] = [
  'Simulated, not held against this board: it proves nothing about the machine.',
  'First metres: low ceilings, helmet, wrist and knee protection, level closed ground, somebody beside you.',
  'Local law decides where such a board may be ridden.',
  'Pack and wiring are for qualified people.',
];
