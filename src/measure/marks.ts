/**
 * When did the events of a scenario happen in a run, and which rows are measured? Events by time are known before;
 * a piece of road happens when the front of the wheel reaches it, if it does.
 */
import type { ScenarioFile } from '../quantity/scenario-file.js';
import { RAD_PER_DEG } from '../quantity/units.js';
import { eventsOf, MARK } from '../scenario/event.js';
import type { Tape } from '../simulate/tape.js';
import type { MeasureWindow } from './window.js';

/** An event that happened, and when [s]. */
export interface EventMark {
  name: string;
  timeS: number;
}

/** The events of a scenario that a run lived to see, earliest first. */
export function marksOf(scenario: ScenarioFile, tape: Tape, wheelRadiusM: number): EventMark[] {
  const lastS = (tape.length - 1) * tape.tickS;
  return eventsOf(scenario)
    .flatMap((event) => {
      const timeS = 'atS' in event ? event.atS : reachedAtS(tape, event.atM - wheelRadiusM);
      return timeS === undefined || timeS > lastS ? [] : [{ name: event.name, timeS }];
    })
    .sort((a, b) => a.timeS - b.timeS);
}

function reachedAtS(tape: Tape, placeM: number): number | undefined {
  const row = tape.columns.positionM.subarray(0, tape.length).findIndex((xM) => xM >= placeM);
  return row === -1 ? undefined : row * tape.tickS;
}

/** The event that a scenario measures from. */
export function measuredEvent(scenario: ScenarioFile): string {
  return scenario.measure.atS === undefined ? scenario.measure.from : MARK;
}

/** The rows that a scenario measures; none, behind the last possible row, when its event never came. */
export function windowOf(scenario: ScenarioFile, marks: readonly EventMark[], tickS: number): MeasureWindow {
  const { as: kind, forS, bandDeg } = scenario.measure;
  const rows = Math.round(scenario.durationS / tickS) + 1;
  const mark = marks.find(({ name }) => name === measuredEvent(scenario));
  const firstRow = mark === undefined ? rows : Math.round(mark.timeS / tickS);
  const endRow = forS === undefined ? rows : Math.min(rows, firstRow + Math.round(forS / tickS) + 1);
  return { kind, firstRow, endRow, bandRad: bandDeg * RAD_PER_DEG };
}
