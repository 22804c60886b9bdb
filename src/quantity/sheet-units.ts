/**
 * In which units may a controller count a number of a profile, and how does one become the other? Every unit by what it measures;
 * those in ticks, in parts of the limit and as shares of a filter need what the sheet says of its controller.
 *
 * Angles: 1 deg = pi/180 rad (SI brochure, 9th edition, table 8). A difference from tick to tick is the rate times the tick dt,
 * a sum over ticks the integral over dt. A first-order filter of time constant T, y <- kept y + new x with kept + new = 1, has
 *
 *   new = dt / (T + dt)        the derivative by the backward difference
 *   new = 1 - exp(-dt / T)     exact for an input that is held over the tick, poles at exp(-dt / T)
 *
 * (G. F. Franklin, J. D. Powell, M. L. Workman, Digital Control of Dynamic Systems: discrete equivalents.) Of a complementary filter
 * the gyro's share is the kept one, the accelerometer's the new one.
 */
import { RAD_PER_DEG } from './units.js';

/** What a unit needs to know of the controller: its tick [s] and the current that it calls its limit [A]. */
export interface UnitGround {
  tickS: number;
  limitA: number;
}

/** A unit of a number: from ours into it, back again, and the way back in words; `typed` stands for the number in this unit. */
export interface SheetUnitLaw {
  to: (ours: number, ground: UnitGround) => number;
  back: (typed: number, ground: UnitGround) => number;
  /** How many of it one of ours is; null where it is no mere factor. */
  factor: ((ground: UnitGround) => number) | null;
  backInWords: string;
}

/** What a number of a profile measures. */
export type Dimension =
  | 'current per angle'
  | 'current per pitch rate'
  | 'current per angle and time'
  | 'growth per angle'
  | 'current'
  | 'current per time'
  | 'corner frequency'
  | 'time constant'
  | 'time'
  | 'angle'
  | 'angle per current'
  | 'pitch rate'
  | 'share'
  | 'percent';

type Factor = (ground: UnitGround) => number;
type Factors = Readonly<Record<string, Factor>>;
type Laws = Readonly<Record<string, SheetUnitLaw>>;

const fixed =
  (factor: number): Factor =>
  () =>
    factor;

/** How many of each make 1 A, 1 deg, 1 s. */
const CURRENTS: Factors = { A: fixed(1), mA: fixed(1000), limit: ({ limitA }) => 1 / limitA };
const ANGLES: Factors = { deg: fixed(1), rad: fixed(RAD_PER_DEG) };
const SPANS: Factors = { s: fixed(1), tick: ({ tickS }) => 1 / tickS };
const TIMES: Factors = { s: fixed(1), ms: fixed(1000), ticks: ({ tickS }) => 1 / tickS };

/** Units made of two, named and reckoned by `name` and `factor`. */
function combined(
  first: Factors,
  second: Factors,
  { name, factor }: { name: (a: string, b: string) => string; factor: (a: number, b: number) => number },
): Factors {
  return Object.fromEntries(
    Object.entries(first).flatMap(([a, ofA]) =>
      Object.entries(second).map(([b, ofB]) => [name(a, b), (ground) => factor(ofA(ground), ofB(ground))]),
    ),
  );
}

const per = { name: (a: string, b: string) => `${a}/${b}`, factor: (a: number, b: number) => a / b };
const perGroup = { name: (a: string, b: string) => `${a}/(${b})`, factor: (a: number, b: number) => a / b };
const times = { name: (a: string, b: string) => `${a} ${b}`, factor: (a: number, b: number) => a * b };

const PITCH_RATES = combined(ANGLES, SPANS, per);

/** Units that are mere factors. */
function linear(factors: Factors): Laws {
  const law = (factor: Factor): SheetUnitLaw => ({
    to: (ours, ground) => ours * factor(ground),
    back: (typed, ground) => typed / factor(ground),
    factor,
    backInWords: '',
  });
  return Object.fromEntries(Object.entries(factors).map(([name, factor]) => [name, law(factor)]));
}

const share = (value: number) => Math.max(0, Math.min(1, value));

