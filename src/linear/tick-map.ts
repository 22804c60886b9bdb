/**
 * How does a small deviation from a steady ride go on from one tick to the next? The very tick of the simulation, sensors,
 * estimate, law, queue, current and plant, is differenced about the ride; nothing is derived a second time. Two loops are
 * left open, to be closed or broken as the question wants: the request on its way to the motor, and the rider's torque.
 */
import { Matrix } from 'ml-matrix';
import { ACCELEROMETER_PITCH, GYRO } from '../control/estimator.js';
import * as law from '../control/law.js';
import { MOTOR_CURRENT } from '../model/battery.js';
import * as at from '../model/state.js';
import { settle, tickOnce } from '../simulate/loop.js';
import type { Moment } from '../simulate/moment.js';
import { createTape } from '../simulate/tape.js';
import type { SteadyRide } from './steady-ride.js';

/** What is put in from outside at a tick: request [A], rider's torque on his body [Nm], gyro error [rad/s], shove [N]. */
export const INPUTS = ['request', 'riderTorque', 'gyro', 'shove'] as const;

/**
 * What is looked at, as it is when the tick begins: rad, rad/s, m/s, m/s2; `asked` is the law's answer in A, the last two are
 * what the sensors say.
 */
export const OUTPUTS = [
  'asked',
  'pitch',
  'lean',
  'leanRate',
  'speed',
  'acceleration',
  'gyro',
  'accelerometerPitch',
] as const;

export type InputName = (typeof INPUTS)[number];
export type OutputName = (typeof OUTPUTS)[number];

/** x_next = A x + B u and y = C x + D u for deviations from a steady ride; rows of A by `states`. */
export interface TickMap {
  tickS: number;
  states: readonly string[];
  A: Matrix;
  B: Matrix;
  C: Matrix;
  D: Matrix;
}

/** One number of a moment: its name, the size of a small change of it, and where it is. */
interface Place {
  name: string;
  step: number;
  array: (moment: Moment) => Float64Array;
  index: (moment: Moment) => number;
}

const fixed = (name: string, step: number, array: Place['array'], index: number): Place => ({
  name,
  step,
  array,
  index: () => index,
});

const plantPlace = (name: string, step: number, index: number) =>
  fixed(name, step, ({ state }) => state, index);
const controllerPlace = (name: string, step: number, index: number) =>
  fixed(name, step, ({ controller }) => controller, index);

/** The numbers that carry a deviation on. The wheel's angle carries none, and the charge hardly moves. */
function placesOf({ plan }: SteadyRide): Place[] {
  const { delayTicks } = plan.law;
  return [
    plantPlace('x', 1e-4, at.X),
    plantPlace('z', 1e-5, at.Z),
    plantPlace('pitch', 1e-5, at.PITCH),
    plantPlace('lean', 1e-5, at.LEAN),
    plantPlace('leg', 1e-5, at.LEG),
    plantPlace('speed', 1e-4, at.X + at.RATE),
    plantPlace('zRate', 1e-4, at.Z + at.RATE),
    plantPlace('wheelRate', 1e-3, at.WHEEL + at.RATE),
    plantPlace('pitchRate', 1e-4, at.PITCH + at.RATE),
    plantPlace('leanRate', 1e-4, at.LEAN + at.RATE),
    plantPlace('legRate', 1e-4, at.LEG + at.RATE),
    plantPlace('tread', 1e-6, at.TREAD),
    fixed('current', 1e-3, ({ motion }) => motion, MOTOR_CURRENT),
    fixed('heldRiderTorque', 1e-3, ({ inputs }) => inputs, at.RIDER_TORQUE),
    fixed('estimatedPitch', 1e-5, ({ estimator }) => estimator, 0),
    fixed('estimatedRate', 1e-4, ({ estimator }) => estimator, 1),
    controllerPlace('integral', 1e-3, law.INTEGRAL),
    controllerPlace('load', 1e-3, law.LOAD),
    controllerPlace('lift', 1e-5, law.LIFT),
    controllerPlace('headroom', 1e-5, law.HEADROOM),
    controllerPlace('requested', 1e-3, law.REQUESTED),
    ...Array.from({ length: delayTicks }, (_, back): Place => ({
      name: `request ${back + 1} ago`,
      step: 1e-3,
      array: ({ requests }) => requests,
      index: ({ tick, requests }) => (tick - back - 1 + 2 * requests.length) % requests.length,
    })),
  ];
}

