/** How a run ended. A fall is a result, never an exception. */

/** Ways a run can end. */
export const OUTCOMES = ['upright', 'nose strike', 'tail strike', 'rider off', 'solver stopped'] as const;

/** How a run ended, and when [s]. `detail` says what a stopped solver met. */
export interface Outcome {
  kind: (typeof OUTCOMES)[number];
  atS: number;
  detail?: string;
}
