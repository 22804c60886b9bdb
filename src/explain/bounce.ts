/**
 * In what time does a rider bounce on tyre and legs, and does a train of bumps keep that bounce going? Two masses on two springs
 * with dampers, wheel and deck below, the rider above: the quarter car of vehicle textbooks (from memory). The whole loop's own
 * motions (src/linear/modes.ts) have the bounce at the same frequency within a tenth.
 */
import { magnitude, over, plus, times, type Complex } from '../linear/complex.js';
import type { BoardFile } from '../quantity/board-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import { M_PER_S_PER_KM_PER_H } from '../quantity/units.js';
import type { Makings } from './makings.js';

/** Bumps of the same size one after the other that make a train, at least. */
const LEAST_TRAIN = 3;

/** A train keeps the bounce going where the tyre's load swings by this factor more than on a tyre without a bounce (ours). */
const LEAST_SWING_RATIO = 1.3;

/** How often a rider bounces on the springs of tyre and legs, Hz. */
export function bounceHz(board: BoardFile, rider: RiderFile): number {
  const tyre = board.tyre.verticalStiffnessNPerM;
  const legs = rider.stance.legStiffnessNPerM;
  return Math.sqrt((tyre * legs) / (tyre + legs) / rider.body.massKg) / (2 * Math.PI);
}

/**
 * Stiffness of legs with bent knees under a rider, N/m: a bounce of 2.1 Hz on the legs alone (standing people resonate at 5.5 Hz,
 * with legs bent at 2.75 Hz: Matsumoto & Griffin 1998, J. Sound Vib. 212:85; softer for riding: ours).
 */
export function bentLegsNPerM({ body: { massKg } }: RiderFile): number {
  return massKg * (2 * Math.PI * BENT_LEGS_HZ) ** 2;
}
const BENT_LEGS_HZ = 2.1;

/** The board with a tyre on which the rider does not bounce, however stiff his legs are: critically damped. */
export function withoutBounce(board: BoardFile, rider: RiderFile): BoardFile {
  const { verticalStiffnessNPerM, verticalDampingNSPerM } = board.tyre;
  const critical = 2 * Math.sqrt(verticalStiffnessNPerM * rider.body.massKg);
  return {
    ...board,
    tyre: { ...board.tyre, verticalDampingNSPerM: Math.max(verticalDampingNSPerM, critical) },
  };
}

/** How much the load of the tyre swings on a wavy road, N per m of the wave. */
export function loadSwingNPerM(board: BoardFile, rider: RiderFile, frequencyHz: number): number {
  const w = 2 * Math.PI * frequencyHz;
  const spring = (stiffness: number, damping: number): Complex => ({ re: stiffness, im: damping * w });
  const inertia = (massKg: number): Complex => ({ re: -massKg * w * w, im: 0 });
  const { verticalStiffnessNPerM, verticalDampingNSPerM } = board.tyre;
  const tyre = spring(verticalStiffnessNPerM, verticalDampingNSPerM);
  const legs = spring(rider.stance.legStiffnessNPerM, rider.stance.legDampingNSPerM);
  const above = inertia(rider.body.massKg);
  // What the rider on his legs sets against a movement of the wheel, then all of it above the tyre.
  const onLegs = over(times(legs, above), plus(legs, above));
  const carried = plus(inertia(board.wheel.massKg + board.deck.massKg), onLegs);
  return magnitude(over(times(tyre, carried), plus(tyre, carried)));
}

/** True where a road has a train of bumps that keeps the rider bouncing on the tyre. */
export function keepsBouncing(makings: Makings): boolean {
  const frequencyHz = trainHz(makings);
  if (frequencyHz === null || frequencyHz === 0) return false;
  const { board, rider } = makings;
  const swing = loadSwingNPerM(board, rider, frequencyHz);
  return swing > LEAST_SWING_RATIO * loadSwingNPerM(withoutBounce(board, rider), rider, frequencyHz);
}

/** How often the bumps of a train come, of those that are ridden the one nearest to the bounce, Hz; null without a train. */
export function trainHz({ board, rider, scenario }: Makings): number | null {
  const bounce = bounceHz(board, rider);
  const speeds = [scenario.start.speedKmPerH, ...scenario.speeds.map(({ speedKmPerH }) => speedKmPerH)].map(
    (speedKmPerH) => Math.abs(speedKmPerH) * M_PER_S_PER_KM_PER_H,
  );
  const trains = scenario.road.flatMap(({ bumpHeightM, bumpCount, lengthM }) => {
    if (bumpHeightM === 0 || bumpCount < LEAST_TRAIN) return [];
    const spacingM = lengthM / bumpCount;
    const [least, most] = [Math.min(...speeds) / spacingM, Math.max(...speeds) / spacingM];
    return [Math.min(most, Math.max(least, bounce))];
  });
  if (trains.length === 0) return null;
  return trains.reduce((best, hz) => (Math.abs(hz - bounce) < Math.abs(best - bounce) ? hz : best));
}
