/** Does the difference table say what differs, by how much, and which is better? */
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { differenceRows, type DifferenceRow } from '../../src/show/difference-rows.js';
import { differenceTable } from '../../src/show/difference-table.js';
import { textWidth } from '../../src/show/fit-text.js';
import { comparedRun, fallen, pair } from './compared-runs.js';

const row = (rows: readonly DifferenceRow[], name: string) => {
  const found = rows.find((candidate) => candidate.name === name);
  if (found === undefined) throw new Error(`no row ${name}`);
  return {
    texts: found.cells.map(({ text }) => text),
    best: found.cells.map(({ isBest }) => isBest),
    ...found,
  };
};

describe('a row', () => {
  it('has the value of each with its unit, the better one marked, and the difference of what is shown', () => {
    const rows = differenceRows(pair());
    expect(row(rows, 'rebound')).toMatchObject({
      texts: ['10.0 %', '42.5 %'],
      best: [true, false],
      difference: '32.5 %',
    });
    expect(row(rows, 'least headroom')).toMatchObject({
      texts: ['100.0 %', '50.0 %'],
      best: [true, false],
      difference: '50.0 %',
    });
  });

  it('knows no winner where values are shown alike', () => {
    const [linen] = pair();
    const almost = comparedRun({ name: 'denim', metrics: { reboundPercent: 10.04, settlingTimeS: 1.2 } });
    expect(row(differenceRows([linen, almost]), 'rebound')).toMatchObject({
      texts: ['10.0 %', '10.0 %'],
      best: [false, false],
      difference: 'equal',
    });
    expect(row(differenceRows(pair()), 'energy')).toMatchObject({
      best: [false, false],
      difference: 'equal',
    });
  });

  it('names those that are alike where another fell and does not compete', () => {
    const [linen] = pair();
    const almost = comparedRun({ name: 'denim', metrics: { reboundPercent: 10.04, settlingTimeS: 1.2 } });
    const down = comparedRun({ name: 'gauze', outcome: { kind: 'nose strike', atS: 2 } });
    expect(row(differenceRows([linen, almost, down]), 'rebound').difference).toBe('equal: A B');
  });

  it('marks every one of those that share the best value', () => {
    const runs = [10, 42.5, 10.04].map((reboundPercent, index) =>
      comparedRun({ name: `p${index}`, metrics: { reboundPercent } }),
    );
    expect(row(differenceRows(runs), 'rebound')).toMatchObject({
      best: [true, false, true],
      difference: '32.5 %',
    });
  });

  it('counts what has not settled as longer than the window, and behind whatever has', () => {
    expect(row(differenceRows(pair()), 'settling time')).toMatchObject({
      texts: ['1.20 s', '> 8.00 s'],
      best: [true, false],
      difference: '> 6.80 s',
    });
    const late = comparedRun({ name: 'late', metrics: { settlingTimeS: 8 } });
    const never = comparedRun({ name: 'never', metrics: { settlingTimeS: null } });
    expect(row(differenceRows([never, late]), 'settling time').best).toEqual([false, true]);
  });

  it('lets a run that was cut short win nothing but shows what it has', () => {
    const rows = differenceRows([pair()[1], fallen()]);
    expect(row(rows, 'outcome')).toMatchObject({ texts: ['upright', 'nose strike'], best: [true, false] });
    expect(row(rows, 'least headroom')).toMatchObject({
      texts: ['50.0 %', '100.0 %'],
      best: [false, false],
      difference: '',
    });
    expect(row(rows, 'rebound').texts).toEqual(['42.5 %', '-']);
    expect(row(rows, 'settling time').texts).toEqual(['> 8.00 s', '0.00 s']);
  });

  it('is empty for a run that never came to its event', () => {
    const astray = comparedRun({ name: 'felt', eventReached: false, metrics: { measuredS: 0 } });
    const rows = differenceRows([pair()[0], astray]);
    expect(row(rows, 'outcome').texts).toEqual(['upright', 'no event']);
    expect(row(rows, 'peak current').texts).toEqual(['0.0 A', '-']);
  });

  it('asks for rebound, overshoot or neither by what was measured', () => {
    const names = (kind: 'step' | 'disturbance' | 'ride') =>
      differenceRows([comparedRun({ name: 'a', metrics: { kind } })]).map(({ name }) => name);
    expect(names('disturbance')).toEqual(expect.arrayContaining(['rebound', 'settling time']));
    expect(names('step')).toEqual(expect.arrayContaining(['overshoot', 'settling time']));
    expect(names('ride').join()).not.toMatch(/rebound|overshoot|settling/);
  });
});

describe('the table', () => {
  const options = { width: 80, height: 40, symbols: 'braille', paint: createPaint('none') } as const;

  it('heads each column with letter and name, and marks the better value by a sign', () => {
    const lines = differenceTable(pair(), options);
    expect(lines[0]).toMatch(/^◆ better +A linen +B satin +difference$/);
    expect(lines.find((line) => line.startsWith('rebound'))).toMatch(/10\.0 %◆ +42\.5 % +32\.5 %$/);
  });

  it('keeps cost and the rows that cost most where there is little room, and counts the others', () => {
    const lines = differenceTable(pair(), { ...options, height: 6 });
    expect(lines.map((line) => line.split('  ')[0])).toEqual([
      '◆ better',
      'cost',
      'rebound',
      'settling time',
      'least headroom',
      '12 more rows that matter less',
    ]);
  });

  it('keeps outcomes that differ', () => {
    const [first, second] = differenceTable([pair()[0], fallen()], { ...options, height: 5 }).slice(1);
    expect(first).toMatch(/^outcome +upright◆ +nose strike$/);
    expect(second).toMatch(/^cost /);
  });

  it('explains itself where there is room, wholly or not at all', () => {
    const whole = differenceTable(pair(), options).length;
    expect(differenceTable(pair(), options).at(-1)).toMatch(/less is better\.$/);
    expect(differenceTable(pair(), { ...options, height: whole - 1 }).at(-1)).toMatch(/^feet vibration/);
  });

  it.each(['braille', 'block', 'ascii'] as const)('fits in %s', (symbols) => {
    const runs = [...pair(), fallen('a-profile-with-a-long-name'), fallen()];
    for (const width of [20, 40, 57, 80, 120]) {
      for (const height of [0, 1, 2, 3, 4, 9, 17, 30]) {
        const lines = differenceTable(runs, { ...options, symbols, width, height });
        expect(lines.length).toBeLessThanOrEqual(height);
        for (const line of lines) {
          expect(textWidth(line)).toBeLessThanOrEqual(width);
          if (symbols === 'ascii') expect(line).toMatch(/^[ -~]*$/);
        }
      }
    }
  });
});
