/** Is the edge found where it is, and never above an island? */
import { describe, expect, it } from 'vitest';
import { nextCount, openSearch, searched, withResult, type Ending } from '../../src/explain/edge.js';

const FALL: Ending = { kind: 'nose strike', atS: 2 };
const LADDER = [0, 10, 20, 40, 80];

/** A search of something that is survived where `holds` says so, with the counts that were tried. */
function search(holds: (count: number) => boolean) {
  const tried: number[] = [];
  const found = searched(LADDER, (count) => {
    tried.push(count);
    return holds(count) ? null : { kind: 'nose strike', atS: count };
  });
  return { ...found, tried };
}

describe('a search', () => {
  it.each(Array.from({ length: 80 }, (_, edge) => edge))('finds an edge at %i to the step', (edge) => {
    const { survived, failed, ending } = search((count) => count <= edge);
    expect([survived, failed]).toEqual([edge, edge + 1]);
    expect(ending).toEqual({ kind: 'nose strike', atS: edge + 1 });
  });

  it('has no failure where even the largest is survived', () => {
    expect(search(() => true)).toMatchObject({ survived: 80, failed: null, ending: null, tried: LADDER });
  });

  it('has nothing survived where even the least fails, and tries no more', () => {
    expect(search(() => false)).toMatchObject({ survived: null, failed: 0, tried: [0] });
  });

  it('stays below an island of survival', () => {
    const island = search((count) => count <= 13 || count >= 30);
    expect([island.survived, island.failed]).toEqual([13, 14]);
    expect(Math.max(...island.tried)).toBe(20);
  });

  it('brackets a change from survived to failed where it goes to and fro', () => {
    const { survived, failed, tried } = search((count) => count < 40 && count !== 33);
    expect(failed! - survived!).toBe(1);
    expect(tried).toContain(survived);
    expect(tried).toContain(failed);
  });

  it('asks for each count once, and for few', () => {
    const { tried } = search((count) => count <= 57);
    expect(new Set(tried).size).toBe(tried.length);
    expect(tried.length).toBeLessThanOrEqual(LADDER.length + Math.ceil(Math.log2(40)));
  });
});

it('a result changes a copy, not the search', () => {
  const before = openSearch(LADDER);
  const after = withResult(before, 0, null);
  expect(nextCount(before)).toBe(0);
  expect(nextCount(after)).toBe(10);
  expect(nextCount(withResult(after, 10, FALL))).toBe(5);
});
