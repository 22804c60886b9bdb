/**
 * Which numbers does a profile have, one by one? Every number of the schema with its place, unit, range and sentence, and
 * how to read and change it in a profile.
 */
import * as z from 'zod';
import { profileSchema, type ProfileFile } from './profile-file.js';

/** One number of a profile; `path` leads to it, `unit` is empty for a ratio. `optional`: may be left out, for none. */
export interface ProfileField {
  path: readonly string[];
  key: string;
  unit: string;
  min: number;
  max: number;
  says: string;
  optional: boolean;
}

interface JsonSchema {
  type?: string;
  properties?: Record<string, JsonSchema>;
  required?: string[];
  minimum?: number;
  maximum?: number;
  default?: unknown;
  description?: string;
}

function fieldsIn(schema: JsonSchema, above: readonly string[]): ProfileField[] {
  return Object.entries(schema.properties ?? {}).flatMap(([key, inner]): ProfileField[] => {
    const path = [...above, key];
    if (inner.properties !== undefined) return fieldsIn(inner, path);
    if (inner.type !== 'number') return [];
    const [, says = '', unit = ''] = /^(.*?)(?: \[(.*)\])?$/.exec(inner.description ?? '') ?? [];
    const optional = !(schema.required?.includes(key) ?? false) && inner.default === undefined;
    return [{ path, key, unit, says, optional, min: inner.minimum ?? 0, max: inner.maximum ?? Infinity }];
  });
}

/** The numbers of a profile in the order of its file. */
export const PROFILE_FIELDS: readonly ProfileField[] = fieldsIn(
  z.toJSONSchema(profileSchema, { io: 'input' }) as JsonSchema,
  [],
);

/** The number at a field of a profile; undefined where it is left out. */
export function readField(profile: ProfileFile, { path }: Pick<ProfileField, 'path'>): number | undefined {
  let value: unknown = profile;
  for (const key of path) value = (value as Record<string, unknown> | undefined)?.[key];
  return value as number | undefined;
}

/**
 * The profile with a number at a field, or without it for undefined. A section that was not there begins with the value
 * alone; the schema fills its defaults, and answers null where the whole is no profile.
 */
export function withField(
  profile: ProfileFile,
  { path }: Pick<ProfileField, 'path'>,
  value: number | undefined,
): ProfileFile | null {
  const raw = structuredClone(profile) as unknown as Record<string, unknown>;
  let section = raw;
  for (const key of path.slice(0, -1)) section = (section[key] ??= {}) as Record<string, unknown>;
  const key = path.at(-1)!;
  if (value === undefined) delete section[key];
  else section[key] = value;
  const parsed = profileSchema.safeParse(raw);
  return parsed.success ? parsed.data : null;
}

/**
 * The profile with several numbers changed at once, null for one that is left out; a section that loses its last number goes
 * with it. Null where the whole is no profile.
 */
export function withFields(
  profile: ProfileFile,
  changes: readonly { path: readonly string[]; value: number | null }[],
): ProfileFile | null {
  const raw = structuredClone(profile) as unknown as Record<string, unknown>;
  for (const { path, value } of changes) {
    let section = raw;
    for (const key of path.slice(0, -1)) section = (section[key] ??= {}) as Record<string, unknown>;
    if (value === null) delete section[path.at(-1)!];
    else section[path.at(-1)!] = value;
  }
  for (const { path } of changes) withoutEmpty(raw, path.slice(0, -1));
  const parsed = profileSchema.safeParse(raw);
  return parsed.success ? parsed.data : null;
}

/** Takes the section at a path out if nothing is in it. */
function withoutEmpty(raw: Record<string, unknown>, path: readonly string[]): void {
  let above: Record<string, unknown> | undefined = raw;
  for (const key of path.slice(0, -1)) above = above?.[key] as Record<string, unknown> | undefined;
  const section = above?.[path.at(-1)!];
  if (typeof section === 'object' && section !== null && Object.keys(section).length === 0)
    delete above![path.at(-1)!];
}

/** A length of 1, 2 or 5 times a power of ten, at most `size` (above 0). */
function roundStep(size: number): number {
  const power = 10 ** Math.floor(Math.log10(size));
  return [5, 2, 1].map((digit) => digit * power).find((step) => step <= size * (1 + 1e-9)) ?? power;
}

/** Part of a number that one nudge moves it by. */
const NUDGE_SHARE = { coarse: 1 / 20, fine: 1 / 100 } as const;

/**
 * Least nudge as a part of the range: with it a number leaves 0, comes down to 0, and where the range lies on both sides
 * of 0 crosses it.
 */
const LEAST_SHARE = { fromZero: 1 / 500, nearZero: 1 / 20_000, acrossZero: 1 / 200 } as const;

/** A number moved one round step up or down inside its range: about a twentieth of itself, or finely a hundredth. */
export function nudged(
  { min, max }: Pick<ProfileField, 'min' | 'max'>,
  value: number,
  { direction, finely }: { direction: 1 | -1; finely: boolean },
): number {
  const share = finely ? NUDGE_SHARE.fine : NUDGE_SHARE.coarse;
  const least = min < 0 ? LEAST_SHARE.acrossZero : value === 0 ? LEAST_SHARE.fromZero : LEAST_SHARE.nearZero;
  const leastSize = ((max - min) * least * share) / NUDGE_SHARE.coarse;
  // Towards 0 the step is that of the smaller numbers there, so that the way back is the same.
  const isTowardsZero = Math.sign(value) === -direction;
  const ownSize = Math.abs(value) * share * (isTowardsZero ? 1 - 1e-6 : 1);
  const step = roundStep(Math.max(ownSize, leastSize));
  // On to the next multiple of the step, so that numbers become round ones.
  const multiples =
    direction === 1 ? Math.floor(value / step + 1e-6) + 1 : Math.ceil(value / step - 1e-6) - 1;
  return Math.min(max, Math.max(min, Number((multiples * step).toPrecision(12))));
}
