/** Writes the generated pages of docs/reference/ from the built library. A house test compares them. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { engineParameters, measuringPage, referencePage, scenarioJsonSchema } from '../../dist/index.js';
import { libraryPage } from './library-page.mjs';
import { projectRoot } from './steps.mjs';

const folder = join(projectRoot, 'docs/reference');
await mkdir(folder, { recursive: true });
const schema = scenarioJsonSchema(engineParameters, 'tickover scenario');
await writeFile(join(folder, 'scenario.schema.json'), `${JSON.stringify(schema, null, 2)}\n`);
await writeFile(join(folder, 'scenario.md'), referencePage(engineParameters));
await writeFile(join(folder, 'library.md'), libraryPage());
await writeFile(join(folder, 'measuring.md'), measuringPage(engineParameters));
