/** Does every sentence about the edge come from its numbers, and say what it is worth? */
import { describe, expect, it } from 'vitest';
import type { Edge, EdgeReport, RiderEdges } from '../../src/explain/edge-found.js';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import {
  EDGE_CAUTION,
  edgeLines,
  edgeSentence,
  edgeSentences,
  liftSentences,
} from '../../src/show/why-edge.js';

const bump = (parts: Partial<Edge> = {}): Edge => ({
  name: 'bump',
  unit: 'mm',
  speedKmPerH: 12,
  chargePercent: 80,
  pushNS: null,
  survived: 50,
  failed: 51,
  ending: { kind: 'nose strike', atS: 1.82, seed: 1 },
  largestTried: 300,
  footLightFrom: null,
  ...parts,
});

const speed = (parts: Partial<Edge> = {}): Edge =>
  bump({ name: 'speed', unit: 'km/h', speedKmPerH: null, pushNS: 30, survived: 41, failed: 42, ...parts });

const push = (parts: Partial<Edge> = {}): Edge =>
  bump({ name: 'push from behind', unit: 'N s', survived: 90, failed: 91, largestTried: 200, ...parts });

const kim = (parts: Partial<RiderEdges> = {}): RiderEdges => ({
  rider: 'kim',
  edges: [bump(), speed()],
  lifts: [
    { chargePercent: 80, neededShare: 0.188, speedKmPerH: 41 },
    { chargePercent: 20, neededShare: 0.188, speedKmPerH: 35 },
  ],
  spareDelayMs: 8.75,
  ...parts,
});

const reportWith = (parts: Partial<EdgeReport> = {}): EdgeReport => ({
  seeds: [1],
  statedPushNS: 30,
  riders: [kim()],
  liftBelowShare: null,
  ...parts,
});

describe('the sentence about an edge', () => {
  it('has the size, the circumstances, and what happens beyond', () => {
    expect(edgeSentence(bump(), [1])).toBe(
      'Bump: holds out up to 50 mm, 0.4 m long, at 12 km/h with the pack at 80 %; at 51 mm it ends in a nose strike at 1.82 s.',
    );
    expect(edgeSentence(speed(), [1])).toBe(
      'Steady speed: holds out up to 41 km/h, with the pack at 80 % and a push of 30 N s from behind; ' +
        'at 42 km/h it ends in a nose strike at 1.82 s.',
    );
  });

  it.each<[Partial<Edge>, string]>([
    [{ survived: 47 }, 'up to 47 mm'],
    [{ failed: 48 }, 'at 48 mm it'],
    [{ speedKmPerH: 19 }, 'at 19 km/h'],
    [{ chargePercent: 35 }, 'the pack at 35 %'],
    [{ pushNS: 22 }, 'a push of 22 N s'],
    [{ ending: { kind: 'tail strike', atS: 2.5, seed: 1 } }, 'a tail strike at 2.50 s'],
    [{ ending: { kind: 'rider off', atS: 1, seed: 1 } }, 'the rider coming off'],
    [{ ending: { kind: 'not met', atS: 5, seed: 1 } }, 'never gets there'],
    [{ unit: 'ms', failed: 28.75 }, '28.8 ms'],
    [
      { survived: null, failed: 0 },
      'no edge to be found, for the ride without any bump ends in a nose strike',
    ],
    [{ failed: null, ending: null }, 'even at 300 mm, the most that was tried'],
  ])('changes with %j', (parts, says) => {
    expect(edgeSentence(bump(parts), [1])).toContain(says);
    expect(edgeSentence(bump(), [1])).not.toContain(says);
  });
});

describe('the sentence about a push', () => {
  it('says from which push on a foot is light, or that none is', () => {
    expect(edgeSentence(push({ footLightFrom: 74 }), [1])).toMatch(/; from 74 N s on one foot is light\.$/);
    expect(edgeSentence(push(), [1])).toMatch(/1\.82 s; up to there both feet stay loaded\.$/);
    expect(edgeSentence(push({ failed: null, ending: null }), [1])).toContain('both feet stay loaded');
  });

  it('says nothing of feet where no push is survived, nor where something else grows', () => {
    expect(edgeSentence(push({ survived: null, failed: 0 }), [1])).not.toMatch(/foot|feet/);
    expect(edgeSentence(bump(), [1])).not.toMatch(/foot|feet/);
  });
});

