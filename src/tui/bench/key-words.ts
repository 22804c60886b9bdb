/**
 * How is a key written for people? On the screen short and in the characters of the symbol set, in a document in words.
 */
import type { SymbolSet } from '../../show/glyphs.js';

const SIGNS: Readonly<Record<string, string>> = { up: '↑', down: '↓', left: '←', right: '→' };

const WORDS: Readonly<Record<string, string>> = {
  return: 'Enter',
  escape: 'Esc',
  space: 'Space',
  tab: 'Tab',
  backspace: 'Backspace',
  delete: 'Delete',
  home: 'Home',
  end: 'End',
  pageup: 'PgUp',
  pagedown: 'PgDn',
  up: 'Up',
  down: 'Down',
  left: 'Left',
  right: 'Right',
  f1: 'F1',
};

const MODIFIERS: Readonly<Record<string, string>> = { 'shift+': 'Shift-', 'ctrl+': 'Ctrl-', 'alt+': 'Alt-' };

/** A key by its name, such as `shift+left`, as people read it; with ASCII symbols, or none, in words alone. */
export function keyText(name: string, symbols: SymbolSet | null): string {
  const modifier = Object.keys(MODIFIERS).find((start) => name.startsWith(start)) ?? '';
  const bare = name.slice(modifier.length);
  const signs = symbols === 'ascii' || symbols === null ? {} : SIGNS;
  const letter = modifier === 'ctrl+' ? bare.toUpperCase() : bare;
  return (MODIFIERS[modifier] ?? '') + (signs[bare] ?? WORDS[bare] ?? letter);
}
