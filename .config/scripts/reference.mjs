/** Writes the generated pages of docs/reference/ from the built library. A house test compares them. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
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
} from '../../dist/index.js';
import { libraryPage } from './library-page.mjs';
import { projectRoot } from './steps.mjs';

const folder = join(projectRoot, 'docs/reference');
await mkdir(folder, { recursive: true });
const schema = scenarioJsonSchema(engineParameters, 'tickover scenario');
await writeFile(join(folder, 'scenario.schema.json'), `${JSON.stringify(schema, null, 2)}\n`);
await writeFile(join(folder, 'scenario.md'), referencePage(engineParameters));
const studySchema = scenarioJsonSchema(studyParameters, 'tickover study');
await writeFile(join(folder, 'study.schema.json'), `${JSON.stringify(studySchema, null, 2)}\n`);
await writeFile(join(folder, 'study.md'), studyReferencePage(studyParameters));
await writeFile(join(folder, 'library.md'), libraryPage());
await writeFile(join(folder, 'measuring.md'), measuringPage(engineParameters));
await writeFile(join(folder, 'bench.md'), benchReferencePage());
await writeFile(join(folder, 'attempts.md'), attemptsReferencePage());
const sheets = {
  bench: scenarioJsonSchema(sheetParameters, 'tickover bench sheet'),
  attempts: scenarioJsonSchema(attemptsParameters, 'tickover notebook of attempts'),
};
for (const [name, own] of Object.entries(sheets))
  await writeFile(join(folder, `${name}.schema.json`), `${JSON.stringify(own, null, 2)}\n`);
