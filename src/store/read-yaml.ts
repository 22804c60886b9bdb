/**
 * What plain value does a YAML file hold, and where in it stands each part? Faults of the file are
 * answered as problems; only our own bugs throw.
 */
import { isAlias, isMap, isSeq, type Document } from 'yaml';
import type { Problem } from '../quantity/problem.js';
import { readFileText } from './file-text.js';
import { fileProblem } from './system-fault.js';
import { composeYaml, problemMaker } from './yaml-document.js';
import { keyText, offsetOf, plainValue } from './yaml-value.js';

/** A place in a file; line and column count from 1. */
export interface Place {
  line: number;
  column: number;
}

/** A plain value and the place of each of its parts; a missing part has the place of the nearest part around it. */
export interface YamlContent {
  value: unknown;
  placeOf(path: readonly PropertyKey[]): Place;
}

/** What was read. There may be content beside problems: a repeated key does not hide the rest. */
export interface YamlReading {
  content: YamlContent | null;
  problems: Problem[];
}

/** The node and the offset at one step of a path; null when there is none. */
function stepInto(node: unknown, step: PropertyKey): { node: unknown; offset: number } | null {
  if (isMap(node)) {
    const pair = node.items.find(({ key }) => keyText(key) === String(step));
    return pair === undefined ? null : { node: pair.value, offset: offsetOf(pair.key) };
  }
  if (!isSeq(node) || typeof step !== 'number' || !(step in node.items)) return null;
  return { node: node.items[step], offset: offsetOf(node.items[step]) };
}

function offsetAt(document: Document.Parsed, path: readonly PropertyKey[]): number {
  let node: unknown = document.contents;
  let offset = offsetOf(node);
  for (const step of path) {
    const inner = stepInto(isAlias(node) ? node.resolve(document) : node, step);
    if (inner === null) break;
    ({ node, offset } = inner);
  }
  return offset;
}

/** Reads one YAML file; problems name it as `shown`. */
export function readYaml(path: string, shown: string): YamlReading {
  const text = readFileText(path, shown);
  if (!text.ok) return { content: null, problems: text.faults };
  const { document, problems, lines } = composeYaml(text.value, shown);
  if (document === null) return { content: null, problems };
  if (document.contents === null || text.value.trim() === '') {
    return { content: null, problems: [fileProblem(shown, 'a YAML file with sections', 'an empty file')] };
  }
  const plain = plainValue(document, problemMaker(shown, lines));
  if (!plain.isWhole) return { content: null, problems: plain.problems };
  const placeOf = (place: readonly PropertyKey[]) => {
    const { line, col } = lines.linePos(offsetAt(document, place));
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  return { content: { value: plain.value, placeOf }, problems: plain.problems };
}
