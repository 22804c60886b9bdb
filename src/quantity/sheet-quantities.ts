/**
 * What must a controller sheet know of each number of a profile? What it measures, which way its sign goes, and what it means
 * when the controller has no place for it.
 */
import type { Dimension } from './sheet-units.js';

/**
 * How the sign of a number follows the way in which the controller counts: a gain by pitch, current and error; the rate gain by
 * pitch rate and current; an angle or an angle per ampere that we count nose up; a size has none.
 */
export type SignRule = 'gain' | 'rate gain' | 'nose up' | 'nose up per current' | 'size';

/**
 * What the controller does where the number cannot be typed: as if it were 0; without it, as where a profile leaves it out; with no
 * limit at all; without the whole section it belongs to; or what it was built to do, which nobody here knows.
 */
export type Absence = 'zero' | 'none' | 'no limit' | 'no section' | 'unknown';

/** What a sheet must know of a number; `least` and `most` bound what is read back, where the law can divide by nothing less. */
export interface SheetQuantity {
  dimension: Dimension;
  sign: SignRule;
  absence: Absence;
  least?: number;
  most?: number;
}

const LEAST_CEILING_A = 1e-3;
const LONGEST_S = 1e9;

/** The numbers of a profile by their keys. */
export const SHEET_QUANTITIES: Readonly<Record<string, SheetQuantity>> = {
  proportionalAPerDeg: { dimension: 'current per angle', sign: 'gain', absence: 'zero' },
  rateAPerDegPerS: { dimension: 'current per pitch rate', sign: 'rate gain', absence: 'zero' },
  integralAPerDegS: { dimension: 'current per angle and time', sign: 'gain', absence: 'zero' },
  progressiveStiffnessPerDeg: { dimension: 'growth per angle', sign: 'size', absence: 'zero' },
  integralLimitA: { dimension: 'current', sign: 'size', absence: 'no limit' },
  slewLimitAPerS: { dimension: 'current per time', sign: 'size', absence: 'none' },
  driveCeilingA: { dimension: 'current', sign: 'size', absence: 'none', least: LEAST_CEILING_A },
  brakeCeilingA: { dimension: 'current', sign: 'size', absence: 'none', least: LEAST_CEILING_A },
  gyroLowPassHz: { dimension: 'corner frequency', sign: 'size', absence: 'none', most: 1e9 },
  blendTimeS: { dimension: 'time constant', sign: 'size', absence: 'unknown', most: LONGEST_S },
  restTrimNoseUpDeg: { dimension: 'angle', sign: 'nose up', absence: 'zero' },
  engageRampS: { dimension: 'time', sign: 'size', absence: 'zero' },
  filterTimeS: { dimension: 'time constant', sign: 'size', absence: 'unknown', most: LONGEST_S },
  currentShare: { dimension: 'share', sign: 'size', absence: 'zero' },
  noseUpDegPerA: { dimension: 'angle per current', sign: 'nose up per current', absence: 'zero' },
  belowPercent: { dimension: 'percent', sign: 'size', absence: 'unknown', least: 1e-3 },
  upToDeg: { dimension: 'angle', sign: 'size', absence: 'no section' },
  rateDegPerS: { dimension: 'pitch rate', sign: 'size', absence: 'unknown' },
};

/** What a sheet must know of a number by its key; throws for a key that no profile has. */
export function sheetQuantity(key: string): SheetQuantity {
  const found = SHEET_QUANTITIES[key];
  if (found === undefined) throw new Error(`no profile has a number ${key}`);
  return found;
}
