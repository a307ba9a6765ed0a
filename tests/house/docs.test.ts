/**
 * The documents are true: scenarios in them run, commands work, links lead somewhere, files named in them exist, and
 * figures in marked tables come out again. What the marks mean is said in DEVELOPERS.md.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { transformSync } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { parse, parseDocument, stringify } from 'yaml';
import { problemText, readScenario, readStudy, runEngine, type RunResult } from '../../src/index.ts';
import { noAttachments } from '../../src/scenario/attachments.ts';
import { emptyFolder, projectRoot, tickover } from '../end-to-end/command.ts';

const read = (path: string): string => readFileSync(join(projectRoot, path), 'utf8');
const exists = (path: string): boolean => existsSync(join(projectRoot, path));

const docs = readdirSync(join(projectRoot, 'docs'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.md'))
  .map((name) => posix.join('docs', name));
const pages = ['README.md', 'DEVELOPERS.md', 'reports/README.md', ...docs];

interface Block {
  /** What stands behind the opening fence: "yaml scenario". */
  readonly mark: string;
  readonly text: string;
}

const fence = /^```(.*)\n([\s\S]*?)^```$/gmu;
const blocksOf = (page: string): Block[] =>
  [...read(page).matchAll(fence)].map(([, mark = '', text = '']) => ({ mark, text }));
const proseOf = (page: string): string => read(page).replace(fence, '');

const marked = (mark: string): [page: string, text: string][] =>
  pages.flatMap((page) =>
    blocksOf(page)
      .filter((block) => block.mark === mark)
      .map(({ text }): [string, string] => [page, text]),
  );

function runOf(text: string, page: string): RunResult {
  const reading = readScenario(text, page);
  expect(reading.ok ? [] : reading.problems).toEqual([]);
  if (!reading.ok) throw new Error(`a scenario of ${page} is not valid`);
  return runEngine(reading.spec);
}

const demo = 'scenarios/cider-press.yaml';

type Tree = Readonly<Record<string, unknown>>;
const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A fragment laid over a scenario, key by key; another kind of part replaces the whole part. */
function laidOver(below: unknown, above: unknown): unknown {
  const replaces = isTree(above) && isTree(below) && 'kind' in above && above['kind'] !== below['kind'];
  if (!isTree(above) || !isTree(below) || replaces) return above;
  const entries = Object.entries(above).map(([key, value]) => [key, laidOver(below[key], value)]);
  return { ...below, ...Object.fromEntries(entries) };
}

describe('scenarios in the documents', () => {
  it('are marked for what they are', () => {
    const marks = pages.flatMap((page) => blocksOf(page).map(({ mark }) => mark));
    expect(marks.filter((mark) => mark.startsWith('yaml')).length).toBeGreaterThan(1);
    const known = [
      'yaml scenario',
      'yaml fragment',
      'yaml study',
      'sh',
      'text',
      'text output',
      'ts',
      'ts program',
    ];
    expect(marks.filter((mark) => !known.includes(mark))).toEqual([]);
  });

  it.each(marked('yaml scenario'))('%s: a whole one runs', (page, text) => {
    expect(runOf(text, page).outcome.kind).toBe('settled');
  });

  it.each(marked('yaml fragment'))('%s: a fragment fits into the demo', (page, text) => {
    const whole = stringify(laidOver(parse(read(demo)), parse(text)));
    const reading = readScenario(whole, page);
    expect(reading.ok ? [] : reading.problems).toEqual([]);
  });
});

