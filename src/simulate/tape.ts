/**
 * The tape of a run: one row a tick, kept as one typed array a column so that the loop writes
 * without allocating and a metric reads one quantity in a straight line. Row k is the moment
 * t = k / loopRate: the plant as it is then, and what the controller and the rider decided then.
 */

/** Columns of a tape, in the order in which they are exported. Names carry their units. */
export const TAPE_COLUMNS = [
  'timeS',
  'pitchRad',
  'pitchRateRadPerS',
  'leanRad',
  'leanRateRadPerS',
  'legLengthM',
  'positionM',
  'axleHeightM',
  'speedMPerS',
  'wheelRateRadPerS',
  'estimatedPitchRad',
  'setPointRad',
  'askedCurrentA',
  'requestedCurrentA',
  'currentA',
  'upperCeilingA',
  'lowerCeilingA',
  'bindingCeiling',
  'headroomShare',
  'packV',
  'packCurrentA',
  'chargeShare',
  'riderTorqueNm',
  'riderTorqueLimitNm',
  'feetAccelerationMPerS2',
  'wheelLoadN',
  'treadForceN',
] as const;

/** Name of a tape column. */
export type TapeColumn = (typeof TAPE_COLUMNS)[number];

/** A recorded run: `length` rows are valid, `tickS` apart; arrays may be longer than that. */
export interface Tape {
  tickS: number;
  length: number;
  columns: Record<TapeColumn, Float64Array>;
}

/** Codes of the column `bindingCeiling`: the ceiling that cut the request at that tick. */
export const CEILINGS = ['none', 'drive', 'brake', 'voltage', 'pack out', 'pack in'] as const;

/** The ceiling that cut a request, or 'none'. */
export type Ceiling = (typeof CEILINGS)[number];

/** An empty tape with room for `capacity` rows. */
export function createTape(capacity: number, tickS: number): Tape {
  const columns = Object.fromEntries(
    TAPE_COLUMNS.map((column) => [column, new Float64Array(capacity)]),
  ) as Tape['columns'];
  return { tickS, length: 0, columns };
}
