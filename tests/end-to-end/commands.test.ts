/** The commands beside `run` from outside: new, check, explain, compare, completion, and the help of all. */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, projectRoot, scenario, tickover } from './command.ts';

const main = join(projectRoot, 'dist/cli/main.js');

function refused(cwd: string, ...args: string[]): string {
  const said = tickover(cwd, ...args);
  expect(said.status, said.stderr).toBe(2);
  expect(said.stderr).not.toMatch(/\n\s+at /u);
  return said.stderr;
}

describe('tickover new', () => {
  it('writes a scenario that check is content with', () => {
    const folder = emptyFolder();
    const said = tickover(folder, 'new', 'mine.yaml', '--gear', 'tabulated');
    expect([said.status, said.stderr]).toEqual([0, '']);
    expect(said.stdout).toContain('tickover run mine.yaml');
    expect(readdirSync(folder).sort()).toEqual(['mine.yaml', 'valve-areas.csv']);
    expect(tickover(folder, 'check', 'mine.yaml').stdout).toBe(
      'mine.yaml: nothing wrong with “My engine”.\n',
    );
  });

  it('writes over nothing, and then writes nothing at all', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'valve-areas.csv'), 'precious');
    expect(refused(folder, 'new', 'mine.yaml', '--gear', 'tabulated')).toBe(
      'valve-areas.csv: there already; nothing was written over.\n',
    );
    expect(existsSync(join(folder, 'mine.yaml'))).toBe(false);
    expect(readFileSync(join(folder, 'valve-areas.csv'), 'utf8')).toBe('precious');
  });

  it('names the kinds when an unknown one is asked for, and says where it cannot write', () => {
    const folder = emptyFolder();
    expect(refused(folder, 'new', 'mine.yaml', '--gear', 'clockwork')).toContain('cam-driven spools');
    expect(refused(folder, 'new', 'no/such/mine.yaml', '--gear', 'windows')).toContain(
      'its folder is not there',
    );
  });
});

describe('tickover check', () => {
  it('looks at every file and lists what is wrong in any of them', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'empty.yaml'), '');
    const said = tickover(folder, 'check', 'empty.yaml', scenario('cider-press.yaml'), 'nowhere.yaml');
    expect(said.status).toBe(2);
    expect(said.stdout).toContain('cider-press.yaml: nothing wrong');
    expect(said.stderr).toMatch(/^empty\.yaml:1:1 .*\nnowhere\.yaml: cannot read/u);
  });
});

describe('tickover explain', () => {
  it('says meaning, range in the units asked for, and how to measure', () => {
    const { stdout } = tickover(projectRoot, 'explain', 'cylinder.bore', '--units', 'imperial');
    expect(stdout).toMatch(/^cylinder\.bore\n/u);
    for (const part of ['from 0.07874 in to 19.69 in', 'must be given', 'bore: 50 mm', 'callipers'])
      expect(stdout).toContain(part);
  });

  it('suggests a key for one that does not exist', () => {
    expect(refused(projectRoot, 'explain', 'cylinder.boar')).toContain('Did you mean "cylinder.bore"?');
  });
});

describe('tickover compare', () => {
  it('sets the runs beside each other, on the terminal, in a page and in a table', () => {
    const folder = emptyFolder();
    const said = tickover(
      folder,
      'compare',
      scenario('cider-press.yaml'),
      scenario('cider-press-drilled.yaml'),
    );
    expect([said.status, said.stderr]).toEqual([0, '']);
    expect(said.stdout).toMatch(/^ +A cider-press +B cider-press-drilled$/mu);
    expect(said.stdout).toMatch(/^ {2}valve_gear\.admission\.clearance +honed \/ lapped +90 um$/mu);
    const [head = '', ...rows] = readFileSync(
      join(folder, 'reports/comparison/comparison.csv'),
      'utf8',
    ).split('\r\n');
    expect(head).toMatch(/^run,title,outcome,speed_rpm,/u);
    expect(rows).toHaveLength(3);
    expect(readFileSync(join(folder, 'reports/comparison/comparison.html'), 'utf8')).toContain(
      'B cider-press-drilled',
    );
  });

  it('tells two files of one name apart by their folders', () => {
    const folder = emptyFolder();
    const twice = [scenario('cider-press-disc.yaml'), scenario('cider-press-disc.yaml')];
    const { stdout } = tickover(folder, 'compare', ...twice);
    expect(stdout).toContain(`A ${scenario('cider-press-disc.yaml')}`);
    expect(stdout).toContain('The scenarios say the same, key by key.');
  });

  it('refuses one file and too many', () => {
    const one = scenario('cider-press-disc.yaml');
    expect(refused(emptyFolder(), 'compare', one)).toContain('two to 6 scenario files');
    expect(refused(emptyFolder(), 'compare', ...Array.from({ length: 7 }, () => one))).toContain(
      'there are 7',
    );
  });
});

describe('the shell', () => {
  it('is taught by a script', () => {
    const { stdout } = tickover(projectRoot, 'completion');
    expect(stdout).toContain('tickover --get-yargs-completions');
    expect(stdout).toContain('complete -o bashdefault');
  });

  const completed = (...words: string[]): string[] =>
    tickover(projectRoot, '--get-yargs-completions', 'tickover', ...words).stdout.split('\n');

  it('completes kinds of gear and keys', () => {
    expect(completed('new', 'x.yaml', '--gear', '')).toContain('rotary disc');
    expect(completed('explain', 'cyl')).toContain('cylinder.bore');
  });
});

describe('colour', () => {
  const escape = '\u001b[';
  const onTerminal = (environment: Record<string, string>): string => {
    const command = `${process.execPath} ${main} explain cylinder.bore`;
    const { NO_COLOR: _none, FORCE_COLOR: _force, CI: _ci, ...others } = process.env;
    return spawnSync('script', ['-qec', command, '/dev/null'], {
      encoding: 'utf8',
      env: { ...others, TERM: 'xterm-256color', ...environment },
    }).stdout;
  };

  it('is on a terminal only, and not where NO_COLOR is set', () => {
    expect(onTerminal({})).toContain(escape);
    expect(onTerminal({ NO_COLOR: '1' })).not.toContain(escape);
    const { NO_COLOR: _none, FORCE_COLOR: _force, CI: _ci, ...env } = process.env;
    const piped = spawnSync(process.execPath, [main, 'explain', 'cylinder.bore'], { encoding: 'utf8', env });
    expect(piped.stdout).not.toContain(escape);
  });
});
