/**
 * Are the published schemas the ones that the declarations give?
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FILE_KINDS } from '../../src/quantity/file-kind.js';
import { jsonSchemaOf, jsonSchemaText } from '../../src/quantity/json-schema.js';

describe.each(FILE_KINDS)('the schema of a %s', (kind) => {
  it('is published as it is generated (`underfoot schema KIND` prints it)', () => {
    const published = new URL(`../../profiles/schema/${kind}.schema.json`, import.meta.url);
    expect(readFileSync(published, 'utf8')).toBe(jsonSchemaText(kind));
  });

  it('says its draft and title, and allows no other keys', () => {
    expect(jsonSchemaOf(kind)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: expect.stringContaining('underfoot'),
      type: 'object',
      additionalProperties: false,
    });
  });
});

it('what has a default may be left out', () => {
  expect(jsonSchemaOf('board')['required']).toEqual(['summary', 'wheel', 'deck', 'motor', 'pack']);
});

it('every field has a sentence and every quantity a range', () => {
  const withoutSentence: string[] = [];
  const withoutRange: string[] = [];
  const walk = (node: unknown, place: string): void => {
    if (typeof node !== 'object' || node === null) return;
    const { properties, items, type, description, minimum, maximum } = node as Record<string, unknown>;
    if (typeof description !== 'string' || description === '') withoutSentence.push(place);
    const isNumber = type === 'number' || type === 'integer';
    if (isNumber && (typeof minimum !== 'number' || typeof maximum !== 'number')) withoutRange.push(place);
    for (const [key, inner] of Object.entries(properties ?? {})) walk(inner, `${place}.${key}`);
    if (items !== undefined) walk(items, `${place}[]`);
  };
  for (const kind of FILE_KINDS) walk(jsonSchemaOf(kind), kind);
  expect(withoutSentence).toEqual([]);
  expect(withoutRange).toEqual([]);
});
