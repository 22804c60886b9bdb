/**
 * What does a text of a known kind hold, and where in it? The value, checked, together with the document, for changes in place.
 */
import type { Document } from 'yaml';
import { checkValue } from '../quantity/check.js';
import type { FileKind, FileOf } from '../quantity/file-kind.js';
import { keyPath } from '../quantity/key-path.js';
import type { Checked, Problem } from '../quantity/problem.js';
import { composeYaml, problemMaker } from './yaml-document.js';
import { plainValue } from './yaml-value.js';

/** A text that was read: its document, and what it holds, checked and with defaults filled in. */
export interface TextReading<K extends FileKind> {
  document: Document.Parsed;
  value: FileOf[K];
}

/** Reads a text as a kind of file, or tells what is wrong with it; problems name the text as `shown`. */
export function readText<K extends FileKind>(
  kind: K,
  text: string,
  shown: string,
): Checked<TextReading<K>, Problem> {
  const { document, problems, lines } = composeYaml(text, shown);
  if (document === null) return { ok: false, faults: problems };
  const plain = plainValue(document, problemMaker(shown, lines));
  const checked = checkValue(kind, plain.value);
  const before = [...problems, ...plain.problems];
  if (before.length === 0 && checked.ok) return { ok: true, value: { document, value: checked.value } };
  const complaints = checked.ok ? [] : checked.faults;
  const told = complaints.map(({ path, ...said }) => ({
    file: shown,
    line: null,
    column: null,
    key: keyPath(path),
    ...said,
  }));
  return { ok: false, faults: [...before, ...told] };
}
