import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import type { PlotFrame } from '../../src/show/plot-frame.js';
import { drawPanel, panelRows, plot, plotPanel } from '../../src/show/plot.js';
import type { Panel } from '../../src/show/plot.js';
import { SYMBOL_SETS } from '../../src/show/glyphs.js';
import { timeAxisRows } from '../../src/show/time-axis.js';

const timeS = Array.from({ length: 401 }, (_, index) => index / 100);
const swing = timeS.map((t) => (t < 1 ? 0 : 4 * Math.exp(1 - t) * Math.sin(4 * (t - 1))));

const panel: Panel = {
  scale: {
    low: -4,
    high: 4,
    ticks: [
      { value: 4, text: 'nose down 4°' },
      { value: -4, text: 'nose up 4°' },
      { value: 0, text: 'level' },
    ],
  },
  rowCount: 5,
  lines: [
    { timeS: [0, 4], values: [3, 3], line: 'dotted', style: 'dim' },
    { timeS, values: swing, line: 'solid', style: 'accent' },
  ],
  strip: {
    label: 'cut by',
    timeS,
    letterAt: (index) => (index > 120 && index < 150 ? 'v' : null),
    style: 'warn',
  },
};

function frame(changes: Partial<PlotFrame> = {}): PlotFrame {
  return {
    symbols: 'braille',
    paint: createPaint('none'),
    width: 40,
    gutterWidth: 12,
    span: { fromS: 0, toS: 4 },
    marks: [{ name: 'kerb', timeS: 1 }],
    window: { fromS: 1, toS: 4 },
    ...changes,
  };
}

/** A panel of one line without labels, for plots that can be counted by hand. */
function bare(values: number[], changes: Partial<Panel> = {}): Panel {
  const times = values.map((_, index) => index);
  return {
    scale: { low: 0, high: 7, ticks: [] },
    rowCount: 2,
    lines: [{ timeS: times, values, line: 'solid', style: null }],
    ...changes,
  };
}

/** The cells of a bare panel, `width` columns of them, without gutter and axis. */
function cells(of: Panel, toS: number, at: { width: number; symbols?: PlotFrame['symbols'] }): string[] {
  const bareFrame = frame({
    width: at.width + 2,
    gutterWidth: 0,
    span: { fromS: 0, toS },
    marks: [],
    window: null,
    symbols: at.symbols ?? 'braille',
  });
  return plotPanel(of, bareFrame).map((row) => row.slice(2));
}

describe('a plot', () => {
  it('draws a swing in braille', () => {
    expect(plot(panel, frame())).toEqual([
      '                    kerb',
      'nose down 4° ┤⠄⠄⠄⠄⠄⠄⠄⢀⣀⡀⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄',
      '             │      ⢀⡞ ⠙⢦',
      '       level ┤⠤⠤⠤⠤⠤⠤⠼┈┈┈⠈⠳⣄┈┈⣠⠴⠚⠉⠉⠓⠲⠤⠤⠤⠤',
      '             │      ┊     ⠈⠙⠉⠁',
      '  nose up 4° ┤      ┊',
      '      cut by │       vvv',
      '             └┬─────━━━━━ measured ━━━━┯',
      '              0            2         4 s',
    ]);
  });

  it('draws it in half blocks', () => {
    expect(plot(panel, frame({ symbols: 'block' }))).toEqual([
      '                    kerb',
      'nose down 4° ┤········▄▄················',
      '             │      ▄█▀▀█',
      '       level ┤▄▄▄▄▄▄█---▀█▄--▄█▀▀▀▀█▄▄▄▄',
      '             │      ¦     ▀▀▀▀',
      '  nose up 4° ┤      ¦',
      '      cut by │       vvv',
      '             └┬─────━━━━━ measured ━━━━┯',
      '              0            2         4 s',
    ]);
  });

  it('draws it in ASCII alone', () => {
    const rows = plot(panel, frame({ symbols: 'ascii', gutterWidth: 15 }));
    expect(rows).toEqual([
      '                      kerb',
      'nose down 4 deg +=======..==============',
      '                |     :|\'"_',
      "          level +-----\"'  '|. ._\"''\"----",
      "                |     :     '''",
      '  nose up 4 deg +     :',
      '         cut by |      vvv',
      '                ++----==== measured ===#',
      '                 0          2        4 s',
    ]);
    expect(rows.join('')).toMatch(/^[\x20-\x7e]*$/);
  });
});

