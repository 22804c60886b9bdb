/**
 * What does a file say when it is written in other units? Every number of a file states its unit where it is declared;
 * here that statement is taken at its word. Units grow by powers of two, so that every product, quotient and (even) root
 * scales without rounding and two runs can be compared bit by bit.
 *
 * Gravity is a constant of the program and keeps its number: so time goes with the root of length (W. Froude), and
 * lengths come in powers of four. The density of the air is one too: the drag area carries it.
 */
import { FILE_KINDS, type FileKind, type FileOf } from '../../src/quantity/file-kind.js';
import { jsonSchemaOf } from '../../src/quantity/json-schema.js';

/** By how many doublings the numbers of masses, lengths (an even number) and currents grow. */
export interface Doublings {
  mass: number;
  length: number;
  current: number;
}

/** Powers of mass, length, time and current in a unit. */
type Dimension = readonly [number, number, number, number];

const NONE: Dimension = [0, 0, 0, 0];

const SYMBOLS: Record<string, Dimension> = {
  kg: [1, 0, 0, 0],
  m: [0, 1, 0, 0],
  km: [0, 1, 0, 0],
  s: [0, 0, 1, 0],
  ms: [0, 0, 1, 0],
  h: [0, 0, 1, 0],
  Hz: [0, 0, -1, 0],
  rpm: [0, 0, -1, 0],
  N: [1, 1, -2, 0],
  Nm: [1, 2, -2, 0],
  A: [0, 0, 0, 1],
  Ah: [0, 0, 1, 1],
  V: [1, 2, -3, -1],
  ohm: [1, 2, -3, -2],
  milliohm: [1, 2, -3, -2],
};

const PURE_NUMBERS = ['1', 'deg', 'rad', '%', 'cells', 'ticks'];

function dimensionOf(unit: string): Dimension {
  const [above = '', ...below] = unit.split(/\/(?![^(]*\))/);
  const product = (words: string) => words.split(' ').map(powerOf);
  const divisors = below.map((part) => part.replace(/^\((.*)\)$/, '$1')).map(dimensionOf);
  const sum = (of: readonly Dimension[], axis: number) => of.reduce((all, one) => all + one[axis]!, 0);
  const axisOf = (axis: number) => sum(product(above), axis) - sum(divisors, axis);
  return [axisOf(0), axisOf(1), axisOf(2), axisOf(3)];
}

function powerOf(word: string): Dimension {
  const [, symbol = '', digit = '1'] = /^(\D+|1)(\d?)$/.exec(word) ?? [];
  if (PURE_NUMBERS.includes(symbol)) return NONE;
  const known = SYMBOLS[symbol];
  if (known === undefined) throw new Error(`unknown unit '${word}'`);
  const power = Number(digit || 1);
  return [known[0] * power, known[1] * power, known[2] * power, known[3] * power];
}

/** By what the numbers in a unit grow, a power of two; an empty unit is a pure number. */
export function factorOf(unit: string, { mass, length, current }: Doublings): number {
  const [m, l, t, i] = unit === '' ? NONE : dimensionOf(unit);
  return 2 ** (m * mass + l * length + t * (length / 2) + i * current);
}

interface Schema {
  description?: string;
  properties?: Record<string, Schema>;
  items?: Schema;
}

function scaled(value: unknown, schema: Schema, doublings: Doublings): unknown {
  if (typeof value === 'number') {
    const unit = /\[([^\]]+)\]$/.exec(schema.description ?? '')?.[1] ?? '';
    return value * factorOf(unit, doublings);
  }
  if (Array.isArray(value)) return value.map((item) => scaled(item, schema.items ?? {}, doublings));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [
      key,
      scaled(item, schema.properties?.[key] ?? {}, doublings),
    ]),
  );
}

const SCHEMAS = new Map<FileKind, Schema>(FILE_KINDS.map((kind) => [kind, jsonSchemaOf(kind) as Schema]));

/** A file with its numbers in units that grew. */
export function inUnits<K extends FileKind>(kind: K, file: FileOf[K], doublings: Doublings): FileOf[K] {
  return scaled(file, SCHEMAS.get(kind)!, doublings) as FileOf[K];
}
