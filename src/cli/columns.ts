/** A plain two-column table and wrapped prose for the terminal. */
import stringWidth from 'string-width';

/** Rows of label and value, the labels padded to one width. */
export function columns(rows: readonly (readonly [string, string])[], indent = '  '): string {
  const width = Math.max(...rows.map(([label]) => stringWidth(label)));
  return rows
    .map(([label, value]) => `${indent}${label}${' '.repeat(width - stringWidth(label))}   ${value}`)
    .join('\n');
}

/** Words wrapped to a width, lines after the first hung under the first word. */
export function wrapped(text: string, width: number, first = '', hang = ''): string {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/\s+(?!%)/)) {
    if (!empty && stringWidth(line) + 1 + stringWidth(word) > width) {
      lines.push(line);
      line = hang;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line].join('\n');
}