describe('the cells of a plot', () => {
  it('places dots where they can be counted', () => {
    // Eight rows of dots, one a unit; eight columns of dots, one a second.
    expect(cells(bare([0, 0, 0, 0, 0, 0, 0, 0]), 7, { width: 4 })).toEqual(['', '⣀⣀⣀⣀']);
    expect(cells(bare([7, 7, 7, 7, 7, 7, 7, 7]), 7, { width: 4 })).toEqual(['⠉⠉⠉⠉', '']);
    expect(cells(bare([3, 3]), 1, { width: 2 })).toEqual(['', '⠉⠉']);
    expect(cells(bare([3, 3]), 1, { width: 2, symbols: 'block' })).toEqual(['', '▀▀']);
    expect(cells(bare([0, 0]), 1, { width: 2, symbols: 'ascii' })).toEqual(['', '..']);
  });

  it('draws an upright over the whole range of a column', () => {
    expect(cells(bare([0, 7, 0, 7, 0, 7, 0, 7, 0]), 8, { width: 2 })).toEqual(['⣿⣿', '⣿⣿']);
  });

  it('draws one dot a cell for a dotted line, gaps in its uprights, and lets the solid line win', () => {
    const dotted = { timeS: [0, 1], values: [7, 7], line: 'dotted', style: null } as const;
    expect(cells(bare([], { lines: [dotted] }), 1, { width: 3 })).toEqual(['⠁⠁⠁', '']);
    const jump = { timeS: [0, 0.5, 0.5, 1], values: [7, 7, 0, 0], line: 'dotted', style: null } as const;
    expect(cells(bare([], { lines: [jump] }), 1, { width: 3 })).toEqual(['⠁⠅', ' ⡅⡀']);
    const solid = { timeS: [0, 1], values: [6, 6], line: 'solid', style: null } as const;
    expect(cells(bare([], { lines: [dotted, solid] }), 1, { width: 3 })).toEqual(['⠒⠒⠒', '']);
  });

  it('points beyond the scale where a line leaves it', () => {
    expect(cells(bare([9, 9]), 1, { width: 2 })).toEqual(['▲▲', '']);
    expect(cells(bare([-2, -2]), 1, { width: 2 })).toEqual(['', '▼▼']);
    expect(cells(bare([9, 9]), 1, { width: 2, symbols: 'ascii' })).toEqual(['^^', '']);
    expect(cells(bare([-2, -2]), 1, { width: 2, symbols: 'ascii' })).toEqual(['', 'vv']);
  });

  it('leaves a gap for what is no number, and draws nothing where there is nothing', () => {
    expect(cells(bare([0, 0, NaN, NaN, NaN, 0, 0, 0]), 8, { width: 4 })).toEqual(['', '⣀ ⢀⣀']);
    expect(cells(bare([]), 0, { width: 4 })).toEqual(['', '']);
    expect(cells(bare([NaN]), 0, { width: 4 })).toEqual(['', '']);
  });

  it('shows in each column of a strip what was met most often', () => {
    const letters = ['v', 'v', 'd', null, null, null, null, 'b'];
    const strip = {
      label: '',
      timeS: letters.map((_, index) => index),
      letterAt: (index: number) => letters[index] ?? null,
      style: null,
    };
    expect(cells(bare([], { strip }), 8, { width: 2 }).at(-1)).toBe('vb');
  });
});