describe('several seeds', () => {
  it('are named, and the one under which it ends', () => {
    const first = (seeds: number[]) => edgeSentences(reportWith({ seeds }))[0]!;
    expect(first([1, 2, 3])).toContain('noise on, seeds 1 to 3, meets');
    expect(first([1, 2, 3])).toContain('until under any of the seeds the run');
    expect(first([2, 5])).toContain('noise on, seeds 2 and 5, meets');
    expect(first([4])).toContain('noise on, seed 4, meets');
    const ending = { kind: 'tail strike', atS: 2, seed: 5 };
    expect(edgeSentence(bump({ ending }), [2, 5])).toMatch(/a tail strike at 2\.00 s under seed 5\.$/);
    expect(edgeSentence(bump({ ending }), [5])).not.toContain('seed');
  });
});

describe('the sentences about the headroom lift', () => {
  const text = (parts: Partial<EdgeReport> = {}) => liftSentences(reportWith(parts)).join(' ');
  const lift = (neededShare: number | null, speedKmPerH: number | null) => ({
    riders: [kim({ lifts: [{ chargePercent: 60, neededShare, speedKmPerH }] })],
  });

  it('say what the push takes, where that is no longer left, and that there is no lift', () => {
    expect(text()).toContain('a push of 30 N s takes 18.8 % of the drive ceiling');
    expect(text()).toMatch(/pack at 80 % more than that is left up to 41 km\/h: there, at the latest/);
    expect(text()).toMatch(/pack at 20 % more than that is left up to 35 km\/h: there, at the latest/);
    expect(text()).toContain('it has none');
  });

  it.each<[Partial<EdgeReport>, string]>([
    [lift(0.3, 22), 'takes 30.0 % of'],
    [lift(0.3, 22), 'pack at 60 % more than that is left up to 22 km/h: there'],
    [lift(0.3, 60), '60 km/h, the most that was tried'],
    [lift(0.3, null), 'not even standing'],
    [lift(null, null), 'is not known'],
    [{ statedPushNS: 40 }, 'a push of 40 N s'],
    [{ liftBelowShare: 0.1 }, 'below 10.0 % of headroom, later than'],
    [{ liftBelowShare: 0.4 }, 'below 40.0 % of headroom, not later than'],
  ])('change with %j', (parts, says) => {
    expect(text(parts)).toContain(says);
    expect(text()).not.toContain(says);
  });
});

describe('the delay that the loop can spare', () => {
  const text = (spareDelayMs: number | null) =>
    edgeSentences(reportWith({ riders: [kim({ spareDelayMs })] })).join(' ');

  it('is told, and that there is none, or nothing where it is not known', () => {
    expect(text(8.75)).toContain(
      'can spare, by the linear view at 12 km/h: 8.8 ms under kim. With more it rattles',
    );
    expect(text(0)).toContain('at 12 km/h: none under kim.');
    expect(text(null)).not.toContain('linear view');
  });
});

describe('the section', () => {
  const PLAIN = { width: 100, symbols: 'braille', paint: createPaint('none') } as const;

  it('says whose ride it is and by which chance, and ends with what it is worth', () => {
    const lines = edgeLines(reportWith(), PLAIN);
    const text = lines.map((line) => line.trim()).join(' ');
    expect(lines[0]).toBe('How far from the edge');
    expect(text).toContain('under kim on dry asphalt, noise on, seed 1,');
    expect(text.endsWith(EDGE_CAUTION)).toBe(true);
    expect(lines.filter((line) => line.startsWith('- '))).toHaveLength(5);
    expect(edgeSentences(reportWith({ riders: [kim({ rider: 'tim' })], seeds: [3] }))[0]).toMatch(
      /under tim .* seed 3/,
    );
  });

  it.each([40, 60, 80, 100, 200])('is never wider than %i columns and keeps units whole', (width) => {
    const lines = edgeLines(reportWith(), { ...PLAIN, width, symbols: 'ascii' });
    expect(Math.max(...lines.map(textWidth))).toBeLessThanOrEqual(width);
    expect(lines.join('\n')).toMatch(/^[\n -~]*$/);
    expect(lines.filter((line) => line.endsWith(' N'))).toEqual([]);
  });

  it('never says that anything is safe', () => {
    expect(edgeLines(reportWith(), PLAIN).join(' ')).not.toMatch(/\bsafe/i);
  });
});
