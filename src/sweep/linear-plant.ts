/**
 * What do gyro and accelerometer answer to the motor's request, whatever the profile? A board on a level road under a rider
 * who balances by his own delayed feedback: the tick map of the ride without the states of estimate and law, which are the
 * profile's. The delays of the queue and of the rider's nerves stay exact, as powers of z.
 */
import { minus, over, plus, power, real, times, type Complex } from '../linear/complex.js';
import { createElimination } from '../linear/elimination.js';
import { riderMap, riderResponse } from '../linear/rider-map.js';
import type { SteadyRide } from '../linear/steady-ride.js';
import { INPUTS, OUTPUTS, tickMap, type InputName, type TickMap } from '../linear/tick-map.js';

/** The answer at a z to a request: of the gyro [rad/s per A] and of the accelerometer's pitch [rad per A]. */
export interface SensorAnswer {
  gyro: Complex;
  accelerometerPitch: Complex;
  /** Zero at the motions that the plant has of its own while no request answers them; 1 for an infinite z. */
  ownMotion: Complex;
}

/** The answer of a plant's sensors at any z. */
export type SensorsAt = (z: Complex) => SensorAnswer;

/** States of estimate, law and queue; and the place along the road, which changes nothing. */
const NOT_OF_THE_PLANT =
  /^(x|estimatedPitch|estimatedRate|integral|load|lift|headroom|requested|request .*)$/;

const SENSORS = ['gyro', 'accelerometerPitch'] as const;
const FELT = ['lean', 'leanRate', 'speed'] as const;

/** The sensors of a steady ride's plant. */
export function sensorsOf(ride: SteadyRide): SensorsAt {
  const map = tickMap(ride);
  const rider = riderMap(ride);
  const { delayTicks } = ride.plan.law;
  const places = map.states.flatMap((name, place) => (NOT_OF_THE_PLANT.test(name) ? [] : [place]));
  const A = places.map((row) => places.map((column) => map.A.get(row, column)));
  const [byRequest, byTorque] = [requestColumn(map, delayTicks), column(map, 'riderTorque')];
  const elimination = createElimination(
    A,
    places.map((row) => [byRequest[row]!, byTorque[row]!]),
  );
  const rows = [...SENSORS, ...FELT].map((name) => {
    const row = map.C.getRow(OUTPUTS.indexOf(name));
    return places.map((place) => row[place]!);
  });
  return (z) => {
    const determinant = elimination.solveAt(z);
    const late = power(z, -delayTicks);
    const [gyro, accelerometerPitch, ...felt] = rows.map((row) => ({
      toRequest: times(late, elimination.lookAt(row, 0)),
      toTorque: elimination.lookAt(row, 1),
    })) as [Answer, Answer, ...Answer[]];
    // The rider's torque for an ampere: what he makes of the lean that it brings about, and of what his own torque does.
    const answers = riderResponse(rider, z);
    const sum = (part: keyof Answer) =>
      felt.reduce((total, answer, index) => plus(total, times(answers[index]!, answer[part])), real(0));
    const left = minus(real(1), sum('toTorque'));
    const torque = over(sum('toRequest'), left);
    const whole = ({ toRequest, toTorque }: Answer) => plus(toRequest, times(toTorque, torque));
    return {
      gyro: whole(gyro),
      accelerometerPitch: whole(accelerometerPitch),
      ownMotion: times(determinant, left),
    };
  };
}

/** Answer of one thing to a request and to the rider's torque. */
interface Answer {
  toRequest: Complex;
  toTorque: Complex;
}

const column = (map: TickMap, name: InputName) => map.B.getColumn(INPUTS.indexOf(name));

/** What the motor does with the request that has come out of the queue. */
function requestColumn(map: TickMap, delayTicks: number): number[] {
  if (delayTicks === 0) return column(map, 'request');
  return map.A.getColumn(map.states.indexOf(`request ${delayTicks} ago`));
}
