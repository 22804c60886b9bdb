/**
 * What is a cell made from, and what is it made from when one part of it is changed?
 */
import type { BoardFile } from '../quantity/board-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import type { RiderFile } from '../quantity/rider-file.js';
import type { RoadPiece, ScenarioFile } from '../quantity/scenario-file.js';

/** What a cell is made from. */
export interface Makings {
  profile: ProfileFile;
  board: BoardFile;
  rider: RiderFile;
  scenario: ScenarioFile;
  seed: number;
  noiseRatio: number;
}

/** With other numbers of the controller's hardware. */
export const withController = (makings: Makings, controller: Partial<BoardFile['controller']>): Makings => ({
  ...makings,
  board: { ...makings.board, controller: { ...makings.board.controller, ...controller } },
});

/** With other numbers of the motor. */
export const withMotor = (makings: Makings, motor: Partial<BoardFile['motor']>): Makings => ({
  ...makings,
  board: { ...makings.board, motor: { ...makings.board.motor, ...motor } },
});

/** With other numbers of the pack. */
export const withPack = (makings: Makings, pack: Partial<BoardFile['pack']>): Makings => ({
  ...makings,
  board: { ...makings.board, pack: { ...makings.board.pack, ...pack } },
});

/**
 * With so many cells in series; the current they may give goes down and each cell's resistance with them, so that power and
 * resistance of the pack stay.
 */
export function withCellsInSeries(makings: Makings, seriesCells: number): Makings {
  const { pack } = makings.board;
  const ratio = pack.seriesCells / seriesCells;
  return withPack(makings, {
    seriesCells,
    dischargeCurrentA: ratio * pack.dischargeCurrentA,
    chargeCurrentA: ratio * pack.chargeCurrentA,
    cellResistanceMilliohm: ratio * pack.cellResistanceMilliohm,
  });
}

/** With other numbers of the rider's balance. */
export const withBalance = (makings: Makings, balance: Partial<RiderFile['balance']>): Makings => ({
  ...makings,
  rider: { ...makings.rider, balance: { ...makings.rider.balance, ...balance } },
});

/** With other feet and legs. */
export const withStance = (makings: Makings, stance: Partial<RiderFile['stance']>): Makings => ({
  ...makings,
  rider: { ...makings.rider, stance: { ...makings.rider.stance, ...stance } },
});

/** With another haste of the rider. */
export const withPace = (makings: Makings, pace: Partial<RiderFile['pace']>): Makings => ({
  ...makings,
  rider: { ...makings.rider, pace: { ...makings.rider.pace, ...pace } },
});

/** With another scenario. */
export const withScenario = (makings: Makings, scenario: Partial<ScenarioFile>): Makings => ({
  ...makings,
  scenario: { ...makings.scenario, ...scenario },
});

/** With every piece of the road changed. */
export const withRoad = (makings: Makings, change: (piece: RoadPiece) => RoadPiece): Makings =>
  withScenario(makings, { road: makings.scenario.road.map(change) });