const INPUT_STEPS: Readonly<Record<InputName, number>> = {
  request: 1e-3,
  riderTorque: 1e-3,
  gyro: 1e-5,
  shove: 1e-2,
};

function copyOf(moment: Moment): Moment {
  const entries = Object.entries(moment).map(([name, value]) => [
    name,
    value instanceof Float64Array ? value.slice() : value,
  ]);
  return Object.fromEntries(entries) as Moment;
}

/** One tick of a ride from a deviation, with inputs put in: the outputs at its beginning, the places at its end. */
function createTick(ride: SteadyRide, places: readonly Place[]) {
  const { plan, moment: steady } = ride;
  const { trial, integrator } = plan;
  const tape = createTape(2, trial.tickS);
  const currentA = steady.controller[law.REQUESTED]!;
  const torqueNm = steady.inputs[at.RIDER_TORQUE]!;
  return (deviation: ReadonlyMap<Place, number>, inputs: Readonly<Partial<Record<InputName, number>>>) => {
    const moment = copyOf(steady);
    for (const [place, size] of deviation) place.array(moment)[place.index(moment)]! += size;
    // The held torque of the motor follows its current.
    moment.inputs[at.MOTOR_TORQUE] = trial.plant.motor.torqueConstantNmPerA * moment.motion[MOTOR_CURRENT]!;
    const { state, controller, requests, tick } = moment;
    const gyro = trial.noise.gyro[tick]!;
    trial.noise.gyro[tick] = gyro + (inputs.gyro ?? 0);
    tape.length = 0;
    tickOnce(plan, moment, tape);
    trial.noise.gyro[tick] = gyro;
    const outputs: Record<OutputName, number> = {
      asked: controller[law.ASKED]!,
      pitch: state[at.PITCH]!,
      lean: state[at.LEAN]!,
      leanRate: state[at.LEAN + at.RATE]!,
      speed: state[at.X + at.RATE]!,
      acceleration: moment.rates[at.X + at.RATE]!,
      gyro: moment.reading[GYRO]!,
      accelerometerPitch: moment.reading[ACCELEROMETER_PITCH]!,
    };
    requests[tick % requests.length] = currentA + (inputs.request ?? 0);
    moment.followed[0] = requests[(tick + 1) % requests.length]!;
    moment.inputs[at.RIDER_TORQUE] = torqueNm + (inputs.riderTorque ?? 0);
    moment.inputs[at.SHOVE]! += inputs.shove ?? 0;
    integrator.advance(moment);
    settle(plan, moment);
    return [
      ...places.map((place) => place.array(moment)[place.index(moment)]!),
      ...OUTPUTS.map((name) => outputs[name]),
    ];
  };
}

/** The tick map about a ride, by central differences, accurate to about 1e-8 of each column's largest entry. */
export function tickMap(ride: SteadyRide): TickMap {
  const places = placesOf(ride);
  const tick = createTick(ride, places);
  const slope = (step: number, moved: (size: number) => number[]) => {
    const [fine, coarse] = [1, 2].map((part) => {
      const [after, before] = [moved(part * step), moved(-part * step)];
      return after.map((value, row) => (value - before[row]!) / (2 * part * step));
    });
    // Richardson: the error of order step squared goes out.
    return fine!.map((value, row) => (4 * value - coarse![row]!) / 3);
  };
  const byState = places.map((place) => slope(place.step, (size) => tick(new Map([[place, size]]), {})));
  const byInput = INPUTS.map((name) => slope(INPUT_STEPS[name], (size) => tick(new Map(), { [name]: size })));
  const [states, inputs] = [byState, byInput].map((columns) => new Matrix(columns).transpose());
  const size = places.length;
  const last = size + OUTPUTS.length - 1;
  return {
    tickS: ride.plan.trial.tickS,
    states: places.map(({ name }) => name),
    A: states!.subMatrix(0, size - 1, 0, size - 1),
    B: inputs!.subMatrix(0, size - 1, 0, INPUTS.length - 1),
    C: states!.subMatrix(size, last, 0, size - 1),
    D: inputs!.subMatrix(size, last, 0, INPUTS.length - 1),
  };
}
