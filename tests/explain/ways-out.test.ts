/** Does every lever move its one number, from enough to nearly what is there, and only where that is worse? */
import { describe, expect, it } from 'vitest';
import { CAUSES } from '../../src/explain/causes.js';
import { LEVERS, type Lever, type LeverName } from '../../src/explain/levers.js';
import type { Makings } from '../../src/explain/makings.js';
import { waysOut } from '../../src/explain/ways-out.js';
import { boardWith, profileWith, riderWith } from '../rigs.js';
import { scenarioSchema } from '../../src/quantity/scenario-file.js';

const MAKINGS: Makings = {
  profile: profileWith([20, 1.2]),
  board: boardWith({ controller: { delayTicks: 12, gyroNoiseDegPerS: 2 } }),
  rider: riderWith({
    stance: { legStiffnessNPerM: 40_000 },
    balance: { delayS: 0.24, frequencyRadPerS: 3, tremorNm: 4 },
  }),
  scenario: scenarioSchema.parse({
    summary: 'All that can be moved.',
    durationS: 6,
    chargePercent: 30,
    start: { speedKmPerH: 10 },
    road: [{ lengthM: 10, gripRatio: 0.2 }, { lengthM: 10 }],
    speeds: [
      { atS: 0, speedKmPerH: 10 },
      { atS: 3, speedKmPerH: 24 },
    ],
    measure: { as: 'ride' },
  }),
  seed: 1,
  noiseRatio: 1,
};

const NAMES = Object.keys(LEVERS) as LeverName[];

describe.each(NAMES)('the lever %s', (name) => {
  const { read, enough, step, change }: Lever = LEVERS[name];
  const now = read(MAKINGS);
  const most = enough(now, MAKINGS);

  it('has something to move in a rig that lacks it', () => {
    expect(Math.abs(most - now)).toBeGreaterThan(step(now));
  });

  it('reads what it has set, half way and all the way', () => {
    for (const size of [(now + most) / 2, most]) {
      expect(read(change(MAKINGS, size))).toBeCloseTo(size, 9);
    }
  });

  it('leaves the rig as it was where it is set to what is there', () => {
    expect(read(change(MAKINGS, now))).toBeCloseTo(now, 9);
    expect(change(MAKINGS, now)).toEqual(MAKINGS);
  });
});

describe('the ways out of a limit', () => {
  it('lead from enough towards what is now, never beyond', () => {
    for (const { name } of CAUSES) {
      for (const { now, sizes } of waysOut(name, [MAKINGS])) {
        const distances = sizes.map((size) => Math.abs(size - now));
        expect(distances).toEqual(distances.toSorted((a, b) => b - a));
        expect(Math.min(...distances)).toBeGreaterThan(0);
        const sides = new Set(sizes.map((size) => Math.sign(size - now)));
        expect(sides.size).toBe(1);
      }
    }
  });

  it('are there for every cause outside of the profile, and for none within', () => {
    const without = CAUSES.filter(({ name }) => waysOut(name, [MAKINGS]).length === 0);
    expect(without.every(({ family }) => family === 'profile')).toBe(true);
    expect(without).toHaveLength(CAUSES.filter(({ family }) => family === 'profile').length);
  });

  it('begin from the worst of several cells', () => {
    const other = { ...MAKINGS, rider: riderWith({ balance: { delayS: 0.3 } }) };
    expect(waysOut("the rider's delay", [MAKINGS, other, MAKINGS])[0]!.now).toBe(0.3);
  });

  it('leave out what is there already', () => {
    const usual = { ...MAKINGS, rider: riderWith({ balance: { delayS: 0.12 } }) };
    expect(waysOut("the rider's delay", [usual])).toEqual([]);
  });
});
