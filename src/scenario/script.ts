/**
 * What the rider wants and what happens to him, sampled at the ticks of the loop once before a run, so
 * that the loop only reads. Times come from the tick's index, never from repeated addition.
 */
import type { ScenarioFile } from '../quantity/scenario-file.js';
import { M_PER_S_PER_KM_PER_H } from '../quantity/units.js';

/** A script at the ticks k = 0 ... tickCount. */
export interface Script {
  tickCount: number;
  wantedSpeedMPerS: Float64Array;
  /** Foot torque that pushes the nose down, Nm. */
  noseDownTorqueNm: Float64Array;
  /** Forward push on the rider, N. */
  shoveN: Float64Array;
}

/** Samples the script of a scenario at a loop rate [Hz]. */
export function sampleScript(scenario: ScenarioFile, loopRateHz: number): Script {
  const tickCount = Math.round(scenario.durationS * loopRateHz);
  const at = (value: (timeS: number) => number) =>
    Float64Array.from({ length: tickCount + 1 }, (_, tick) => value(tick / loopRateHz));
  return {
    tickCount,
    wantedSpeedMPerS: at((timeS) => wantedSpeed(scenario.speeds, timeS) * M_PER_S_PER_KM_PER_H),
    noseDownTorqueNm: at((timeS) => sumOver(scenario.shifts, timeS, shiftTorque)),
    shoveN: at((timeS) => sumOver(scenario.shoves, timeS, (shove) => shove.forwardN)),
  };
}

function wantedSpeed(points: ScenarioFile['speeds'], timeS: number): number {
  const next = points.findIndex((point) => point.atS > timeS);
  if (next === 0) return points[0]!.speedKmPerH;
  const before = points.at(next === -1 ? -1 : next - 1)!;
  const after = points[next];
  if (after === undefined) return before.speedKmPerH;
  const share = (timeS - before.atS) / (after.atS - before.atS);
  return before.speedKmPerH + share * (after.speedKmPerH - before.speedKmPerH);
}

/** Times that differ by less are the same: without it 0.15 s would lie within 0.05 s of 0.1 s. */
const ROUNDING_S = 1e-9;

interface Spell {
  atS: number;
  forS: number;
}

function sumOver<S extends Spell>(
  spells: readonly S[],
  timeS: number,
  value: (spell: S, sinceS: number) => number,
): number {
  let sum = 0;
  for (const spell of spells) {
    const sinceS = timeS - spell.atS;
    if (sinceS > -ROUNDING_S && sinceS < spell.forS - ROUNDING_S) sum += value(spell, sinceS);
  }
  return sum;
}

function shiftTorque(shift: ScenarioFile['shifts'][number], sinceS: number): number {
  return shift.frequencyHz > 0
    ? shift.noseDownNm * Math.sin(2 * Math.PI * shift.frequencyHz * sinceS)
    : shift.noseDownNm;
}
