/**
 * Which steady rides are looked at? The usual ones, or those that somebody asked for; every fault of what was asked is told
 * at once.
 */
import { USUAL_CHARGE_PERCENT } from '../explain/edge-scenarios.js';
import type { Checked, Problem } from '../quantity/problem.js';

/** A steady ride by its speed and grade. */
export interface RideWhere {
  speedKmPerH: number;
  gradePercent: number;
}

/** The rides and the state of the pack to look at them with, %. */
export interface RideChoice {
  rides: RideWhere[];
  chargePercent: number;
}

/** What somebody typed: speeds [km/h] divided by commas, a grade [%], a state of charge [%]; undefined for the usual. */
export interface RideTexts {
  speed?: string | undefined;
  grade?: string | undefined;
  charge?: string | undefined;
}

/** The usual rides: standing, two paces on the level, and the slower one up a hill. */
export const USUAL_SPEEDS_KM_PER_H = [0, 10, 20] as const;
const USUAL_CLIMB: RideWhere = { speedKmPerH: 10, gradePercent: 8 };

const LIMITS = {
  speed: { least: 0, most: 60, unit: 'km/h' },
  grade: { least: -40, most: 40, unit: '%' },
  charge: { least: 1, most: 100, unit: '%' },
} as const;
const MOST_SPEEDS = 6;

/** The rides for what was typed: every speed on the level, and every one above zero on the grade as well, if there is one. */
export function chooseRides({ speed, grade, charge }: RideTexts): Checked<RideChoice, Problem> {
  const faults: Problem[] = [];
  const number = (key: keyof typeof LIMITS, text: string): number => {
    const value = Number(text);
    const { least, most, unit } = LIMITS[key];
    if (text.trim() === '' || !(value >= least && value <= most)) {
      faults.push(problem(key, `a number from ${least} to ${most} ${unit}`, `'${text.trim()}'`));
    }
    return value;
  };
  const speeds =
    speed === undefined
      ? [...USUAL_SPEEDS_KM_PER_H]
      : [...new Set(speed.split(',').map((text) => number('speed', text)))];
  if (speeds.length > MOST_SPEEDS) {
    faults.push(problem('speed', `at most ${MOST_SPEEDS} speeds`, `${speeds.length}`));
  }
  const gradePercent = grade === undefined ? 0 : number('grade', grade);
  const chargePercent = charge === undefined ? USUAL_CHARGE_PERCENT : number('charge', charge);
  if (faults.length > 0) return { ok: false, faults };
  const level = speeds.map((speedKmPerH) => ({ speedKmPerH, gradePercent: 0 }));
  const moving = speeds.filter((speedKmPerH) => speedKmPerH > 0);
  const onGrade = gradePercent === 0 ? [] : moving.map((speedKmPerH) => ({ speedKmPerH, gradePercent }));
  const isUsual = speed === undefined && grade === undefined;
  return { ok: true, value: { rides: [...level, ...(isUsual ? [USUAL_CLIMB] : onGrade)], chargePercent } };
}

function problem(key: string, expected: string, received: string): Problem {
  return { file: '', line: null, column: null, key, expected, received };
}
