/** Pages as the built command writes them, each from one small run; titles and notes mean harm. */
import { execFile } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { parseDocument } from 'yaml';
import { emptyFolder, projectRoot, scenario } from '../end-to-end/command.ts';

export const hostileTitle =
  '</title><script>document.title="ran"</script> "a" & \'b\' <b>c</b> \u001b[2J ' +
  'Schraubenschluessel'.repeat(2);
const hostileNotes =
  '</style><img src=x onerror="document.title=`ran`"> </script \u001b]0;ran\u0007 ' + 'x'.repeat(300);

const fast = (rpm: number): string => `conditions:
  - kind: speed
    at_least: ${rpm} rpm
`;

const cutOff = (points: number): string => `vary:
  - kind: range
    setting: valve_gear.admission.closes
    from: 30 % of stroke
    to: 70 % of stroke
    points: ${points}
`;

const studies: Readonly<Record<string, string>> = {
  line: cutOff(5) + fast(300),
  field: `${cutOff(3)}  - kind: values
    setting: supply.pressure
    values: [0.7 bar gauge, 2 bar gauge, 3 bar gauge]
${fast(250)}`,
  best: `${cutOff(5)}${fast(300)}best:
  aim:
    kind: highest speed
  most_engines: 10
`,
  limit: `${fast(250)}limit:
  setting: leaks.0.clearance
  from: 5 um
  to: 100 um
`,
  odds: `vary:
  - kind: values
    setting: leaks.0.clearance
    values: [10 um, 30 um]
${fast(279)}odds:
  engines: 10
  tolerances:
    - kind: fit
      setting: valve_gear.admission.clearance
    - kind: spread
      setting: leaks.0.clearance
      plus_minus: 4 um
`,
};

function withHostileTexts(name: string): string {
  const document = parseDocument(readFileSync(scenario(name), 'utf8'));
  document.set('title', hostileTitle);
  document.set('notes', hostileNotes);
  return document.toString({ defaultStringType: 'QUOTE_DOUBLE', lineWidth: 0 });
}

function filled(): string {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'engine.yaml'), withHostileTexts('cider-press.yaml'));
  writeFileSync(join(folder, 'hut.yaml'), withHostileTexts('cider-press-small-compressor.yaml'));
  for (const [name, text] of Object.entries(studies))
    writeFileSync(
      join(folder, `${name}.yaml`),
      `title: ${JSON.stringify(hostileTitle)}\nnotes: ${JSON.stringify(hostileNotes)}\nengine: engine.yaml\n${text}`,
    );
  return folder;
}

/** By the name of a page: the command that writes it, and the file it writes. */
const commands = {
  line: { args: ['sweep', 'line.yaml', '--workers', '1'], file: 'line/sweep.html' },
  field: { args: ['sweep', 'field.yaml', '--workers', '1'], file: 'field/sweep.html' },
  best: { args: ['best', 'best.yaml', '--workers', '1'], file: 'best/best.html' },
  limit: { args: ['limit', 'limit.yaml', '--workers', '1'], file: 'limit/limit.html' },
  odds: { args: ['odds', 'odds.yaml', '--workers', '1'], file: 'odds/odds.html' },
  next: { args: ['next', 'engine.yaml', '--workers', '1'], file: 'engine/next.html' },
  why: {
    args: ['why', 'engine.yaml', '--symptom', 'moves-and-stops', '--out', 'reports/why'],
    file: 'why/bench.html',
  },
  supply: { args: ['run', 'hut.yaml'], file: 'hut/report.html' },
} as const;

export type PageName = keyof typeof commands;
export const pageNames = Object.keys(commands) as PageName[];

const run = promisify(execFile);

/** Runs every command once, all at the same time, and reads what they have written. */
export async function writtenPages(): Promise<Readonly<Record<PageName, string>>> {
  const folder = filled();
  const main = join(projectRoot, 'dist/cli/main.js');
  const pages = await Promise.all(
    Object.entries(commands).map(async ([name, { args, file }]) => {
      await run(process.execPath, [main, ...args], { cwd: folder });
      return [name, readFileSync(join(folder, 'reports', file), 'utf8')] as const;
    }),
  );
  return Object.fromEntries(pages) as Record<PageName, string>;
}