describe('peaks', () => {
  const scale = { low: 0, high: 20, ticks: [] };
  const drawn = fc.record({
    values: fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 1, maxLength: 500 }),
    width: fc.integer({ min: 1, max: 30 }),
    rowCount: fc.integer({ min: 1, max: 9 }),
  });
  const dotRow = (value: number, dotCount: number) => Math.round(((20 - value) / 20) * (dotCount - 1));

  it.each(SYMBOL_SETS)('reach their rows in %s, however many samples a cell covers', (symbols) => {
    const dotsHigh = { braille: 4, block: 2, ascii: 3 }[symbols];
    fc.assert(
      fc.property(drawn, ({ values, width, rowCount }) => {
        const rows = cells(bare(values, { scale, rowCount }), values.length - 1, { width, symbols });
        const used = rows.flatMap((row, index) => (row.trim() === '' ? [] : [index]));
        const rowOf = (value: number) => Math.floor(dotRow(value, rowCount * dotsHigh) / dotsHigh);
        expect(used[0]).toBe(rowOf(Math.max(...values)));
        expect(used.at(-1)).toBe(rowOf(Math.min(...values)));
      }),
    );
  });

  it('reach their very dots in braille', () => {
    const dotsOf = (cell: string) => {
      const bits = cell === ' ' ? 0 : (cell.codePointAt(0) ?? 0) - 0x2800;
      return [0x09, 0x12, 0x24, 0xc0].flatMap((mask, row) => ((bits & mask) === 0 ? [] : [row]));
    };
    fc.assert(
      fc.property(drawn, ({ values, width, rowCount }) => {
        const rows = cells(bare(values, { scale, rowCount }), values.length - 1, { width });
        const dots = rows.flatMap((row, index) =>
          [...row].flatMap((cell) => dotsOf(cell).map((dot) => 4 * index + dot)),
        );
        expect(Math.min(...dots)).toBe(dotRow(Math.max(...values), 4 * rowCount));
        expect(Math.max(...dots)).toBe(dotRow(Math.min(...values), 4 * rowCount));
      }),
    );
  });
});

describe('a drawn panel', () => {
  const drawn = drawPanel(panel, frame());

  it('has the rows of a plotted one without a cursor, or with one out of sight', () => {
    expect(panelRows(drawn, frame(), null)).toEqual(plotPanel(panel, frame()));
    expect(panelRows(drawn, frame(), 4.1)).toEqual(plotPanel(panel, frame()));
    expect(panelRows(drawn, frame(), NaN)).toEqual(plotPanel(panel, frame()));
  });

  it('has the cursor as an upright where no line is, its strip among it', () => {
    // 26 columns over 4 s: 2 s is column 13, the 28th of the row.
    const rows = panelRows(drawn, frame(), 2);
    const plain = plotPanel(panel, frame());
    expect(rows).toEqual([
      'nose down 4° ┤⠄⠄⠄⠄⠄⠄⠄⢀⣀⡀⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄⠄',
      '             │      ⢀⡞ ⠙⢦  │',
      '       level ┤⠤⠤⠤⠤⠤⠤⠼┈┈┈⠈⠳⣄│┈⣠⠴⠚⠉⠉⠓⠲⠤⠤⠤⠤',
      '             │      ┊     ⠈⠙⠉⠁',
      '  nose up 4° ┤      ┊      │',
      '      cut by │       vvv   │',
    ]);
    rows.forEach((row, index) =>
      expect(row.slice(0, 27).trimEnd()).toBe(plain[index]?.slice(0, 27).trimEnd()),
    );
  });

  it('leaves the letters of its strip under the cursor', () => {
    expect(panelRows(drawn, frame(), 1.3).at(-1)).toBe('      cut by │       vvv');
  });

  it('has an arrow on the axis below the cursor', () => {
    expect(timeAxisRows(frame(), 0.5)[0]).toBe('             └┬──▲──━━━━━ measured ━━━━┯');
    expect(timeAxisRows(frame(), 9)).toEqual(timeAxisRows(frame()));
    expect(timeAxisRows(frame({ symbols: 'ascii' }), 0.5)[0]).toContain('+--^--=');
  });
});

