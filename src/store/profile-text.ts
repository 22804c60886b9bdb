/**
 * What does the file of a changed profile say? The text of the file it comes from, with only the changed values
 * exchanged, so that comments, order and layout stay as a person left them; or a fresh text.
 */
import { isMap, isScalar, Scalar, stringify, visit, type Document, type Pair, type YAMLMap } from 'yaml';
import { checkValue } from '../quantity/check.js';
import { keyPath } from '../quantity/key-path.js';
import type { Checked, Problem } from '../quantity/problem.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { composeYaml, problemMaker } from './yaml-document.js';
import { keyText, plainValue } from './yaml-value.js';

const SCHEMA_LINE = '# yaml-language-server: $schema=../schema/profile.schema.json';
const LINE_WIDTH = 98;

/** A new value of a key, the changes inside its section, or undefined for a key that is to go. */
type Change = string | number | Changes | undefined;
type Changes = Map<string, Change>;

/** A stretch of the text, in offsets, and what is to stand there. */
interface Splice {
  from: number;
  to: number;
  text: string;
}

interface Reading {
  document: Document.Parsed;
  profile: ProfileFile;
}

function read(text: string, shown: string): Checked<Reading, Problem> {
  const { document, problems, lines } = composeYaml(text, shown);
  if (document === null) return { ok: false, faults: problems };
  const plain = plainValue(document, problemMaker(shown, lines));
  const checked = checkValue('profile', plain.value);
  if (plain.problems.length === 0 && checked.ok) {
    return { ok: true, value: { document, profile: checked.value } };
  }
  const complaints = checked.ok ? [] : checked.faults;
  const told = complaints.map(({ path, ...said }) => ({
    file: shown,
    line: null,
    column: null,
    key: keyPath(path),
    ...said,
  }));
  return { ok: false, faults: [...plain.problems, ...told] };
}

/** The profile that a text holds, or what is wrong with it; problems name the text as `shown`. */
export function profileOfText(text: string, shown: string): Checked<ProfileFile, Problem> {
  const reading = read(text, shown);
  return reading.ok ? { ok: true, value: reading.value.profile } : reading;
}

/** What must change for `from` to become `to`; empty when they are the same. */
function changesOf(from: object, to: object): Changes {
  const [before, after] = [
    new Map<string, unknown>(Object.entries(from)),
    new Map<string, unknown>(Object.entries(to)),
  ];
  const changes: Changes = new Map();
  for (const key of new Set([...before.keys(), ...after.keys()])) {
    const [old, wanted] = [before.get(key), after.get(key)];
    if (typeof wanted === 'object' && wanted !== null) {
      const inner = changesOf(typeof old === 'object' && old !== null ? old : {}, wanted);
      if (inner.size > 0) changes.set(key, inner);
    } else if (wanted !== old) {
      changes.set(key, typeof wanted === 'string' || typeof wanted === 'number' ? wanted : undefined);
    }
  }
  return changes;
}

/** True when two profiles are the same in every value. */
export function isSameProfile(one: ProfileFile, other: ProfileFile): boolean {
  return changesOf(one, other).size === 0;
}

/** A key with its value as lines of YAML, the last one ended. */
function entryText(key: string, change: Change): string {
  const isLong =
    typeof change === 'string' && (change.length + key.length > LINE_WIDTH || change.includes('\n'));
  const defaultStringType = isLong ? Scalar.BLOCK_FOLDED : Scalar.PLAIN;
  const options = { lineWidth: LINE_WIDTH, defaultStringType, defaultKeyType: Scalar.PLAIN } as const;
  return stringify(new Map([[key, change]]), options);
}

function pairOf(map: YAMLMap, key: string): Pair | undefined {
  return map.items.find((pair) => keyText(pair.key) === key);
}

/** What stands in place of a value: one that filled its lines goes on doing so. */
function exchanged(
  text: string,
  [from, to]: readonly [number, number, number],
  entry: [string, Change],
): Splice {
  const [key, change] = entry;
  const [ending] = /\n*$/.exec(text.slice(from, to)) ?? [''];
  return {
    from,
    to,
    text:
      entryText(key, change)
        .slice(key.length + 2)
        .trimEnd() + ending,
  };
}

/** New keys below the last one of a section, as far in as its first; null where they would not be told apart. */
function appended(text: string, map: YAMLMap, added: Changes): Splice | null {
  const [first, last] = [map.items[0]?.key, map.items.at(-1)];
  if (map.flow || !isScalar(first) || !first.range || last === undefined) return null;
  const end = endOf(last);
  if (end === null) return null;
  const startOfLine = text.lastIndexOf('\n', first.range[0] - 1) + 1;
  const indent = ' '.repeat(first.range[0] - startOfLine);
  const isAtStart = end > 0 && text[end - 1] === '\n';
  const nextLine = isAtStart ? end : text.indexOf('\n', end) + 1;
  const at = nextLine === 0 ? text.length : nextLine;
  const lines = [...added].flatMap(([key, change]) => entryText(key, change).trimEnd().split('\n'));
  if (indent === '') lines.unshift('');
  const before = at > 0 && text[at - 1] !== '\n' ? '\n' : '';
  return {
    from: at,
    to: at,
    text: before + lines.map((line) => `${indent}${line}`.trimEnd() + '\n').join(''),
  };
}

