/** When the events of a scenario happen in a run, and which rows are measured from them: timetables worked by hand. */
import { describe, expect, it } from 'vitest';
import { marksOf, measuredEvent, windowOf } from '../../src/measure/marks.js';
import { createTape, type Tape } from '../../src/simulate/tape.js';
import { scenarioWith } from '../rigs.js';

const TICK_S = 0.01;

/** Four seconds at 2 m/s from the beginning of the road; behind the valid rows the wheel is already beyond it all. */
function rolling(lengthS = 4, speedMPerS = 2): Tape {
  const rows = Math.round(lengthS / TICK_S) + 1;
  const tape = createTape(rows + 20, TICK_S);
  tape.length = rows;
  tape.columns.positionM.fill(1000);
  for (let row = 0; row < rows; row++) tape.columns.positionM[row] = speedMPerS * row * TICK_S;
  return tape;
}

/** Pieces of 3, 2.5 and 4 m; the named ones begin at 3 and 5.5 m. */
const SCENARIO = scenarioWith({
  durationS: 4,
  road: [{ lengthM: 3 }, { name: 'kerb', lengthM: 2.5 }, { name: 'yard', lengthM: 4 }],
  shifts: [{ name: 'weave', atS: 0.5, forS: 1, noseDownNm: 10 }],
  shoves: [
    { name: 'late', atS: 3.99, forS: 0.2, forwardN: 10 },
    { atS: 2, forS: 0.2, forwardN: 10 },
  ],
});

describe('marks', () => {
  it('come in the order of time, road pieces when the front of the wheel is there, those without a name not at all', () => {
    // The front of a wheel of 0.25 m reaches 3 m with the axle at 2.75 m, after 1.375 s: the first row from then on is 138.
    const marks = marksOf(SCENARIO, rolling(), 0.25);
    expect(marks.map(({ name }) => name)).toEqual(['start', 'weave', 'kerb', 'yard', 'late']);
    for (const [index, timeS] of [0, 0.5, 1.38, 2.63, 3.99].entries()) {
      expect(marks[index]!.timeS).toBeCloseTo(timeS, 12);
    }
  });

  it('are there from the first row that stands just on the place', () => {
    const tape = rolling();
    const kerb = marksOf(SCENARIO, tape, 3 - tape.columns.positionM[150]!).find(
      ({ name }) => name === 'kerb',
    );
    expect(kerb?.timeS).toBeCloseTo(1.5, 12);
  });

  it('leave out what the run did not live to see, up to and with its last row', () => {
    expect(marksOf(SCENARIO, rolling(1.5), 0.25).map(({ name }) => name)).toEqual(['start', 'weave', 'kerb']);
    expect(marksOf(SCENARIO, rolling(1.2), 0.25).map(({ name }) => name)).toEqual(['start', 'weave']);
    expect(marksOf(SCENARIO, rolling(0.5), 0.25).map(({ name }) => name)).toEqual(['start', 'weave']);
    expect(marksOf(SCENARIO, rolling(0.49), 0.25).map(({ name }) => name)).toEqual(['start']);
  });

  it('of a place that is never reached are none', () => {
    expect(marksOf(SCENARIO, rolling(4, 0.1), 0.25).map(({ name }) => name)).toEqual([
      'start',
      'weave',
      'late',
    ]);
  });
});

describe('the window', () => {
  const marks = [
    { name: 'start', timeS: 0 },
    { name: 'kerb', timeS: 1.38 },
  ];
  const measuring = (measure: Partial<(typeof SCENARIO)['measure']>) => ({
    ...SCENARIO,
    measure: { ...SCENARIO.measure, ...measure },
  });

  it('goes from its event to the end of the run, first and last row included', () => {
    expect(windowOf(measuring({}), marks, TICK_S)).toMatchObject({ firstRow: 0, endRow: 401 });
    expect(windowOf(measuring({ from: 'kerb' }), marks, TICK_S)).toMatchObject({
      firstRow: 138,
      endRow: 401,
    });
  });

  it('or for so many seconds, and not past the end of the run', () => {
    expect(windowOf(measuring({ from: 'kerb', forS: 2 }), marks, TICK_S).endRow).toBe(138 + 200 + 1);
    expect(windowOf(measuring({ from: 'kerb', forS: 3 }), marks, TICK_S).endRow).toBe(401);
  });

  it('is empty, behind the last possible row, when its event never came', () => {
    expect(windowOf(measuring({ from: 'yard' }), marks, TICK_S)).toMatchObject({
      firstRow: 401,
      endRow: 401,
    });
  });

  it('begins at a time where the scenario gives one, whatever event it names', () => {
    const timed = measuring({ from: 'kerb', atS: 0.75 });
    expect(measuredEvent(measuring({ from: 'kerb' }))).toBe('kerb');
    expect(measuredEvent(timed)).toBe('mark');
    expect(windowOf(timed, marksOf(timed, rolling(), 0.25), TICK_S).firstRow).toBe(75);
  });

  it('takes over what is asked for and its band, in radians', () => {
    const { kind, bandRad } = windowOf(measuring({ as: 'step', bandDeg: 1.8 }), marks, TICK_S);
    expect(kind).toBe('step');
    expect(bandRad).toBeCloseTo(Math.PI / 100, 15);
  });
});
