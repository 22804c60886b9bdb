/**
 * Does Why answer on a true terminal, with real runs: what is to blame, a change that is tried, before and after, kept or
 * taken back?
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { smallFolder } from '../store/small-folder.js';
import { endServer, HAS_TMUX, openSession } from './tmux.js';

if (!HAS_TMUX && process.env['CI'] !== undefined) throw new Error('tmux is missing; these tests need it');

afterAll(endServer);

describe.skipIf(!HAS_TMUX)('Why in tmux (left out where tmux is missing)', () => {
  it('answers, makes a change, takes it back and keeps it', async () => {
    const folder = smallFolder();
    const session = await openSession(folder);
    await session.start();
    await session.see(/ranked/);
    await session.press('End', 'y');
    const answered = await session.see(/^Why .* explained$/m);
    expect(answered).toMatch(/\d+ changes were tried on every run/);
    await session.press('End', 'Enter');
    await session.see(/made: /);
    await session.see(/A before:[^]*B\s[^]*after:/);
    await session.press('u');
    await session.seeNo(/made: |A before/);
    await session.press('Enter');
    await session.see(/made: /);
    await session.press('w');
    await session.see(/name of the new profile/);
    await session.type('kept');
    await session.press('Enter');
    await session.see('wrote profiles/gains/kept.yaml');
    expect(readFileSync(join(folder, 'profiles/gains/kept.yaml'), 'utf8')).toMatch(/^summary: ["']?From /m);
    await session.press('q');
    await session.see(/^underfoot/);
    await session.press('q');
    await session.see(/^code 0/m);
  });

  it('ends its work with the screen, and with the bench, in the middle of it', async () => {
    const session = await openSession(smallFolder());
    await session.start();
    await session.see(/ranked/);
    await session.press('y');
    await session.see(/^Why/);
    await session.press('q');
    await session.see(/^underfoot/);
    await session.press('y');
    await session.see(/^Why/);
    await session.press('C-c');
    await session.see(/^code 130/m);
  });
});
