/**
 * Arguments of `sweep`: ranges, counts, parts. What is not understood is told at once with what would have been.
 */
import { InvalidArgumentError } from 'commander';
import { ALL } from '../tasks/select.js';
import { MOST_CANDIDATES, type AskedRange } from '../tasks/sweep-select.js';
import type { Shard } from '../tasks/sweep-plan.js';
import { wholeNumber } from './run-arguments.js';

/** A range such as `rateAPerDegPerS=0.2..3`. */
export function parseRange(text: string, before: AskedRange[] = []): AskedRange[] {
  const found = /^\s*([a-zA-Z]+)\s*=\s*(\S+?)\s*\.\.\s*(\S+)\s*$/.exec(text);
  const [min, max] = [Number(found?.[2]), Number(found?.[3])];
  if (found === null || !Number.isFinite(min) || !Number.isFinite(max)) {
    throw new InvalidArgumentError(
      'Expected a number of a profile with two ends, such as rateAPerDegPerS=0.2..3.',
    );
  }
  return [...before, { key: found[1]!, min, max }];
}

/** Candidates of a spread. */
export const parseCandidates = (text: string) => wholeNumber(text, { least: 1, most: MOST_CANDIDATES });
/** Points along a range. */
export const parseGrid = (text: string) => wholeNumber(text, { least: 2, most: 1000 });
/** So many cells, or null for all of them. */
export const parseOdexCells = (text: string) =>
  text === ALL ? null : wholeNumber(text, { least: 0, most: 100_000 });

/** A part such as `3/8`. */
export function parseShard(text: string): Shard {
  const [part, parts] = /^(\d+)\/(\d+)$/.exec(text.trim())?.slice(1).map(Number) ?? [];
  if (part === undefined || parts === undefined || part < 1 || part > parts || parts > 10_000) {
    throw new InvalidArgumentError('Expected a part of the whole, such as 3/8.');
  }
  return { part, parts };
}
