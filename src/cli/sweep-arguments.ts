/**
 * Arguments of `sweep`: ranges, counts, parts. What is not understood is told at once with what would have been.
 */
import { InvalidArgumentError } from 'commander';
import { FINALISTS } from '../sweep/racing.js';
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

/** The path of a file. */
export function parsePath(text: string): string {
  if (text.trim() === '') throw new InvalidArgumentError('Expected the path of a file.');
  return text;
}

/** The place of a finalist, counted from 1. */
export const parsePlace = (text: string) => wholeNumber(text, { least: 1, most: FINALISTS });

/** What options of a sweep are looked at together. */
export interface OptionsTogether {
  shard?: Shard;
  grid?: number;
  exhaustive?: true;
  keep?: number;
  saveAs?: string;
  json?: true;
}

/** What speaks against the options beside each other; an option that would change nothing is told, never left unheard. */
export function optionConflicts(flags: OptionsTogether, isGiven: (name: string) => boolean): string[] {
  const { shard, grid, exhaustive, keep, saveAs, json } = flags;
  const conflicts: string[] = [];
  if (shard !== undefined && exhaustive !== true && grid === undefined) {
    conflicts.push(
      'expected --exhaustive or --grid with --shard: in a race candidates are dropped for others, so that all of them must run ' +
        'in one place',
    );
  }
  const ofAnswer =
    shard === undefined
      ? []
      : [json && '--json', keep !== undefined && '--keep', saveAs !== undefined && '--save-as'];
  for (const option of ofAnswer.filter((one) => typeof one === 'string')) {
    conflicts.push(`expected no ${option} with --shard: a part has no finalists, its merge has`);
  }
  if (grid !== undefined && isGiven('candidates')) {
    conflicts.push('expected --candidates or --grid, not both: a grid has its own candidates');
  }
  if ((keep === undefined) !== (saveAs === undefined)) {
    conflicts.push('expected --keep N and --save-as NAME together');
  }
  return conflicts;
}

/** A part such as `3/8`. */
export function parseShard(text: string): Shard {
  const [part, parts] = /^(\d+)\/(\d+)$/.exec(text.trim())?.slice(1).map(Number) ?? [];
  if (part === undefined || parts === undefined || part < 1 || part > parts || parts > 10_000) {
    throw new InvalidArgumentError('Expected a part of the whole, such as 3/8.');
  }
  return { part, parts };
}
