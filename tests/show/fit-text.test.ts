import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flowed, padded, textWidth, truncated, wrapped } from '../../src/show/fit-text.js';

describe('fitting text', () => {
  it('measures what a terminal shows', () => {
    expect(textWidth('道e\u0301')).toBe(3);
    expect(padded('道', 4)).toBe('道  ');
    expect(padded('ab', 4, 'right')).toBe('  ab');
  });

  it('cuts with an ellipsis and keeps characters whole', () => {
    expect(truncated('cobbles', 7)).toBe('cobbles');
    expect(truncated('cobbles', 5)).toBe('cobb…');
    expect(truncated('道道道', 4)).toBe('道…');
    expect(truncated('kerb drop', 6)).toBe('kerb…');
    expect(truncated('cobbles', 5, '..')).toBe('cob..');
    expect(truncated('cobbles', 1)).toBe('…');
    expect(truncated('cobbles', 0)).toBe('');
  });

  it('wraps at spaces and leaves a number with its unit', () => {
    expect(wrapped('stays within 0.5° after 1.90 s.', 26)).toEqual(['stays within 0.5° after', '1.90 s.']);
    expect(wrapped('unbreakable', 4)).toEqual(['unbr', 'eaka', 'ble']);
    expect(wrapped('', 10)).toEqual([]);
  });

  it('flows items without breaking them', () => {
    expect(flowed(['a b', 'c d', 'e f'], ' | ', 9)).toEqual(['a b | c d', 'e f']);
  });

  it('never passes the width and loses no character', () => {
    const text = fc.string({ unit: fc.constantFrom('a', '7', ' ', '道', '°', 's'), maxLength: 60 });
    fc.assert(
      fc.property(text, fc.integer({ min: 2, max: 20 }), (source, width) => {
        const lines = wrapped(source, width);
        for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(width);
        expect(lines.join('').replaceAll(' ', '')).toBe(source.replaceAll(' ', ''));
        expect(textWidth(truncated(source, width))).toBeLessThanOrEqual(width);
      }),
    );
  });
});
