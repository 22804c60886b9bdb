import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { GLYPHS, SYMBOL_SETS } from '../../src/show/glyphs.js';
import { prepareTrace, traceRows } from '../../src/show/trace-picture.js';
import type { TraceOptions } from '../../src/show/trace-layout.js';
import { smallTrace } from '../../src/show/trace-small.js';
import { rowAt, tracePanels, traceSentences } from '../../src/show/trace-view.js';
import { createTape } from '../../src/simulate/tape.js';
import { sampleTrace } from './sample-trace.js';

const view = sampleTrace();

function options(changes: Partial<TraceOptions> = {}): TraceOptions {
  return {
    width: 120,
    height: 37,
    symbols: 'braille',
    paint: createPaint('none'),
    speedUnit: 'km/h',
    span: { fromS: 0, toS: 6 },
    ...changes,
  };
}

function trace(changes: Partial<TraceOptions> = {}, cursorS = 3): string[] {
  return traceRows(prepareTrace(view, options(changes)), cursorS);
}

/** The labels of the axes, from the top down. */
const labelsOf = (rows: readonly string[]) => rows.flatMap((row) => /^ *(.*?) ┤/.exec(row)?.[1] ?? []);

describe('a trace', () => {
  it('has five panels over one axis, in this order, with units', () => {
    expect(labelsOf(trace())).toEqual([
      'nose down 4°',
      'level',
      'nose up 4°',
      'forward 8°',
      'upright',
      'back 8°',
      '80 A',
      '0 A',
      '-80 A',
      '20 km/h',
      '0 km/h',
      'road 0 m',
      'road -0.05 m',
    ]);
    expect(trace({}, 0).filter((row) => row.includes(' measured '))).toHaveLength(1);
  });

  it('has its sentences above the panels where there are rows, names of events over the first', () => {
    const rows = trace({ width: 70 });
    const at = traceSentences(view, 'km/h').map(({ sentence }) =>
      rows.findIndex((row) => row.startsWith(sentence.slice(0, 30))),
    );
    expect(at[0]).toBe(0);
    expect(at).toEqual(at.toSorted((a, b) => a - b));
    expect(rows[2]).toMatch(/^ +kerb$/);
    expect(trace({ height: 30 }).join('\n')).not.toContain('Pitch peaks');
  });

  it('names what the signs mean', () => {
    expect(trace()[36]).toContain('cut by: v voltage | ⠄⠄⠄ set-point, ceilings | ⠤ ⠤ 0.5° about end');
    expect(trace({ height: 21 })[20]).toContain('cut by: v voltage');
  });

  it('reads out the row under the cursor, beside board and rider', () => {
    const rows = trace({ width: 80, height: 21 }, 2);
    const text = rows.join('\n');
    expect(text).toMatch(/time +2\.00 s/);
    expect(text).toMatch(/pitch +level/);
    expect(text).toContain('forward →');
    expect(text).toMatch(/nose\n/);
    expect(trace({ width: 75, height: 21 }).join('\n')).not.toContain('forward →');
    expect(trace({ width: 75, height: 21 }).at(-1)).toMatch(/^3\.00 s \| nose up .* \| back .* km\/h/);
  });

  it('shows the settled band over the measured window, and none where the run was cut short', () => {
    const pitch = tracePanels(view, 'km/h')[0];
    const deg = 180 / Math.PI;
    const band = pitch?.lines.filter(({ line }) => line === 'dashed');
    expect(band?.map(({ values }) => values[0])).toEqual([
      expect.closeTo((-0.004 + 0.00873) * deg, 9),
      expect.closeTo((-0.004 - 0.00873) * deg, 9),
    ]);
    expect(band?.map(({ timeS }) => [timeS[0], timeS[1]])).toEqual([
      [1, 6],
      [1, 6],
    ]);
    const short = tracePanels({ ...view, finalPitchRad: null }, 'km/h')[0];
    expect(short?.lines.some(({ line }) => line === 'dashed')).toBe(false);
  });
});

describe('zooming', () => {
  const whole = trace();

  it('keeps scales, and every row in its place', () => {
    for (const span of [
      { fromS: 0, toS: 0.5 },
      { fromS: 2.2, toS: 2.3 },
      { fromS: 5, toS: 6 },
    ]) {
      const zoomed = trace({ span }, span.fromS);
      expect(zoomed).toHaveLength(whole.length);
      expect(labelsOf(zoomed)).toEqual(labelsOf(whole));
      expect(zoomed.findIndex((row) => row.includes('└'))).toBe(whole.findIndex((row) => row.includes('└')));
    }
  });

  it('shows the stretch of time that was asked for', () => {
    const rows = trace({ span: { fromS: 2, toS: 3 }, width: 70 });
    const times = rows[rows.findIndex((row) => row.includes('└')) + 1] ?? '';
    expect(times.trim()).toMatch(/^2 .* 3 s$/);
  });
});

