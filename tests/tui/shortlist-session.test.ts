/**
 * Does a profile go its way on a true terminal, with real runs: proven and kept with one key, its card in sight, exported, noted,
 * through a controller sheet, and taken out again?
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { smallFolder } from '../store/small-folder.js';
import { endServer, HAS_TMUX, openSession } from './tmux.js';

if (!HAS_TMUX && process.env['CI'] !== undefined) throw new Error('tmux is missing; these tests need it');

afterAll(endServer);

describe.skipIf(!HAS_TMUX)('Shortlist in tmux (left out where tmux is missing)', () => {
  it('gets a profile from Rank, shows, exports and notes it, and lets it go', async () => {
    const folder = smallFolder();
    const session = await openSession(folder);
    await session.start();
    await session.see(/ranked/);
    await session.press('a');
    await session.see(/^keep it on the shortlist as: /m);
    await session.press('C-u');
    await session.type('Tea');
    await session.press('Enter');
    await session.see(/expected a name of at most 40 lower-case letters.* received "Tea"/);
    await session.press('C-u');
    await session.type('evening-one');
    await session.press('Enter', 'L');
    await session.see(/^Shortlist {2}nothing kept yet, evening-one/m);
    await session.see('evening-one is proven and kept in shortlist/evening-one.yaml');
    await session.see(/^Shortlist {2}1 kept, evening-one/m);
    await session.press('v');
    await session.see(/Ride card evening-one/);
    await session.press('x', 'Enter');
    await session.see('wrote evening-one-card.txt');
    expect(readFileSync(join(folder, 'evening-one-card.txt'), 'utf8')).toMatch(
      /^Ride card evening-one\nnumbers\n/,
    );
    await session.press('x', 'Enter');
    await session.see(/! evening-one-card\.txt: expected a new file, received a file that is there already/);
    await session.press('Escape');
    await session.seeNo(/write to/);
    await session.press('n');
    await session.type('Calm: über alles "gut"');
    await session.press('Enter');
    await session.see('wrote the note into shortlist/evening-one.yaml');
    await session.see('Note: Calm: über alles "gut"');
    await session.press('f');
    await session.type('twitchy 9');
    await session.press('Enter');
    await session.see("twitchy: expected a rating from 1 to 5, received '9'");
    await session.press('C-u');
    await session.type('twitchy 2');
    await session.press('Enter');
    await session.see('Felt: twitchy 2.');
    await session.press('c', 'Enter');
    await session.see(/^Shortlist .* simulated$/m);
    await session.see(/evening-one through the controller sheet/);
    await session.press('d');
    await session.see('d again takes evening-one out');
    await session.press('d');
    await session.see('removed shortlist/evening-one.yaml');
    expect(readdirSync(join(folder, 'shortlist'))).toEqual([]);
    await session.press('q');
    await session.see(/^underfoot/);
    await session.press('q');
    await session.see(/^code 0/m);
  }, 60_000);

  it('lets the bench be left while something is proven, and nothing is half written', async () => {
    const folder = smallFolder();
    const session = await openSession(folder, 80, 24);
    await session.start();
    await session.see(/ranked/);
    await session.press('a', 'Enter');
    await session.see(/is being proven; L shows how far it is/);
    await session.press('q');
    await session.see(/is still being proven: q again leaves without it/);
    await session.press('q');
    await session.see(/^code 0/m);
    expect(existsSync(join(folder, 'shortlist'))).toBe(false);
  }, 60_000);
});
