/** Writes the files of one run. Each is written aside and then renamed, so that none is ever seen half-written. */
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import {
  cycleCsv,
  reportFileNames,
  reportHtml,
  startsCsv,
  summaryJson,
  supplyCsv,
  supplyJson,
  torqueCsv,
  traceCsv,
  type NoSupplyTimeline,
  type ReportAssets,
  type ReportExtras,
  type RunResult,
  type SupplyTimeline,
  type UnitSystem,
} from '../index.ts';
import { InputError } from './exit-codes.ts';
import { reasonOf } from './scenario-file.ts';

/** `reports/<scenario>/` below the current folder. */
export function defaultFolder(scenarioPath: string): string {
  return join('reports', basename(scenarioPath, extname(scenarioPath)));
}

/** Script and style sheet of the page, built beside this file, with the hashes its security policy names. */
export async function reportAssets(): Promise<ReportAssets> {
  const read = async (name: string): Promise<ReportAssets['script']> => {
    const text = await readFile(new URL(`../report/${name}`, import.meta.url), 'utf8');
    return { text, sha256: createHash('sha256').update(text).digest('base64') };
  };
  const [script, style] = await Promise.all([read('client.js'), read('client.css')]);
  return { script, style };
}

/** Writes a file aside and puts it in place when it is whole. */
export async function replaceFile(folder: string, name: string, text: string): Promise<string> {
  const path = join(folder, name);
  const aside = join(folder, `.${name}.${randomUUID()}.part`);
  try {
    await writeFile(aside, text, { flush: true });
    await rename(aside, path);
  } catch (error) {
    await rm(aside, { force: true });
    throw new InputError(`${path}: cannot write, ${reasonOf(error)}.`);
  }
  return path;
}

/** Writes files by their names into a folder, which is made if need be, and returns their paths. */
export async function writeFiles(
  folder: string,
  files: readonly (readonly [name: string, text: string])[],
): Promise<string[]> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new InputError(`${folder}: cannot make this folder, ${reasonOf(error)}.`);
  }
  const paths: string[] = [];
  for (const [name, text] of files) paths.push(await replaceFile(folder, name, text));
  return paths;
}

/** Writes everything there is to write about a result and returns the paths, the page first. */
export async function writeReport(
  result: RunResult,
  folder: string,
  units: UnitSystem,
  extras: ReportExtras,
): Promise<string[]> {
  const { drive } = result;
  const cycle = cycleCsv(result);
  const files: [string, string][] = [
    [reportFileNames.page, reportHtml(result, await reportAssets(), units, extras)],
    [reportFileNames.summary, `${JSON.stringify(summaryJson(result), null, 2)}\n`],
    [reportFileNames.startUp, traceCsv(result)],
    ...(cycle === undefined ? [] : [[reportFileNames.cycle, cycle] as [string, string]]),
    ...(drive === undefined
      ? []
      : [
          [reportFileNames.torque, torqueCsv(drive)] as [string, string],
          [reportFileNames.starts, startsCsv(drive)] as [string, string],
        ]),
  ];
  const paths = await writeFiles(folder, files);
  // A cycle left over from an earlier run would belong to another engine.
  if (cycle === undefined) await rm(join(folder, reportFileNames.cycle), { force: true });
  return paths;
}

/** Writes everything there is to write about minutes of supply and returns the paths, the table first. */
export async function writeSupply(
  timeline: SupplyTimeline | NoSupplyTimeline,
  folder: string,
): Promise<string[]> {
  const { supply, supplySummary } = reportFileNames;
  const paths = await writeFiles(folder, [
    ...(timeline.runs ? [[supply, supplyCsv(timeline)] as const] : []),
    [supplySummary, `${JSON.stringify(supplyJson(timeline), null, 2)}\n`],
  ]);
  // A table left over from an earlier reckoning would belong to another engine.
  if (!timeline.runs) await rm(join(folder, supply), { force: true });
  return paths;
}
