/**
 * What the controller believes the pitch to be: a complementary filter that trusts the gyro over short
 * times and the accelerometer over long ones, and an optional low-pass on the gyro rate.
 *
 *   est  <- alpha (est + gyro dt) + (1 - alpha) theta_acc,   alpha = blend / (blend + dt)
 *   rate <- rate + (1 - exp(-2 pi f dt)) (gyro - rate)
 *
 * Under lasting acceleration a the accelerometer is wrong by atan(a/g) and the estimate follows it: real boards do so too.
 */

/** Filter constants for one loop. */
export interface EstimatorLaw {
  tickS: number;
  gyroTrustRatio: number;
  rateFollowRatio: number;
}

/** Where the estimated pitch [rad] lives in an estimator's memory. */
export const ESTIMATED_PITCH = 0;
/** Filtered pitch rate, rad/s. */
export const ESTIMATED_RATE = 1;
/** Length of an estimator's memory. */
export const ESTIMATOR_SIZE = 2;

/** Where the gyro's rate [rad/s] lives in a sensor reading. */
export const GYRO = 0;
/** Pitch by the accelerometer alone, rad. */
export const ACCELEROMETER_PITCH = 1;
/** Length of a sensor reading. */
export const READING_SIZE = 2;

/** Filter constants from a blend time [s], a tick [s] and the corner of the gyro low-pass [Hz], if any. */
export function estimatorLaw(blendTimeS: number, tickS: number, gyroLowPassHz?: number): EstimatorLaw {
  return {
    tickS,
    gyroTrustRatio: blendTimeS / (blendTimeS + tickS),
    rateFollowRatio: gyroLowPassHz === undefined ? 1 : 1 - Math.exp(-2 * Math.PI * gyroLowPassHz * tickS),
  };
}

/** Takes one reading into the estimate. */
export function estimate(law: EstimatorLaw, reading: Float64Array, memory: Float64Array): void {
  const gyro = reading[GYRO]!;
  const predicted = memory[ESTIMATED_PITCH]! + gyro * law.tickS;
  memory[ESTIMATED_PITCH] =
    law.gyroTrustRatio * predicted + (1 - law.gyroTrustRatio) * reading[ACCELEROMETER_PITCH]!;
  memory[ESTIMATED_RATE]! += law.rateFollowRatio * (gyro - memory[ESTIMATED_RATE]!);
}
