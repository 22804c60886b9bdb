/** Do the searches for the fall and for a light foot share their runs, and find both edges? */
import { describe, expect, it } from 'vitest';
import { countsToRun, edgeOf, openQuest, withMet, type Met } from '../../src/explain/edge-quest.js';
import { edgeKinds, type EdgeName } from '../../src/explain/edge-scenarios.js';
import { boardWith } from '../rigs.js';

const kinds = edgeKinds(boardWith());

/** What is found where it falls and where a foot is light from these counts of steps on, and the counts that were run. */
function found(name: EdgeName, { fallFrom, lightFrom }: { fallFrom: number; lightFrom: number }) {
  const metAt = (count: number): Met => ({
    ending: count < fallFrom ? null : { kind: 'nose strike', atS: count, seed: 3 },
    isFootLight: count >= lightFrom,
  });
  let quest = openQuest(kinds.find((kind) => kind.name === name)!);
  const ran: number[] = [];
  for (let counts = countsToRun(quest); counts.length > 0; counts = countsToRun(quest)) {
    for (const count of counts) {
      ran.push(count);
      quest = withMet(quest, count, metAt(count));
    }
  }
  return { ...edgeOf(quest), ran };
}

describe('a push', () => {
  it.each([
    [130, 74],
    [130, 1],
    [130, 129],
    [75, 74],
    [41, 0],
  ])(
    'that falls from %i and has a light foot from %i shows both, and no size is run twice',
    (fallFrom, lightFrom) => {
      const { survived, failed, ending, footLightFrom, ran } = found('push from behind', {
        fallFrom,
        lightFrom,
      });
      expect([survived, failed]).toEqual([fallFrom - 1, fallFrom]);
      expect(ending).toEqual({ kind: 'nose strike', atS: fallFrom, seed: 3 });
      expect(footLightFrom).toBe(lightFrom);
      expect(new Set(ran).size).toBe(ran.length);
    },
  );

  it('has a light foot below nothing where it falls first, at no further run', () => {
    const falling = found('push from ahead', { fallFrom: 130, lightFrom: 130 });
    expect(falling.footLightFrom).toBeNull();
    expect(falling.ran).toEqual(found('push from ahead', { fallFrom: 130, lightFrom: Infinity }).ran);
    expect(found('push from ahead', { fallFrom: 0, lightFrom: 0 })).toMatchObject({
      survived: null,
      failed: 0,
      footLightFrom: null,
      ran: [0],
    });
  });

  it('may have a light foot and no fall, or neither', () => {
    expect(found('push from behind', { fallFrom: Infinity, lightFrom: 74 })).toMatchObject({
      survived: 200,
      failed: null,
      ending: null,
      footLightFrom: 74,
    });
    expect(found('push from behind', { fallFrom: Infinity, lightFrom: Infinity }).footLightFrom).toBeNull();
  });
});

it('only a push is asked about feet', () => {
  const named = (name: EdgeName) => found(name, { fallFrom: 30, lightFrom: 12 });
  for (const name of ['bump', 'climb', 'speed'] as const) {
    expect(named(name).footLightFrom).toBeNull();
    expect(named(name).ran).toEqual(found(name, { fallFrom: 30, lightFrom: Infinity }).ran);
  }
  expect(named('climb').survived).toBe(29 * 0.5);
});
