/**
 * Our ceilings and our pack against ceilings.py, which finds every limit numerically with 40 digits from its physical
 * statement: halving for powers, the best of all duties for voltage (`ceilings.json`). The machine and the pack are
 * the textbook ones: K_t w + R_m i at the motor, U - I R at the pack, no loss between them.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  CEILINGS_SIZE,
  findCeilings,
  LOWER,
  LOWER_CAUSE,
  UPPER,
  UPPER_CAUSE,
} from '../../src/control/ceilings.js';
import {
  CHARGE,
  MOTION_SIZE,
  MOTOR_CURRENT,
  MOTOR_SPEED,
  OPEN_VOLTAGE,
  PACK_CURRENT,
  PACK_SIZE,
  PACK_VOLTAGE,
  updatePack,
} from '../../src/model/battery.js';
import { CHARGE_INTERVALS } from '../../src/model/open-circuit.js';
import { CEILINGS } from '../../src/simulate/tape.js';
import { plantWith } from '../rigs.js';

interface Case {
  kind: string;
  given: number[];
  limitsA: [upper: number, lower: number];
  upperNames: string[];
  lowerNames: string[];
}

interface PackCase {
  given: number[];
  packCurrentA: number;
  packV: number;
}

const { givenOrder, cases, packGivenOrder, packs } = JSON.parse(
  readFileSync(new URL('ceilings.json', import.meta.url), 'utf8'),
) as { givenOrder: string[]; cases: Case[]; packGivenOrder: string[]; packs: PackCase[] };

const RELATIVE = 1e-9;

/** What a case gives, by name. */
function namesOf(order: string[], given: number[]): (name: string) => number {
  expect(given).toHaveLength(order.length);
  return (name) => {
    const value = given[order.indexOf(name)];
    if (value === undefined) throw new Error(`no ${name} in a case`);
    return value;
  };
}

/** The usual plant with motor and pack of a case; the pack's voltage is the same at every charge. */
function plantOfCase(value: (name: string) => number, changes: object = {}) {
  const usual = plantWith();
  return plantWith({
    motor: {
      ...usual.motor,
      torqueConstantNmPerA: value('torqueConstantNmPerA'),
      resistanceOhm: value('motorOhm'),
    },
    pack: {
      ...usual.pack,
      resistanceOhm: value('packOhm'),
      seriesCells: 1,
      cellOpenCircuitV: new Float64Array(CHARGE_INTERVALS + 1).fill(value('openV')),
      ...changes,
    },
  });
}

function ceilingsOf({ given }: Case) {
  const value = namesOf(givenOrder, given);
  const plant = plantOfCase(value, {
    modulationRatio: value('modulationRatio'),
    dischargeCurrentA: value('dischargeCurrentA'),
    chargeCurrentA: value('chargeCurrentA'),
  });
  const law = { driveCurrentA: value('driveCurrentA'), brakeCurrentA: value('brakeCurrentA') };
  const motion = new Float64Array(MOTION_SIZE);
  motion[MOTOR_SPEED] = value('motorSpeedRadPerS');
  const pack = new Float64Array(PACK_SIZE);
  pack[OPEN_VOLTAGE] = value('openV');
  const ceilings = new Float64Array(CEILINGS_SIZE);
  findCeilings(law, plant, { motion, pack, ceilings });
  return {
    limits: [ceilings[UPPER]!, ceilings[LOWER]!],
    upperName: CEILINGS[ceilings[UPPER_CAUSE]!]!,
    lowerName: CEILINGS[ceilings[LOWER_CAUSE]!]!,
  };
}

function expectNear(actual: number, known: number, what: string): void {
  expect(Number.isFinite(known), what).toBe(true);
  expect(Math.abs(actual - known), `${what}: ${actual}, known ${known}`).toBeLessThanOrEqual(
    RELATIVE * Math.abs(known),
  );
}

/** How often each name comes first. */
function tally(lists: string[][]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const [first] of lists) counts[first!] = (counts[first!] ?? 0) + 1;
  return counts;
}

describe('ceilings found numerically from their physical statements', () => {
  const kinds = [...new Set(cases.map(({ kind }) => kind))];

  it.each(kinds)('are ours, with their causes: %s', (kind) => {
    for (const [place, known] of cases.entries()) {
      if (known.kind !== kind) continue;
      const { limits, upperName, lowerName } = ceilingsOf(known);
      const what = `case ${place} (${kind})`;
      expectNear(limits[0]!, known.limitsA[0], `${what}, upper`);
      expectNear(limits[1]!, known.limitsA[1], `${what}, lower`);
      // The most that duty can draw from a pack is its matched load: where both bind, rounding decides which is named.
      const rounded = kind !== 'tie in binary';
      const allowed = (names: string[]) => (rounded ? names : names.slice(0, 1));
      expect(allowed(known.upperNames), `${what}, upper`).toContain(upperName);
      expect(allowed(known.lowerNames), `${what}, lower`).toContain(lowerName);
    }
  });

  it('only matched load ties but for the ties meant', () => {
    for (const { kind, upperNames, lowerNames } of cases) {
      for (const names of [upperNames, lowerNames]) {
        if (kind === 'tie in binary') expect(names).toHaveLength(2);
        else if (names.length > 1) expect(names).toEqual(['pack out', 'voltage']);
      }
    }
  });

  it('cover every cause on both sides, both ways and standing', () => {
    expect(cases.length).toBeGreaterThanOrEqual(200);
    const single = cases.filter(
      ({ upperNames, lowerNames }) => upperNames.length === 1 && lowerNames.length === 1,
    );
    for (const counts of [
      tally(single.map((known) => known.upperNames)),
      tally(single.map((known) => known.lowerNames)),
    ]) {
      expect(Object.keys(counts).sort()).toEqual(['brake', 'drive', 'pack in', 'pack out', 'voltage']);
      for (const count of Object.values(counts)) expect(count).toBeGreaterThanOrEqual(10);
    }
    const speeds = cases.map(({ given }) => namesOf(givenOrder, given)('motorSpeedRadPerS'));
    for (const sign of [-1, 0, 1]) {
      expect(speeds.filter((speed) => Math.sign(speed) === sign).length).toBeGreaterThanOrEqual(20);
    }
    const met = cases.filter(({ limitsA }) => limitsA[0] === limitsA[1]);
    expect(new Set(met.map(({ limitsA }) => Math.sign(limitsA[0])))).toEqual(new Set([-1, 1]));
  });
});

describe('pack current with (U - I R) I = P, found by halving', () => {
  it.each(packs)('$given', (known) => {
    const value = namesOf(packGivenOrder, known.given);
    const motion = new Float64Array(MOTION_SIZE);
    motion[MOTOR_CURRENT] = value('motorCurrentA');
    motion[MOTOR_SPEED] = value('motorSpeedRadPerS');
    const pack = new Float64Array(PACK_SIZE);
    pack[CHARGE] = 0.5;
    updatePack(plantOfCase(value), motion, pack);
    expectNear(pack[PACK_CURRENT]!, known.packCurrentA, 'current');
    expectNear(pack[PACK_VOLTAGE]!, known.packV, 'voltage');
    expect(pack[OPEN_VOLTAGE]).toBe(value('openV'));
  });
});
