/** The generated reference says what the code says. `npm run reference` writes it anew. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { engineParameters, referencePage, scenarioJsonSchema } from '../../src/index.ts';

const written = (name: string): string =>
  readFileSync(new URL(`../../docs/reference/${name}`, import.meta.url), 'utf8');

describe('docs/reference', () => {
  it('holds the JSON Schema of the scenario description', () => {
    const schema = scenarioJsonSchema(engineParameters, 'tickover scenario');
    expect(written('scenario.schema.json')).toBe(`${JSON.stringify(schema, null, 2)}\n`);
  });

  it('holds the page of scenario keys', () => {
    expect(written('scenario.md')).toBe(referencePage(engineParameters));
  });
});
