/** Roads of pieces against elementary geometry, accessibility numbers, and a disc that rolls over a kerb. */
import { describe, expect, it } from 'vitest';
import { readGround } from '../../src/model/ground.js';
import { DERIVE_SIZE, ROAD_HEIGHT, ROAD_SLOPE } from '../../src/model/state.js';
import { eventsOf, MARK } from '../../src/scenario/event.js';
import { buildRoad, pieceStarts, tyrePath, type Road } from '../../src/scenario/road.js';
import { roadPieces, scenarioWith } from '../rigs.js';

const RADIUS = 0.14;
const road = (...pieces: Parameters<typeof roadPieces>) =>
  buildRoad(roadPieces(...pieces), { radiusM: RADIUS, seed: 1 });

function under(on: Road, xM: number): { height: number; slope: number } {
  const out = new Float64Array(DERIVE_SIZE);
  readGround(on, xM, out);
  return { height: out[ROAD_HEIGHT]!, slope: out[ROAD_SLOPE]! };
}

/** Height of the bare road, straight between grid points. */
function bare(on: Road, xM: number): number {
  const place = (xM - on.originM) / on.spacingM;
  const left = Math.floor(place);
  return on.bareHeightM[left]! + (place - left) * (on.bareHeightM[left + 1]! - on.bareHeightM[left]!);
}

describe('a disc over a kerb', () => {
  // Textbook statics of a rigid wheel of radius R at a step h: F / W = sqrt(2 R h - h^2) / (R - h) at the axle,
  // torque / W = sqrt(2 R h - h^2) in the hub, contact acos((R - h) / R). Rows for R 0.14 m.
  it.each([
    { mm: 6, force: 0.303, lever: 0.0405, contactDeg: 16.8 },
    { mm: 13, force: 0.464, lever: 0.0589, contactDeg: 24.9 },
    { mm: 25, force: 0.694, lever: 0.0798, contactDeg: 34.8 },
    { mm: 50, force: 1.192, lever: 0.1072, contactDeg: 50.0 },
  ])('of $mm mm meets it as the published row says', ({ mm, force, lever, contactDeg }) => {
    const h = mm / 1000;
    const fine = 0.0001;
    const heights = new Float64Array(8001).fill(0);
    heights.fill(h, 4000);
    const path = tyrePath(heights, RADIUS, fine);
    const first = path.findIndex((height) => height > 1e-12);
    // Twice first-order slope, brought back to the point of touch.
    const at = (place: number) => (path[place + 1]! - path[place - 1]!) / (2 * fine);
    const slope = at(first + 1) - (at(first + 2) - at(first + 1));
    expect((4000 - first) * fine).toBeCloseTo(lever, 3);
    expect(Math.abs(slope / force - 1)).toBeLessThan(0.01);
    expect((Math.atan(slope) * 180) / Math.PI).toBeCloseTo(contactDeg, 0);
    expect(RADIUS * Math.sin(Math.atan(slope))).toBeCloseTo(lever, 3);
  });

  it('follows the arc around its edge at the grid points of the real road', () => {
    const kerb = road({ lengthM: 5 }, { lengthM: 5, stepUpM: 0.05 });
    for (let behind = 0; behind <= 0.105; behind += kerb.spacingM) {
      const arc = 0.05 + Math.sqrt(RADIUS ** 2 - behind ** 2) - RADIUS;
      expect(under(kerb, 5 - behind).height).toBeCloseTo(Math.max(0, arc), 9);
    }
    expect(under(kerb, 4.88).height).toBe(0);
    expect(under(kerb, 5.02).height).toBeCloseTo(0.05, 12);
  });

  it('rolls down a drop around the same arc, a wheel length later', () => {
    const kerb = road({ lengthM: 5 }, { lengthM: 5, stepUpM: -0.06 });
    const edge = 5 - kerb.spacingM; // the last grid point on the upper side
    for (const ahead of [0.02, 0.05, 0.08, 0.11]) {
      expect(under(kerb, edge + ahead).height).toBeCloseTo(Math.sqrt(RADIUS ** 2 - ahead ** 2) - RADIUS, 9);
    }
    expect(under(kerb, edge + 0.13).height).toBeCloseTo(-0.06, 12);
  });

  it('touches no road with its disc anywhere, and touches it somewhere', () => {
    const rough = road({ lengthM: 3, roughness: 'E' }, { lengthM: 2, stepUpM: 0.04, roughness: 'D' });
    const reach = Math.floor(RADIUS / rough.spacingM);
    for (let place = 1900; place < 3100; place += 7) {
      const axle = rough.knots[2 * place]! + RADIUS;
      let nearest = Infinity;
      for (let offset = -reach; offset <= reach; offset++) {
        const s = offset * rough.spacingM;
        const rim = axle - Math.sqrt(RADIUS ** 2 - s ** 2);
        nearest = Math.min(nearest, rim - rough.bareHeightM[place + offset]!);
      }
      expect(Math.abs(nearest)).toBeLessThan(1e-12);
    }
  });
});

