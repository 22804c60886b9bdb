/**
 * When do runs of several profiles in one trial part? The first moment from which the choice of a profile
 * makes a difference that counts on this scenario's own terms.
 */
import type { Tape } from '../simulate/tape.js';

/** The moment at which runs part: the row of the tapes, its time [s], and which two of the runs. */
export interface Parting {
  row: number;
  timeS: number;
  /** Indexes of the two runs that are furthest apart at that row, in rising order. */
  between: [number, number];
  /** 'pitch' where two pitches have moved apart by more than the band; 'ending' where one run has ended and another goes on. */
  by: 'pitch' | 'ending';
  /** Pitch of every run at that row [rad]; null for one that has ended before. */
  pitchesRad: (number | null)[];
}

/**
 * The first row, counted from the start of the tapes, at which the pitches of any two runs have moved apart by more than the
 * measured band [rad], each from where it began; or at which one has ended and another has not; null where they never part.
 * The band is what the scenario counts as settled: a difference within it is none that the scenario would tell apart. Each
 * pitch is taken from its own beginning, for profiles may ride steadily at different ones, which is no event. It is searched
 * from the start and not from the measured event, because runs of one trial meet the same road, script and chance from the
 * first tick on. The tapes have one tick.
 */
export function partingOf(tapes: readonly Tape[], bandRad: number): Parting | null {
  const lengths = tapes.map(({ length }) => length);
  const longest = Math.max(0, ...lengths);
  for (let row = 0; row < longest; row += 1) {
    const found = partedAt(tapes, row, bandRad);
    if (found === null) continue;
    const pitchesRad = tapes.map((tape) => (row < tape.length ? (tape.columns.pitchRad[row] ?? null) : null));
    return { row, timeS: row * (tapes[0]?.tickS ?? 0), ...found, pitchesRad };
  }
  return null;
}

/** The two runs that have parted at a row, if any; an end counts before a difference in pitch. */
function partedAt(
  tapes: readonly Tape[],
  row: number,
  bandRad: number,
): Pick<Parting, 'between' | 'by'> | null {
  let lowest = -1;
  let highest = -1;
  let ended = -1;
  let lowestRad = Infinity;
  let highestRad = -Infinity;
  for (let index = 0; index < tapes.length; index += 1) {
    const { length, columns } = tapes[index]!;
    if (row >= length) {
      if (ended < 0) ended = index;
      continue;
    }
    const movedRad = columns.pitchRad[row]! - columns.pitchRad[0]!;
    if (movedRad < lowestRad) [lowest, lowestRad] = [index, movedRad];
    if (movedRad > highestRad) [highest, highestRad] = [index, movedRad];
  }
  if (ended >= 0) return { between: ordered(ended, lowest), by: 'ending' };
  return highestRad - lowestRad > bandRad ? { between: ordered(lowest, highest), by: 'pitch' } : null;
}

function ordered(a: number, b: number): [number, number] {
  return a < b ? [a, b] : [b, a];
}
