/**
 * Does Why answer on a true terminal, with real runs: what is to blame, a change that is tried, before and after, kept or
 * taken back; and does it say all of that in words, with the edge?
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
    expect(answered).toMatch(/\d+ changes of one thing .*were tried on every run/);
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

  it('says all in words, to the last line at any size, and the edge once it is found', async () => {
    const session = await openSession(smallFolder(), 80, 24);
    await session.start();
    await session.see(/ranked/);
    await session.press('End', 'y');
    await session.see(/^ +1\) /m);
    await session.press('t', 'Home');
    expect(await session.see(/^lines 1-21 of \d+$/m)).toMatch(/^Why \w+ rides as it does: board otter/m);
    await session.see(/^Why .* explained\n/);
    await session.press('End');
    const end = await session.see(/nor that less is harmless\.\n/);
    expect(end).toMatch(/^lines \d+-(\d+) of \1$/m);
    const lines = Number(/of (\d+)$/m.exec(end)![1]);
    await session.press('Home', 'NPage');
    await session.see(`lines 22-42 of ${lines}`);
    await session.press('Down', 'j', 'Up');
    const before = await session.see(`lines 23-43 of ${lines}`);
    await session.resize(40, 10);
    // Another count of lines: the terminal shows the old ones, moved, until they are drawn anew.
    await session.see(new RegExp(`^lines \\d+-\\d+ of (?!${lines}$)\\d+$`, 'm'));
    await session.resize(80, 24);
    expect(await session.see(new RegExp(`^Why [^]*\nlines 23-43 of ${lines}\n`))).toBe(before);
    await session.press('t');
    await session.see(/^ +1\) /m);
    await session.press('t');
    await session.see(/^lines /m);
    await session.press('Escape');
    await session.see(/^ +1\) /m);
    await session.press('q');
    await session.see(/^underfoot/);
  });

  it('knows what was found when it is asked again, and finds what is left', async () => {
    const session = await openSession(smallFolder());
    await session.start();
    await session.see(/ranked/);
    await session.press('End', 'y');
    await session.see(/^ +1\) /m);
    await session.press('q');
    await session.see(/^underfoot/);
    await session.press('y');
    await session.see(/^Why .* explained$/m);
    await session.press('C-c');
    await session.see(/^code 130/m);
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
