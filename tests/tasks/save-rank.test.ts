/**
 * Is a ranking written whole, in the format of its ending and in the order of its rows, and never over another file?
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { textWidth } from '../../src/show/fit-text.js';
import type { RankResult } from '../../src/tasks/rank-report.js';
import { rank } from '../../src/tasks/rank.js';
import { saveRank } from '../../src/tasks/save-rank.js';
import { allPaths, putFile, tempFolder } from '../store/temp-folder.js';
import { smallPlan } from './small-plan.js';

let result: RankResult;
beforeAll(async () => {
  const plan = smallPlan({ seeds: [1] });
  const ranked = await rank(plan, { threads: 1 });
  result = { plan, ranked, check: null, order: { by: 'profile', reversed: true } };
});

async function saved(fileName: string): Promise<string> {
  const path = join(tempFolder(), fileName);
  expect(await saveRank(path, result, { force: false })).toEqual({ ok: true, value: path });
  return readFileSync(path, 'utf8');
}

const byName = ['wool', 'silk', 'felt'];

describe('saving a ranking', () => {
  it('as CSV', async () => {
    const rows = (await saved('rank.csv')).split('\r\n').map((line) => line.split(','));
    expect(rows.slice(1, 4).map((row) => row[1])).toEqual(byName);
    expect(rows[2]![0]).toBe('3');
  });

  it('as JSON', async () => {
    const report = JSON.parse(await saved('rank.JSON'));
    expect(report.order).toEqual({ by: 'profile', reversed: true });
    expect(report.profiles.map(({ name }: { name: string }) => name)).toEqual(byName);
    const rankOf = new Map(result.ranked.map(({ name }, index) => [name, index + 1]));
    for (const { name, rank: itsRank } of report.profiles) expect(itsRank).toBe(rankOf.get(name));
  });

  it('as the table, without colour, and without a check that there was none of', async () => {
    const lines = (await saved('rank.txt')).split('\n');
    expect(lines.filter((line) => /^\d /.test(line)).map((line) => line.split(/\s+/)[1])).toEqual(byName);
    expect(lines.every((line) => textWidth(line) <= 120)).toBe(true);
    expect(lines.join('')).not.toContain('\u001b');
    expect(lines.join('\n')).toContain('not checked against odex');
  });

  it.each(['rank.pdf', 'rank', 'csv', '.csv', 'rank.csv.gz'])(
    'refuses %j and names the three endings',
    async (fileName) => {
      const folder = tempFolder();
      const refused = await saveRank(join(folder, fileName), result, { force: true });
      expect(refused).toMatchObject({
        ok: false,
        faults: [{ expected: 'a file name that ends in .csv, .json or .txt' }],
      });
      expect(allPaths(folder)).toEqual([]);
    },
  );

  it('not over another file, unless forced', async () => {
    const path = putFile(tempFolder(), 'rank.csv', 'mine');
    expect(await saveRank(path, result, { force: false })).toMatchObject({ ok: false });
    expect(readFileSync(path, 'utf8')).toBe('mine');
    expect(await saveRank(path, result, { force: true })).toMatchObject({ ok: true });
    expect(readFileSync(path, 'utf8')).toMatch(/^rank,profile/);
  });
});
