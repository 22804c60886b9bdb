/**
 * Values that are as they should be, as a person would write them into files: the ground on which
 * tests put one fault. Every call makes new ones.
 */

/** A board with only what must be given. */
export function validBoard() {
  return {
    summary: 'A board for tests',
    wheel: { radiusM: 0.14, massKg: 6, inertiaKgM2: 0.055 },
    deck: { massKg: 8, inertiaKgM2: 0.42, reachM: 0.37 },
    motor: { torqueConstantNmPerA: 0.62, resistanceOhm: 0.1, driveCurrentA: 80, brakeCurrentA: 80 },
    pack: {
      seriesCells: 15,
      cellResistanceMilliohm: 12,
      cellCapacityAh: 5,
      dischargeCurrentA: 40,
      chargeCurrentA: 20,
    },
  };
}

/** A rider with only what must be given. */
export function validRider() {
  return {
    summary: 'A rider for tests',
    body: { massKg: 78, statureM: 1.78 },
    balance: { delayS: 0.14, frequencyRadPerS: 2, dampingRatio: 0.8 },
  };
}

/** A profile with only what must be given. */
export function validProfile() {
  return { summary: 'A profile for tests', gains: { proportionalAPerDeg: 20, rateAPerDegPerS: 1.2 } };
}

/** A scenario with one of everything that can have a name. */
export function validScenario() {
  return {
    summary: 'A scenario for tests',
    durationS: 10,
    start: { noseUpDeg: 6 },
    road: [{ lengthM: 5 }, { name: 'kerb', lengthM: 5, stepUpM: -0.08 }],
    speeds: [
      { atS: 0, speedKmPerH: 0 },
      { atS: 4, speedKmPerH: 12 },
    ],
    shifts: [{ name: 'weave', atS: 5, forS: 2, noseDownNm: 10 }],
    shoves: [{ name: 'gust', atS: 8, forS: 0.2, forwardN: 100 }],
    measure: { from: 'start', as: 'step' },
  };
}

/** The value with another one put at the path; the path must exist but for its last step. */
export function altered<T>(value: T, path: readonly (string | number)[], put: unknown): T {
  const copy = structuredClone(value);
  let place: unknown = copy;
  for (const step of path.slice(0, -1)) place = Reflect.get(place as object, step);
  const entry = { value: put, enumerable: true, configurable: true, writable: true };
  Object.defineProperty(place, path.at(-1) ?? '', entry);
  return copy;
}

export function validSheet() {
  return {
    summary: 'Made for tests.',
    loopRateHz: 1000,
    counts: { pitch: 'nose down', current: 'forward' },
    rows: [{ label: 'Firmness', quantity: 'proportionalAPerDeg', unit: 'A/deg' }],
  };
}

export function validKept() {
  return {
    numbers: '7k2m-q9dx',
    seal: 'q9dx-7k2m',
    origin: { from: 'felt', on: '2026-05-31T18:20:00Z', underfoot: '0.1.0', scales: 1 },
    profile: validProfile(),
    rig: { boardName: 'brick', board: validBoard(), riders: [{ name: 'kim', rider: validRider() }] },
    cells: { scenarios: ['level'], chargesPercent: [null], seeds: [1], count: 1 },
    figures: {
      failures: 0,
      score: 0.2,
      overshootPercent: 12,
      settlingTimeS: 0.8,
      notSettled: 0,
      saturationPercent: 0,
      notFor: [],
    },
    margins: null,
    feel: { rider: 'kim', words: ['composed'] },
    limits: [],
    weakest: [],
    slips: [],
  };
}
