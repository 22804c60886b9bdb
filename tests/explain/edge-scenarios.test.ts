/** Are the rides that look for the edge what their words say? */
import { describe, expect, it } from 'vitest';
import type { Makings } from '../../src/explain/makings.js';
import { edgeKinds, STATED_PUSH_NS, type EdgeName } from '../../src/explain/edge-scenarios.js';
import { openCircuitTable } from '../../src/model/open-circuit.js';
import { boardWith, COMPOSED, profileWith, riderWith, scenarioWith } from '../rigs.js';

const board = boardWith();
const makings: Makings = {
  board,
  rider: riderWith(),
  profile: profileWith(COMPOSED),
  scenario: scenarioWith(),
  seed: 1,
  noiseRatio: 1,
};
const kinds = edgeKinds(board);
const made = (name: EdgeName, size: number) =>
  kinds.find((kind) => kind.name === name)!.change(makings, size);
const impulseNS = ({ scenario }: Makings) =>
  scenario.shoves.reduce((sum, { forS, forwardN }) => sum + forS * forwardN, 0);

describe('a size', () => {
  it('is the height of the bump in mm', () => {
    expect(made('bump', 35).scenario.road[1]!.bumpHeightM).toBeCloseTo(0.035, 12);
  });

  it('is the grade in percent, up and down', () => {
    expect(made('climb', 12.5).scenario.road[1]!.gradePercent).toBe(12.5);
    expect(made('descent', 12.5).scenario.road[1]!.gradePercent).toBe(-12.5);
  });

  it('is the impulse of the push in N s, forward from behind', () => {
    expect(impulseNS(made('push from behind', 45))).toBeCloseTo(45, 9);
    expect(impulseNS(made('push from ahead', 45))).toBeCloseTo(-45, 9);
  });

  it('is the delay in ms, in whole ticks of the loop', () => {
    const later = made('extra delay', 10).board.controller;
    expect(((later.delayTicks - board.controller.delayTicks) * 1000) / later.loopRateHz).toBe(10);
  });

  it('is the voltage that the resting pack has lost, at every charge', () => {
    const { openCircuit, ...rest } = made('pack sag', 6).board.pack;
    const [before, after] = [openCircuitTable(board.pack.openCircuit), openCircuitTable(openCircuit)];
    const lostV = Array.from(before, (cellV, index) => (cellV - after[index]!) * board.pack.seriesCells);
    for (const lost of lostV) expect(lost).toBeCloseTo(6, 9);
    expect(rest).toEqual({ ...rest, cellResistanceMilliohm: board.pack.cellResistanceMilliohm });
  });

  it('is the speed of the ride, with the stated push', () => {
    const ride = made('speed', 27);
    expect(ride.scenario.start.speedKmPerH).toBe(27);
    expect(ride.scenario.speeds).toEqual([{ atS: 0, speedKmPerH: 27 }]);
    expect(impulseNS(ride)).toBeCloseTo(STATED_PUSH_NS, 9);
  });
});

describe('every search', () => {
  it('begins with nothing, rises, and can be made to its end', () => {
    for (const { ladder, step, change } of kinds) {
      expect(ladder[0]).toBe(0);
      expect(ladder).toEqual([...new Set(ladder)].toSorted((a, b) => a - b));
      expect(() => change(makings, ladder.at(-1)! * step)).not.toThrow();
    }
  });

  it('rides at the speed, with the pack and the push that it names', () => {
    for (const { ladder, step, change, speedKmPerH, chargePercent, pushNS } of kinds) {
      const ride = change(makings, ladder[1]! * step);
      expect(ride.scenario.chargePercent).toBe(chargePercent);
      if (speedKmPerH !== null) expect(ride.scenario.start.speedKmPerH).toBe(speedKmPerH);
      if (pushNS !== null) expect(impulseNS(ride)).toBeCloseTo(pushNS, 9);
    }
  });

  it('leaves profile, rider and chance as they are', () => {
    for (const { ladder, step, change } of kinds) {
      const { profile, rider, seed, noiseRatio } = change(makings, ladder[1]! * step);
      expect({ profile, rider, seed, noiseRatio }).toEqual({
        profile: makings.profile,
        rider: makings.rider,
        seed: 1,
        noiseRatio: 1,
      });
    }
  });
});
