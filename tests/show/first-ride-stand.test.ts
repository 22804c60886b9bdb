/**
 * Does the plan say of a free wheel and of a board in the hand what physics says, and does it ask for nothing that nobody can feel?
 */
import { expect, it } from 'vitest';
import { CEILINGS_SIZE, LOWER, LOWER_FULL, UPPER, UPPER_FULL } from '../../src/control/ceilings.js';
import { ESTIMATED_PITCH, ESTIMATOR_SIZE } from '../../src/control/estimator.js';
import { control, controlLaw, CONTROLLER_SIZE, RAMP, REQUESTED } from '../../src/control/law.js';
import { fullCeilings, partOf, type FirstRidePlan } from '../../src/explain/first-ride.js';
import { torqueConstantOf } from '../../src/quantity/motor-constant.js';
import { byHand, onTheStand } from '../../src/show/first-ride-stand.js';
import { keptExample } from './kept-example.js';

const example = keptExample();

function planOf(kept = example): FirstRidePlan {
  const full = fullCeilings(kept.profile, kept.rig.board);
  return { name: 'x', kept, full, free: partOf(full, 0.1), stages: [], changes: [] };
}

const said = ({ items }: ReturnType<typeof byHand>) => items.map(({ text }) => text).join('\n');

it('a free wheel speeds up by torque over inertia, a held one pushes by torque over radius', () => {
  const plan = planOf();
  const { wheel, motor } = plan.kept.rig.board;
  // By hand: torque constant times current, Newton's second law of rotation, rim of the wheel.
  const torqueNm = motor.torqueConstantNmPerA! * plan.free.driveA;
  const gainKmPerHPerS = (torqueNm / wheel.inertiaKgM2) * wheel.radiusM * 3.6;
  expect(said(onTheStand(plan))).toContain(`it gains ${Math.round(gainKmPerHPerS)} km/h a second`);
  expect(said(byHand(plan))).toContain(`pushes with ${Math.round(torqueNm / wheel.radiusM)} N at most`);
});

it('knows a motor by its speed constant as well', () => {
  const { motor, ...board } = example.rig.board;
  const { torqueConstantNmPerA, ...others } = motor;
  const speedConstantRpmPerV = 1 / ((torqueConstantNmPerA! * 2 * Math.PI) / 60);
  expect(torqueConstantOf(speedConstantRpmPerV)).toBeCloseTo(torqueConstantNmPerA!, 9);
  const kept = {
    ...example,
    rig: { ...example.rig, board: { ...board, motor: { ...others, speedConstantRpmPerV } } },
  };
  expect(said(byHand(planOf(kept)))).toBe(said(byHand(planOf())));
});

it('without a proportional gain no angle reaches the ceiling', () => {
  const gains = { ...example.profile.gains, proportionalAPerDeg: 0 };
  const text = said(onTheStand(planOf({ ...example, profile: { ...example.profile, gains } })));
  expect(text).toContain('asks for 0 A for each degree away from level.');
  expect(text).not.toMatch(/Infinity|NaN/);
});

it('shows the sign of the rate gain while the deck turns, where there is one', () => {
  const rateOf = (rateAPerDegPerS: number) => {
    const gains = { ...example.profile.gains, rateAPerDegPerS };
    return said(onTheStand(planOf({ ...example, profile: { ...example.profile, gains } })));
  };
  expect(rateOf(1)).toMatch(/turn the nose down quickly\. The wheel has to start forward at once/);
  expect(rateOf(0)).not.toContain('sign of the rate gain');
});

it('has the headroom lift off as long as the nose is held', () => {
  const { headroomLift: _, ...shaping } = example.profile.shaping;
  const lift = { belowPercent: 40, upToDeg: 8, rateDegPerS: 2 };
  const withShaping = (changed: typeof example.profile.shaping) =>
    planOf({ ...example, profile: { ...example.profile, shaping: changed } });
  const lifted = withShaping({ ...shaping, headroomLift: lift });
  expect(said(onTheStand(lifted))).toContain('headroom lift off');
  expect(said(byHand(lifted))).toContain('headroom lift still off');
  for (const section of [onTheStand, byHand])
    expect(said(section(withShaping(shaping)))).not.toContain('lift');
});