describe('the cursor', () => {
  // Width 70 less a gutter of 13 ("road -0.025 m") and the axis: 55 columns over 6 s. In ASCII "deg" takes two more.
  const columnOf = (timeS: number) => 15 + Math.min(54, Math.floor((timeS / 6) * 55));

  it.each(SYMBOL_SETS)('stands in the column of its time in every panel in %s', (symbols) => {
    const { cursor, above, corner } = GLYPHS[symbols];
    const shift = symbols === 'ascii' ? 2 : 0;
    for (const timeS of [0, 0.51, 3.33, 5.9, 6]) {
      const rows = trace({ width: 70 + shift, symbols }, timeS);
      const axis = rows.findIndex((row) => row.trimStart().startsWith(corner) && row.includes(above));
      expect([...(rows[axis] ?? '')].indexOf(above)).toBe(columnOf(timeS) + shift);
      const upright = rows.slice(0, axis).filter((row) => [...row][columnOf(timeS) + shift] === cursor);
      expect(upright.length).toBeGreaterThan(10);
    }
  });

  it('lets lines lie on top', () => {
    const bare = trace({ width: 70 }, 0);
    const crossed = trace({ width: 70 }, 3.33);
    bare.forEach((row, index) => {
      const sign = [...row][columnOf(3.33)] ?? ' ';
      if (index < 34 && /[\u2801-\u28ff]/.test(sign))
        expect([...(crossed[index] ?? '')][columnOf(3.33)]).toBe(sign);
    });
  });

  it('is out of sight outside of the stretch shown, while values stay', () => {
    const rows = trace({ width: 70, span: { fromS: 0, toS: 1 } }, 4);
    expect(rows.join('\n')).not.toContain('▲');
    expect(rows.at(-1)).toMatch(/^4\.00 s/);
  });

  it('stays on the tape', () => {
    expect(rowAt(view, -5)).toBe(0);
    expect(rowAt(view, 2)).toBe(1600);
    expect(rowAt(view, 99)).toBe(4800);
    expect(rowAt(view, NaN)).toBe(0);
    expect(trace({ width: 70 }, 99).at(-1)).toMatch(/^6\.00 s/);
  });
});

describe('room', () => {
  it.each(SYMBOL_SETS)('is never overrun in %s', (symbols) => {
    const short = sampleTrace(2);
    for (const width of [1, 8, 24, 40, 75, 76, 120, 200]) {
      for (const height of [1, 3, 4, 7, 8, 12, 17, 21, 33, 34, 57]) {
        const rows = traceRows(prepareTrace(short, options({ width, height, symbols })), 1.5);
        expect(rows.length).toBeLessThanOrEqual(height);
        for (const row of rows) expect(textWidth(row)).toBeLessThanOrEqual(width);
        if (symbols === 'ascii') expect(rows.join('')).toMatch(/^[\x20-\x7e]*$/);
      }
    }
  });

  it('is used to the last row at the sizes of terminals', () => {
    for (const [width, height] of [
      [60, 17],
      [80, 21],
      [100, 27],
      [120, 37],
      [200, 57],
    ] as const) {
      expect(trace({ width, height })).toHaveLength(height);
    }
  });

  it('holds colours without a change of the text', () => {
    const painted = trace({ paint: createPaint('truecolor') });
    expect(painted.join('')).toContain('\u001b[');
    expect(painted.map((row) => stripVTControlCharacters(row))).toEqual(trace());
  });
});

describe('a run with little on it', () => {
  it('says that nothing was recorded', () => {
    const empty = { ...view, tape: createTape(10, 0.001), firstRow: 0, endRow: 0 };
    expect(traceRows(prepareTrace(empty, options()), 1)).toEqual(['Nothing was recorded.']);
    expect(smallTrace(empty, { ...options(), height: 8 })).toEqual([]);
  });

  it('is drawn from one row, or from numbers that are none', () => {
    const one = createTape(1, 0.001);
    one.length = 1;
    const short = { ...view, tape: one, firstRow: 1, endRow: 1, finalPitchRad: null };
    const rows = traceRows(prepareTrace(short, options({ span: { fromS: 0, toS: 0 } })), 0);
    expect(rows).toHaveLength(37);
    expect(rows.join('')).toContain('Lean was not measured.');
    const broken = sampleTrace();
    for (const name of ['pitchRad', 'leanRad', 'positionM', 'axleHeightM'] as const)
      broken.tape.columns[name].fill(NaN, 4000);
    const all = [...rows, ...traceRows(prepareTrace(broken, options()), 5.5)];
    expect(all.join('')).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the small trace', () => {
  const small = (height: number, changes: Partial<TraceOptions> = {}) =>
    smallTrace(view, { ...options(), width: 50, span: { fromS: 0.5, toS: 3 }, ...changes, height });

  it('shows pitch about a moment, the event named over it', () => {
    const rows = small(8);
    expect(rows).toHaveLength(8);
    expect(rows[0]).toMatch(/^ {21}kerb$/);
    expect(labelsOf(rows)).toEqual(['nose down 4°', 'level', 'nose up 4°']);
    expect(rows.at(-1)?.trim()).toMatch(/^1 .* 3 s$/);
  });

  it.each(SYMBOL_SETS)('keeps to its rows and columns in %s', (symbols) => {
    for (const height of [1, 2, 3, 4, 6, 10]) {
      for (const width of [24, 40, 90]) {
        const rows = small(height, { width, symbols });
        expect(rows).toHaveLength(height);
        for (const row of rows) expect(textWidth(row)).toBeLessThanOrEqual(width);
      }
    }
  });
});
