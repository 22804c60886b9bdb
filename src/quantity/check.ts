/**
 * What is wrong with a value that should be a board, a rider, a profile or a scenario? Everything
 * at once: each field by its schema, unknown keys with the one probably meant, and the rules
 * across fields, each complaint with what was expected, in its unit, and what came.
 */
import * as z from 'zod';
import { crossCheck } from './cross-check.js';
import { SCHEMA_OF, type FileKind, type FileOf } from './file-kind.js';
import type { Checked, Complaint } from './problem.js';
import { quoted, receivedInWords } from './received.js';
import { suggestion } from './suggestion.js';

/** The schema inside defaults and optional marks. */
function bare(schema: z.core.$ZodType): z.core.$ZodType {
  const isWrapped =
    schema instanceof z.ZodOptional || schema instanceof z.ZodDefault || schema instanceof z.ZodPrefault;
  return isWrapped ? bare(schema.def.innerType) : schema;
}

/** The keys that a section may hold, by the path that leads to it. */
function keysAt(schema: z.core.$ZodType, path: readonly PropertyKey[]): string[] {
  const here = bare(schema);
  const [step, ...rest] = path;
  if (here instanceof z.ZodArray) return step === undefined ? [] : keysAt(here.element, rest);
  if (!(here instanceof z.ZodObject)) return [];
  if (step === undefined) return Object.keys(here.shape);
  const inner = here.shape[String(step)];
  return inner === undefined ? [] : keysAt(inner, rest);
}

function withSuggestion(complaint: Complaint, near: string | undefined): Complaint {
  return near === undefined ? complaint : { ...complaint, suggestion: near };
}

function unknownKey(path: readonly PropertyKey[], key: string, known: readonly string[]): Complaint {
  const complaint = {
    path: [...path, key],
    expected: `one of the keys ${known.join(', ')}`,
    received: `the unknown key ${quoted(key)}`,
  };
  return withSuggestion(complaint, suggestion(key, known));
}

function complaintsOf(issue: z.core.$ZodIssue, schema: z.core.$ZodType): Complaint[] {
  if (issue.code === 'unrecognized_keys') {
    const known = keysAt(schema, issue.path);
    return issue.keys.map((key) => unknownKey(issue.path, key, known));
  }
  const complaint = {
    path: issue.path,
    expected: issue.message,
    received: receivedInWords(issue.input),
  };
  if (issue.code !== 'invalid_value' || typeof issue.input !== 'string') return [complaint];
  const words = issue.values.filter((value) => typeof value === 'string');
  return [withSuggestion(complaint, suggestion(issue.input, words))];
}

function mark(path: readonly PropertyKey[]): string {
  return JSON.stringify(path.map(String));
}

/** One complaint a place and expectation; a rule across fields says more than a field's own complaint. */
function withoutRepeats(ofFields: Complaint[], acrossFields: Complaint[]): Complaint[] {
  const ruled = new Set(acrossFields.map(({ path }) => mark(path)));
  const isRuled = (path: readonly PropertyKey[]) =>
    path.some((_step, index) => ruled.has(mark(path.slice(0, index + 1))));
  const seen = new Set<string>();
  return [...ofFields.filter(({ path }) => !isRuled(path)), ...acrossFields].filter(({ path, expected }) => {
    const place = `${mark(path)} ${expected}`;
    const isNew = !seen.has(place);
    seen.add(place);
    return isNew;
  });
}

/** The value with its defaults filled in, or every complaint about it. Never throws. */
export function checkValue<K extends FileKind>(kind: K, raw: unknown): Checked<FileOf[K], Complaint> {
  const schema = SCHEMA_OF[kind];
  const parsed = schema.safeParse(raw, { reportInput: true });
  const acrossFields = crossCheck(kind, raw);
  if (parsed.success && acrossFields.length === 0) return { ok: true, value: parsed.data };
  const ofFields = (parsed.error?.issues ?? []).flatMap((issue) => complaintsOf(issue, schema));
  return { ok: false, faults: withoutRepeats(ofFields, acrossFields) };
}