it('has the load feed-forward off as long as the deck is held, where there is any', () => {
  const withLoad = (currentShare: number, noseUpDegPerA: number) => {
    const shaping = {
      ...example.profile.shaping,
      loadFeedForward: { filterTimeS: 1, currentShare, noseUpDegPerA },
    };
    return planOf({ ...example, profile: { ...example.profile, shaping } });
  };
  for (const plan of [withLoad(0.5, 0), withLoad(0, 0.02)]) {
    expect(said(onTheStand(plan))).toMatch(/load feed-forward off;.*\n(.*\n)*Why off: the load feed-forward/);
    expect(said(byHand(plan))).toContain('load feed-forward still off');
  }
  for (const section of [onTheStand, byHand])
    expect(said(section(withLoad(0, 0)))).not.toContain('feed-forward');
});

it('a load that is fed forward to a deck in the hand comes back as load, which is why it is off', () => {
  const shaping = {
    ...example.profile.shaping,
    loadFeedForward: { filterTimeS: 1, currentShare: 0.5, noseUpDegPerA: 0.01 },
  };
  const profile = { ...example.profile, shaping };
  const law = controlLaw(profile, example.rig.board);
  const estimator = new Float64Array(ESTIMATOR_SIZE);
  estimator[ESTIMATED_PITCH] = Math.PI / 180;
  const ceilings = new Float64Array(CEILINGS_SIZE);
  for (const place of [UPPER, UPPER_FULL, LOWER_FULL]) ceilings[place] = 1e6;
  ceilings[LOWER] = -1e6;
  const memory = new Float64Array(CONTROLLER_SIZE);
  memory[RAMP] = 1;
  for (let tick = 0; tick < 60 / law.tickS; tick += 1)
    control(law, { estimator, ceilings, controller: memory });
  // By hand: i = P (1 + n i) + c i at rest, so i = P / (1 - c - P n).
  const p = profile.gains.proportionalAPerDeg;
  expect(memory[REQUESTED]).toBeCloseTo(p / (1 - 0.5 - 0.01 * p), 3);
});

it('a gain that grows with the angle reaches the ceiling sooner', () => {
  const gains = { ...example.profile.gains, proportionalAPerDeg: 2 };
  const withStiffness = (progressiveStiffnessPerDeg: number) => {
    const shaping = { ...example.profile.shaping, progressiveStiffnessPerDeg };
    return planOf({ ...example, profile: { ...example.profile, gains, shaping } });
  };
  const { free } = planOf();
  // By hand: P e = ceiling, and P e (1 + e) = ceiling.
  const straightDeg = free.driveA / 2;
  const sharperDeg = (Math.sqrt(1 + 4 * straightDeg) - 1) / 2;
  const reached = (deg: number) => `the ceiling of ${free.driveA} A is reached at ${deg.toFixed(1)}°`;
  expect(said(onTheStand(withStiffness(0)))).toContain(`away from level: ${reached(straightDeg)}`);
  expect(said(onTheStand(withStiffness(1)))).toContain(
    `100 % more of all of it for each such degree: ${reached(sharperDeg)}`,
  );
});

it('a wheel that runs up while the deck is tilted is told to be no fault, one that does so level is', () => {
  const { items } = onTheStand(planOf());
  const stop = items.filter(({ kind }) => kind === 'stop').map(({ text }) => text);
  expect(stop).toEqual([expect.stringContaining('runs up to full speed with the deck held level')]);
  expect(said(onTheStand(planOf()))).toContain('Tip the deck for a moment only');
});
