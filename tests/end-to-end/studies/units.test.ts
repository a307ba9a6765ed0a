/** Studies in the units of the reader: words and page change, the files for programs do not. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tickover } from '../command.ts';
import { read, tenOdds, toyStudy } from './toy.ts';

const conditions = `
conditions:
  - kind: air
    at_most: 100 L/min
`;

/** A table of engines, and one of the questions, which all end alike. */
const studies = {
  sweep: `
vary:
  - kind: range
    setting: supply.pressure
    from: 2 bar gauge
    to: 3 bar gauge
    points: 3
${conditions}`,
  odds: `${conditions}${tenOdds}`,
} as const;

/** Save for the torque in the reason of an engine that stalls: that sentence belongs to the files. */
const metricUnits = /\d\s(?:L\/min|L\/kJ|mm)\b/u;

describe('--units imperial', () => {
  it.each(Object.keys(studies) as (keyof typeof studies)[])('%s: in words and on the page only', (name) => {
    const folder = toyStudy(studies[name]);
    const said = ['metric', 'imperial'].map(
      (units) => tickover(folder, name, 'study.yaml', '--out', units, '--units', units).stdout,
    ) as [string, string];
    expect(said[0]).toMatch(/100 L\/min/u);
    expect(said[1]).toMatch(/3\.5\d+ cfm|\d cfm ANR/u);
    expect(said[1]).not.toMatch(metricUnits);
    const whole = read(folder, `imperial/${name}.html`);
    const page = whole.slice(whole.indexOf('<main>'), whole.indexOf('</main>'));
    expect(page).toContain('cfm');
    expect(page).not.toMatch(metricUnits);
    const files = readdirSync(join(folder, 'metric')).filter((file) => !file.endsWith('.html'));
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) expect(read(folder, `imperial/${file}`)).toBe(read(folder, `metric/${file}`));
  });
});
