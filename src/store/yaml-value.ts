/**
 * What plain value does a YAML document stand for? Written out by hand rather than by the library,
 * so that repeated keys, tags and unfolding aliases are told with their places, and so that a key
 * such as __proto__ becomes an entry of its own and nothing more.
 */
import { isAlias, isCollection, isMap, isScalar, isSeq, type Alias, type Document, type YAMLMap } from 'yaml';
import type { ProblemAt } from './yaml-document.js';
import type { Problem } from '../quantity/problem.js';

const MOST_ALIASES = 50;
const MOST_UNFOLDED_VALUES = 5_000;

interface Unfolding {
  document: Document.Parsed;
  at: ProblemAt;
  problems: Problem[];
  aliasCount: number;
  unfoldedCount: number;
  aliasDepth: number;
  open: Set<unknown>;
  isBroken: boolean;
}

/** The offset at which a node of the document begins. */
export function offsetOf(node: unknown): number {
  return isCollection(node) || isScalar(node) || isAlias(node) ? (node.range?.[0] ?? 0) : 0;
}

/** The key of an entry as text; null for a key that is itself a list or a section. */
export function keyText(key: unknown): string | null {
  return isScalar(key) ? String(key.value ?? '') : null;
}

function complain(state: Unfolding, node: unknown, expected: string, received: string): void {
  state.problems.push(state.at(offsetOf(node), expected, received));
}

function breakOff(state: Unfolding, node: unknown, received: string): null {
  if (!state.isBroken) complain(state, node, 'values written out, or a few aliases', received);
  state.isBroken = true;
  return null;
}

function valueOfAlias(alias: Alias, state: Unfolding): unknown {
  state.aliasCount += 1;
  if (state.aliasCount > MOST_ALIASES) return breakOff(state, alias, `more than ${MOST_ALIASES} aliases`);
  const target = alias.resolve(state.document);
  if (target === undefined) {
    complain(state, alias, 'an alias to a value marked before it', `*${alias.source}, which marks nothing`);
    return null;
  }
  if (state.open.has(target)) return breakOff(state, alias, 'an alias to the value that it stands in');
  state.aliasDepth += 1;
  const value = valueOf(target, state);
  state.aliasDepth -= 1;
  return value;
}

function sectionOf(map: YAMLMap, state: Unfolding): Record<string, unknown> {
  const section: Record<string, unknown> = {};
  for (const { key, value } of map.items) {
    const name = keyText(key);
    if (name === null) {
      complain(state, key, 'a key in words', isAlias(key) ? 'an alias as key' : 'a list or a section as key');
    } else if (Object.hasOwn(section, name)) {
      complain(state, key, 'every key once in a section', `the key '${name}' again`);
    } else {
      const entry = { value: valueOf(value, state), enumerable: true, configurable: true, writable: true };
      Object.defineProperty(section, name, entry);
    }
  }
  return section;
}

function valueOf(node: unknown, state: Unfolding): unknown {
  if (state.isBroken || node === null || node === undefined) return null;
  if (state.aliasDepth > 0) state.unfoldedCount += 1;
  if (state.unfoldedCount > MOST_UNFOLDED_VALUES) {
    return breakOff(state, node, `aliases that unfold into more than ${MOST_UNFOLDED_VALUES} values`);
  }
  if (isAlias(node)) return valueOfAlias(node, state);
  if (!isScalar(node) && !isCollection(node)) return null;
  if (node.tag !== undefined) complain(state, node, 'a value without a tag', `the tag ${node.tag}`);
  if (isScalar(node)) return node.value;
  state.open.add(node);
  const value = isMap(node)
    ? sectionOf(node, state)
    : isSeq(node)
      ? node.items.map((item) => valueOf(item, state))
      : null;
  state.open.delete(node);
  return value;
}

/** A plain value; `isWhole` is false when its aliases were not followed to the end. */
export interface PlainValue {
  value: unknown;
  problems: Problem[];
  isWhole: boolean;
}

/** The plain value of a document, and what in it has no plain value. */
export function plainValue(document: Document.Parsed, at: ProblemAt): PlainValue {
  const state: Unfolding = {
    document,
    at,
    problems: [],
    aliasCount: 0,
    unfoldedCount: 0,
    aliasDepth: 0,
    open: new Set(),
    isBroken: false,
  };
  const value = valueOf(document.contents, state);
  return { value, problems: state.problems, isWhole: !state.isBroken };
}
