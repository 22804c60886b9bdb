import { describe, expect, it } from 'vitest';
import { panelRowCounts, pictureRows, SIDE_GAP, traceWidths } from '../../src/show/trace-layout.js';

describe('the rows of panels', () => {
  it('are all used, and pitch has a middle row', () => {
    for (let rowCount = 1; rowCount < 70; rowCount += 1) {
      const counts = panelRowCounts(rowCount);
      expect([...counts.values()].reduce((sum, count) => sum + count, 0)).toBe(rowCount);
      if (counts.size > 1) expect((counts.get('pitch') ?? 0) % 2).toBe(1);
      for (const count of counts.values()) expect(count).toBeGreaterThanOrEqual(Math.min(2, rowCount));
    }
  });

  it('go to the most telling first', () => {
    expect([...panelRowCounts(4).keys()]).toEqual(['pitch']);
    expect([...panelRowCounts(5).keys()]).toEqual(['pitch', 'lean']);
    expect([...panelRowCounts(6).keys()]).toEqual(['pitch', 'current']);
    expect([...panelRowCounts(8).keys()]).toEqual(['pitch', 'current', 'lean']);
    expect([...panelRowCounts(12).keys()]).toEqual(['pitch', 'current', 'lean', 'speed', 'road']);
    const tall = panelRowCounts(40);
    expect(tall.get('pitch')).toBeGreaterThan(tall.get('speed') ?? 99);
    expect(tall.get('speed')).toBeGreaterThan(tall.get('road') ?? 99);
  });
});

describe('the columns', () => {
  it('are shared out from 76 on', () => {
    expect(traceWidths(75)).toEqual({ plotWidth: 75, sideWidth: 0 });
    for (const width of [76, 80, 100, 120, 200, 300]) {
      const { plotWidth, sideWidth } = traceWidths(width);
      expect(plotWidth + SIDE_GAP + sideWidth).toBe(width);
      expect(plotWidth).toBeGreaterThan(sideWidth);
    }
  });
});

describe('the rows of the picture', () => {
  it('are half of the room, and more where the read-out has enough', () => {
    expect(pictureRows(21, 20)).toBe(11);
    expect(pictureRows(37, 20)).toBe(19);
    expect(pictureRows(57, 20)).toBe(37);
    expect(pictureRows(15, 20)).toBe(0);
  });
});
