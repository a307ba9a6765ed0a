/** Reference pages of all keys of a kind of file, in Markdown, made from the descriptions the reader checks against. */
import type { Parameter, Parameters, SettingsParameter, TextListParameter } from '../kinds/parameter.ts';
import { exampleOf, expectation, isLeaf, kindsOf, mayBeAbsent, presetText } from './expectation.ts';

/** What a page is about: the word for the file, and what stands above the keys. */
interface PageHead {
  readonly file: string;
  readonly head: string;
}

const scenarioHead: PageHead = {
  file: 'scenario',
  head: `# Scenario keys

Generated from the descriptions in the code. A value with a unit is written with it, a pressure also says
\`gauge\` or \`absolute\`, angles count from top dead centre in the running direction. A place in the turn may be a crank
angle (\`130 deg\`), a share of the outward stroke (\`50 % of stroke\`) or of the return stroke
(\`92 % of return stroke\`). The play of a rod in its bore may be a radial gap (\`8 um\`), a fit (\`H7/g6\`) or the finishes of
bore and rod (\`reamed / turned\`); [fits](../fits.md) tells what they come to.
`,
};

/** Markdown: every key of a description with meaning, range, default and example. */
export function referencePage(parameters: Parameters, { file, head }: PageHead = scenarioHead): string {
  return [head, ...sections(file, parameters, 2, undefined, '')].join('\n');
}

const studyHead: PageHead = {
  file: 'study',
  head: `# Study keys

Generated from the descriptions in the code. [Many engines](../studies.md) tells what they are for. Values of the scenario
are named by their paths: keys joined by points, places of lists counted from 0 (\`leaks.0.clearance\`).
`,
};

/** Markdown: the same for the keys of a study. */
export function studyReferencePage(parameters: Parameters): string {
  return referencePage(parameters, studyHead);
}

/** A heading, a table of the plain values, then a section for each group and family below. */
function sections(
  title: string,
  parameters: Parameters,
  depth: number,
  doc?: string,
  prefix = `${title}.`,
): string[] {
  const entries = Object.entries(parameters);
  const leaves = entries.filter(([, parameter]) => isPlain(parameter));
  const inner = entries.filter(([, parameter]) => !isPlain(parameter));
  return [
    `${'#'.repeat(Math.min(depth, 6))} ${title}\n`,
    ...(doc === undefined ? [] : [`${doc}\n`]),
    ...(leaves.length === 0 ? [] : [table(leaves)]),
    ...inner.flatMap(([key, parameter]) => innerSections(`${prefix}${key}`, parameter, depth + 1)),
  ];
}

function innerSections(path: string, parameter: Parameter, depth: number): string[] {
  if (parameter.type === 'group')
    return sections(path, parameter.parameters, depth, absence(parameter.doc, parameter));
  if (parameter.type !== 'part' && parameter.type !== 'part list') return [];
  const which = parameter.type === 'part' ? 'One of the kinds below.' : 'A list of any of the kinds below.';
  return [
    `${'#'.repeat(Math.min(depth, 6))} ${path}\n`,
    `${absence(parameter.doc, parameter)} ${which}\n`,
    ...kindsOf(parameter).flatMap(({ kind, doc, parameters }) =>
      sections(`${path} (kind: ${kind})`, parameters, depth + 1, doc),
    ),
  ];
}

const isPlain = (parameter: Parameter): boolean =>
  ['optional', 'settings', 'text list'].includes(parameter.type) || isLeaf(parameter);

const absence = (doc: string, parameter: Parameter): string =>
  mayBeAbsent(parameter) ? `${doc} May be left out.` : doc;

function table(leaves: readonly (readonly [string, Parameter])[]): string {
  const rows = leaves.map(([key, parameter]) => `| \`${key}\` | ${cells(parameter).join(' | ')} |`);
  return [
    '| Key | Meaning | Expected | If left out | Example |',
    '| --- | --- | --- | --- | --- |',
    ...rows,
    '',
  ].join('\n');
}

function cells(parameter: Parameter): string[] {
  const own = parameter.type === 'optional' ? parameter.parameter : parameter;
  if (own.type === 'settings') return settingsCells(own);
  if (own.type === 'text list') return textListCells(own);
  if (!isLeaf(own)) return ['', '', '', ''];
  const preset = parameter.type === 'optional' ? 'see the meaning' : (presetText(own) ?? 'must be given');
  const example = own.type === 'text' ? '' : `\`${exampleOf(own)}\``;
  return [own.doc, expectation(own), preset, example].map((cell) => cell.replaceAll('|', '\\|'));
}

const settingsCells = (own: SettingsParameter): string[] => [
  own.doc,
  expectation(own),
  own.needed ? 'must be given' : 'none',
  `\`${own.example.join(': ')}\``,
];

const textListCells = (own: TextListParameter): string[] => [
  own.doc,
  expectation(own),
  own.min === 0 ? 'none' : 'must be given',
  `\`[${own.example}]\``,
];
