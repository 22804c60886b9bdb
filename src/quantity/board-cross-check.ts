/**
 * Which values of a board must agree with one another? The two ways of giving the motor's constant,
 * and the points of the open-circuit curve.
 */
import { figures, isGiven, listAt, numberAt } from './raw-value.js';
import { torqueConstantOf } from './motor-constant.js';
import type { Complaint } from './problem.js';

/** Most by which the torque constant may differ from the one that the speed constant implies. */
export const CONSTANT_TOLERANCE_RATIO = 0.05;

const MOTOR = ['motor'] as const;
const TORQUE_CONSTANT = ['motor', 'torqueConstantNmPerA'] as const;
const SPEED_CONSTANT = ['motor', 'speedConstantRpmPerV'] as const;

/**
 * Torque constants per other amperes over the one per equivalent direct-current ampere, with sine
 * drive: sqrt(3)/2 per peak and sqrt(3/2) per rms ampere of one phase (three-phase power balance;
 * that makers differ in the ampere they mean: Celera Motion, "What Motor Torque Constant to Use for
 * Drive Type", 2021).
 */
const OTHER_AMPERES = [
  { ratio: Math.sqrt(3) / 2, words: 'the peak ampere of one phase' },
  { ratio: Math.sqrt(3 / 2), words: 'the rms ampere of one phase' },
] as const;
const OTHER_AMPERE_TOLERANCE_RATIO = 0.03;

function ampereProbablyMeant(ratio: number): string {
  const near = OTHER_AMPERES.find(
    (other) => Math.abs(ratio / other.ratio - 1) < OTHER_AMPERE_TOLERANCE_RATIO,
  );
  return near === undefined ? '' : `, as if it were per ${near.words}`;
}

function motorConstants(raw: unknown): Complaint[] {
  const motor = isGiven(raw, MOTOR);
  if (motor && !isGiven(raw, TORQUE_CONSTANT) && !isGiven(raw, SPEED_CONSTANT)) {
    const expected = 'torqueConstantNmPerA in Nm/A or speedConstantRpmPerV in rpm/V';
    return [{ path: TORQUE_CONSTANT, expected, received: 'neither' }];
  }
  const torqueConstant = numberAt(raw, TORQUE_CONSTANT);
  const speedConstant = numberAt(raw, SPEED_CONSTANT);
  if (torqueConstant === undefined || speedConstant === undefined || speedConstant <= 0) return [];
  const implied = torqueConstantOf(speedConstant);
  const ratio = torqueConstant / implied;
  const apartRatio = Math.abs(ratio - 1);
  if (apartRatio <= CONSTANT_TOLERANCE_RATIO) return [];
  const expected =
    `a torque constant within 5 % of 60/(2 pi x ${figures(speedConstant)} rpm/V) = ${figures(implied)} Nm/A, ` +
    'per ampere of the equivalent direct-current motor (not per ampere in one phase), or only one of the two';
  const received = `${figures(torqueConstant)} Nm/A, which is ${figures(100 * apartRatio)} % off${ampereProbablyMeant(ratio)}`;
  return [{ path: TORQUE_CONSTANT, expected, received }];
}

function risingColumn(raw: unknown, column: { key: string; unit: string; word: string }): Complaint[] {
  const complaints: Complaint[] = [];
  let before: number | undefined;
  listAt(raw, ['pack', 'openCircuit']).forEach((point, index) => {
    const value = numberAt(point, [column.key]);
    if (value === undefined) return;
    if (before !== undefined && value <= before) {
      complaints.push({
        path: ['pack', 'openCircuit', index, column.key],
        expected: `a ${column.word} above ${figures(before)} ${column.unit}, that of the point before`,
        received: `${figures(value)} ${column.unit}`,
      });
    }
    before = value;
  });
  return complaints;
}

/** Complaints about values of a board that do not agree; runs on any value, faulty or not. */
export function crossCheckBoard(raw: unknown): Complaint[] {
  return [
    ...motorConstants(raw),
    ...risingColumn(raw, { key: 'chargePercent', unit: '%', word: 'charge' }),
    ...risingColumn(raw, { key: 'cellV', unit: 'V', word: 'voltage' }),
  ];
}
