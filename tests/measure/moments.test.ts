import { describe, expect, it } from 'vitest';
import { firstCutRow, nextMark, peakRow, previousMark } from '../../src/measure/moments.js';
import { CEILINGS, createTape } from '../../src/simulate/tape.js';

function tapeOf(pitchRad: number[], ceilings: number[] = []) {
  const tape = createTape(pitchRad.length + 5, 0.01);
  tape.length = pitchRad.length;
  tape.columns.pitchRad.set(pitchRad);
  tape.columns.bindingCeiling.set(ceilings);
  // Behind the valid rows a tape may hold anything.
  tape.columns.pitchRad.fill(9, tape.length);
  tape.columns.bindingCeiling.fill(1, tape.length);
  return tape;
}

describe('the peak', () => {
  const tape = tapeOf([0.5, 0.1, -0.3, 0.3, 0.2]);

  it('is the largest pitch either way inside the window, the first of equals', () => {
    expect(peakRow(tape, { firstRow: 0, endRow: 5 })).toBe(0);
    expect(peakRow(tape, { firstRow: 1, endRow: 5 })).toBe(2);
    expect(peakRow(tape, { firstRow: 3, endRow: 5 })).toBe(3);
  });

  it('stays on the tape and in the window', () => {
    expect(peakRow(tape, { firstRow: 4, endRow: 99 })).toBe(4);
    expect(peakRow(tape, { firstRow: 99, endRow: 99 })).toBe(4);
    expect(peakRow(tape, { firstRow: 1, endRow: 2 })).toBe(1);
  });
});

describe('the first cut', () => {
  it('is the first row with a ceiling', () => {
    const voltage = CEILINGS.indexOf('voltage');
    expect(firstCutRow(tapeOf([0, 0, 0, 0], [0, 0, voltage, voltage]))).toBe(2);
    expect(firstCutRow(tapeOf([0, 0], [voltage]))).toBe(0);
  });

  it('is none where nothing was cut, whatever lies behind the valid rows', () => {
    expect(firstCutRow(tapeOf([0, 0, 0]))).toBeNull();
    expect(firstCutRow(tapeOf([]))).toBeNull();
  });
});

describe('the marks about a time', () => {
  const marks = [
    { name: 'shove', timeS: 3 },
    { name: 'start', timeS: 0 },
    { name: 'kerb', timeS: 2 },
  ];

  it('are the nearest on either side, in any order', () => {
    expect(nextMark(marks, 1)?.name).toBe('kerb');
    expect(previousMark(marks, 2.5)?.name).toBe('kerb');
    expect(nextMark(marks, 2.5)?.name).toBe('shove');
    expect(previousMark(marks, 99)?.name).toBe('shove');
  });

  it('move on from a mark that is met, rounded or not', () => {
    expect(nextMark(marks, 2)?.name).toBe('shove');
    expect(previousMark(marks, 2)?.name).toBe('start');
    expect(nextMark(marks, 2 - 1e-9)?.name).toBe('shove');
    expect(previousMark(marks, 2 + 1e-9)?.name).toBe('start');
  });

  it('are none beyond the last and before the first', () => {
    expect(nextMark(marks, 3)).toBeNull();
    expect(previousMark(marks, 0)).toBeNull();
    expect(nextMark([], 0)).toBeNull();
  });
});
