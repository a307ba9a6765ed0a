/** A small study that is over in a second, written into a folder of its own. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { emptyFolder, scenario } from '../command.ts';

/** The press settles in some hundredths of a second. */
const engine = readFileSync(scenario('cider-press.yaml'), 'utf8');

export function toyStudy(study: string): string {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'engine.yaml'), engine);
  writeFileSync(join(folder, 'study.yaml'), `title: Toy\nengine: engine.yaml\n${study}`);
  return folder;
}

/** Twelve engines, two of which cannot be. */
export const twelve = `
vary:
  - kind: range
    setting: supply.pressure
    from: 1 bar gauge
    to: 3 bar gauge
    points: 4
  - kind: values
    setting: cylinder.rod_length
    values: [100 mm, 140 mm, 20 mm]
conditions:
  - kind: runs
`;

/** The odds of ten engines whose piston is a little tighter or looser. */
export const tenOdds = `
odds:
  engines: 10
  tolerances:
    - kind: spread
      setting: leaks.0.clearance
      plus_minus: 2 um
`;

export const read = (folder: string, name: string): string => readFileSync(join(folder, name), 'utf8');

export const rowsOf = (csv: string): string[] => csv.split('\r\n').filter((line) => line !== '');
