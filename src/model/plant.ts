/**
 * One rig, board and rider together, as the equations want it: SI units, radians, masses added up.
 * Built once from the files; the equations only read it.
 */
import type { BoardFile } from '../quantity/board-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import { torqueConstantOf } from '../quantity/motor-constant.js';
import { COULOMB_PER_AH, RAD_PER_DEG } from '../quantity/units.js';
import { openCircuitTable } from './open-circuit.js';
import { bodyOf } from './rider-body.js';

/** A rig in SI units. Field names carry the unit; angles are radians. */
export type Plant = ReturnType<typeof plantOf>;

/** The rig that a board and a rider make. */
export function plantOf(board: BoardFile, rider: RiderFile) {
  const { wheel, tyre, deck } = board;
  const riderMassKg = rider.body.massKg;
  const totalMassKg = wheel.massKg + deck.massKg + riderMassKg;
  return {
    wheelRadiusM: wheel.radiusM,
    wheelInertiaKgM2: wheel.inertiaKgM2,
    verticalStiffnessNPerM: tyre.verticalStiffnessNPerM,
    verticalDampingNSPerM: tyre.verticalDampingNSPerM,
    treadStiffnessNPerM: tyre.longitudinalStiffnessNPerM,
    treadDampingNSPerM: tyre.longitudinalDampingNSPerM,
    wheelMassKg: wheel.massKg,
    deckMassKg: deck.massKg,
    deckInertiaKgM2: deck.inertiaKgM2,
    deckForwardM: deck.centreForwardM,
    deckAboveAxleM: deck.centreAboveAxleM,
    ankleAboveAxleM: deck.ankleLineAboveAxleM,
    reachM: deck.reachM,
    tipBelowAxleM: deck.tipBelowAxleM,
    riderMassKg,
    riderInertiaKgM2: bodyOf(rider.body).inertiaKgM2,
    legLengthM: bodyOf(rider.body).centreAboveAnkleM,
    halfDragAreaKgPerM: 0.5 * AIR_DENSITY_KG_PER_M3 * rider.body.dragAreaM2,
    legStiffnessNPerM: rider.stance.legStiffnessNPerM,
    legDampingNSPerM: rider.stance.legDampingNSPerM,
    halfStanceM: rider.stance.widthM / 2,
    passiveStiffnessNmPerRad: rider.stance.passiveStiffnessNmPerRad,
    passiveDampingNmSPerRad: rider.stance.passiveDampingNmSPerRad,
    leanLimitRad: rider.balance.leanLimitDeg * RAD_PER_DEG,
    totalMassKg,
    motor: motorOf(board),
    pack: packOf(board),
  };
}

/** Density of air, kg/m3, near 20 degC at sea level. */
export const AIR_DENSITY_KG_PER_M3 = 1.2;

function motorOf({ motor }: BoardFile) {
  const { torqueConstantNmPerA, speedConstantRpmPerV } = motor;
  if (torqueConstantNmPerA === undefined && speedConstantRpmPerV === undefined) {
    throw new Error('a checked board gives torqueConstantNmPerA or speedConstantRpmPerV');
  }
  return {
    torqueConstantNmPerA: torqueConstantNmPerA ?? torqueConstantOf(speedConstantRpmPerV!),
    resistanceOhm: motor.resistanceOhm,
    lagS: motor.currentLagMs / 1000,
    driveCurrentA: motor.driveCurrentA,
    brakeCurrentA: motor.brakeCurrentA,
  };
}

function packOf({ pack, controller }: BoardFile) {
  return {
    seriesCells: pack.seriesCells,
    cellOpenCircuitV: openCircuitTable(pack.openCircuit),
    resistanceOhm: (pack.cellResistanceMilliohm / 1000) * (pack.seriesCells / pack.parallelCells),
    capacityC: pack.cellCapacityAh * pack.parallelCells * COULOMB_PER_AH,
    dischargeCurrentA: pack.dischargeCurrentA,
    chargeCurrentA: pack.chargeCurrentA,
    modulationRatio: controller.modulationRatio,
  };
}
