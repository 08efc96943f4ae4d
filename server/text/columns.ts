import { harmless, widthOfText } from './cells.ts';

/** Rows under each other, words to the left and numbers to the right; two spaces between columns. */
export function columns(head: readonly string[], rows: readonly (readonly (string | number)[])[]): readonly string[] {
  const all = [head, ...rows].map((row) => row.map((value) => harmless(String(value))));
  const widths = head.map((_, column) => Math.max(...all.map((row) => widthOfText(row[column]!))));
  const right = head.map((_, column) => rows.length > 0 && rows.every((row) => /^[-+]?\d|^$/.test(String(row[column]))));
  return all.map((row) => row.map((value, column) => {
    const room = ' '.repeat(widths[column]! - widthOfText(value));
    return right[column] ? room + value : value + room;
  }).join('  ').trimEnd());
}

/** RFC 4180; null is an empty field. */
export function csvRow(values: readonly (string | number | boolean | null)[]): string {
  return `${values.map((value) => {
    const text = String(value ?? '');
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  }).join(',')}\r\n`;
}
