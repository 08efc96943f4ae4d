/** Text laid out by the metrics of the shipped font. Lengths in the unit of `size`. */
import { bold, medium, ranges } from './metrics.ts';

export type Weight = 'medium' | 'bold';
export const fontFamily = 'Barlow Semi Condensed';
export const cssWeight = { medium: 500, bold: 700 } as const satisfies Record<Weight, number>;

/** Height of the capitals and of the digits, and how far letters reach below the line, in parts of the size. */
export const capHeight = 0.7;
export const descent = 0.2;

export function textWidth(text: string, size: number, weight: Weight): number {
  const widths = advances[weight];
  let sum = 0;
  for (const char of text) {
    const code = char.codePointAt(0) as number;
    sum += widths[code] ?? guess(code);
  }
  return (sum * size) / 1000;
}

/** Whether the shipped font has every sign of the text. */
export function isCovered(text: string): boolean {
  for (const char of text) {
    const code = char.codePointAt(0) as number;
    if (code >= 0x20 && advances.medium[code] === undefined) return false;
  }
  return true;
}

/** The text, or as much of it as fits with … behind. */
export function cut(text: string, width: number, size: number, weight: Weight): string {
  if (textWidth(text, size, weight) <= width) return text;
  const chars = [...text];
  let fits = 0;
  let sum = textWidth('…', size, weight);
  for (const char of chars) {
    sum += textWidth(char, size, weight);
    if (sum > width) break;
    fits += 1;
  }
  return `${chars.slice(0, fits).join('').trimEnd()}…`;
}

/** Lines no wider than `width`, at most `most` of them; what does not fit ends in …. */
export function wrap(text: string, width: number, size: number, weight: Weight, most: number): string[] {
  const words = text.split(/\s+/).filter((word) => word !== '');
  const space = textWidth(' ', size, weight);
  // Only what is known to be too wide is measured again.
  const fitted = (line: readonly string[], wide: number) => (wide > width ? cut(line.join(' '), width, size, weight) : line.join(' '));
  const lines: string[] = [];
  let line: string[] = [];
  let used = 0;
  for (const [index, word] of words.entries()) {
    const wide = textWidth(word, size, weight);
    if (line.length > 0 && used + space + wide > width) {
      if (lines.length + 1 === most) {
        line.push(...words.slice(index));
        used = Infinity;
        break;
      }
      lines.push(fitted(line, used));
      line = [];
      used = 0;
    }
    used += (line.length > 0 ? space : 0) + wide;
    line.push(word);
  }
  if (line.length > 0) lines.push(fitted(line, used));
  return lines;
}

/** Thousandths of the size by code point; undefined where the font has no sign. */
const advances: Readonly<Record<Weight, readonly (number | undefined)[]>> = { medium: table(medium), bold: table(bold) };

function table(widths: readonly number[]): (number | undefined)[] {
  const found = Array.from<number | undefined>({ length: (ranges[ranges.length - 1] as number) + 1 });
  let index = 0;
  for (let at = 0; at < ranges.length; at += 2) {
    for (let code = ranges[at] as number; code <= (ranges[at + 1] as number); code += 1) found[code] = widths[index++];
  }
  return found;
}

/** For scripts the font does not have: a full square for East Asian signs and emoji, nothing for marks that combine. */
function guess(code: number): number {
  if ((code >= 0x300 && code <= 0x36f) || (code >= 0x200b && code <= 0x200f) || (code >= 0xfe00 && code <= 0xfe0f)) return 0;
  return (code >= 0x1100 && code <= 0x115f) || (code >= 0x2e80 && code <= 0xd7a3) || (code >= 0xf900 && code <= 0xfaff) || code >= 0x1f000 || (code >= 0xff00 && code <= 0xff60)
    ? 1000
    : 600;
}