/** The ways to give a time constant T as a share a tick; `typed` is the share. */
const FILTER_SHARES: Readonly<Record<string, Omit<SheetUnitLaw, 'factor'>>> = {
  'kept share T/(T+dt)': {
    to: (timeS, { tickS }) => timeS / (timeS + tickS),
    back: (kept, { tickS }) => (tickS * share(kept)) / (1 - share(kept)),
    backInWords: 'T = dt x typed / (1 - typed)',
  },
  'new share dt/(T+dt)': {
    to: (timeS, { tickS }) => tickS / (timeS + tickS),
    back: (fresh, { tickS }) => (tickS * (1 - share(fresh))) / share(fresh),
    backInWords: 'T = dt x (1 - typed) / typed',
  },
  'kept share exp(-dt/T)': {
    to: (timeS, { tickS }) => Math.exp(-tickS / timeS),
    back: (kept, { tickS }) => tickS / Math.abs(Math.log(share(kept))),
    backInWords: 'T = -dt / ln(typed)',
  },
  'new share 1-exp(-dt/T)': {
    to: (timeS, { tickS }) => -Math.expm1(-tickS / timeS),
    back: (fresh, { tickS }) => tickS / Math.abs(Math.log1p(-share(fresh))),
    backInWords: 'T = -dt / ln(1 - typed)',
  },
};

const TURN = 2 * Math.PI;

const TIME_CONSTANTS: Laws = {
  ...linear(TIMES),
  Hz: {
    to: (timeS) => 1 / (TURN * timeS),
    back: (hz) => 1 / (TURN * hz),
    factor: null,
    backInWords: 'T = 1 / (2 pi x typed)',
  },
  'rad/s': {
    to: (timeS) => 1 / timeS,
    back: (radPerS) => 1 / radPerS,
    factor: null,
    backInWords: 'T = 1 / typed',
  },
  ...Object.fromEntries(Object.entries(FILTER_SHARES).map(([name, law]) => [name, { ...law, factor: null }])),
};

/** A corner f has the time constant T = 1 / (2 pi f), and is given in all the units of one. */
function corners(): Laws {
  const inverse = (law: SheetUnitLaw): SheetUnitLaw => ({
    to: (hz, ground) => law.to(1 / (TURN * hz), ground),
    back: (typed, ground) => 1 / (TURN * law.back(typed, ground)),
    factor: null,
    backInWords: `${law.backInWords === '' ? 'T in s = typed in its unit' : law.backInWords}; Hz = 1 / (2 pi T)`,
  });
  return {
    ...Object.fromEntries(Object.entries(TIME_CONSTANTS).map(([name, law]) => [name, inverse(law)])),
    ...linear({ Hz: fixed(1), 'rad/s': fixed(TURN) }),
  };
}

/** The units that each dimension may be counted in, ours first or among them. */
export const UNITS_OF: { readonly [D in Dimension]: Laws } = {
  'current per angle': linear(combined(CURRENTS, ANGLES, per)),
  'current per pitch rate': linear(combined(CURRENTS, PITCH_RATES, perGroup)),
  'current per angle and time': linear(combined(CURRENTS, combined(ANGLES, SPANS, times), perGroup)),
  'growth per angle': linear(combined({ '1': fixed(1), percent: fixed(100) }, ANGLES, per)),
  current: linear(CURRENTS),
  'current per time': linear(combined(CURRENTS, SPANS, per)),
  'corner frequency': corners(),
  'time constant': TIME_CONSTANTS,
  time: linear(TIMES),
  angle: linear(ANGLES),
  'angle per current': linear(combined(ANGLES, CURRENTS, per)),
  'pitch rate': linear(PITCH_RATES),
  share: linear({ share: fixed(1), percent: fixed(100) }),
  percent: linear({ percent: fixed(1), share: fixed(1 / 100) }),
};

/** The names of all units, each once. */
export const SHEET_UNITS = [
  ...new Set(Object.values(UNITS_OF).flatMap((laws) => Object.keys(laws))),
] as unknown as readonly [string, ...string[]];

/** True for a unit that counts in parts of the controller's current limit. */
export function needsLimit(unit: string): boolean {
  return /\blimit\b/.test(unit);
}

/** True for a unit that depends on how long a tick of the controller is. */
export function needsTick(unit: string): boolean {
  return /\bticks?\b|\bdt\b/.test(unit);
}
