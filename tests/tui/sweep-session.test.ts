/**
 * Does a sweep go its way on a true terminal, with real runs: ranges typed, stopped and gone on with, left for Rank and come back to,
 * kept in its file; and does a finalist get to Trace, Why and Rank, and into a file?
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { smallFolder } from '../store/small-folder.js';
import { endServer, HAS_TMUX, openSession } from './tmux.js';

if (!HAS_TMUX && process.env['CI'] !== undefined) throw new Error('tmux is missing; these tests need it');

afterAll(endServer);

describe.skipIf(!HAS_TMUX)('Sweep in tmux (left out where tmux is missing)', () => {
  it('is asked for, stopped, gone on with and looked at from all sides, and a finalist is kept', async () => {
    const folder = smallFolder();
    const session = await openSession(folder);
    await session.start();
    await session.see(/ranked/);
    await session.press('g');
    await session.see(/^▸ +proportionalAPerDeg +\[/m);
    await session.press('9', '9', '9', 'Enter');
    await session.see('expected a number from 0 to 500 A/deg, received 999');
    await session.press('Escape');
    await session.seeNo(/^number: /m);
    await session.press('Down', 'Down', '1', '2', 'Enter');
    await session.see(/candidates +\[12\]/);
    await session.press('Enter');
    await session.see(/^▸ +1 +c\d{5} .* 2$/m);
    await session.press('Space');
    await session.see('Stopped; Space goes on.');
    const [file] = readdirSync(join(folder, 'sweeps'));
    const kept = readFileSync(join(folder, 'sweeps', file!), 'utf8').split('\n').length - 2;
    expect(kept).toBeGreaterThan(20);
    await session.press('q');
    await session.see(/sweep stopped/);
    await session.press('g', 'Space', 'q');
    await session.see('the sweep has come to its end: g on Rank shows it');
    await session.press('g');
    await session.see(/^Sweep .* done, \d+ runs$/m);
    await session.press('Tab');
    await session.see(/^Score over 2 cells by proportional and rate: best/m);
    await session.press('t');
    await session.see(/^lines 1-\d+ of \d+$/m);
    await session.see(/(Where the falls begin|Nobody falls)/);
    await session.press('t');
    await session.seeNo(/^lines 1-/m);
    await session.press('Tab');
    await session.see(/^Comfort against reserve: of \d+ finalists/m);
    await session.press('Enter');
    await session.see(/^Trace .*\n[^]*nose/);
    await session.press('Escape');
    await session.see(/^Comfort against/m);
    await session.press('y');
    await session.see(/^Why /m);
    await session.press('Escape');
    await session.see(/^Comfort against/m);
    await session.press('r');
    await session.see(/has the numbers of c\d{5} now: w writes it/);
    await session.press('w');
    await session.see(/name of the new profile/);
    await session.type('found');
    await session.press('Enter');
    await session.see('wrote profiles/gains/found.yaml');
    expect(readFileSync(join(folder, 'profiles/gains/found.yaml'), 'utf8')).toMatch(
      /proportionalAPerDeg: [\d.]+/,
    );
    await session.press('q');
    await session.see(/^code 0/m);
  });

  it('is left in the middle with Ctrl-C, and goes on from its file', async () => {
    const folder = smallFolder();
    const session = await openSession(folder, 80, 24);
    await session.start();
    await session.see(/ranked/);
    await session.press('g', 'Enter');
    await session.see(/^▸ +1 +c\d{5} /m);
    await session.press('C-c');
    await session.see(/^code 130/m);
    const [file] = readdirSync(join(folder, 'sweeps'));
    const kept = readFileSync(join(folder, 'sweeps', file!), 'utf8').split('\n').length - 2;
    expect(kept).toBeGreaterThan(100);
    await session.start();
    await session.see(/ranked/);
    await session.press('g', 'Enter');
    const again = await session.see(/ (\d+) in all\.|done, (\d+) runs/);
    const [, inAll, done] = / (\d+)\s+in\s+all\.|done, (\d+) runs/.exec(again)!;
    expect(Number(inAll ?? done)).toBeGreaterThanOrEqual(kept);
    await session.press('C-c');
    await session.see(/^code 130/m);
  });
});
