import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvLines } from '../../src/show/csv.js';
import { CEILINGS, createTape, TAPE_COLUMNS } from '../../src/simulate/tape.js';
import { sampleTape } from './sample-run.js';

describe('a tape as CSV', () => {
  it('begins with the names of the columns', () => {
    const [header, ...rest] = csvLines(createTape(5, 0.001));
    expect(header?.split(',')).toEqual([...TAPE_COLUMNS]);
    expect(header?.startsWith('timeS,pitchRad,')).toBe(true);
    expect(rest).toEqual([]);
  });

  it('reads back as the same numbers', () => {
    const values = fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), {
      minLength: 1,
      maxLength: 20,
    });
    fc.assert(
      fc.property(values, (samples) => {
        const tape = createTape(samples.length + 3, 0.001);
        tape.length = samples.length;
        samples.forEach((value, row) => {
          for (const column of TAPE_COLUMNS) tape.columns[column][row] = value;
          tape.columns.bindingCeiling[row] = row % CEILINGS.length;
        });
        const rows = [...csvLines(tape)].slice(1).map((line) => line.split(','));
        expect(rows).toHaveLength(samples.length);
        rows.forEach((fields, row) => {
          expect(fields).toHaveLength(TAPE_COLUMNS.length);
          fields.forEach((text, at) => {
            if (TAPE_COLUMNS[at] === 'bindingCeiling') expect(text).toBe(CEILINGS[row % CEILINGS.length]);
            else expect(Number(text) + 0).toBe((samples[row] ?? NaN) + 0);
          });
        });
      }),
    );
  });

  it('writes the shortest decimals, and a word for the ceiling', () => {
    const tape = sampleTape(1);
    tape.columns.bindingCeiling[0] = CEILINGS.indexOf('pack out');
    const line = [...csvLines(tape)][1] ?? '';
    expect(line.split(',')[TAPE_COLUMNS.indexOf('bindingCeiling')]).toBe('pack out');
    expect(line.split(',')[TAPE_COLUMNS.indexOf('setPointRad')]).toBe('-0.004');
  });

  it('leaves a field empty where there is no finite number', () => {
    const tape = createTape(1, 0.001);
    tape.length = 1;
    tape.columns.pitchRad[0] = NaN;
    expect([...csvLines(tape)][1]?.startsWith('0,,0,')).toBe(true);
  });

  it('makes one line at a time', () => {
    const tape = createTape(2, 0.001);
    tape.length = 2;
    const lines = csvLines(tape);
    lines.next();
    lines.next();
    tape.columns.timeS[1] = 7;
    expect(lines.next().value?.startsWith('7,')).toBe(true);
    expect(lines.next().done).toBe(true);
  });

  it('takes an unknown ceiling for a fault of the program', () => {
    const tape = createTape(1, 0.001);
    tape.length = 1;
    tape.columns.bindingCeiling[0] = 17;
    expect(() => [...csvLines(tape)]).toThrow('no ceiling has the code 17');
  });
});
