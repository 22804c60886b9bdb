/**
 * The file that describes a board: wheel, tyre, deck, motor, pack and controller hardware.
 * Values are in the units a builder measures in; src/model turns them into SI.
 */
import * as z from 'zod';
import { count, quantity, section, text } from './field.js';

const wheel = section(
  {
    radiusM: quantity({ unit: 'm', min: 0.05, max: 0.4, says: 'Radius of the inflated tyre' }),
    massKg: quantity({
      unit: 'kg',
      min: 0.5,
      max: 40,
      says: 'Mass of everything that turns: tyre, rim, rotor',
    }),
    inertiaKgM2: quantity({
      unit: 'kg m2',
      min: 0.001,
      max: 2,
      says: 'Moment of inertia of everything that turns, about the axle (a swing test gives it)',
    }),
  },
  'The wheel: everything that turns with the tyre',
);

const tyre = section(
  {
    verticalStiffnessNPerM: quantity({
      unit: 'N/m',
      min: 10_000,
      max: 400_000,
      says: 'Force per metre of squash',
    }).default(70_000),
    verticalDampingNSPerM: quantity({
      unit: 'N s/m',
      min: 0,
      max: 5_000,
      says: 'Damping of the squash',
    }).default(350),
    longitudinalStiffnessNPerM: quantity({
      unit: 'N/m',
      min: 5_000,
      max: 400_000,
      says: 'Tread shear stiffness along the road',
    }).default(60_000),
    longitudinalDampingNSPerM: quantity({
      unit: 'N s/m',
      min: 0,
      max: 5_000,
      says: 'Tread shear damping along the road',
    }).default(300),
  },
  'The tyre as a spring and damper',
);

const deck = section(
  {
    massKg: quantity({
      unit: 'kg',
      min: 1,
      max: 60,
      says: 'Mass of everything that does not turn: frame, pack, controller, motor stator',
    }),
    inertiaKgM2: quantity({
      unit: 'kg m2',
      min: 0.02,
      max: 10,
      says: 'Moment of inertia of the deck about its own centre of mass, pitching',
    }),
    centreForwardM: quantity({
      unit: 'm',
      min: -0.2,
      max: 0.2,
      says: 'Centre of mass ahead of the axle along the deck; behind it is negative',
    }).default(0),
    centreAboveAxleM: quantity({
      unit: 'm',
      min: -0.2,
      max: 0.2,
      says: 'Centre of mass above the axle; below it is negative',
    }).default(-0.02),
    ankleLineAboveAxleM: quantity({
      unit: 'm',
      min: -0.15,
      max: 0.3,
      says: "The rider's ankles above the axle",
    }).default(0.03),
    reachM: quantity({
      unit: 'm',
      min: 0.15,
      max: 0.8,
      says: 'From the axle to the nose or tail tip, along the deck',
    }),
    tipBelowAxleM: quantity({
      unit: 'm',
      min: -0.2,
      max: 0.2,
      says: 'Lowest point of nose and tail below the axle line; above it is negative',
    }).default(0.02),
  },
  'The deck: everything that pitches with the feet',
);

const motor = section(
  {
    torqueConstantNmPerA: quantity({
      unit: 'Nm/A',
      min: 0.02,
      max: 5,
      says: 'Torque per motor ampere (the ampere of an equivalent direct-current motor); give this or speedConstantRpmPerV',
    }).optional(),
    speedConstantRpmPerV: quantity({
      unit: 'rpm/V',
      min: 2,
      max: 500,
      says: 'No-load speed per volt; the torque constant is 60/(2 pi) divided by it',
    }).optional(),
    resistanceOhm: quantity({
      unit: 'ohm',
      min: 0.005,
      max: 5,
      says: 'Resistance seen by the motor ampere, winding and leads',
    }),
    currentLagMs: quantity({
      unit: 'ms',
      min: 0,
      max: 50,
      says: 'Time constant with which the current follows the request',
    }).default(1.5),
    driveCurrentA: quantity({ unit: 'A', min: 1, max: 1000, says: 'Ceiling on motor current when driving' }),
    brakeCurrentA: quantity({ unit: 'A', min: 1, max: 1000, says: 'Ceiling on motor current when braking' }),
  },
  'The motor, as the equivalent direct-current machine',
);

const openCircuitPoint = section(
  {
    chargePercent: quantity({ unit: '%', min: 0, max: 100, says: 'State of charge' }),
    cellV: quantity({ unit: 'V', min: 1, max: 5, says: 'Open-circuit voltage of one cell at that charge' }),
  },
  'One point of the open-circuit curve',
);

const pack = section(
  {
    seriesCells: count({ unit: 'cells', min: 1, max: 60, says: 'Cells in series' }),
    parallelCells: count({ unit: 'cells', min: 1, max: 40, says: 'Cells in parallel' }).default(1),
    cellResistanceMilliohm: quantity({
      unit: 'milliohm',
      min: 0.5,
      max: 300,
      says: 'Direct-current resistance of one cell with its share of the links',
    }),
    cellCapacityAh: quantity({ unit: 'Ah', min: 0.5, max: 50, says: 'Capacity of one cell' }),
    dischargeCurrentA: quantity({ unit: 'A', min: 1, max: 500, says: 'Most the pack may give' }),
    chargeCurrentA: quantity({
      unit: 'A',
      min: 0,
      max: 500,
      says: 'Most the pack may take back while braking',
    }),
    openCircuit: z
      .array(openCircuitPoint, { error: 'a list of points { chargePercent, cellV }' })
      .min(2, { error: 'at least two points, charge and voltage both rising' })
      .max(60, { error: 'at most 60 points' })
      .meta({
        description: 'Open-circuit voltage of a cell over charge, rising; left out: a published NMC curve',
      })
      .optional(),
  },
  'The battery pack',
);

const controller = section(
  {
    loopRateHz: quantity({
      unit: 'Hz',
      min: 100,
      max: 4000,
      says: 'Ticks of the balance loop per second',
    }).default(800),
    delayTicks: count({
      unit: 'ticks',
      min: 0,
      max: 40,
      says: 'Ticks between reading the sensors and the request reaching the motor',
    }).default(1),
    modulationRatio: quantity({
      unit: '',
      min: 0.3,
      max: 1.2,
      says: 'Share of the pack voltage that the drive stage can put across the motor',
    }).default(0.95),
    gyroNoiseDegPerS: quantity({
      unit: 'deg/s',
      min: 0,
      max: 20,
      says: 'Standard deviation of one gyro sample',
    }).default(0.05),
    accelerometerNoiseMPerS2: quantity({
      unit: 'm/s2',
      min: 0,
      max: 20,
      says: 'Standard deviation of one accelerometer sample, each axis',
    }).default(0.3),
  },
  'The controller hardware: loop, drive stage and sensors',
);

/** What a board file holds. */
export const boardSchema = section(
  {
    summary: text('One or two sentences: what kind of board this is'),
    wheel,
    tyre: tyre.prefault({}),
    deck,
    motor,
    pack,
    controller: controller.prefault({}),
  },
  'A board: wheel, tyre, deck, motor, pack and controller hardware',
);

/** A board file, checked and with its defaults filled in. */
export type BoardFile = z.output<typeof boardSchema>;
