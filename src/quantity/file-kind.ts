/**
 * Which kinds of file are there, and what does each hold? One schema a kind; everything that deals
 * in "any file" (checking, listing, publishing schemas) goes through this table.
 */
import type * as z from 'zod';
import { boardSchema, type BoardFile } from './board-file.js';
import { keptSchema, type KeptFile } from './kept-file.js';
import { profileSchema, type ProfileFile } from './profile-file.js';
import { riderSchema, type RiderFile } from './rider-file.js';
import { scenarioSchema, type ScenarioFile } from './scenario-file.js';
import { sheetSchema, type SheetFile } from './sheet-file.js';

/** What a checked file of each kind holds. */
export interface FileOf {
  board: BoardFile;
  rider: RiderFile;
  profile: ProfileFile;
  scenario: ScenarioFile;
  sheet: SheetFile;
  kept: KeptFile;
}

/** A kind of file. */
export type FileKind = keyof FileOf;

/** The kinds of file, in the order in which they are listed and checked. */
export const FILE_KINDS = [
  'board',
  'rider',
  'profile',
  'scenario',
  'sheet',
  'kept',
] as const satisfies readonly FileKind[];

/** Kinds without which nothing can be run; a working folder may well have none of the others. */
export const NEEDED_KINDS = ['board', 'rider', 'profile', 'scenario'] as const satisfies readonly FileKind[];

/** One of them. */
export type NeededKind = (typeof NEEDED_KINDS)[number];

/** The schema of each kind of file. */
export const SCHEMA_OF: { readonly [K in FileKind]: z.ZodType<FileOf[K]> } = {
  board: boardSchema,
  rider: riderSchema,
  profile: profileSchema,
  scenario: scenarioSchema,
  sheet: sheetSchema,
  kept: keptSchema,
};

/** The keys at the top of each kind of file. */
export const TOP_KEYS_OF: { readonly [K in FileKind]: readonly string[] } = {
  board: Object.keys(boardSchema.shape),
  rider: Object.keys(riderSchema.shape),
  profile: Object.keys(profileSchema.shape),
  scenario: Object.keys(scenarioSchema.shape),
  sheet: Object.keys(sheetSchema.shape),
  kept: Object.keys(keptSchema.shape),
};

/** True for a word that is a kind of file. */
export function isFileKind(word: string): word is FileKind {
  return (FILE_KINDS as readonly string[]).includes(word);
}
