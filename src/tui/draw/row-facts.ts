/**
 * What is drawn of a result again and again while nothing about it changes: its figures as text, its worst cell in each
 * scenario. Worked out once a result.
 */
import type { ProfileResult, RankedCell } from '../../measure/profile-result.js';
import { figureTexts } from '../../show/rank-row.js';

/** Facts of one result; `dearest` is by scenario. */
export interface RowFacts {
  figures: ReturnType<typeof figureTexts>;
  dearest: ReadonlyMap<string, RankedCell>;
}

const known = new WeakMap<ProfileResult, RowFacts>();

/** The facts of a result. */
export function factsOf(result: ProfileResult): RowFacts {
  const facts = known.get(result) ?? { figures: figureTexts(result), dearest: dearestCells(result) };
  known.set(result, facts);
  return facts;
}

function dearestCells({ cells }: ProfileResult): Map<string, RankedCell> {
  const dearest = new Map<string, RankedCell>();
  for (const cell of cells) {
    const before = dearest.get(cell.scenario);
    if (before === undefined || cell.cost > before.cost) dearest.set(cell.scenario, cell);
  }
  return dearest;
}
