/** The page that says how to measure each key on a real engine, in Markdown, made from the descriptions. */
import type { Parameters } from '../kinds/parameter.ts';
import { describedKeys, type DescribedKey } from './described-keys.ts';

const HEAD = `# How to measure each key

Generated from the descriptions in the code; \`tickover explain KEY\` prints the same. [Measuring an
engine](../measuring-inputs.md) tells the methods in full, and in which order they are worth the trouble.
`;

interface Row {
  readonly section: string;
  readonly key: string;
  readonly measure: string;
}

/** Markdown: for every key that can be measured, how. */
export function measuringPage(parameters: Parameters): string {
  const rows = describedKeys(parameters).flatMap(rowOf);
  const titles = [...new Set(rows.map(({ section }) => section))];
  const sections = titles.map((title) => {
    const own = rows.filter(({ section }) => section === title);
    return [`## ${title}\n`, '| Key | How to measure it |', '| --- | --- |', ...merged(own), ''].join('\n');
  });
  return [HEAD, ...sections].join('\n');
}

/** A section for each key at the top, and one for each kind of part below it. */
function rowOf({ path, kinds, parameter }: DescribedKey): Row[] {
  const own = parameter.type === 'optional' ? parameter.parameter : parameter;
  if (!('measure' in own)) return [];
  const [top = ''] = path;
  const section = kinds.length === 0 ? top : `${top} (kind: ${kinds.join(', ')})`;
  return [{ section, key: path.slice(1).join('.'), measure: own.measure }];
}

/** Keys that are measured alike share a row. */
function merged(rows: readonly Row[]): string[] {
  const keysOf = new Map<string, string[]>();
  for (const { key, measure } of rows) keysOf.set(measure, [...(keysOf.get(measure) ?? []), `\`${key}\``]);
  return [...keysOf].map(([measure, keys]) => `| ${keys.join(', ')} | ${measure.replaceAll('|', '\\|')} |`);
}
