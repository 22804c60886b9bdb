/**
 * Which kinds of file are there, and what does each hold? One schema a kind; everything that deals
 * in "any file" (checking, listing, publishing schemas) goes through this table.
 */
import type * as z from 'zod';
import { boardSchema, type BoardFile } from './board-file.js';
import { profileSchema, type ProfileFile } from './profile-file.js';
import { riderSchema, type RiderFile } from './rider-file.js';
import { scenarioSchema, type ScenarioFile } from './scenario-file.js';

/** What a checked file of each kind holds. */
export interface FileOf {
  board: BoardFile;
  rider: RiderFile;
  profile: ProfileFile;
  scenario: ScenarioFile;
}

/** A kind of file. */
export type FileKind = keyof FileOf;

/** The kinds of file, in the order in which they are listed and checked. */
export const FILE_KINDS = ['board', 'rider', 'profile', 'scenario'] as const satisfies readonly FileKind[];

/** The schema of each kind of file. */
export const SCHEMA_OF: { readonly [K in FileKind]: z.ZodType<FileOf[K]> } = {
  board: boardSchema,
  rider: riderSchema,
  profile: profileSchema,
  scenario: scenarioSchema,
};

/** The keys at the top of each kind of file. */
export const TOP_KEYS_OF: { readonly [K in FileKind]: readonly string[] } = {
  board: Object.keys(boardSchema.shape),
  rider: Object.keys(riderSchema.shape),
  profile: Object.keys(profileSchema.shape),
  scenario: Object.keys(scenarioSchema.shape),
};

/** True for a word that is a kind of file. */
export function isFileKind(word: string): word is FileKind {
  return (FILE_KINDS as readonly string[]).includes(word);
}
