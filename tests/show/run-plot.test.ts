import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { SYMBOL_SETS } from '../../src/show/glyphs.js';
import { runPlot, RUN_PLOT_SIZE } from '../../src/show/run-plot.js';
import type { RunPlotOptions } from '../../src/show/run-plot.js';
import { speedSentence } from '../../src/show/run-sentences.js';
import { createTape } from '../../src/simulate/tape.js';
import { sampleTape, sampleView } from './sample-run.js';

function options(changes: Partial<RunPlotOptions> = {}): RunPlotOptions {
  return { ...RUN_PLOT_SIZE, symbols: 'braille', paint: createPaint('none'), speedUnit: 'km/h', ...changes };
}

const view = sampleView();

describe('the plot of a run', () => {
  it('says what happened, panel by panel', () => {
    const rows = runPlot(view, options());
    expect(rows[0]).toBe('✓ Long Meadow over the kerb drop: upright to the end at 6.00 s');
    expect(rows.slice(1, 4)).toEqual([
      'Pitch peaks nose down 3.3° 0.20 s after the kerb and stays within 0.5° of its',
      'end after 1.90 s.',
      '                        kerb',
    ]);
    expect(rows).toContain('Current peaks at 52.3 A; ceilings cut 2.1 % of the ticks, mostly voltage.');
    expect(rows).toContain('Speed goes from 15.1 to 15.2 km/h and stays between 14.8 and 16.2 km/h.');
    expect(rows.at(-1)).toBe('⠄⠄⠄ set-point, ceilings | ┊ event | cut by: v voltage');
  });

  it('has labels with units on every scale', () => {
    const labels = runPlot(view, options({ height: 40 })).flatMap(
      (row) => /^ *(.*?) [┤]/.exec(row)?.[1] ?? [],
    );
    expect(labels).toEqual(
      [
        ['nose down 4°', 'nose down 2°', 'level', 'nose up 2°', 'nose up 4°'],
        ['80 A', '40 A', '0 A', '-40 A', '-80 A'],
        ['20 km/h', '10 km/h', '0 km/h'],
      ].flat(),
    );
  });

  it('shows speeds in mph on request', () => {
    const text = runPlot(view, options({ speedUnit: 'mph' })).join('\n');
    expect(text).toContain('Speed goes from 9.4 to 9.4 mph and stays between 9.2 and 10.1 mph.');
    expect(text).toContain('20 mph ┤');
    expect(text).not.toContain('km/h');
  });

  it.each(SYMBOL_SETS)('fits every width from 40 to 200 columns in %s', (symbols) => {
    for (const width of [40, 41, 57, 78, 100, 118, 163, 200]) {
      for (const height of [24, 30, 50]) {
        const rows = runPlot(view, options({ width, height, symbols }));
        expect(rows).toHaveLength(height);
        for (const row of rows) {
          expect(textWidth(row)).toBeLessThanOrEqual(width);
          expect(row).toBe(row.trimEnd());
        }
      }
    }
  });

  it('stays whole where it is given too little room', () => {
    const rows = runPlot(view, options({ width: 10, height: 5 }));
    for (const row of rows) expect(textWidth(row)).toBeLessThanOrEqual(24);
    expect(rows.join('\n')).toContain('└');
  });

  it('writes no escape without colour, and the same text with it', () => {
    const plain = runPlot(view, options());
    expect(plain.join('')).not.toContain('\u001b');
    for (const mode of ['16', '256', 'truecolor'] as const) {
      const painted = runPlot(view, options({ paint: createPaint(mode) }));
      expect(painted.join('\n')).toContain('\u001b[');
      const bared = painted.map((row) => stripVTControlCharacters(row));
      expect(bared).toEqual(plain);
    }
  });

  it('stays within ASCII where asked to', () => {
    expect(runPlot(view, options({ symbols: 'ascii' })).join('')).toMatch(/^[\x20-\x7e]*$/);
  });

  it('keeps a peak of a single tick', () => {
    const tape = sampleTape(6);
    tape.columns.pitchRad[3000] = 0.2;
    const spiked = runPlot({ ...view, tape }, options({ width: 60 }));
    const top = spiked.find((row) => row.includes('nose down 16° ┤')) ?? '';
    // Row 3000 of 4801, 60 columns less gutter 13 and axis 2: column 28.
    expect([...top].indexOf('⢰')).toBe(-1);
    expect([...top].findIndex((cell, at) => at > 15 && /[\u2801-\u28ff]/.test(cell))).toBe(15 + 28);
  });
});

describe('a run that ended early', () => {
  const fallen = {
    ...view,
    title: 'Brisk\u001b[2J\u0007 down the lane',
    outcome: { kind: 'nose strike' as const, atS: 6.001 },
  };

  it('names the fall with shape and word, at its moment', () => {
    const rows = runPlot(fallen, options());
    expect(rows[0]).toBe('✗ Brisk down the lane: nose strike at 6.00 s');
    expect(rows[1]).toBe('Pitch peaks nose down 3.3° 0.20 s after the kerb; outcome: nose strike.');
    expect(rows[2]).toMatch(/ kerb +nose strike$/);
    expect(rows[4]).toMatch(/┊$/);
  });

  it('keeps the outcome where the title is cut', () => {
    expect(runPlot(fallen, options({ width: 40 }))[0]).toBe('✗ Brisk down the…: nose strike at 6.00 s');
  });

  it('says that nothing was recorded, or measured', () => {
    const empty = { ...view, tape: createTape(10, 0.001), firstRow: 0, endRow: 0 };
    expect(runPlot(empty, options())[1]).toBe('Nothing was recorded.');
    const one = createTape(1, 0.001);
    one.length = 1;
    const rows = runPlot({ ...view, tape: one, firstRow: 1, endRow: 1 }, options());
    expect(rows).toContain('Speed was not measured.');
    expect(rows.join('')).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the sentence about speed', () => {
  it('does not say the same range twice', () => {
    expect(speedSentence(Float64Array.of(0, 2, 5), 'km/h')).toBe('Speed goes from 0.0 to 18.0 km/h.');
    expect(speedSentence(Float64Array.of(5, 2, 0), 'km/h')).toBe('Speed goes from 18.0 to 0.0 km/h.');
    expect(speedSentence(Float64Array.of(5, -1, 4), 'km/h')).toBe(
      'Speed goes from 18.0 to 14.4 km/h and stays between -3.6 and 18.0 km/h.',
    );
  });
});

describe('a run without cuts', () => {
  it('says so and leaves the strip out', () => {
    const tape = sampleTape(3);
    tape.columns.bindingCeiling.fill(0);
    const facts = { ...view.facts, saturationShare: 0, leastHeadroomShare: 0.34, settlingTimeS: null };
    const rows = runPlot({ ...view, tape, endRow: tape.length, facts, marks: [] }, options());
    expect(rows).toContain('Current peaks at 52.3 A; no ceiling cuts it, least headroom 34.0 %.');
    expect(rows.join(' ')).toContain('and has not settled within 0.5° of its end.');
    expect(rows.join('')).not.toContain('cut by');
    expect(rows.at(-1)).toBe('⠄⠄⠄ set-point, ceilings');
  });
});