describe('studies', () => {
  const problemsOf = (text: string, file: string): readonly string[] => {
    const reading = readStudy(text, file, {
      scenario: (path) => ({ ok: true, text: read(path) }),
      tables: () => noAttachments,
      overrides: [],
    });
    return reading.ok ? [] : reading.problems.map(problemText);
  };

  it.each(marked('yaml study'))('in the documents fit the scenarios: %s', (_page, text) => {
    expect(problemsOf(text, 'scenarios/study.yaml')).toEqual([]);
  });

  const shipped = readdirSync(join(projectRoot, 'scenarios/studies'));
  it.each(shipped)('%s fits its scenario and says what it shows', (name) => {
    const path = `scenarios/studies/${name}`;
    expect(problemsOf(read(path), path)).toEqual([]);
    expect(read(path)).toMatch(/^# Shows: /mu);
  });
});

describe('programs in the documents', () => {
  it.each(marked('ts program'))('%s: runs against the built package', (_page, text) => {
    const { code } = transformSync(text, { loader: 'ts', format: 'esm' });
    const said = spawnSync(process.execPath, ['--input-type=module', '--eval', code], {
      cwd: projectRoot,
      encoding: 'utf8',
    });
    expect([said.status, said.stderr]).toEqual([0, '']);
    expect(said.stdout).not.toBe('');
  });
});

const scripts = (JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts;

/** What a command of a document prints; only `tickover` is really run, the rest is looked up. */
function performed(command: string, folder: string): string {
  const words = command.replace(/^npx (?=tickover)/u, '').match(/"[^"]*"|\S+/gu) ?? [];
  const [program, ...args] = words.map((word) => word.replaceAll('"', ''));
  if (program === 'tickover') {
    const { status, stdout, stderr } = tickover(folder, ...args);
    expect([command, status, stderr]).toEqual([command, 0, '']);
    return stdout;
  }
  const script = args[0] === 'run' ? args[1] : args[0];
  expect([command, program]).toEqual([command, 'npm']);
  expect([command, script === 'ci' || Object.hasOwn(scripts, script ?? '')]).toEqual([command, true]);
  return '';
}

const isCommandOrOutput = ({ mark }: Block): boolean => mark === 'sh' || mark === 'text output';
const pagesWithCommands = pages.filter((page) => blocksOf(page).some(isCommandOrOutput));

describe('commands in the documents', () => {
  it.each(pagesWithCommands)(
    '%s: work, and print what is shown',
    (page) => {
      const folder = emptyFolder();
      cpSync(join(projectRoot, 'scenarios'), join(folder, 'scenarios'), { recursive: true });
      const ownEngine = marked('yaml scenario')[0]?.[1] ?? '';
      writeFileSync(join(folder, 'my-engine.yaml'), ownEngine);
      let printed = '';
      for (const { mark, text } of blocksOf(page).filter(isCommandOrOutput)) {
        const lines = text.trimEnd().split('\n');
        if (mark === 'sh')
          for (const line of lines.join(' && ').split(' && ')) printed = performed(line, folder);
        else expect(printed.split('\n')).toEqual(expect.arrayContaining(lines));
      }
    },
    60_000,
  );

  it('README opens with the two that matter', () => {
    const commands = blocksOf('README.md').filter(({ mark }) => mark === 'sh');
    expect(commands.slice(0, 2).map(({ text }) => text)).toEqual([
      'npm ci && npm start\n',
      'npm ci && npm test\n',
    ]);
  });
});

/** The anchor that GitHub gives a heading. */
function anchorOf(heading: string): string {
  const text = heading.replace(/\[([^\]]*)\]\([^)]*\)/gu, '$1').toLowerCase();
  return text.replace(/[^\p{L}\p{N}\s_-]/gu, '').replace(/\s/gu, '-');
}

const anchorsOf = (page: string): string[] =>
  [...proseOf(page).matchAll(/^#+ +(.+)$/gmu)].map(([, heading = '']) => anchorOf(heading.trim()));

/** Addresses of links and pictures that stay within the project. */
const linksOf = (page: string): string[] =>
  [...proseOf(page).matchAll(/\]\(([^)\s]+)\)|(?:src|srcset)="([^"]+)"/gu)]
    .map(([, link, picture]) => link ?? picture ?? '')
    .filter((link) => !/^[a-z]+:/u.test(link));

