/**
 * Does the world look the same from behind? A rig mirrored fore and aft, with its script and its noise mirrored too,
 * does the mirror image, to the last bit: sines, tangents and clamps are odd, and a change of sign rounds nothing. A symmetry
 * of the equations, no outside source.
 *
 * What knows fore from aft, and is left out: the headroom lift (it always raises the nose), a rider who brakes harder than
 * he drives, a road that is not level (its grid is read with other rounding from the other end), and ticks at which the
 * motor stands still to the last bit (forward is what it would call driving).
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { run } from '../../src/simulate/run.js';
import type { TapeColumn } from '../../src/simulate/tape.js';
import { prepareTrial, type Circumstances, type Trial } from '../../src/simulate/trial.js';
import { profiles } from './drawn-rig.js';
import { circumstancesIn, levelRoad, scenariosOn } from './drawn-scenario.js';
import { holds } from './properties.js';

/** How each column looks in the mirror: itself, its negative, or the negative of another. */
const IMAGE: Record<TapeColumn, readonly [1 | -1, TapeColumn]> = {
  timeS: [1, 'timeS'],
  pitchRad: [-1, 'pitchRad'],
  pitchRateRadPerS: [-1, 'pitchRateRadPerS'],
  leanRad: [-1, 'leanRad'],
  leanRateRadPerS: [-1, 'leanRateRadPerS'],
  legLengthM: [1, 'legLengthM'],
  positionM: [-1, 'positionM'],
  axleHeightM: [1, 'axleHeightM'],
  speedMPerS: [-1, 'speedMPerS'],
  wheelRateRadPerS: [-1, 'wheelRateRadPerS'],
  estimatedPitchRad: [-1, 'estimatedPitchRad'],
  setPointRad: [-1, 'setPointRad'],
  askedCurrentA: [-1, 'askedCurrentA'],
  requestedCurrentA: [-1, 'requestedCurrentA'],
  currentA: [-1, 'currentA'],
  upperCeilingA: [-1, 'lowerCeilingA'],
  lowerCeilingA: [-1, 'upperCeilingA'],
  bindingCeiling: [1, 'bindingCeiling'],
  headroomShare: [1, 'headroomShare'],
  packV: [1, 'packV'],
  packCurrentA: [1, 'packCurrentA'],
  chargeShare: [1, 'chargeShare'],
  riderTorqueNm: [-1, 'riderTorqueNm'],
  riderTorqueLimitNm: [1, 'riderTorqueLimitNm'],
  feetAccelerationMPerS2: [1, 'feetAccelerationMPerS2'],
  wheelLoadN: [1, 'wheelLoadN'],
  treadForceN: [-1, 'treadForceN'],
};

const NAMES = Object.keys(IMAGE) as TapeColumn[];

/** Circumstances with nothing in them that knows fore from aft; the start rolls. */
function evenHanded({ rider, scenario, ...rest }: Circumstances): Circumstances {
  const { start } = scenario;
  return {
    ...rest,
    rider: { ...rider, pace: { ...rider.pace, brakeMPerS2: rider.pace.driveMPerS2 } },
    scenario: { ...scenario, start: { ...start, speedKmPerH: start.speedKmPerH || 0.1 } },
  };
}

function withoutLift({ shaping, ...rest }: ProfileFile): ProfileFile {
  const { headroomLift: _lift, ...others } = shaping;
  return { ...rest, shaping: others };
}

function mirroredCircumstances({ board, scenario, ...rest }: Circumstances): Circumstances {
  const { start, speeds, shifts, shoves } = scenario;
  return {
    ...rest,
    board: { ...board, deck: { ...board.deck, centreForwardM: -board.deck.centreForwardM } },
    scenario: {
      ...scenario,
      start: {
        ...start,
        speedKmPerH: -start.speedKmPerH,
        ...(start.noseUpDeg !== undefined && { noseUpDeg: -start.noseUpDeg }),
      },
      speeds: speeds.map((point) => ({ ...point, speedKmPerH: -point.speedKmPerH })),
      shifts: shifts.map((shift) => ({ ...shift, noseDownNm: -shift.noseDownNm })),
      shoves: shoves.map((shove) => ({ ...shove, forwardN: -shove.forwardN })),
    },
  };
}

function mirroredTrial(circumstances: Circumstances): Trial {
  const trial = prepareTrial(mirroredCircumstances(circumstances));
  const { gyro, forward, up, tremor } = trial.noise;
  const turned = (numbers: Float64Array) => numbers.map((number) => -number);
  return { ...trial, noise: { gyro: turned(gyro), forward: turned(forward), up, tremor: turned(tremor) } };
}

function mirroredProfile({ shaping, ...rest }: ProfileFile): ProfileFile {
  return { ...rest, shaping: { ...shaping, restTrimNoseUpDeg: -shaping.restTrimNoseUpDeg } };
}

const ENDS: Record<string, string> = { 'nose strike': 'tail strike', 'tail strike': 'nose strike' };

describe('a rig in the mirror', () => {
  holds(
    'does the mirror image of the ride, with air, noise, shoves and every ceiling',
    fc.property(
      circumstancesIn(scenariosOn(levelRoad)).map(evenHanded),
      profiles.map(withoutLift),
      (circumstances, profile) => {
        const here = run(prepareTrial(circumstances), profile, { solver: 'fixed' });
        const there = run(mirroredTrial(circumstances), mirroredProfile(profile), { solver: 'fixed' });
        const end = here.outcome.kind;
        if ((ENDS[end] ?? end) !== there.outcome.kind || here.tape.length !== there.tape.length) {
          throw new Error(`one ended with ${end}, its image with ${there.outcome.kind}`);
        }
        for (const name of NAMES) {
          const [sign, image] = IMAGE[name];
          const [column, other] = [here.tape.columns[name], there.tape.columns[image]];
          for (let row = 0; row < here.tape.length; row++) {
            if (column[row]! !== sign * other[row]!) {
              throw new Error(`${name} in row ${row}: ${column[row]} and ${other[row]}`);
            }
          }
        }
      },
    ),
  );
});
