/**
 * Does more noise make the controller busier? Not always. A request that stands at a ceiling, that is slewed as fast as it
 * may, that the headroom lift swings to and fro, that rings by itself, or that ends in a fall can move less when more
 * noise shakes it; and where a road moves it (the usual rig on class E), the noise of one seed may cancel some of
 * that. What holds is this: on a steady ride, standing or rolling on level road at the speed that is wanted, with no slew
 * limit, headroom lift or ramp, with a loop that does not ring up and upright with no limit met (ceilings, grip, feet), the
 * same noise but louder never lowers the command activity.
 *
 * Why: there the request is nearly linear in the noise, n x, and total variation is a norm, V(n x) = n V(x). That a ride is
 * of that kind is asked of a whisper, the same noise a thousand times less: it must move the request a thousandth as much,
 * twice that at the most (so nothing else moves it, and no ringing makes up for lack of noise), and not ever more as
 * the ride goes on.
 */
import fc from 'fast-check';
import { describe } from 'vitest';
import { commandActivityAPerS } from '../../src/measure/command-activity.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import type { ScenarioFile } from '../../src/quantity/scenario-file.js';
import { NO_CEILING } from '../../src/control/ceilings.js';
import { run } from '../../src/simulate/run.js';
import type { Tape } from '../../src/simulate/tape.js';
import { prepareTrial, type Circumstances } from '../../src/simulate/trial.js';
import { around } from './drawn-numbers.js';
import { profiles } from './drawn-rig.js';
import { circumstancesIn, levelRoad, scenariosOn } from './drawn-scenario.js';
import { holds } from './properties.js';

const WHISPER_RATIO = 1e-3;

/** Most by which a whisper may move the request more than its share of what the noise does. */
const WHISPER_EXCESS_RATIO = 2;

/** Most by which a loop that does not ring up is busier in the second half of a ride than in the first. */
const CALM_GROWTH_RATIO = 1.5;

/** True when a run met no limit: no ceiling, tyre gripping, both feet loaded. */
function isFree({ columns, length }: Tape, gripRatio: number): boolean {
  for (let row = 0; row < length; row++) {
    const slides = Math.abs(columns.treadForceN[row]!) >= gripRatio * columns.wheelLoadN[row]!;
    const light = Math.abs(columns.riderTorqueNm[row]!) >= columns.riderTorqueLimitNm[row]!;
    if (slides || light || columns.bindingCeiling[row] !== NO_CEILING) return false;
  }
  return true;
}

/** Activity of the request over a run and over its halves [A/s]; undefined when the run fell or met a limit. */
function activityOf(circumstances: Circumstances, profile: ProfileFile) {
  const trial = prepareTrial(circumstances);
  const { outcome, tape } = run(trial, profile, { solver: 'fixed' });
  if (outcome.kind !== 'upright' || !isFree(tape, trial.road.gripRatio[0]!)) return undefined;
  const activity = (first: number, end: number) =>
    commandActivityAPerS({ samples: tape.columns.requestedCurrentA, first, end, tickS: tape.tickS });
  const middle = Math.floor(tape.length / 2);
  return {
    whole: activity(0, tape.length),
    before: activity(0, middle),
    after: activity(middle, tape.length),
  };
}

/** A scenario in which nothing happens: rolling on at the speed of its start. */
function uneventful({ start, speeds, ...rest }: ScenarioFile): ScenarioFile {
  return {
    ...rest,
    start: { speedKmPerH: start.speedKmPerH, takesOver: false },
    speeds: speeds.slice(0, 1),
    shifts: [],
    shoves: [],
  };
}

/** A profile without what makes its request follow anything but the error, and with the board's own ceilings. */
function plain({ shaping, ...rest }: ProfileFile): ProfileFile {
  const { slewLimitAPerS: _slew, headroomLift: _lift, ...free } = shaping;
  const { driveCeilingA: _drive, brakeCeilingA: _brake, ...others } = free;
  return { ...rest, shaping: others };
}

describe('command activity', () => {
  holds(
    'is no lower with more of the same noise, on a steady ride away from all limits',
    fc.property(
      circumstancesIn(scenariosOn(levelRoad).map(uneventful)),
      profiles.map(plain),
      around(2, 2.5, 4),
      (circumstances, profile, louderRatio) => {
        const { noiseRatio } = circumstances;
        const noisy = activityOf(circumstances, profile);
        fc.pre(noisy !== undefined && noisy.whole > 0);
        const whisper = activityOf({ ...circumstances, noiseRatio: noiseRatio * WHISPER_RATIO }, profile);
        fc.pre(whisper !== undefined && whisper.after <= CALM_GROWTH_RATIO * whisper.before);
        fc.pre(whisper.whole <= WHISPER_EXCESS_RATIO * WHISPER_RATIO * noisy.whole);
        const louder = activityOf({ ...circumstances, noiseRatio: noiseRatio * louderRatio }, profile);
        fc.pre(louder !== undefined);
        if (louder.whole < noisy.whole) {
          throw new Error(`${louder.whole} A/s with ${louderRatio} times the noise of ${noisy.whole} A/s`);
        }
      },
    ),
  );
});
