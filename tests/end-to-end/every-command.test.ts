/** What holds for every command there is: help with examples that can be typed as they stand, and readers that go away. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commandLine } from '../../src/cli/command-line.ts';
import { commands } from '../../src/cli/commands/registry.ts';
import { projectRoot, scenario } from './command.ts';
import { tenOdds, toyStudy } from './studies/toy.ts';

/** Parses words as the program does; nothing is done. Returns what would be printed. */
function parsed(words: readonly string[]): Promise<string> {
  const session = { print: () => undefined, guarded: () => Promise.resolve() };
  return new Promise((resolve, reject) => {
    void commandLine([], session)
      // However long an example, it is one line.
      .wrap(null)
      .exitProcess(false)
      .parse([...words], {}, (error, _said, output) => {
        // yargs hands over null, whatever its types say.
        if (error instanceof Error) reject(error);
        else resolve(output);
      });
  });
}

/** Words as a shell parts them; what it would do with the output is left out. */
const wordsOf = (line: string): string[] =>
  Array.from(
    line.replace(/ >>? .*$/u, '').matchAll(/"([^"]*)"|(\S+)/gu),
    ([, quoted, bare]) => quoted ?? bare ?? '',
  );

/** Lines of a help that begin with the program, each without what is said of it. */
const linesOf = (help: string, heading: string): string[] =>
  (help.split(`${heading}:\n`)[1] ?? '')
    .split('\n\n')[0]!
    .split('\n')
    .flatMap((line) => /^ +tickover (.*?)(?: {2,}.*)?$/u.exec(line)?.[1] ?? []);

const help = await parsed(['--help']);
const names = linesOf(help, 'Commands').map((line) => line.split(' ')[0] ?? '');

describe('help', () => {
  it('names every command', () => {
    expect(names).toHaveLength(commands.length);
    expect(names).toEqual(expect.arrayContaining(['run', 'merge', 'why', 'completion']));
  });

  it.each(names)('of %s has an example, and each can be typed as it stands', async (name) => {
    const own = name === 'completion' ? help : await parsed([name, '--help']);
    const examples = linesOf(own, 'Examples').map(wordsOf);
    expect(examples.filter(([command]) => command === name).length).toBeGreaterThan(0);
    for (const example of examples)
      await expect(parsed(example), example.join(' ')).resolves.not.toContain('Options:');
  });

  it('refuses what is no option', async () => {
    await expect(parsed(['run', 'engine.yaml', '--qiet'])).rejects.toThrow('qiet');
  });
});

/** Ends of the program when nobody reads what it prints. */
function unread(
  cwd: string,
  args: readonly string[],
): Promise<readonly [status: number | null, stderr: string]> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(projectRoot, 'dist/cli/main.js'), ...args], { cwd });
    child.stdout.destroy();
    let stderr = '';
    child.stderr.on('data', (chunk: Buffer) => (stderr += chunk.toString()));
    child.on('close', (status) => resolve([status, stderr]));
  });
}

describe('a reader that goes away', () => {
  const folder = toyStudy(tenOdds);
  const disc = scenario('cider-press-disc.yaml');
  const lines: readonly (readonly string[])[] = [
    ['--help'],
    ['completion'],
    ['explain'],
    ['new', 'mine.yaml', '--gear', 'windows'],
    ['check', disc, disc],
    ['run', disc],
    ['compare', disc, 'engine.yaml'],
    ['supply', disc],
    ['draw', disc],
    ['sweep', 'engine.yaml', '--vary', 'cylinder.bore = 50 mm, 51 mm', '--workers', '1'],
    // Stands for all that ask a study a question: they say the answer alike.
    ['odds', 'study.yaml', '--workers', '1'],
    ['bench', scenario('bench/chest-decay.yaml')],
    ['why', disc, '--symptom', 'hisses-at-rest'],
  ];
  it.each(lines.map((args) => ({ name: args[0], args })))('$name ends quietly', async ({ args }) => {
    const [status, stderr] = await unread(folder, args);
    expect([status, stderr]).toEqual([0, '']);
  });
});
