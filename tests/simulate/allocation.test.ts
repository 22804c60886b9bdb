/**
 * Does the loop allocate? Five minutes at the usual rate in a process of its own, so that nobody else's garbage is
 * counted, with a nursery so large that nothing is collected meanwhile. One boxed number a tick would be 12 bytes.
 */
import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { bundled, ROOT } from '../bundled.js';

const PROGRAM = `
import { controlLaw } from './src/control/law.ts';
import { loopPlan, runTicks } from './src/simulate/loop.ts';
import { integratorFor } from './src/simulate/run.ts';
import { startMoment } from './src/simulate/start.ts';
import { createTape } from './src/simulate/tape.ts';
import { COMPOSED, profileWith, scenarioWith, trialWith } from './tests/rigs.ts';
const scenario = scenarioWith({
  durationS: 300,
  road: [{ lengthM: 30 }, { lengthM: 30, gradePercent: 4, easeM: 5, roughness: 'B' }, { lengthM: 1000, roughness: 'B' }],
  start: { speedKmPerH: 8 },
  speeds: [{ atS: 0, speedKmPerH: 8 }],
});
const profile = profileWith(COMPOSED, { headroomLift: { belowPercent: 30, upToDeg: 4, rateDegPerS: 5 } });
const trial = trialWith({ scenario, noiseRatio: 1 });
const tape = createTape(trial.script.tickCount + 1, trial.tickS);
const law = controlLaw(profile, trial.board);
const plan = loopPlan(trial, law, integratorFor(trial, { solver: 'fixed' }));
const moment = startMoment(trial, law);
const rides = (untilTick) => {
  const before = process.memoryUsage().heapUsed;
  const ticks = untilTick - moment.tick;
  const fall = runTicks(plan, moment, { tape, untilTick });
  return { up: fall === undefined, ticks, bytesPerTick: (process.memoryUsage().heapUsed - before) / ticks };
};
rides(40_000); // until the code is compiled
console.log(JSON.stringify([rides(90_000), rides(140_000), rides(190_000), rides(240_000)]));
`;

interface Stretch {
  up: boolean;
  ticks: number;
  bytesPerTick: number;
}

it('allocates less than one byte a tick over 50,000 ticks, once it is compiled', () => {
  const printed = execFileSync(
    process.execPath,
    ['--max-semi-space-size=128', '--min-semi-space-size=64', '--input-type=module'],
    { input: bundled(PROGRAM), cwd: ROOT, encoding: 'utf8' },
  );
  const stretches = JSON.parse(printed) as Stretch[];
  expect(stretches.every(({ up, ticks }) => up && ticks === 50_000)).toBe(true);
  expect(Math.min(...stretches.map(({ bytesPerTick }) => Math.abs(bytesPerTick)))).toBeLessThan(1);
});
