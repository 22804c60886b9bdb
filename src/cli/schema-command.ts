/**
 * The command `schema`: the JSON Schema that lets an editor complete and check a kind of file.
 */
import type { Command } from 'commander';
import type { FileKind } from '../quantity/file-kind.js';
import { jsonSchemaText } from '../quantity/json-schema.js';
import { KIND_WORDS, parseKind } from './kind-argument.js';
import { printResult } from './output.js';

function schema(kind: FileKind): void {
  printResult([jsonSchemaText(kind).trimEnd()]);
}

/** Adds `schema KIND` to the program. */
export function addSchemaCommand(program: Command): void {
  program
    .command('schema')
    .summary('print the JSON Schema of a kind of file')
    .description(
      'Prints the JSON Schema (draft 2020-12) of a kind of file. The copies in profiles/schema are made ' +
        'with it; a file names its schema in the first line, for example ' +
        '"# yaml-language-server: $schema=../schema/profile.schema.json".',
    )
    .argument('<kind>', `one of ${KIND_WORDS}`, parseKind)
    .addHelpText('before', 'Example: underfoot schema profile > profiles/schema/profile.schema.json\n')
    .action(schema);
}
