/** When do runs part? Tapes with pitches that can be counted by hand. */
import { describe, expect, it } from 'vitest';
import { partingOf } from '../../src/measure/parting.js';
import { createTape, type Tape } from '../../src/simulate/tape.js';

const TICK_S = 0.25;

/** A tape of these pitches; behind its rows the arrays hold what no one may read. */
function pitching(...pitchesRad: number[]): Tape {
  const tape = createTape(pitchesRad.length + 3, TICK_S);
  tape.columns.pitchRad.fill(9);
  tape.columns.pitchRad.set(pitchesRad);
  tape.length = pitchesRad.length;
  return tape;
}

describe('runs part', () => {
  it('at the first row at which two pitches differ by more than the band, and not by just as much', () => {
    const steady = pitching(0, 0, 0, 0, 0);
    const found = partingOf([steady, pitching(0, 0.125, 0.25, 0.375, 0)], 0.25);
    expect(found).toEqual({
      row: 3,
      timeS: 0.75,
      between: [0, 1],
      by: 'pitch',
      pitchesRad: [0, 0.375],
    });
    expect(partingOf([steady, pitching(0, 0.25, -0.25, 0.25, 0)], 0.25)).toBeNull();
  });

  it('whichever way they differ, and although they come together again', () => {
    expect(partingOf([pitching(0, 0, 0), pitching(0, -0.5, 0)], 0.25)).toMatchObject({
      row: 1,
      between: [0, 1],
    });
  });

  it('between the two that are furthest apart, named in rising order', () => {
    const runs = [pitching(0, 0.125), pitching(0, 0.375), pitching(0, 0.25), pitching(0, -0.25)];
    expect(partingOf(runs, 0.5)).toMatchObject({
      row: 1,
      between: [1, 3],
      pitchesRad: [0.125, 0.375, 0.25, -0.25],
    });
    expect(partingOf(runs.toReversed(), 0.5)).toMatchObject({ between: [0, 2] });
  });

  it('where one of them has ended and another goes on', () => {
    const found = partingOf([pitching(0, 0, 0, 0), pitching(0, 0), pitching(0, 0, 0)], 0.25);
    expect(found).toEqual({
      row: 2,
      timeS: 0.5,
      between: [0, 1],
      by: 'ending',
      pitchesRad: [0, null, 0],
    });
  });

  it('from where each began: two steady rides at different pitches do not part', () => {
    expect(partingOf([pitching(0, 0, 0), pitching(0.5, 0.5, 0.5)], 0.25)).toBeNull();
    expect(partingOf([pitching(0, 0, 0.5), pitching(0.5, 0.5, 0.5)], 0.25)).toMatchObject({
      row: 2,
      between: [0, 1],
      pitchesRad: [0.5, 0.5],
    });
  });

  it('never, where they end together without having differed', () => {
    expect(partingOf([pitching(0, 0.1), pitching(0, 0.2)], 0.25)).toBeNull();
    expect(partingOf([pitching(0, 0.1)], 0.25)).toBeNull();
    expect(partingOf([], 0.25)).toBeNull();
    expect(partingOf([pitching(), pitching()], 0.25)).toBeNull();
  });
});
