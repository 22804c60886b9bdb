/**
 * Are scenarios found out that could not be ridden or measured as written?
 */
import { describe, expect, it } from 'vitest';
import { checkValue } from '../../src/quantity/check.js';
import { crossCheckScenario } from '../../src/quantity/scenario-cross-check.js';
import { keyPath } from '../../src/quantity/key-path.js';
import { altered, validScenario } from './valid-values.js';

type Path = readonly (string | number)[];

function told(raw: unknown): [string, string][] {
  return crossCheckScenario(raw).map(({ path, received }) => [keyPath(path), received]);
}

function toldWith(path: Path, put: unknown): [string, string][] {
  return told(altered(validScenario(), path, put));
}

it('a valid scenario has nothing across its fields', () => {
  expect(told(validScenario())).toEqual([]);
});

describe('the road', () => {
  it.each([[null], [{}], [''], [[]]])('may not have a hole: %j', (hole) => {
    const raw = altered(validScenario(), ['road', 1], hole);
    const result = checkValue('scenario', raw);
    const faults = result.ok ? [] : result.faults.filter(({ path }) => path[0] === 'road');
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ path: ['road', 1], expected: 'a road piece with lengthM in m' });
    expect(faults[0]?.received).toContain('a road with a hole');
  });

  it('every hole is told', () => {
    expect(toldWith(['road'], [null, { lengthM: 3 }, null]).map(([place]) => place)).toEqual([
      'road[0]',
      'road[2]',
    ]);
  });
});

describe('the script', () => {
  const speeds = (...times: unknown[]) => times.map((atS) => ({ atS, speedKmPerH: 5 }));

  it('may not run backwards', () => {
    expect(toldWith(['speeds'], speeds(0, 5, 3, 4))).toEqual([
      ['speeds[2].atS', '3 s: a script that runs backwards'],
    ]);
  });

  it('may not stand still', () => {
    expect(toldWith(['speeds'], speeds(0, 5, 5))).toHaveLength(1);
  });

  it('is judged by the points that have times', () => {
    expect(toldWith(['speeds'], [...speeds(4, NaN, 'soon'), null, ...speeds(2)])).toHaveLength(1);
  });
});

describe('times', () => {
  const late: [string, Path, unknown, string][] = [
    ['a shift at the end', ['shifts', 0, 'atS'], 10, 'shifts[0].atS'],
    ['a shift past the end', ['shifts', 0, 'atS'], 12, 'shifts[0].atS'],
    ['a shift that outlasts the run', ['shifts', 0, 'forS'], 5.1, 'shifts[0].forS'],
    ['a shove past the end', ['shoves', 0, 'atS'], 11, 'shoves[0].atS'],
    ['a shove that outlasts the run', ['shoves', 0, 'forS'], 3, 'shoves[0].forS'],
    ['a measurement longer than the run', ['measure', 'forS'], 10.5, 'measure.forS'],
  ];
  it.each(late)('lie within the run: %s', (_what, path, put, place) => {
    expect(toldWith(path, put).map(([where]) => where)).toEqual([place]);
  });

  it('may end with the run', () => {
    expect(toldWith(['shifts', 0, 'forS'], 5)).toEqual([]);
    expect(toldWith(['measure', 'forS'], 10)).toEqual([]);
  });

  it('a measurement from a shove or a time must end with the run', () => {
    const from = (measure: object) => toldWith(['measure'], { as: 'disturbance', ...measure });
    expect(from({ from: 'gust', forS: 2 })).toEqual([]);
    expect(from({ from: 'gust', forS: 2.5 }).map(([where]) => where)).toEqual(['measure.forS']);
    expect(from({ atS: 9, forS: 1.5 }).map(([where]) => where)).toEqual(['measure.forS']);
    expect(from({ atS: 10 }).map(([where]) => where)).toEqual(['measure.atS']);
    expect(from({ from: 'kerb', forS: 9 })).toEqual([]);
  });

  it('say nothing when the run has no length', () => {
    expect(toldWith(['durationS'], 'long')).toEqual([]);
  });
});

describe('names of events', () => {
  it('are used once, across pieces, shifts and shoves', () => {
    expect(toldWith(['shoves', 0, 'name'], 'kerb')).toEqual([
      ['shoves[0].name', "'kerb', used before at road[1].name"],
    ]);
  });

  it("are not 'start'", () => {
    expect(toldWith(['road', 0, 'name'], 'start')).toEqual([['road[0].name', "text 'start'"]]);
  });
});

describe('where the measurement begins', () => {
  const measured = (measure: object) =>
    crossCheckScenario(altered(validScenario(), ['measure'], { as: 'disturbance', ...measure }));

  it.each(['start', 'kerb', 'weave', 'gust'])('may be %s', (from) => {
    expect(measured({ from })).toEqual([]);
  });

  it('may be left out', () => {
    expect(measured({})).toEqual([]);
  });

  it('must be something that happens; the nearest is suggested', () => {
    expect(measured({ from: 'guts' })).toEqual([
      {
        path: ['measure', 'from'],
        expected: "'start' or the name of a piece, shift or shove: kerb, weave, gust",
        received: "text 'guts'",
        suggestion: 'gust',
      },
    ]);
    expect(measured({ from: 'earthquake' })[0]).not.toHaveProperty('suggestion');
  });

  it('is a name or a time, not both', () => {
    expect(measured({ from: 'gust', atS: 3 })).toEqual([
      {
        path: ['measure', 'atS'],
        expected: 'either measure.from or measure.atS, not both',
        received: "atS 3 and from 'gust'",
      },
    ]);
    expect(measured({ from: 'start', atS: 3 })).toEqual([]);
  });
});

describe('a step', () => {
  it('needs a start pitch', () => {
    expect(toldWith(['start'], {})).toEqual([['start.noseUpDeg', 'nothing']]);
    expect(told({ ...validScenario(), start: undefined })).toEqual([['start.noseUpDeg', 'nothing']]);
  });

  it('begins at the start', () => {
    expect(toldWith(['measure', 'from'], 'gust').map(([where]) => where)).toEqual(['measure.from']);
    expect(toldWith(['measure', 'atS'], 2).map(([where]) => where)).toEqual(['measure.atS']);
    expect(toldWith(['measure', 'atS'], 0)).toEqual([]);
  });

  it('other measurements need no start pitch', () => {
    expect(told({ ...validScenario(), start: {}, measure: { as: 'ride' } })).toEqual([]);
  });
});
