/** Does the report of a ride say what the rig does: loops that hold, one that is lost, one that a ceiling cuts? */
import { describe, expect, it } from 'vitest';
import { loopStateOf } from '../../src/linear/growth.js';
import { reportRide, rideLook } from '../../src/linear/ride-report.js';
import type { RidePoint } from '../../src/linear/steady-ride.js';
import { starterPlan } from '../starter-plan.js';

const { board, riders, profiles } = starterPlan();

const ride = (name: string, where: Partial<RidePoint>): RidePoint => ({
  board: board.value,
  rider: riders[0]!.value,
  profile: profiles.find((profile) => profile.name === name)!.value,
  speedKmPerH: 10,
  gradePercent: 0,
  chargePercent: 80,
  ...where,
});

describe('the report', () => {
  it.each([
    ['linen', 10],
    ['linen', 20],
    ['wool', 10],
    ['wool', 20],
    ['gauze', 20],
    ['jersey', 10],
  ])('of %s at %d km/h: it holds, and the simulation agrees with every margin', (name, speedKmPerH) => {
    const report = reportRide(ride(name, { speedKmPerH }))!;
    expect(loopStateOf(report.modes, false)).toBe('holds');
    expect(report.isStable).toBe(true);
    const { delay, gainUp, gainDown } = report.tried;
    expect([delay?.agrees, gainUp?.agrees, gainDown?.agrees]).toEqual([true, true, true]);
  });

  it('of taffeta, which has too much rate gain: the deck grows, and less gain calms it', () => {
    const { modes, isStable, tried, margins } = reportRide(ride('taffeta', {}))!;
    expect(isStable).toBe(false);
    expect(loopStateOf(modes, false)).toBe('lost');
    expect(modes[0]!.shares.deck).toBeGreaterThan(0.5);
    expect(margins.gainDown.value).toBeLessThan(1);
    expect(tried.gainDown!.inside.growthPerS).toBeGreaterThan(0);
    expect(tried.gainDown!.outside.growthPerS).toBeLessThan(0);
  });

  it('of wool: rider and travel wobble with little to spare, of linen: not', () => {
    const [wool, linen] = ['wool', 'linen'].map((name) => reportRide(ride(name, {}))!);
    expect(wool!.modes[0]!.dampingRatio).toBeLessThan(0.05);
    expect(wool!.modes[0]!.shares.rider + wool!.modes[0]!.shares.travel).toBeGreaterThan(0.9);
    expect(wool!.margins.sensitivityPeak.value).toBeGreaterThan(4 * linen!.margins.sensitivityPeak.value);
  });

  it('allows together less than each alone', () => {
    const { margins, allowedByDisk } = reportRide(ride('linen', {}))!;
    expect(allowedByDisk.gainUp).toBeLessThan(margins.gainUp.value);
    expect(allowedByDisk.gainDown).toBeGreaterThan(margins.gainDown.value);
    expect(allowedByDisk.phaseRad).toBeLessThan(margins.phaseRad.value);
  });

  it('has a curve that passes through the margins', () => {
    const { curve, margins } = reportRide(ride('linen', {}))!;
    const last = curve.gain.findLastIndex((gain) => gain > 1);
    expect(2 * Math.PI * curve.frequencyHz[last]!).toBeLessThan(margins.delayS.radPerS!);
    expect(2 * Math.PI * curve.frequencyHz[last + 1]!).toBeGreaterThan(margins.delayS.radPerS!);
    const most = Math.max(...curve.sensitivity);
    expect(most).toBeLessThanOrEqual(margins.sensitivityPeak.value * (1 + 1e-9));
    expect(most).toBeGreaterThan(0.97 * margins.sensitivityPeak.value);
  });

  it('is the same at a look, as far as that goes', () => {
    const whole = reportRide(ride('linen', {}))!;
    const look = rideLook(ride('linen', {}))!;
    expect(Object.keys(look)).toEqual(['margins', 'modes', 'deckStiffnessNmPerDeg', 'gyroNoiseA']);
    expect(whole).toMatchObject(look);
    expect(whole.tried.delay).not.toBeNull();
  });

  it('is null where a ceiling cuts what the steady ride needs', () => {
    expect(reportRide(ride('linen', { speedKmPerH: 60 }))).toBeNull();
  });
});
