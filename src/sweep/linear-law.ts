/**
 * What does a profile's law make of the sensors, for small deviations? In closed form from the estimator and the law, tick by
 * tick as they run, so that a candidate costs no differencing:
 *
 *   est = (a (T gyro) + (1 - a) acc) / (1 - a/z)          rate = r gyro / (1 - (1 - r)/z)
 *   load = f/z asked / (1 - (1 - f)/z)                     integral = I T/z / (1 - 1/z)
 *   asked = (P' + integral) (est - s load) + D rate + share load,   P' = P (1 + 2 progressive |e|) at the ride's own error e
 */
import { settledPitch, type ControlLaw } from '../control/law.js';
import { minus, over, plus, real, times, type Complex } from '../linear/complex.js';
import { DEG_PER_RAD } from '../quantity/units.js';

/** The gains that small deviations from a ride meet: A/deg, A/(deg/s), A/(deg s). */
export interface SmallGains {
  proportional: number;
  rate: number;
  integral: number;
}

/** The gains of a law about a ride that takes a current [A]; an integral that is at its limit stays there. */
export function smallGains(law: ControlLaw, currentA: number): SmallGains {
  const { pitchRad } = settledPitch(law, currentA);
  const errorDeg = (pitchRad - law.restTrimRad - law.loadSetPointRadPerA * currentA) * DEG_PER_RAD;
  const wantedA = Math.abs((1 - law.loadCurrentShare) * currentA);
  return {
    proportional: law.proportionalAPerDeg * (1 + 2 * law.progressivePerDeg * Math.abs(errorDeg)),
    rate: law.rateAPerDegPerS,
    integral: wantedA < law.integralLimitA ? law.integralAPerDegS : 0,
  };
}

/** Shares to which a ceiling may cut the answer of a large swing. */
const CUT_SHARES = [1, 1 / 2, 1 / 4, 1 / 8] as const;
/** Swing of the error up to which progressive gain may help, deg: by then a tip of the board is down. */
const LARGE_SWING_DEG = 15;
/** Shares of an integral that its limit may leave, and times [s] by which what it cuts off acts as proportional gain. */
const LIMITED_INTEGRALS = [1, 1 / 2, 1 / 4, 1 / 8, 0].flatMap((share) =>
  [0, 1 / 16, 1 / 8, 1 / 4].map((inStepS) => ({ share, inStepS })),
);

/**
 * All that large swings may make of the gains about a ride, the small ones first: progressive gain grows with the swing, ceilings
 * leave a share of everything, and an integral that runs to and fro between its limits lags by less than a quarter of a swing, so
 * that part of it acts as more proportional gain (the fundamental waves of describing functions; K. J. Astrom and R. M. Murray,
 * Feedback Systems, 2008, from memory).
 */
export function gainsOfSwings(law: ControlLaw, small: SmallGains): SmallGains[] {
  const grown = 1 + (law.progressivePerDeg * 8 * LARGE_SWING_DEG) / (3 * Math.PI);
  const most = Math.max(small.proportional, law.proportionalAPerDeg * grown);
  const middle = Math.sqrt(small.proportional * most);
  const proportionals = most > small.proportional ? [small.proportional, middle, most] : [most];
  const hasIntegral = law.integralAPerDegS > 0 && law.integralLimitA > 0;
  const integrals = hasIntegral ? LIMITED_INTEGRALS : [{ share: 0, inStepS: 0 }];
  return CUT_SHARES.flatMap((cut) =>
    proportionals.flatMap((proportional) =>
      integrals.map(({ share, inStepS }) => ({
        proportional: cut * (proportional + inStepS * law.integralAPerDegS),
        integral: cut * share * law.integralAPerDegS,
        rate: cut * small.rate,
      })),
    ),
  );
}

/** What of a law, beside its gains, counts for small deviations: laws that share these share a table. */
export type SmallShaping = Pick<
  ControlLaw,
  'tickS' | 'loadFollowRatio' | 'loadCurrentShare' | 'loadSetPointRadPerA'
> & { estimator: Pick<ControlLaw['estimator'], 'gyroTrustRatio' | 'rateFollowRatio'> };

/** One minus the loop through the law at one z, in parts: `rest - P' p - I i - D d` for the gains P', I and D. */
export interface LoopParts {
  rest: Complex;
  p: Complex;
  i: Complex;
  d: Complex;
}

/** The parts of one minus the loop at z, from what the sensors answer to an ampere there. */
export function loopParts(
  law: SmallShaping,
  z: Complex,
  { gyro, accelerometerPitch }: { gyro: Complex; accelerometerPitch: Complex },
): LoopParts {
  const { gyroTrustRatio: a, rateFollowRatio: r } = law.estimator;
  const one = real(1);
  const lag = (keepRatio: number) => minus(one, over(real(keepRatio), z));
  const seen = plus(times(real(a * law.tickS), gyro), times(real(1 - a), accelerometerPitch));
  const estimate = over(times(real(DEG_PER_RAD), seen), lag(a));
  const rate = over(times(real(DEG_PER_RAD * r), gyro), lag(1 - r));
  const load = over(real(law.loadFollowRatio), minus(z, real(1 - law.loadFollowRatio)));
  const error = minus(estimate, times(real(DEG_PER_RAD * law.loadSetPointRadPerA), load));
  return {
    rest: minus(one, times(real(law.loadCurrentShare), load)),
    p: error,
    i: over(times(real(law.tickS), error), minus(z, one)),
    d: rate,
  };
}

/** One minus the loop with gains put in: zero at the motions of the closed loop. */
export function oneMinusLoop({ rest, p, i, d }: LoopParts, gains: SmallGains): Complex {
  const part = (name: 're' | 'im') =>
    rest[name] - gains.proportional * p[name] - gains.integral * i[name] - gains.rate * d[name];
  return { re: part('re'), im: part('im') };
}
