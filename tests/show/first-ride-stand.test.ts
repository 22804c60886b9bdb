/**
 * Does the plan say of a free wheel and of a board in the hand what physics says, and does it ask for nothing that nobody can feel?
 */
import { expect, it } from 'vitest';
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

it('a wheel that runs up while the deck is tilted is told to be no fault, one that does so level is', () => {
  const { items } = onTheStand(planOf());
  const stop = items.filter(({ kind }) => kind === 'stop').map(({ text }) => text);
  expect(stop).toEqual([expect.stringContaining('runs up to full speed with the deck held level')]);
  expect(said(onTheStand(planOf()))).toContain('Tip the deck for a moment only');
});