describe('lettered and dashed lines', () => {
  const flat = (level: number, letter?: string) => ({
    timeS: [0, 7],
    values: [level, level],
    line: 'solid' as const,
    style: null,
    letter,
  });

  it('have each letter in columns of its own', () => {
    const rows = cells(bare([], { lines: [flat(7, 'A'), flat(0, 'B')] }), 7, { width: 22 });
    expect(rows).toEqual(['⠉⠉A⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉⠉A⠉⠉⠉⠉⠉⠉⠉', '⣀⣀⣀⣀⣀⣀⣀⣀B⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀⣀B⣀']);
    const same = cells(bare([], { lines: [flat(7, 'A'), flat(7, 'B'), flat(7)] }), 7, { width: 22 });
    expect(same[0]).toBe('⠉⠉A⠉⠉⠉⠉⠉B⠉⠉⠉⠉⠉A⠉⠉⠉⠉⠉B⠉');
  });

  it.each(SYMBOL_SETS)('have no letter where the line has a gap, in %s', (symbols) => {
    const gap = { ...flat(7, 'A'), values: [NaN, NaN] };
    expect(cells(bare([], { lines: [gap] }), 7, { width: 22, symbols })).toEqual(['', '']);
  });

  it('leave out every other cell when dashed', () => {
    const dashed = { ...flat(7), line: 'dashed' as const };
    expect(cells(bare([], { lines: [dashed] }), 7, { width: 5 })[0]).toBe('⠉ ⠉ ⠉');
    expect(cells(bare([], { lines: [dashed] }), 7, { width: 5, symbols: 'block' })[0]).toBe('· · ·');
    expect(cells(bare([], { lines: [dashed] }), 7, { width: 5, symbols: 'ascii' })[0]).toBe('= = =');
  });

  it('label neighbouring rows where labels are tight', () => {
    const scale = {
      low: 0,
      high: 7,
      ticks: [
        { value: 7, text: 'top' },
        { value: 0, text: 'end' },
      ],
    };
    const rows = (tightLabels: boolean) =>
      plotPanel({ ...bare([], { scale }), tightLabels }, frame({ gutterWidth: 3, marks: [] }));
    expect(rows(true)).toEqual(['top ┤', 'end ┤']);
    expect(rows(false)).toEqual(['top ┤', '    │']);
  });
});

describe('what stands around a plot', () => {
  it('keeps names of marks apart in two rows, and out of the margin', () => {
    const marks = [
      { name: 'headwind', timeS: 1 },
      { name: 'shove', timeS: 1.2 },
      { name: 'last bump', timeS: 3.9 },
      { name: 'never', timeS: 9 },
    ];
    expect(plot(panel, frame({ marks })).slice(0, 2)).toEqual([
      '                     shove',
      '                    headwind   last bump',
    ]);
  });

  it('takes escapes out of names', () => {
    const marks = [{ name: '\u001b[31mkerb\u001b[2J', timeS: 1 }];
    expect(plot(panel, frame({ marks })).join('')).not.toContain('\u001b');
  });

  it('marks the measured window on the time axis', () => {
    const axis = (window: PlotFrame['window']) => plot(panel, frame({ window })).at(-2);
    expect(axis(null)).toBe('             └┬────────────┬───────────┬');
    expect(axis({ fromS: 1, toS: 2 })).toBe('             └┬─────━━━━━━━┯───────────┬');
    expect(axis({ fromS: 8, toS: 9 })).toBe('             └┬────────────┬───────────┬');
  });

  it.each(SYMBOL_SETS)('is never wider than asked in %s', (symbols) => {
    const names = fc.array(
      fc.record({ name: fc.string({ maxLength: 30 }), timeS: fc.double({ min: -1, max: 6, noNaN: true }) }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 24, max: 120 }), names, (width, marks) => {
        const rows = plot(panel, frame({ symbols, width, marks, gutterWidth: 12 }));
        for (const row of rows) expect(textWidth(row)).toBeLessThanOrEqual(width);
      }),
    );
  });
});