describe('slopes', () => {
  it('the accessible ramp of 1:12 (2010 ADA Standards 405.2) is 4.764 deg', () => {
    const ramp = road({ lengthM: 5 }, { lengthM: 10, gradePercent: 100 / 12 });
    expect((Math.atan(under(ramp, 10).slope) * 180) / Math.PI).toBeCloseTo(4.764, 3);
    expect(bare(ramp, 10) - bare(ramp, 8)).toBeCloseTo(2 / 12, 9);
    // On a plane the axle stands r / cos(alpha) above it; the grid misses the disc's point of touch by half a cell at most.
    const lift = under(ramp, 10).height - bare(ramp, 10) - RADIUS * (Math.hypot(1, 1 / 12) - 1);
    expect(lift).toBeLessThanOrEqual(1e-12);
    expect(lift).toBeGreaterThan(-(ramp.spacingM ** 2) / (8 * RADIUS) - 1e-9);
  });

  it('begins at the start with the grade of the first piece, up or down, with no kink under the wheel', () => {
    for (const gradePercent of [12, 1, -1, -12]) {
      const hill = road({ lengthM: 20, gradePercent });
      expect(under(hill, 1e-6).slope).toBeCloseTo(gradePercent / 100, 9);
      expect(under(hill, -1).slope).toBeCloseTo(gradePercent / 100, 9);
    }
  });

  it('eases from one grade to the next: the slope runs evenly and the rise is their mean times the ease', () => {
    const eased = road({ lengthM: 5 }, { lengthM: 20, gradePercent: 10, easeM: 4 });
    expect(bare(eased, 9) - bare(eased, 5)).toBeCloseTo(0.05 * 4, 9);
    expect(bare(eased, 12) - bare(eased, 9)).toBeCloseTo(0.1 * 3, 9);
    expect((bare(eased, 7.01) - bare(eased, 6.99)) / 0.02).toBeCloseTo(0.05, 6);
  });

  it('an ease longer than its piece leaves the next piece to go on from the slope that was reached', () => {
    const long = road({ lengthM: 4, gradePercent: 10, easeM: 8 }, { lengthM: 8, gradePercent: 10, easeM: 4 });
    expect((bare(long, 3.99) - bare(long, 3.97)) / 0.02).toBeCloseTo(0.05, 3);
    expect((bare(long, 4.03) - bare(long, 4.01)) / 0.02).toBeCloseTo(0.05, 3);
  });

  it('carries bumps of the height that was asked for, and the mean height between', () => {
    const humps = road({ lengthM: 5 }, { lengthM: 4, bumpHeightM: 0.075, bumpCount: 2 });
    expect(bare(humps, 6)).toBeCloseTo(0.075, 9);
    expect(bare(humps, 7)).toBeCloseTo(0, 9);
    expect(bare(humps, 8)).toBeCloseTo(0.075, 9);
    expect(under(humps, 6).height).toBeCloseTo(0.075, 9);
  });

  it('joins pieces without a step, and goes on level after the last', () => {
    const ride = road(
      { lengthM: 3, gradePercent: 5 },
      { lengthM: 3, gradePercent: -8, easeM: 1 },
      { lengthM: 2 },
    );
    for (let place = 1; place < ride.bareHeightM.length; place++) {
      expect(Math.abs(ride.bareHeightM[place]! - ride.bareHeightM[place - 1]!)).toBeLessThan(5e-4);
    }
    expect(under(ride, 500).height).toBe(ride.bareHeightM.at(-1));
    expect(under(ride, 500).slope).toBe(0);
  });
});

describe('the grid of the road', () => {
  it('has a slope that is the derivative of its height, without jumps (cubic Hermite, C1)', () => {
    const rough = road({ lengthM: 4, roughness: 'D' });
    const h = 1e-7;
    for (let x = 0.503; x < 3.5; x += 0.0131) {
      const rise = (under(rough, x + h).height - under(rough, x - h).height) / (2 * h);
      expect(rise).toBeCloseTo(under(rough, x).slope, 6);
    }
    for (let place = 2200; place < 2300; place++) {
      const x = rough.originM + place * rough.spacingM;
      expect(under(rough, x - 1e-9).slope).toBeCloseTo(under(rough, x + 1e-9).slope, 5);
    }
  });

  it('is fine enough: half its spacing moves the path of the tyre by less than a tenth of a millimetre rms', () => {
    const pieces = roadPieces({ lengthM: 12, roughness: 'D' });
    const coarse = buildRoad(pieces, { radiusM: RADIUS, seed: 2 });
    const fine = buildRoad(pieces, { radiusM: RADIUS, seed: 2, spacingM: coarse.spacingM / 2 });
    let square = 0;
    let count = 0;
    for (let x = 1; x < 11; x += 0.0017) {
      square += (under(coarse, x).height - under(fine, x).height) ** 2;
      count++;
    }
    expect(Math.sqrt(square / count)).toBeLessThan(1e-4);
  });
});

describe('events', () => {
  it('are where named pieces begin and when named shifts and shoves begin', () => {
    const scenario = scenarioWith({
      road: [{ lengthM: 3.5 }, { lengthM: 4, name: 'ramp' }],
      shoves: [{ name: 'push', atS: 3, forS: 0.2, forwardN: 80 }],
      measure: { as: 'ride', atS: 2 },
    });
    expect(pieceStarts(scenario.road)).toEqual([0, 3.5]);
    expect(eventsOf(scenario)).toEqual([
      { name: 'start', atS: 0 },
      { name: MARK, atS: 2 },
      { name: 'ramp', atM: 3.5 },
      { name: 'push', atS: 3 },
    ]);
  });
});
