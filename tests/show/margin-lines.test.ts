/** Are margins shown in plain words, with the numbers that were found, at every width and in every symbol set? */
import { describe, expect, it } from 'vitest';
import { allowedByDisk } from '../../src/linear/margins.js';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { SYMBOL_SETS } from '../../src/show/glyphs.js';
import { marginLines } from '../../src/show/margin-lines.js';
import { marginTables } from '../../src/show/margin-table.js';
import type { MarginView } from '../../src/show/margin-view.js';
import { motion, ridden, sampleMargins, sampleReport, triedDelay, triedGain } from './sample-margins.js';

const paint = createPaint('none');
const options = { width: 110, symbols: 'braille', paint, speedUnit: 'km/h' } as const;

const linesOf = (view: MarginView, changes: Partial<Parameters<typeof marginLines>[1]> = {}) =>
  marginLines(view, { ...options, ...changes });

/** All that is said, in one line. */
const saidOf = (view: MarginView) => linesOf(view).join(' ').replaceAll(/ +/g, ' ');

const ROLL = motion(0.35, 0.07, { travel: 1 });
const CREEP = motion(0.09, 1.3, { rider: 0.4, travel: 0.6 });
const RUNAWAY = motion(5, 81, { deck: 0.7, travel: 0.3 });

const every = sampleMargins(
  ridden(0, { modes: [ROLL, motion(-20, 30, { deck: 1 })] }),
  ridden(10),
  ridden(20, { modes: [RUNAWAY] }),
  { speedKmPerH: 60, gradePercent: 0, report: null },
  ridden(10, {}, -8),
);

describe('the table', () => {
  it('has a column a ride and a row a quantity, with units', () => {
    const rows = marginTables([ridden(0), ridden(10, {}, 8)], options).map((line) =>
      line.trim().split(/ {2,}/),
    );
    expect(rows.slice(0, 5)).toEqual([
      ['standing', '10 km/h'],
      ['road', 'level', '8 % up'],
      ['pitch loop', 'holds', 'holds'],
      ['gain may rise to', 'x5.0', 'x5.0'],
      ['gain may fall to', 'x0.20', 'x0.20'],
    ]);
    const row = (label: string) => rows.find(([first]) => first === label)?.[1];
    expect(row('phase to spare')).toBe('50°');
    expect(row('delay to spare')).toBe('8.8 ms');
    expect(row('together: gain from')).toBe('x0.38');
    expect(row('sensitivity peak')).toBe('1.50');
    expect(row('least damped motion')).toBe('rider, travel');
    expect(row('damping ratio')).toBe('0.19');
    expect(row('stiffness at 1 Hz')).toBe('11.5 Nm/deg');
    expect(row('comes, at 1 Hz')).toBe('120 ms late');
    expect(row('gyro noise, request')).toBe('0.25 A rms');
  });

  it('has no margins where the loop is lost or cut, and says so', () => {
    const [header, , state, gainUp, ...rest] = marginTables(every.points, options);
    expect(header!.trim().split(/ {2,}/)).toEqual(['standing', '10 km/h', '20 km/h', '60 km/h', '10 km/h']);
    expect(state!.trim().split(/ {2,}/)).toEqual(['pitch loop', 'rolls', 'holds', 'lost', 'cut', 'holds']);
    expect(gainUp!.trim().split(/ {2,}/)).toEqual(['gain may rise to', 'x5.0', 'x5.0', '-', '-', 'x5.0']);
    expect(rest.find((line) => line.startsWith('least'))).toMatch(
      /travel +rider, travel +deck, travel +- +rider/,
    );
  });

  it('goes on below where the columns do not fit side by side', () => {
    const lines = marginTables(every.points, { ...options, width: 60 });
    expect(lines.filter((line) => line.startsWith('pitch loop'))).toHaveLength(3);
    expect(lines.filter((line) => line === '')).toHaveLength(2);
  });

  it('says none where there is none', () => {
    const report = sampleReport();
    const none = { value: Infinity, radPerS: null };
    const margins = {
      ...report.margins,
      gainUp: none,
      gainDown: { value: 0, radPerS: null },
      phaseRad: none,
      delayS: none,
    };
    const point = ridden(10, { margins, allowedByDisk: allowedByDisk(2), modes: [] });
    const lines = marginTables([point], options);
    for (const label of [
      'gain may rise to',
      'gain may fall to',
      'phase to spare',
      'delay to spare',
      '  gain to',
      'least',
    ]) {
      expect(lines.find((line) => line.startsWith(label))).toMatch(/ none$/);
    }
  });
});

