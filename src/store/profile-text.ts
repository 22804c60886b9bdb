/**
 * What does the file of a changed profile say? The text of the file it comes from, with only the changed values
 * exchanged, so that comments, order and layout stay as a person left them; or a fresh text.
 */
import { isMap, isScalar, visit, type Document } from 'yaml';
import { checkValue } from '../quantity/check.js';
import type { Checked, Problem } from '../quantity/problem.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { readText } from './read-text.js';
import { appended, entryText, exchanged, LINE_WIDTH, pairOf, spliced, type Splice } from './yaml-splice.js';

const SCHEMA_LINE = '# yaml-language-server: $schema=../schema/profile.schema.json';

/** A new value of a key, the changes inside its section, or undefined for a key that is to go. */
type Change = string | number | Changes | undefined;
type Changes = Map<string, Change>;

/** The profile that a text holds, or what is wrong with it; problems name the text as `shown`. */
export function profileOfText(text: string, shown: string): Checked<ProfileFile, Problem> {
  const reading = readText('profile', text, shown);
  return reading.ok ? { ok: true, value: reading.value.value } : reading;
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
  const reading = readText('profile', text, shown);
  if (!reading.ok) return reading;
  const { document, value: before } = reading.value;
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
