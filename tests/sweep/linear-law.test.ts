/**
 * Is the loop of plant and law in closed form that of the tick map, where sensors, estimate and law are differenced together?
 */
import { describe, expect, it } from 'vitest';
import { controlLaw, REQUESTED } from '../../src/control/law.js';
import { magnitude, minus, over, plus, real, turned } from '../../src/linear/complex.js';
import { loopGain, loopView } from '../../src/linear/loop-view.js';
import { steadyRide, type RidePoint } from '../../src/linear/steady-ride.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { loopParts, oneMinusLoop, smallGains } from '../../src/sweep/linear-law.js';
import { sensorsOf } from '../../src/sweep/linear-plant.js';
import { boardWith, COMPOSED, profileWith, riderWith } from '../rigs.js';

const where = { board: boardWith(), rider: riderWith(), gradePercent: 0, chargePercent: 80 };
const load = { filterTimeS: 0.3, currentShare: 0.3, noseUpDegPerA: 0.02 };

describe('one minus the loop', () => {
  it.each<[string, ProfileFile, Partial<RidePoint>]>([
    ['of two gains, standing', profileWith(COMPOSED), { speedKmPerH: 0 }],
    ['of two gains, rolling', profileWith(COMPOSED), {}],
    ['with an integral', profileWith([20, 1.2, 30]), {}],
    ['with an integral that is at its limit', profileWith([20, 1.2, 30], { integralLimitA: 0.5 }), {}],
    ['with a low-pass on the gyro', profileWith(COMPOSED, { gyroLowPassHz: 20, blendTimeS: 0.4 }), {}],
    ['with progressive gain', profileWith(COMPOSED, { progressiveStiffnessPerDeg: 0.3 }), {}],
    ['with feed-forward of the load', profileWith([20, 1.2, 30], { loadFeedForward: load }), {}],
    [
      'without a tick of delay',
      profileWith(COMPOSED),
      { board: boardWith({ controller: { loopRateHz: 800, delayTicks: 0 } }) },
    ],
    [
      'three ticks late',
      profileWith(COMPOSED),
      { board: boardWith({ controller: { loopRateHz: 800, delayTicks: 3 } }) },
    ],
  ])('%s is that of the tick map', (_name, profile, changes) => {
    const point: RidePoint = { ...where, profile, speedKmPerH: 12, ...changes };
    const ride = steadyRide(point);
    const view = loopView(ride);
    const law = controlLaw(profile, point.board);
    const gains = smallGains(law, ride.moment.controller[REQUESTED]!);
    const sensors = sensorsOf(ride);
    for (const radPerS of [0.5, 2, 6, 15, 40, 120, 400, 1500]) {
      const z = turned(radPerS * view.map.tickS);
      const none = { gyro: real(0), accelerometerPitch: real(0) };
      // The tick map is broken between law and motor: there the law still hears of its own request, as the load that it feeds forward.
      const own = oneMinusLoop(loopParts(law, z, none), gains);
      const ours = over(oneMinusLoop(loopParts(law, z, sensors(z)), gains), own);
      const theirs = plus(real(1), loopGain(view, radPerS, { rider: true }));
      expect(magnitude(minus(ours, theirs)) / (1 + magnitude(theirs))).toBeLessThan(1e-9);
    }
  });
});
