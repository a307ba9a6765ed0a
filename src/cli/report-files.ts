/** What a run and a reckoning of supply write, and what their pages are made with. */
import { createHash } from 'node:crypto';
import { readFile, rm } from 'node:fs/promises';
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
import { writeFiles } from './aside.ts';
import { jsonText } from './json-text.ts';

/** Names that mean a device to Windows, whatever ending they have. */
const device = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/iu;

/** `reports/<scenario>/` below the current folder, whatever the scenario is called. */
export function defaultFolder(scenarioPath: string): string {
  const name = basename(scenarioPath, extname(scenarioPath)).replace(/[. ]+$/u, '');
  return join('reports', name === '' || device.test(name) ? `scenario ${name}`.trimEnd() : name);
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

/** Writes everything there is to write about a result and returns the paths, the page first. */
export async function writeReport(
  result: RunResult,
  folder: string,
  units: UnitSystem,
  extras: ReportExtras,
): Promise<string[]> {
  const { drive, supplyTrace } = result;
  const cycle = cycleCsv(result);
  const files: [string, string][] = [
    [reportFileNames.page, reportHtml(result, await reportAssets(), units, extras)],
    [reportFileNames.summary, `${jsonText(summaryJson(result))}\n`],
    [reportFileNames.startUp, traceCsv(result)],
    ...(cycle === undefined ? [] : [[reportFileNames.cycle, cycle] as [string, string]]),
    ...(drive === undefined
      ? []
      : [
          [reportFileNames.torque, torqueCsv(drive)] as [string, string],
          [reportFileNames.starts, startsCsv(drive)] as [string, string],
        ]),
    ...(supplyTrace === undefined
      ? []
      : [[reportFileNames.supply, supplyCsv(supplyTrace)] as [string, string]]),
  ];
  const paths = await writeFiles(folder, files);
  // What is left over from an earlier run would belong to another engine.
  if (cycle === undefined) await rm(join(folder, reportFileNames.cycle), { force: true });
  if (supplyTrace === undefined) await rm(join(folder, reportFileNames.supply), { force: true });
  return paths;
}

/** Writes everything there is to write about minutes of supply and returns the paths, the table first. */
export async function writeSupply(
  timeline: SupplyTimeline | NoSupplyTimeline,
  folder: string,
): Promise<string[]> {
  const { supply, supplySummary } = reportFileNames;
  const paths = await writeFiles(folder, [
    ...(timeline.runs ? [[supply, supplyCsv(timeline.trace)] as const] : []),
    [supplySummary, `${jsonText(supplyJson(timeline))}\n`],
  ]);
  // A table left over from an earlier reckoning would belong to another engine.
  if (!timeline.runs) await rm(join(folder, supply), { force: true });
  return paths;
}
