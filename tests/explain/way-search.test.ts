/** Does the search find the stretch of sizes that helps nearest to what is now, end to end, on made-up answers? */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextPlaces, openWaySearch, stretch, withPlace } from '../../src/explain/way-search.js';

/** Searches to the end, counting what was asked. */
function searched(count: number, helpsAt: (place: number) => boolean) {
  let search = openWaySearch(count);
  let asked = 0;
  for (let places = nextPlaces(search); places.length > 0; places = nextPlaces(search)) {
    for (const place of places) {
      search = withPlace(search, place, helpsAt(place));
      asked += 1;
    }
  }
  return { ...stretch(search), asked };
}

describe('the search for a way out', () => {
  it('finds the last size that still helps, where all before it do', () => {
    expect(searched(40, (place) => place <= 22)).toMatchObject({ near: 22, far: 0 });
    expect(searched(1, () => true)).toMatchObject({ near: 0, far: 0 });
  });

  it('finds both ends where too much hurts as well', () => {
    expect(searched(40, (place) => place >= 8 && place <= 17)).toMatchObject({ near: 17, far: 8 });
  });

  it('finds nothing where nothing helps, and asks for no more than the first places', () => {
    expect(searched(40, () => false)).toEqual({ near: null, far: null, asked: 9 });
  });

  it('takes, of two stretches, the one nearest to what is now', () => {
    expect(searched(41, (place) => place < 12 || (place >= 28 && place < 34))).toMatchObject({
      near: 33,
      far: 28,
    });
  });

  it('ends at sizes that help, next to sizes that do not, in few questions', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.nat(400), fc.nat(400), (count, one, other) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        const helpsAt = (place: number) => place >= low && place <= high;
        const { near, far, asked } = searched(count, helpsAt);
        // Nine places all over; from there each end by halving; of a stretch no longer than ten every place between its ends.
        const apart = Math.max(1, Math.ceil((count - 1) / 8));
        const between = near === null || far === null || near - far > 10 ? 0 : Math.max(0, near - far - 1);
        expect(asked).toBeLessThanOrEqual(9 + 2 * Math.ceil(Math.log2(apart)) + between);
        if (near === null || far === null) return;
        expect(near).toBe(Math.min(high, count - 1));
        expect(far).toBe(low);
      }),
      { seed: 887697187, numRuns: 2000, examples: [[229, 153, 143]] },
    );
  });
});
