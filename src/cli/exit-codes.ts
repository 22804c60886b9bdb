/**
 * What does the number mean with which the program ends?
 */

/** Exit codes: fine; ran, but a stated requirement was not met; bad input; stopped by Ctrl-C; by TERM; by a closed terminal. */
export const EXIT = {
  fine: 0,
  requirementNotMet: 1,
  badInput: 2,
  interrupted: 130,
  terminated: 143,
  hungUp: 129,
} as const;
