/** Text, tree and JSON form for programs: those in plain JavaScript are told what was expected instead of where it went wrong. */
import type { JsonFile } from './json/json.ts';
import { shown } from './json/leaf.ts';
import { toJson as jsonOf } from './json/to-json.ts';
import { parse as parseText } from './parse.ts';
import { print as printTree } from './printer.ts';
import type { File } from './tree.ts';

/** The tree of a text, and what in it cannot be read. Any text gives an answer. */
export function parse(text: string): ReturnType<typeof parseText> {
  if (typeof text !== 'string') throw new TypeError(`\`parse\` takes a text, not ${shown(text)}.`);
  return parseText(text);
}

/** The one printed form of a tree. */
export function print(file: File): string {
  return printTree(treeOf('print', file));
}

/** The JSON form of a tree: what `print` would show of it. For a text that has faults, of what could be read of it. */
export function toJson(file: File): JsonFile {
  return jsonOf(treeOf('toJson', file));
}

/** As it is, if it is a tree; `name` is the function that asks for it. */
export function treeOf(name: string, file: File, wanted = 'a tree'): File {
  if (typeof file === 'object' && file !== null && file.kind === 'file' && 'span' in file && Array.isArray(file.items)) return file;
  const hint = hintFor(file);
  throw new TypeError(`\`${name}\` takes ${wanted}, as \`drill\`, \`file\`, \`parse(text).file\` and \`fromJson(json).file\` give it, not ${shown(file)}${hint}.`);
}

function hintFor(said: unknown): string {
  if (typeof said === 'string') return '; `parse(text).file` gives the tree of a text';
  if (typeof said !== 'object' || said === null) return '';
  if ('file' in said) return '; what you have has it as `file`';
  return 'kind' in said && said.kind === 'file' ? '; `fromJson` reads the JSON form' : '';
}