function isBroken(page: string, link: string): boolean {
  const [path = '', anchor] = link.split('#');
  const target = path === '' ? page : posix.join(posix.dirname(page), path);
  if (!exists(target)) return true;
  return anchor !== undefined && !anchorsOf(target).includes(anchor);
}

/** Files and folders that code spans name. */
const pathsIn = (page: string): string[] =>
  [...proseOf(page).matchAll(/`([^`\n]+)`/gu)].flatMap(
    ([, code = '']) =>
      code.match(/(?<![\w./-])(?:src|tests|docs|scenarios|\.config|\.ci)\/[\w./-]*\w\/?/gu) ?? [],
  );

describe('ways out of the documents', () => {
  it.each(pages)('%s: every link leads somewhere', (page) => {
    expect(linksOf(page).filter((link) => isBroken(page, link))).toEqual([]);
  });

  it.each(pages)('%s: every file it names exists', (page) => {
    expect(pathsIn(page).filter((path) => !exists(path))).toEqual([]);
  });

  it('there are links and files to look at', () => {
    expect(pages.flatMap(linksOf).length).toBeGreaterThan(10);
    expect(pages.flatMap(pathsIn).length).toBeGreaterThan(20);
  });

  it('pictures are light enough for a slow line', () => {
    const pictures = linksOf('README.md').filter((link) => link.endsWith('.png'));
    expect(pictures).toHaveLength(4);
    for (const picture of pictures) expect(statSync(join(projectRoot, picture)).size).toBeLessThan(200_000);
  });
});

interface Row {
  readonly page: string;
  readonly inputs: readonly string[];
  readonly value: string;
  readonly speed: number;
  readonly air: number;
}

const HEADER = /^\| *Input *\| *Value *\| *Speed, rpm *\| *Air, L\/min ANR *\|$/u;

const codesIn = (cell = ''): string[] => [...cell.matchAll(/`([^`]+)`/gu)].map(([, code = '']) => code);

function rowsOf(page: string): Row[] {
  const lines = proseOf(page).split('\n');
  return lines.flatMap((line, i) => {
    if (!HEADER.test(line)) return [];
    const below = lines.slice(i + 2);
    const end = below.findIndex((row) => !row.startsWith('|'));
    return below.slice(0, end).map((row) => {
      const [, input, value, speed, air] = row.split('|');
      return {
        page,
        inputs: codesIn(input),
        value: codesIn(value)[0] ?? '',
        speed: Number(speed),
        air: Number(air),
      };
    });
  });
}

function changedDemo({ inputs, value }: Row): string {
  const scenario = parseDocument(read(demo));
  for (const input of inputs) {
    const path = input.split('.').map((key) => (/^\d+$/u.test(key) ? Number(key) : key));
    expect([input, scenario.hasIn(path)]).toEqual([input, true]);
    scenario.setIn(path, value);
  }
  return scenario.toString();
}

const RPM = (2 * Math.PI) / 60;
const LITRES_PER_MINUTE = 60e3;

/** Printed with three figures; a change of the model that moves them by more has to be told. */
const TOLERANCE = 0.01;

describe('figures in tables', () => {
  const rows = pages.flatMap(rowsOf);

  it('are there', () => {
    expect(rows.length).toBeGreaterThan(10);
  });

  it.each(rows)('$page: $inputs $value', (row) => {
    const { settled } = runOf(changedDemo(row), row.page);
    const speed = (settled?.speed ?? NaN) / RPM;
    const air = (settled?.airFlowAnr ?? NaN) * LITRES_PER_MINUTE;
    const said = `${row.page}: ${row.value} gives ${speed.toFixed(1)} rpm, ${air.toFixed(1)} L/min`;
    expect(Math.abs(speed - row.speed), said).toBeLessThan(TOLERANCE * speed);
    expect(Math.abs(air - row.air), said).toBeLessThan(TOLERANCE * air);
  });
});
