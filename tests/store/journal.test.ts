/**
 * Does a journal hold whole lines and nothing else, whatever cut the last one off, and is nothing of another's spoilt?
 */
import { appendFileSync, mkdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openJournal, readJournal, rewriteJournal, type Journal } from '../../src/store/journal.js';
import { allPaths, putFile, tempFolder } from './temp-folder.js';

function opened(path: string, head = 'head'): Journal {
  const journal = openJournal(path, 'shown', head);
  if (!journal.ok) throw new Error(JSON.stringify(journal.faults));
  return journal.value;
}

const text = (path: string) => readFileSync(path, 'utf8');

describe('a journal', () => {
  it('begins with its head, in a folder that is made for it, and grows by lines', () => {
    const folder = tempFolder();
    const path = join(folder, 'a', 'b', 'kept.ndjson');
    const journal = opened(path);
    expect(text(path)).toBe('head\n');
    expect([journal.append('one'), journal.append('zwei, drü')]).toEqual([null, null]);
    expect(text(path)).toBe('head\none\nzwei, drü\n');
    journal.close();
    journal.close();
    expect(allPaths(folder)).toEqual(['a', 'a/b', 'a/b/kept.ndjson']);
    expect(readJournal(path, 'shown')).toEqual({
      ok: true,
      value: { head: 'head', isHeadWhole: true, lines: ['one', 'zwei, drü'] },
    });
  });

  it('goes on behind its last whole line', () => {
    const path = putFile(tempFolder(), 'kept', 'head\none\ntw');
    expect(readJournal(path, 'shown')).toMatchObject({ value: { lines: ['one'] } });
    expect(text(path)).toBe('head\none\ntw');
    const journal = opened(path, 'not looked at');
    expect(text(path)).toBe('head\none\n');
    journal.append('two');
    journal.close();
    expect(text(path)).toBe('head\none\ntwo\n');
  });

  it('tells a head that was cut off from a whole one', () => {
    const folder = tempFolder();
    expect(readJournal(putFile(folder, 'cut', 'hea'), '')).toMatchObject({
      value: { head: 'hea', isHeadWhole: false, lines: [] },
    });
    expect(readJournal(putFile(folder, 'empty', ''), '')).toEqual({ ok: true, value: null });
    expect(readJournal(join(folder, 'none'), '')).toEqual({ ok: true, value: null });
    opened(join(folder, 'cut')).close();
    expect(text(join(folder, 'cut'))).toBe('head\n');
  });

  it('holds lines longer than what is read at a time, and characters across its border', () => {
    const path = join(tempFolder(), 'kept');
    const lines = ['é'.repeat(700_001), '', 'x'.repeat(2 ** 20 - 1), 'ü'.repeat(3_000_000), 'last'];
    const journal = opened(path);
    lines.forEach((line) => journal.append(line));
    journal.close();
    expect(readJournal(path, '')).toEqual({ ok: true, value: { head: 'head', isHeadWhole: true, lines } });
    appendFileSync(path, 'ö'.repeat(2_000_000));
    const { size } = statSync(path);
    opened(path).close();
    expect(statSync(path).size).toBe(size - 4_000_000);
    expect(readJournal(path, '')).toMatchObject({ value: { lines } });
  });

  it('is put in another order whole, through a link too', async () => {
    const folder = tempFolder();
    const path = putFile(folder, 'kept', 'head\n1\n2\n');
    symlinkSync(path, join(folder, 'link'));
    const lines = Array.from({ length: 2001 }, (_, index) => String(2001 - index));
    expect(await rewriteJournal(join(folder, 'link'), '', { head: 'head', lines })).toBeNull();
    expect(text(path)).toBe(['head', ...lines, ''].join('\n'));
    expect(await rewriteJournal(path, '', { head: 'head', lines: [] })).toBeNull();
    expect(text(path)).toBe('head\n');
    expect(allPaths(folder)).toEqual(['kept', 'link']);
  });
});

describe('a place that takes no journal', () => {
  const fault = (received: unknown) => ({ ok: false, faults: [{ file: 'shown', received }] });

  it('is told, whether it is read or written', async () => {
    const folder = tempFolder();
    mkdirSync(join(folder, 'folder'));
    putFile(folder, 'file', 'mine');
    const places = [
      [join(folder, 'folder'), 'a folder'],
      ['/dev/null', 'a device or a pipe'],
      ['/dev/full', 'a device or a pipe'],
      [join(folder, 'file', 'kept'), 'a file where a folder is needed'],
      [join(folder, 'x'.repeat(300)), 'a name that is too long'],
    ] as const;
    for (const [path, received] of places) {
      expect(readJournal(path, 'shown')).toMatchObject(fault(received));
      expect(openJournal(path, 'shown', 'head')).toMatchObject(
        fault(path.includes('file/') ? expect.stringMatching(/a file/) : received),
      );
    }
    expect(
      await rewriteJournal(join(folder, 'none', 'kept'), 'shown', { head: '', lines: [] }),
    ).toMatchObject({ file: 'shown', received: 'nothing there' });
    expect(allPaths(folder)).toEqual(['file', 'folder']);
    expect(statSync('/dev/full').isCharacterDevice()).toBe(true);
  });
});