describe('the words', () => {
  it('say where the loop holds, what grows elsewhere, and what a ceiling cuts', () => {
    const said = saidOf(every);
    expect(said).toContain('The pitch loop holds at 10 km/h and at 10 km/h down 8 %: every motion dies out.');
    expect(said).toContain(
      'The pitch loop holds standing, but travel grows (at 0.07 Hz, doubling in 2.0 s): friction at rest against',
    );
    expect(said).toContain('The margins there are about everything else.');
    expect(said).toContain(
      'The pitch loop is lost at 20 km/h: deck and travel grow (at 81 Hz, doubling in 0.1 s). It has no margins there.',
    );
    expect(said).toContain('A ceiling cuts the steady ride at 60 km/h');
  });

  it('give no margins to a loop that creeps, and do not call it lost', () => {
    const lines = linesOf(sampleMargins(ridden(20, { modes: [CREEP] })));
    expect(lines.join(' ')).toContain(
      'has nothing to spare at 20 km/h: travel and rider grow (at 1.3 Hz, doubling in 7.7 s). That is slow enough',
    );
    expect(lines.find((line) => line.startsWith('gain may rise to'))).toMatch(/ -$/);
    expect(lines.join(' ')).not.toMatch(/lost|Least/);
  });

  it('say what the smallest margin means, and change with it', () => {
    const said = saidOf(sampleMargins(ridden(10)));
    expect(said).toContain(
      '8.8 ms. With so much more, about 7 ticks at 800 Hz, it is lost (10 km/h, at 16 Hz)',
    );
    expect(said).toContain('with x5.0 the gain it is lost (10 km/h, at 60 Hz)');
    expect(said).toContain('with x0.20 the gain it is lost (10 km/h, at 0.30 Hz)');
    const { margins } = sampleReport();
    const tighter = { ...margins, delayS: { value: 0.0011, radPerS: 100 } };
    expect(saidOf(sampleMargins(ridden(10), ridden(20, { margins: tighter })))).toContain(
      '1.1 ms. With so much more, less than a tick at 800 Hz, it is lost (20 km/h, at 16 Hz)',
    );
  });

  it('hold the margins against guidance, its source beside', () => {
    const met = saidOf(sampleMargins(ridden(10)));
    expect(met).toContain('Gain and phase, met (MathWorks, page of margin');
    expect(met).toContain('Sensitivity peak, met (Åström and Hägglund, PID Controllers, 1995: 1.3 to 2');
    const { margins } = sampleReport();
    const tight = {
      ...margins,
      gainUp: { value: 2.99, radPerS: 300 },
      phaseRad: { value: (29.4 * Math.PI) / 180, radPerS: 100 },
      sensitivityPeak: { value: 2.1, radPerS: 2 * Math.PI * 12 },
    };
    const missed = saidOf(sampleMargins(ridden(10, { margins: tight })));
    expect(missed).toContain('Gain and phase, not met: 10 km/h has x2.99 and 29°');
    expect(missed).toContain('Sensitivity peak, not met: 10 km/h has 2.1 at 12 Hz');
  });

  it('say what the simulation made of the margins, and where it disagrees', () => {
    const tried = saidOf(sampleMargins(ridden(10)));
    expect(tried).toContain(
      'Tried in the simulation: 3 of 3 margins agree. 10 km/h: with 5 ticks more it calms, with 9 ticks more it grows',
    );
    const { tried: usual } = sampleReport();
    const disagreeing = { ...usual, delay: triedDelay([1, 9], [2, 3]) };
    const said = saidOf(sampleMargins(ridden(10, { tried: disagreeing })));
    expect(said).toContain('2 of 3 margins agree');
    expect(said).toContain(
      'The simulation disagrees about delay, 10 km/h: with 1 tick more it grows, with 9 ticks more it grows. ' +
        'Do not rely on this margin.',
    );
  });

  it('say what calms a loop that is lost, where that was tried', () => {
    const tried = { delay: null, gainUp: null, gainDown: triedGain([0.98, 0.95], [1, -1]) };
    const said = saidOf(
      sampleMargins(ridden(10, { modes: [RUNAWAY], tried }), ridden(20, { modes: [RUNAWAY], tried })),
    );
    expect(said).toContain(
      'Tried where it does not hold (10 km/h and 20 km/h): with x0.95 the gain it calms.',
    );
    expect(said).not.toContain('margins agree');
    expect(said).not.toContain('Gain and phase');
    expect(said).toContain('The loop does not hold here: it has no sensitivity');
  });

  it('end with the caution', () => {
    expect(saidOf(every)).toContain('it proves nothing about the machine');
    expect(saidOf(every)).not.toMatch(/NaN|undefined|Infinity|\bsafe\b/);
  });
});

