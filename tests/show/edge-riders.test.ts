/** Is every rider's limit told once for each kind of edge, and what ends the least? */
import { describe, expect, it } from 'vitest';
import type { Edge, EdgeReport, RiderEdges } from '../../src/explain/edge-found.js';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { EDGE_CAUTION, edgeLines, edgeSentences } from '../../src/show/why-edge.js';

const fall = { kind: 'nose strike', atS: 1.82, seed: 1 };

const bump = (survived: number | null, parts: Partial<Edge> = {}): Edge => ({
  name: 'bump',
  unit: 'mm',
  speedKmPerH: 12,
  chargePercent: 80,
  pushNS: null,
  survived,
  failed: survived === null ? 0 : survived + 1,
  ending: fall,
  largestTried: 300,
  footLightFrom: null,
  ...parts,
});

const ENDURED = { failed: null, ending: null };
const PUSH = { name: 'push from behind', unit: 'N s', largestTried: 200 } as const;

const ridden = (rider: string, edge: Edge, parts: Partial<RiderEdges> = {}): RiderEdges => ({
  rider,
  edges: [edge],
  lifts: [
    { chargePercent: 80, neededShare: 0.188, speedKmPerH: 41 },
    { chargePercent: 20, neededShare: 0.188, speedKmPerH: 35 },
  ],
  spareDelayMs: 8.75,
  ...parts,
});

const reportOf = (riders: RiderEdges[], parts: Partial<EdgeReport> = {}): EdgeReport => ({
  seeds: [1],
  statedPushNS: 30,
  riders,
  liftBelowShare: null,
  ...parts,
});

/** The sentence about the only kind of edge of kim, tim and jim. */
function sentence(edges: [Edge, Edge, Edge], parts: Partial<EdgeReport> = {}): string {
  const [kim, tim, jim] = edges;
  return edgeSentences(reportOf([ridden('kim', kim), ridden('tim', tim), ridden('jim', jim)], parts))[1]!;
}

describe('the sentence about an edge under several riders', () => {
  it('has the circumstances once, each limit, and what ends the least', () => {
    expect(sentence([bump(50), bump(38, { ending: { ...fall, kind: 'tail strike' } }), bump(43)])).toBe(
      'Bump (0.4 m long, at 12 km/h with the pack at 80 %): kim 50 mm, tim 38 mm, jim 43 mm; ' +
        'the least, tim, ends at 39 mm in a tail strike at 1.82 s.',
    );
  });

  it('says that others are as low', () => {
    expect(sentence([bump(50), bump(43), bump(43)])).toContain('; one of the least, tim, ends at 44 mm in');
  });

  it('says who has no edge, and how the ride without anything ends', () => {
    expect(sentence([bump(50), bump(0), bump(null)])).toContain(
      ': kim 50 mm, tim 0 mm, jim none; the least, jim: the ride without any bump ends in a nose strike at 1.82 s.',
    );
  });

  it('says who holds out at everything, and that all do', () => {
    expect(sentence([bump(300, ENDURED), bump(43), bump(300, ENDURED)])).toContain(
      ': tim 43 mm, and kim and jim even 300 mm, the most that was tried; the least, tim, ends at 44 mm',
    );
    expect(sentence([bump(300, ENDURED), bump(300, ENDURED), bump(300, ENDURED)])).toMatch(
      /: all hold out even at 300 mm, the most that was tried\.$/,
    );
  });

  it('says who stays up without ever getting there', () => {
    const ending = { kind: 'not met', atS: 5, seed: 1 };
    expect(sentence([bump(50), bump(40), bump(30, { ending })])).toContain(
      'the least, jim, stays up at 31 mm but never gets there.',
    );
  });

  it('names the seed of the ending where there are several', () => {
    const least = bump(20, { ending: { ...fall, seed: 7 } });
    expect(sentence([bump(50), bump(40), least], { seeds: [1, 7] })).toMatch(/ at 1\.82 s under seed 7\.$/);
  });

  it('says under whom a foot is light, or that none is', () => {
    const pushes = (first: Partial<Edge>): [Edge, Edge, Edge] => [
      bump(90, { ...PUSH, ...first }),
      bump(80, PUSH),
      bump(null, PUSH),
    ];
    expect(sentence(pushes({ footLightFrom: 74 }))).toMatch(/; one foot is light: kim from 74 N s on\.$/);
    expect(sentence(pushes({}))).toMatch(/; up to their limits all keep both feet loaded\.$/);
    expect(sentence([bump(null, PUSH), bump(null, PUSH), bump(null, PUSH)])).not.toMatch(/foot|feet/);
    expect(sentence([bump(50), bump(40), bump(30)])).not.toMatch(/foot|feet/);
  });
});

