/** What must hold for everything that is said to somebody whose file is refused. */

const placed = /^.*(?::\d+:\d+ {2}|: cannot read this ).*$|^--set .*$|^… and \d+ more\.$/u;
const cured = /expected .+, received .+\.|cannot read this \w+, .+\.|^… and/u;
const leaked = /\bNaN\b|\bundefined\b|\[object|\bnull\b|^ {4}at /u;
const disturbing = /[^\n\P{Cc}]|[\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u;

const LONGEST_LINE = 1500;

/** Every line has its place and what would be right, and nothing of the program's inside shows through. */
export function formFaults(message: string): string[] {
  return message.split('\n').flatMap((line) => {
    // What the user wrote is quoted, and may be anything.
    const ours = line.replace(/"[^"]*"/gu, '""');
    const faults = [
      placed.test(line) ? '' : 'no place',
      cured.test(line) ? '' : 'no cure',
      leaked.test(ours) ? 'shows the inside' : '',
      disturbing.test(line) ? 'disturbs a terminal' : '',
      line.length > LONGEST_LINE ? 'too long' : '',
    ];
    return faults.flatMap((fault) =>
      fault === '' ? [] : [`${fault}: ${JSON.stringify(line.slice(0, 400))}`],
    );
  });
}
