/** The generated reference says what the code says. `npm run reference` writes it anew. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  attemptsParameters,
  attemptsReferencePage,
  benchReferencePage,
  engineParameters,
  measuringPage,
  referencePage,
  scenarioJsonSchema,
  studyParameters,
  studyReferencePage,
  sheetParameters,
} from '../../src/index.ts';

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

  it('holds schema and page of the study keys', () => {
    const schema = scenarioJsonSchema(studyParameters, 'tickover study');
    expect(written('study.schema.json')).toBe(`${JSON.stringify(schema, null, 2)}\n`);
    expect(written('study.md')).toBe(studyReferencePage(studyParameters));
  });

  it.each([
    ['bench', 'tickover bench sheet', sheetParameters, benchReferencePage()],
    ['attempts', 'tickover notebook of attempts', attemptsParameters, attemptsReferencePage()],
  ])('holds page and schema of %s', (name, title, parameters, page) => {
    expect(written(`${name}.md`)).toBe(page);
    const schema = scenarioJsonSchema(parameters, title);
    expect(written(`${name}.schema.json`)).toBe(`${JSON.stringify(schema, null, 2)}\n`);
  });

  it('holds the page that says how to measure each key', () => {
    expect(written('measuring.md')).toBe(measuringPage(engineParameters));
  });
});
