/** Plain tables and wrapped prose for the terminal. */
import stringWidth from 'string-width';

/** Rows of label and value, the labels padded to one width; a value longer than `width` goes on below itself. */
export function columns(
  rows: readonly (readonly [string, string])[],
  indent = '  ',
  width = Infinity,
): string {
  const labelWidth = Math.max(...rows.map(([label]) => stringWidth(label)));
  const hang = `${indent}${' '.repeat(labelWidth)}   `;
  return rows
    .map(([label, value]) => {
      const first = `${indent}${padded(label, labelWidth)}   `;
      return width === Infinity ? first + value : wrapped(value, width, first, hang);
    })
    .join('\n');
}

/** A table with a heading over each column; the first column is text, the others stand to the right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[], indent = '  '): string {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => stringWidth(row[column] ?? ''))));
  return all
    .map((row) => {
      const cells = row.map((cell, column) =>
        column === 0 ? padded(cell, widths[0] ?? 0) : padded(cell, widths[column] ?? 0, 'before'),
      );
      return `${indent}${cells.join('   ')}`.trimEnd();
    })
    .join('\n');
}

function padded(text: string, width: number, side: 'before' | 'after' = 'after'): string {
  const space = ' '.repeat(Math.max(width - stringWidth(text), 0));
  return side === 'before' ? space + text : text + space;
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
