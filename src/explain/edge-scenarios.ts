/**
 * What is tried to find the edge? A steady ride that meets one disturbance, as large as asked: a bump, a slope, a push; or
 * the stated push with more delay, with a weaker pack, at a higher speed.
 */
import { CHARGE_INTERVALS, openCircuitTable } from '../model/open-circuit.js';
import type { BoardFile } from '../quantity/board-file.js';
import { scenarioSchema, type RoadPiece, type ScenarioFile } from '../quantity/scenario-file.js';
import { M_PER_S_PER_KM_PER_H } from '../quantity/units.js';
import type { Makings } from './makings.js';

/** What is made larger until the rig falls. */
export const EDGE_NAMES = [
  'bump',
  'climb',
  'descent',
  'push from behind',
  'push from ahead',
  'extra delay',
  'pack sag',
  'speed',
] as const;

/** One of the things that are made larger. */
export type EdgeName = (typeof EDGE_NAMES)[number];

/** One search: sizes are in `unit`; a `speedKmPerH` of null is what is searched for. */
export interface EdgeKind {
  name: EdgeName;
  unit: 'mm' | '%' | 'N s' | 'ms' | 'V' | 'km/h';
  speedKmPerH: number | null;
  chargePercent: number;
  /** The push that is met, N s forward; null where another thing is. */
  pushNS: number | null;
  /** Size of a step, in `unit`, and the counts of steps that are tried upwards. */
  step: number;
  ladder: readonly number[];
  /** The makings of a run that meets this size. */
  change: (makings: Makings, size: number) => Makings;
}

/** The push that headroom has to cover, N s forward: that of the scenario `shove`, 100 N for 0.3 s. */
export const STATED_PUSH_NS = 30;

/** Length of a push, s. */
export const PUSH_S = 0.3;
/** A push comes so long after the start, s. */
const PUSH_AT_S = 1;

/** Length of a bump, m. */
export const BUMP_LENGTH_M = 0.4;
/** Length over which a slope begins, m. */
export const SLOPE_EASE_M = 2;

/** Usual speed of the rides, km/h. */
export const USUAL_SPEED_KM_PER_H = 12;
const SAG_SPEED_KM_PER_H = 20;
/** Usual state of the pack, %. */
export const USUAL_CHARGE_PERCENT = 80;
const LOW_CHARGE_PERCENT = 20;

/** Length of a run with a bump or a push, s. */
export const KNOCK_S = 5;
/** Length of a run with a slope, where falls come later, s. */
export const SLOPE_S = 10;

const BEFORE_M = 5;
const METRES_PER_MM = 0.001;

/** A pack that has lost this share of its voltage is as good as none. */
const MOST_SAG_SHARE = 0.6;
const LEAST_CELL_V = 0.1;

/** All searches for a board. */
export function edgeKinds({ controller, pack }: BoardFile): EdgeKind[] {
  const usual = { speedKmPerH: USUAL_SPEED_KM_PER_H, chargePercent: USUAL_CHARGE_PERCENT, pushNS: null };
  const slope = { ...usual, unit: '%' as const, step: 0.5, ladder: SLOPE_LADDER };
  const push = { ...usual, unit: 'N s' as const, step: 1, ladder: PUSH_LADDER };
  const speed = { name: 'speed', unit: 'km/h', speedKmPerH: null, pushNS: STATED_PUSH_NS, step: 1 } as const;
  const tickMs = 1000 / controller.loopRateHz;
  const fullV = pack.seriesCells * openCircuitTable(pack.openCircuit)[USUAL_CHARGE_PERCENT]!;
  return [
    { ...usual, name: 'bump', unit: 'mm', step: 1, ladder: BUMP_LADDER_MM, change: overBump },
    { ...slope, name: 'climb', change: (makings, percent) => ontoSlope(makings, percent) },
    { ...slope, name: 'descent', change: (makings, percent) => ontoSlope(makings, -percent) },
    { ...push, name: 'push from behind', change: (makings, pushNS) => pushed(makings, { ...usual, pushNS }) },
    {
      ...push,
      name: 'push from ahead',
      change: (makings, pushNS) => pushed(makings, { ...usual, pushNS: -pushNS }),
    },
    {
      ...usual,
      name: 'extra delay',
      unit: 'ms',
      pushNS: STATED_PUSH_NS,
      step: tickMs,
      ladder: evenly(DELAY_LADDER_MS, tickMs),
      change: (makings, size) =>
        pushed(withDelay(makings, Math.round(size / tickMs)), { ...usual, pushNS: STATED_PUSH_NS }),
    },
    {
      ...usual,
      name: 'pack sag',
      unit: 'V',
      speedKmPerH: SAG_SPEED_KM_PER_H,
      pushNS: STATED_PUSH_NS,
      step: 0.5,
      ladder: evenly(
        SAG_LADDER_SHARES.map((share) => share * MOST_SAG_SHARE * fullV),
        0.5,
      ),
      change: (makings, lostV) =>
        pushed(withSag(makings, lostV), {
          ...usual,
          speedKmPerH: SAG_SPEED_KM_PER_H,
          pushNS: STATED_PUSH_NS,
        }),
    },
    ...[USUAL_CHARGE_PERCENT, LOW_CHARGE_PERCENT].map((chargePercent): EdgeKind => ({
      ...speed,
      chargePercent,
      ladder: evenly(SPEED_LADDER_KM_PER_H, speed.step),
      change: (makings, speedKmPerH) =>
        pushed(makings, { speedKmPerH, chargePercent, pushNS: STATED_PUSH_NS }),
    })),
  ];
}

