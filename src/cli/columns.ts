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

/** A table of several columns; where it would be too wide, cells are wrapped, the widest columns first. */
export function grid(rows: readonly (readonly string[])[], width: number, indent = '  '): string {
  const widths = (rows[0] ?? []).map((_, k) => Math.max(...rows.map((row) => stringWidth(row[k] ?? ''))));
  const room = width - indent.length - 2 * (widths.length - 1);
  const sum = (): number => widths.reduce((a, b) => a + b, 0);
  for (let i = 0; i < 1000 && sum() > room; i += 1) narrowWidest(widths);
  return rows.map((row) => gridRow(row, widths, indent)).join('\n');
}

function narrowWidest(widths: number[]): void {
  const widest = widths.indexOf(Math.max(...widths));
  widths[widest] = (widths[widest] ?? 1) - 1;
}

function gridRow(row: readonly string[], widths: readonly number[], indent: string): string {
  const cells = row.map((cell, k) => wrapped(cell, widths[k] ?? 1).split('\n'));
  const lines = Math.max(...cells.map(({ length }) => length));
  return Array.from({ length: lines }, (_, line) => {
    const texts = cells.map((cell, k) => {
      const text = cell[line] ?? '';
      return text + ' '.repeat(Math.max(0, (widths[k] ?? 0) - stringWidth(text)));
    });
    return (indent + texts.join('  ')).trimEnd();
  }).join('\n');
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
