/**
 * What does a general multibody engine say of the same rig? Builds wheel, deck and rider as an MJCF model for MuJoCo
 * (Todorov, Erez and Tassa, "MuJoCo: a physics engine for model-based control", IROS 2012, from memory), which knows
 * bodies, joints and forces but none of the project's equations.
 *
 * The wheel is hinged to the deck, where its motor sits, so that one torque on that hinge is action and reaction; its
 * hinge turns by psi - theta, that of the rider by phi - theta. A turn about MuJoCo's +y takes z towards x: nose down.
 */
import loadMujoco, { type MainModule } from '@mujoco/mujoco';
import type { Plant } from '../../src/model/plant.js';
import * as at from '../../src/model/state.js';

/** MuJoCo, loaded. */
export type Engine = MainModule;

/** Loads MuJoCo. */
export const startEngine = (): Promise<Engine> => loadMujoco();

/** What the road does to the wheel: load and tread force [N], slope, and a torque [Nm] that resists rolling. */
export interface RoadForces {
  wheelLoadN: number;
  treadN: number;
  slope: number;
  rollingNm: number;
}

/** What the engine finds: accelerations of x, z, psi, theta, phi, l and the forces between rider and deck. */
export interface Found {
  accelerations: number[];
  legsSlack: boolean;
  oneFootLight: boolean;
}

/** A rig in MuJoCo; states and inputs as in src/model/state.ts. */
export interface Multibody {
  /** Accelerations at a state; with feet lightened past their limit the limit is put in as a plain torque. */
  accelerate(state: ArrayLike<number>, inputs: ArrayLike<number>, road?: RoadForces): Found;
  /** States after every tick by MuJoCo's own Runge-Kutta steps; knows neither air drag nor the limit of the feet. */
  step(state: ArrayLike<number>, inputs: ArrayLike<number>, time: Time): Float64Array[];
  /** Frees the engine's memory. */
  release(): void;
}

/** Length of a tick [s], and how many steps of MuJoCo each tick takes, one after the other. */
export interface Time {
  tickS: number;
  stepsOfTicks: number[];
}

/** Hinges and slides in MuJoCo's order; an axle that is held has no first two. */
const FREE = { pitch: 2, shaft: 3, ankle: 4, leg: 5 };
const HELD = { pitch: 0, shaft: 1, ankle: 2, leg: 3 };
const FEET = 1;
const LEGS = 2;
const GRAVITY = 9.80665;

const uniform = (inertia: number) => `${inertia} ${inertia} ${inertia}`;

/**
 * The rig as MJCF. No geometry, hence no contacts; constraints are off; the ankle's passive stiffness and damping are
 * MuJoCo's joint spring and damper, the legs an actuator with a spring's law that cannot pull (forcerange from 0).
 * Classical Runge-Kutta (RK4) integrates, which takes no damping implicitly. Only the inertia about y matters.
 */
export function mjcfOf(plant: Plant, axle: 'free' | 'held' = 'free'): string {
  const { legStiffnessNPerM: k, legDampingNSPerM: c, riderMassKg: m } = plant;
  const passive = `stiffness="${plant.passiveStiffnessNmPerRad}" damping="${plant.passiveDampingNmSPerRad}"`;
  const slides =
    axle === 'held'
      ? ''
      : '<joint name="x" type="slide" axis="1 0 0"/><joint name="z" type="slide" axis="0 0 1"/>';
  return `<mujoco>
  <compiler angle="radian" inertiafromgeom="false"/>
  <size memory="100K"/>
  <option gravity="0 0 -${GRAVITY}" integrator="RK4"><flag contact="disable" constraint="disable"/></option>
  <worldbody>
    <body name="deck">
      ${slides}
      <joint name="pitch" type="hinge" axis="0 1 0"/>
      <inertial pos="${plant.deckForwardM} 0 ${plant.deckAboveAxleM}"
        mass="${plant.deckMassKg}" diaginertia="${uniform(plant.deckInertiaKgM2)}"/>
      <body name="wheel">
        <joint name="shaft" type="hinge" axis="0 1 0"/>
        <inertial pos="0 0 0" mass="${plant.wheelMassKg}" diaginertia="${uniform(plant.wheelInertiaKgM2)}"/>
      </body>
      <body name="rider" pos="0 0 ${plant.ankleAboveAxleM}">
        <joint name="ankle" type="hinge" axis="0 1 0" ${passive}/>
        <joint name="leg" type="slide" axis="0 0 1"/>
        <inertial pos="0 0 0" mass="${m}" diaginertia="${uniform(plant.riderInertiaKgM2)}"/>
      </body>
    </body>
  </worldbody>
  <actuator>
    <motor name="motor" joint="shaft"/>
    <motor name="feet" joint="ankle"/>
    <general name="legs" joint="leg" gainprm="0" biastype="affine" forcelimited="true" forcerange="0 1e15"
      biasprm="${k * plant.legLengthM + m * GRAVITY} ${-k} ${-c}"/>
  </actuator>
</mujoco>`;
}

