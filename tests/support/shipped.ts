/** The engines that are shipped, scenarios/*.yaml. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { readScenario } from '../../src/scenario/read-scenario.ts';

const folder = fileURLToPath(new URL('../../scenarios', import.meta.url));

export const shippedNames = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

export function shipped(name: string): EngineSpec {
  const attachments = (path: string) =>
    ({ ok: true, text: readFileSync(join(folder, path), 'utf8') }) as const;
  const reading = readScenario(readFileSync(join(folder, name), 'utf8'), name, attachments);
  if (!reading.ok) throw new Error(`${name} is no scenario`);
  return reading.spec;
}
