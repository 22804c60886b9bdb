/**
 * Open-circuit voltage of a cell over charge. The curve of a board that gives none is that of a
 * 5 Ah 21700 cell, NMC 811 against graphite-SiOx: C.-H. Chen et al., J. Electrochem. Soc. 167 (2020)
 * 080534, from its two electrode functions by lithium balance between 2.5 and 4.2 V, with points so close that
 * straight lines between them stay within 7 mV (tests/model/open-circuit.test.ts recomputes it).
 */
import type { BoardFile } from '../quantity/board-file.js';

type OpenCircuitPoint = NonNullable<BoardFile['pack']['openCircuit']>[number];

const PUBLISHED_CURVE: readonly OpenCircuitPoint[] = [
  { chargePercent: 0, cellV: 2.5 },
  { chargePercent: 1, cellV: 2.711 },
  { chargePercent: 2, cellV: 2.862 },
  { chargePercent: 3, cellV: 2.971 },
  { chargePercent: 4, cellV: 3.05 },
  { chargePercent: 5, cellV: 3.109 },
  { chargePercent: 7, cellV: 3.193 },
  { chargePercent: 10, cellV: 3.296 },
  { chargePercent: 12, cellV: 3.364 },
  { chargePercent: 14, cellV: 3.416 },
  { chargePercent: 16, cellV: 3.448 },
  { chargePercent: 18, cellV: 3.469 },
  { chargePercent: 20, cellV: 3.485 },
  { chargePercent: 30, cellV: 3.581 },
  { chargePercent: 40, cellV: 3.667 },
  { chargePercent: 50, cellV: 3.751 },
  { chargePercent: 60, cellV: 3.841 },
  { chargePercent: 70, cellV: 3.948 },
  { chargePercent: 80, cellV: 4.042 },
  { chargePercent: 85, cellV: 4.081 },
  { chargePercent: 90, cellV: 4.097 },
  { chargePercent: 95, cellV: 4.124 },
  { chargePercent: 100, cellV: 4.2 },
];

/** Intervals of the table that the loop reads. */
export const CHARGE_INTERVALS = 100;

/** Cell voltage [V] at charges 0, 1, ... 100 %, straight lines between the points given. */
export function openCircuitTable(points: readonly OpenCircuitPoint[] = PUBLISHED_CURVE): Float64Array {
  return Float64Array.from({ length: CHARGE_INTERVALS + 1 }, (_, percent) => voltageAt(points, percent));
}

function voltageAt(points: readonly OpenCircuitPoint[], percent: number): number {
  let below = points[0]!;
  for (const point of points) {
    if (point.chargePercent >= percent) {
      const span = point.chargePercent - below.chargePercent;
      const share = span > 0 ? (percent - below.chargePercent) / span : 1;
      return below.cellV + share * (point.cellV - below.cellV);
    }
    below = point;
  }
  return below.cellV;
}
