/**
 * The events of a scenario: moments with a name that a measurement can begin from. Some are known by time,
 * a named road piece by the place where the front of the wheel reaches it.
 */
import type { ScenarioFile } from '../quantity/scenario-file.js';
import { pieceStarts } from './road.js';

/** An event known by its time [s], or by its place along the road [m]. */
export type ScenarioEvent = { name: string; atS: number } | { name: string; atM: number };

/** Every named event of a scenario; the beginning is called 'start', and a time to measure from 'mark'. */
export function eventsOf(scenario: ScenarioFile): ScenarioEvent[] {
  const starts = pieceStarts(scenario.road);
  const { atS } = scenario.measure;
  return [
    { name: 'start', atS: 0 },
    ...(atS === undefined ? [] : [{ name: MARK, atS }]),
    ...scenario.road.flatMap(({ name }, index) =>
      name === undefined ? [] : [{ name, atM: starts[index]! }],
    ),
    ...[...scenario.shifts, ...scenario.shoves].flatMap(({ name, atS: timeS }) =>
      name === undefined ? [] : [{ name, atS: timeS }],
    ),
  ];
}

/** Name of the event at `measure.atS`. */
export const MARK = 'mark';
