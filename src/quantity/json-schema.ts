/**
 * What does an editor need to complete and check a file? The JSON Schema of its kind, made from the
 * same declaration that checks it. Rules across fields are beyond JSON Schema; `check` has those.
 */
import * as z from 'zod';
import { SCHEMA_OF, type FileKind } from './file-kind.js';

const TITLE_OF: { readonly [K in FileKind]: string } = {
  board: 'Board of underfoot',
  rider: 'Rider of underfoot',
  profile: 'Profile of underfoot',
  scenario: 'Scenario of underfoot',
  sheet: 'Controller sheet of underfoot',
  kept: 'Shortlisted profile of underfoot',
};

/** The JSON Schema (draft 2020-12) of what a person writes into a file of this kind. */
export function jsonSchemaOf(kind: FileKind): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(SCHEMA_OF[kind], { io: 'input', target: 'draft-2020-12' });
  return { $schema, title: TITLE_OF[kind], ...rest };
}

/** The text of a published schema file. */
export function jsonSchemaText(kind: FileKind): string {
  return `${JSON.stringify(jsonSchemaOf(kind), null, 2)}\n`;
}