/** The rig in MuJoCo, its axle free or held in place. */
export function multibodyOf(engine: Engine, plant: Plant, axle: 'free' | 'held' = 'free'): Multibody {
  const model = engine.MjModel.from_xml_string(mjcfOf(plant, axle));
  const data = new engine.MjData(model);
  const place = axle === 'held' ? HELD : FREE;
  const bodyOf = (name: string) => engine.mj_name2id(model, engine.mjtObj.mjOBJ_BODY.value, name);
  const [wheel, rider] = [bodyOf('wheel'), bodyOf('rider')];
  const plainFlags = model.opt.disableflags;
  const { mjDSBL_SPRING, mjDSBL_DAMPER } = engine.mjtDisableBit;
  const noAnkleLaw = plainFlags | mjDSBL_SPRING.value | mjDSBL_DAMPER.value;
  const velocity = new engine.DoubleBuffer(6);

  /** Our coordinates, rates or accelerations as MuJoCo has them, and back. */
  const toJoints = (six: ArrayLike<number>) => {
    const [x, z, psi, theta, phi, leg] = Array.from(six) as [number, number, number, number, number, number];
    const turns = [theta, psi - theta, phi - theta, leg];
    return axle === 'held' ? turns : [x, z, ...turns];
  };
  const fromJoints = (joints: Float64Array) => {
    const theta = joints[place.pitch]!;
    const axleAt = axle === 'held' ? [0, 0] : [joints[0]!, joints[1]!];
    return [...axleAt, joints[place.shaft]! + theta, theta, joints[place.ankle]! + theta, joints[place.leg]!];
  };

  function put(state: ArrayLike<number>, inputs: ArrayLike<number>): void {
    const numbers = Array.from(state);
    data.qpos.set(toJoints(numbers.slice(0, at.RATE)));
    data.qvel.set(toJoints(numbers.slice(at.RATE, 2 * at.RATE)));
    data.ctrl.set([inputs[at.MOTOR_TORQUE]!, inputs[at.RIDER_TORQUE]!, 0]);
    data.qfrc_applied.fill(0);
    data.xfrc_applied.fill(0);
    data.xfrc_applied[6 * rider] = inputs[at.SHOVE]!;
    model.opt.disableflags = plainFlags;
  }

  /** Tyre forces at the lowest point of the wheel across the slope, and the torque that resists rolling. */
  function putRoad({ wheelLoadN, treadN, slope, rollingNm }: RoadForces): void {
    const s = Math.hypot(1, slope);
    const axleAt = Array.from(data.xpos as Float64Array).slice(3 * wheel, 3 * wheel + 3);
    const foot = [axleAt[0]! + (plant.wheelRadiusM * slope) / s, 0, axleAt[2]! - plant.wheelRadiusM / s];
    const force = [(treadN - slope * wheelLoadN) / s, 0, (wheelLoadN + slope * treadN) / s];
    engine.mj_applyFT(model, data, force, [0, rollingNm, 0], foot, wheel, data.qfrc_applied);
  }

  function accelerate(state: ArrayLike<number>, inputs: ArrayLike<number>, road?: RoadForces): Found {
    put(state, inputs);
    engine.mj_forward(model, data);
    const legN = (data.actuator_force as Float64Array)[LEGS]!;
    const wish =
      (data.qfrc_passive as Float64Array)[place.ankle]! + (data.actuator_force as Float64Array)[FEET]!;
    const limit = legN * plant.halfStanceM;
    const oneFootLight = Math.abs(wish) > limit;
    if (oneFootLight) {
      model.opt.disableflags = noAnkleLaw;
      data.ctrl[FEET] = Math.sign(wish) * limit;
    }
    engine.mj_objectVelocity(model, data, engine.mjtObj.mjOBJ_BODY.value, rider, velocity, 0);
    const riderSpeed = (velocity.GetView() as Float64Array)[3]!;
    data.xfrc_applied[6 * rider] -= plant.halfDragAreaKgPerM * riderSpeed * Math.abs(riderSpeed);
    if (road) putRoad(road);
    engine.mj_forward(model, data);
    return { accelerations: fromJoints(data.qacc), legsSlack: legN === 0, oneFootLight };
  }

  function step(state: ArrayLike<number>, inputs: ArrayLike<number>, time: Time): Float64Array[] {
    put(state, inputs);
    const read = () => Float64Array.from([...fromJoints(data.qpos), ...fromJoints(data.qvel)]);
    const states = [read()];
    for (const steps of time.stepsOfTicks) {
      model.opt.timestep = time.tickS / steps;
      for (let done = 0; done < steps; done++) engine.mj_step(model, data);
      states.push(read());
    }
    return states;
  }

  function release(): void {
    for (const handle of [velocity, data, model]) handle.delete();
  }

  return { accelerate, step, release };
}
