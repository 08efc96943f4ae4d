/** The line that an offset lies in, without its end. */
export function lineAt(text: string, offset: number): string {
  const end = text.indexOf('\n', offset);
  return text.slice(lineStart(text, offset), end === -1 ? text.length : end);
}

/** Where that line begins. */
export function lineStart(text: string, offset: number): number {
  return offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
}
