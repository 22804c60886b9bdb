/**
 * In which order are candidates run in cells? Those first that tell candidates apart soonest: the hardest that a plain profile for
 * the rig survives, in turn under the lightest, the heaviest and the other riders; what it does not survive comes last.
 */
import type { Priced } from './racing.js';

/** What the order of a cell is made from. */
export interface CellToOrder extends Priced {
  rider: string;
  riderMassKg: number;
}

/** The places of cells in the order in which they are run. */
export function cellOrder(cells: readonly CellToOrder[]): number[] {
  const hardest = cells
    .map((cell, place) => ({ ...cell, place }))
    .sort((a, b) => Number(a.failed) - Number(b.failed) || b.cost - a.cost || a.place - b.place);
  const queues = ridersInTurn(cells).map((rider) => hardest.filter((cell) => cell.rider === rider));
  const order: number[] = [];
  // Two at a time, so that the first four are those of the lightest and the heaviest.
  while (order.length < cells.length) {
    for (const queue of queues) order.push(...queue.splice(0, 2).map(({ place }) => place));
  }
  return order;
}

/** The lightest, the heaviest, then the others by mass. */
function ridersInTurn(cells: readonly CellToOrder[]): string[] {
  const masses = new Map(cells.map(({ rider, riderMassKg }) => [rider, riderMassKg]));
  const byMass = [...masses].sort(([, a], [, b]) => a - b).map(([rider]) => rider);
  const [lightest, ...others] = byMass;
  const heaviest = others.pop();
  return [lightest, heaviest, ...others].filter((rider) => rider !== undefined);
}