describe('the picture', () => {
  it('is of the last moving ride that holds, its axis from 0.1 to 100 Hz', () => {
    const lines = linesOf(sampleMargins(ridden(0), ridden(10), ridden(20, { modes: [RUNAWAY] })));
    const start = lines.findIndex((line) =>
      line.startsWith('Loop gain, 10 km/h: passes 0 dB at 16 Hz with 50°'),
    );
    expect(start).toBeGreaterThan(0);
    const picture = lines.slice(start);
    expect(picture.filter((line) => / dB ┤/.test(line)).map((line) => line.trim().split(' ')[0])).toEqual([
      '60',
      '40',
      '20',
      '0',
      '-20',
      '-40',
    ]);
    expect(picture.find((line) => line.includes('Sensitivity'))).toMatch(
      /25 Hz comes out 1.50 times as large/,
    );
    expect(
      picture
        .find((line) => line.endsWith(' Hz'))
        ?.trim()
        .split(/ {2,}/),
    ).toEqual(['0.1', '1', '10', '100 Hz']);
  });

  it('has its marks over their frequencies: equal steps of the axis are equal factors', () => {
    const lines = linesOf(sampleMargins(ridden(10)));
    const axis = lines.find((line) => /^ +0\.1 .* Hz$/.test(line))!;
    const at = (text: string) => axis.indexOf(text);
    const decade = at(' 100 Hz') - at(' 10 ');
    expect(Math.abs(at(' 10 ') - at(' 1 ') - decade)).toBeLessThanOrEqual(1);
    const names = lines.find((line) => line.includes('phase, delay'))!;
    const wanted = at(' 10 ') + 1 + Math.log10(1.6) * decade;
    expect(Math.abs(names.indexOf('phase, delay') - wanted)).toBeLessThanOrEqual(1);
  });
});

describe('every line', () => {
  it.each(SYMBOL_SETS)('fits in %s, and ascii is ASCII', (symbols) => {
    for (const width of [40, 60, 80, 120]) {
      const lines = linesOf(every, { width, symbols });
      for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(width);
      if (symbols === 'ascii') expect(lines.join('\n')).toMatch(/^[\n -~]*$/);
    }
  });

  it('speaks of miles when asked', () => {
    expect(linesOf(every, { speedUnit: 'mph' }).join(' ')).toContain('6.2 mph');
  });
});
