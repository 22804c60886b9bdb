import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPaint } from '../../src/show/colour.js';
import { textWidth } from '../../src/show/fit-text.js';
import { table } from '../../src/show/table.js';

const plain = createPaint('none');

describe('a table', () => {
  it('puts numbers to the right and words to the left, without spaces at the end', () => {
    const lines = table({
      columns: [
        { header: 'profile' },
        { header: 'score' },
        { header: 'settles', align: 'right' },
        { header: 'worst' },
      ],
      rows: [
        ['Long Meadow', '9.5', '1.90 s', 'kerb'],
        ['Gravel', '-12.0', 'not settled', ''],
      ],
      paint: plain,
    });
    expect(lines).toEqual([
      'profile      score      settles  worst',
      'Long Meadow    9.5       1.90 s  kerb',
      'Gravel       -12.0  not settled',
    ]);
  });

  it('knows wide characters', () => {
    expect(table({ columns: [{ header: 'a' }, { header: 'b' }], rows: [['道', 'x']], paint: plain })).toEqual(
      ['a   b', '道  x'],
    );
  });

  it('cuts the column that may shrink, and no other', () => {
    const lines = table({
      columns: [{ header: 'profile' }, { header: 'says', shrinks: true }, { header: 'n' }],
      rows: [['Long Meadow', 'calm and a little slow on hills', '12']],
      paint: plain,
      maxWidth: 32,
    });
    expect(lines).toEqual(['profile      says              n', 'Long Meadow  calm and a lit…  12']);
  });

  it('cuts the line itself where shrinking is not enough', () => {
    const spec = {
      columns: [{ header: 'profile' }, { header: 'says', shrinks: true, leastWidth: 8 }],
      rows: [['Long Meadow', 'calm and a little slow']],
      paint: plain,
    };
    expect(table({ ...spec, maxWidth: 14 })).toEqual(['profile      …', 'Long Meadow  …']);
    expect(table({ ...spec, maxWidth: 21 })[1]).toBe('Long Meadow  calm an…');
  });

  it('paints pieces without moving a column, and takes escapes out of texts', () => {
    const strip = [
      { text: '✓', style: 'ok' as const },
      { text: '✗', style: 'bad' as const },
    ];
    const lines = table({
      columns: [{ header: 'cells' }, { header: 'name' }],
      rows: [[strip, '\u001b[31mred\u001b[2J']],
      paint: createPaint('16'),
    });
    expect(lines).toEqual([
      '\u001b[1mcells  name\u001b[22m',
      '\u001b[32m✓\u001b[39m\u001b[31m✗     \u001b[39mred',
    ]);
  });

  it('has no line wider than asked, whatever the cells', () => {
    const word = fc.string({ unit: fc.constantFrom('a', '道', ' ', '1', '-'), maxLength: 20 });
    const rows = fc.array(fc.array(word, { minLength: 3, maxLength: 3 }), { maxLength: 5 });
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 60 }), (cells, maxWidth) => {
        const columns = [
          { header: 'one', shrinks: true },
          { header: 'two' },
          { header: 'three', shrinks: true },
        ];
        for (const line of table({ columns, rows: cells, paint: plain, maxWidth })) {
          expect(textWidth(line)).toBeLessThanOrEqual(maxWidth);
          expect(line).toBe(line.trimEnd());
        }
      }),
    );
  });
});