/** The offset at which what a pair holds is over. */
function endOf({ value }: Pair): number | null {
  if (isMap(value) && !value.flow && value.items.length > 0) return endOf(value.items.at(-1)!);
  return (isScalar(value) || isMap(value)) && value.range ? value.range[1] : null;
}

/** The changes of a section as stretches of its text; null where that cannot be done without moving other things. */
function splicesOf(text: string, map: unknown, changes: Changes): Splice[] | null {
  if (!isMap(map)) return null;
  const splices: Splice[] = [];
  const added: Changes = new Map();
  for (const [key, change] of changes) {
    const pair = pairOf(map, key);
    if (change === undefined) return null;
    if (pair === undefined) {
      added.set(key, change);
    } else if (change instanceof Map) {
      const inner = splicesOf(text, pair.value, change);
      if (inner === null) return null;
      splices.push(...inner);
    } else {
      if (!isScalar(pair.value) || !pair.value.range || pair.value.anchor !== undefined) return null;
      splices.push(exchanged(text, pair.value.range, [key, change]));
    }
  }
  if (added.size === 0) return splices;
  const append = appended(text, map, added);
  return append === null ? null : [...splices, append];
}

/** The text with the splices done; of two at one place the first comes first. */
function spliced(text: string, splices: readonly Splice[]): string {
  let result = '';
  let doneTo = 0;
  for (const { from, to, text: put } of splices.toSorted((a, b) => a.from - b.from)) {
    result += text.slice(doneTo, from) + put;
    doneTo = to;
  }
  return result + text.slice(doneTo);
}

/** Writes every alias out, so that changing one value changes no other. */
function unfoldAliases(document: Document.Parsed): void {
  visit(document, {
    Alias: (_key, alias) => {
      const target = alias.resolve(document);
      if (!isScalar(target) && !isMap(target)) return;
      const copy = target.clone() as typeof target;
      copy.comment = alias.comment ?? null;
      copy.commentBefore = alias.commentBefore ?? null;
      return copy;
    },
  });
  visit(document, {
    Value: (_key, node) => {
      delete node.anchor;
    },
  });
}

function applyChanges(document: Document.Parsed, changes: Changes, path: readonly string[] = []): void {
  for (const [key, change] of changes) {
    const place = [...path, key];
    if (change instanceof Map) applyChanges(document, change, place);
    else if (change === undefined) document.deleteIn(place);
    else document.setIn(place, change);
  }
}

/**
 * The text of a profile file with the values of `profile`: only what differs is exchanged, missing keys are added to
 * their section. A text that does not hold a profile is told as problems, which name it as `shown`.
 */
export function changedProfileText(
  text: string,
  profile: ProfileFile,
  shown: string,
): Checked<string, Problem> {
  const reading = read(text, shown);
  if (!reading.ok) return reading;
  const { document, profile: before } = reading.value;
  const changes = changesOf(before, profile);
  const splices = splicesOf(text, document.contents, changes);
  const candidate = splices === null ? null : spliced(text, splices);
  if (candidate !== null) {
    const again = profileOfText(candidate, shown);
    if (again.ok && isSameProfile(again.value, profile)) return { ok: true, value: candidate };
  }
  // Keys to be taken out, sections in braces, aliases: the library lays the text out anew, comments stay.
  unfoldAliases(document);
  applyChanges(document, changes);
  return { ok: true, value: document.toString({ lineWidth: LINE_WIDTH }) };
}

/** The text of a new profile file: what is as usual is left out. */
export function freshProfileText(profile: ProfileFile): string {
  const { summary, gains, shaping } = profile;
  const { proportionalAPerDeg, rateAPerDegPerS } = gains;
  const usual = checkValue('profile', { summary: 'usual', gains: { proportionalAPerDeg, rateAPerDegPerS } });
  const usualShaping = usual.ok ? usual.value.shaping : {};
  const { integralAPerDegS, ...firstGains } = gains;
  const shownGains = integralAPerDegS === 0 ? firstGains : gains;
  const shaped = changesOf(usualShaping, shaping);
  const sections = [
    entryText('summary', summary),
    entryText('gains', new Map(Object.entries(shownGains))),
    ...(shaped.size === 0 ? [] : [entryText('shaping', shaped)]),
  ];
  return `${SCHEMA_LINE}\n${sections.join('\n')}`;
}