const BUMP_LADDER_MM = [0, 10, 20, 40, 60, 90, 130, 180, 240, 300];
/** In half percents, and in N s. */
const SLOPE_LADDER = [0, 10, 20, 30, 40, 50, 60, 70, 80];
const PUSH_LADDER = [0, 20, 40, 70, 110, 150, 200];
const DELAY_LADDER_MS = [0, 4, 8, 14, 20, 30, 40, 60, 80];
const SAG_LADDER_SHARES = [0, 0.2, 0.4, 0.6, 0.8, 1];
/** Speeds that are tried upwards, km/h; no scenario goes further. */
export const SPEED_LADDER_KM_PER_H: readonly number[] = [0, 8, 16, 24, 32, 40, 48, 56, 60];

/** Sizes as whole counts of a step, each once. */
function evenly(sizes: readonly number[], step: number): number[] {
  return [...new Set(sizes.map((size) => Math.round(size / step)))];
}

/** A steady ride and the push that it meets. */
interface Pushed {
  speedKmPerH: number;
  chargePercent: number;
  pushNS: number;
}

/** The makings of a steady ride on the level that meets a push [N s]. */
export function pushed(makings: Makings, { speedKmPerH, chargePercent, pushNS }: Pushed): Makings {
  return riding(makings, {
    durationS: KNOCK_S,
    chargePercent,
    start: { speedKmPerH },
    road: [{ lengthM: roadM(speedKmPerH, KNOCK_S) }],
    shoves: [{ name: 'it', atS: PUSH_AT_S, forS: PUSH_S, forwardN: pushNS / PUSH_S }],
  });
}

function overBump(makings: Makings, heightMm: number): Makings {
  return riding(makings, {
    durationS: KNOCK_S,
    chargePercent: USUAL_CHARGE_PERCENT,
    start: { speedKmPerH: USUAL_SPEED_KM_PER_H },
    road: [
      { lengthM: BEFORE_M },
      { name: 'it', lengthM: BUMP_LENGTH_M, bumpHeightM: heightMm * METRES_PER_MM },
      { lengthM: roadM(USUAL_SPEED_KM_PER_H, KNOCK_S) },
    ],
  });
}

function ontoSlope(makings: Makings, gradePercent: number): Makings {
  return riding(makings, {
    durationS: SLOPE_S,
    chargePercent: USUAL_CHARGE_PERCENT,
    start: { speedKmPerH: USUAL_SPEED_KM_PER_H },
    road: [
      { lengthM: BEFORE_M },
      { name: 'it', lengthM: roadM(USUAL_SPEED_KM_PER_H, SLOPE_S), gradePercent, easeM: SLOPE_EASE_M },
    ],
  });
}

interface Given {
  durationS: number;
  chargePercent: number;
  start: { speedKmPerH: number };
  road: (Partial<RoadPiece> & Pick<RoadPiece, 'lengthM'>)[];
  shoves?: ScenarioFile['shoves'];
}

function riding(makings: Makings, given: Given): Makings {
  const scenario: ScenarioFile = scenarioSchema.parse({
    summary: 'A steady ride that meets one thing.',
    ...given,
    speeds: [{ atS: 0, speedKmPerH: given.start.speedKmPerH }],
    measure: { from: 'it', as: 'disturbance', bandDeg: 1 },
  });
  return { ...makings, scenario };
}

/** Road for a ride of so long, with half as much again to spare, m. */
function roadM(speedKmPerH: number, durationS: number): number {
  return BEFORE_M + 1.5 * durationS * speedKmPerH * M_PER_S_PER_KM_PER_H;
}

function withDelay(makings: Makings, ticks: number): Makings {
  const { board } = makings;
  const delayTicks = board.controller.delayTicks + ticks;
  return { ...makings, board: { ...board, controller: { ...board.controller, delayTicks } } };
}

/** The pack with so many volts [V] less at rest, at every charge; its resistance stays. */
function withSag(makings: Makings, lostV: number): Makings {
  const { board } = makings;
  const table = openCircuitTable(board.pack.openCircuit);
  const openCircuit = Array.from(table, (cellV, index) => ({
    chargePercent: (100 * index) / CHARGE_INTERVALS,
    cellV: Math.max(LEAST_CELL_V, cellV - lostV / board.pack.seriesCells),
  }));
  return { ...makings, board: { ...board, pack: { ...board.pack, openCircuit } } };
}