describe('the headroom lift under several riders', () => {
  const lifts = (neededShare: number | null, ...speeds: (number | null)[]) => ({
    lifts: speeds.map((speedKmPerH, index) => ({ chargePercent: 80 - 60 * index, neededShare, speedKmPerH })),
  });
  const sentences = (kim: object, tim: object, parts: Partial<EdgeReport> = {}) =>
    edgeSentences(reportOf([ridden('kim', bump(1), kim), ridden('tim', bump(1), tim)], parts)).slice(3);

  it('says what the push takes under each, and up to where more is left', () => {
    expect(sentences(lifts(0.2, 41, 35), lifts(0.3, 60, null))).toEqual([
      'Headroom lift: of the drive ceiling a push of 30 N s takes (the most asked for at 6 km/h, less the steady current): ' +
        'kim 20.0 %, tim 30.0 %. More than that is left with the pack at 80 % up to: kim 41 km/h, ' +
        'tim 60 km/h (the most that was tried); with the pack at 20 % up to: kim 35 km/h, tim not even standing. ' +
        'There, at the latest, the lift should begin.',
      'Headroom lift of this profile: it has none; one that begins below 30.0 % of headroom, the most of these, begins not later than those speeds.',
    ]);
  });

  it('says under whom that is not known', () => {
    const [first] = sentences(lifts(0.2, 41, 35), lifts(null, null, null));
    expect(first).toContain(': kim 20.0 %. Not known for tim: at 6 km/h the ride ends in a fall. More');
    expect(first).toContain('up to: kim 41 km/h; with');
    expect(sentences(lifts(null, null, null), lifts(null, null, null))).toEqual([
      'Headroom lift: what a push of 30 N s takes is not known, for at 6 km/h the ride ends in a fall.',
    ]);
  });

  it.each<[number, string]>([
    [0.1, 'below 10.0 % of headroom, later than those speeds.'],
    [0.25, 'below 25.0 % of headroom, later than those speeds for tim.'],
    [0.3, 'below 30.0 % of headroom, not later than those speeds.'],
  ])('says for whom a lift below %d is late', (liftBelowShare, says) => {
    const [, own] = sentences(lifts(0.2, 41, 35), lifts(0.3, 40, 34), { liftBelowShare });
    expect(own).toContain(says);
  });
});

describe('the section', () => {
  const report = reportOf([ridden('kim', bump(50)), ridden('tim', bump(38, PUSH))], { seeds: [1, 2] });

  it('says that each rider rode, and ends with what it is worth', () => {
    const options = { width: 80, symbols: 'braille', paint: createPaint('none') } as const;
    const text = edgeLines(report, options)
      .map((line) => line.trim())
      .join(' ');
    expect(text).toContain('A steady ride under each rider on dry asphalt, noise on, seeds 1 and 2, meets');
    expect(text.endsWith(EDGE_CAUTION)).toBe(true);
    expect(text).not.toMatch(/\bsafe/i);
  });

  it.each([40, 60, 80, 200])('is never wider than %i columns and keeps units whole', (width) => {
    const lines = edgeLines(report, { width, symbols: 'ascii', paint: createPaint('none') });
    expect(Math.max(...lines.map(textWidth))).toBeLessThanOrEqual(width);
    expect(lines.join('\n')).toMatch(/^[\n -~]*$/);
    expect(lines.filter((line) => / (N|seed)$/.test(line))).toEqual([]);
  });
});
