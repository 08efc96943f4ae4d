import { parse } from '../../grammar/parse.ts';
import type { Drill } from '../../shared/model/drill.ts';
import { resolve, type Resolved, type Workspace } from '../../shared/model/resolve.ts';
import { marked } from '../support/marked.ts';

/** Reads a text as `plans/example.drill`; `others` are the other files of its workspace by path. */
export function read(text: string, others: Readonly<Record<string, string>> = {}): Resolved {
  const workspace: Workspace = {
    path: 'plans/example.drill',
    read: (path) => (others[path] === undefined ? null : { path, file: parse(others[path]).file }),
  };
  return resolve(parse(text).file, workspace);
}

/** A drill of 20 by 30 metres with these lines in it. */
export function drillWith(lines: string): { readonly drill: Drill; readonly messages: readonly string[] } {
  const { drills, problems } = read(`drill "Test" {\narea 20 x 30\n${lines}\n}\n`);
  return { drill: drills[0]!, messages: problems.map((problem) => problem.message) };
}

/** What is wrong with a text and where, to be compared with the marks ⟦ and ⟧ in it. */
export function problemsIn(text: string, others?: Readonly<Record<string, string>>) {
  const { plain, spans } = marked(text);
  const found = read(plain, others).problems;
  return {
    found: found.map(({ code, message, span }) => ({ code, message, at: plain.slice(span.from, span.to), from: span.from })),
    marks: spans.map(({ from, to }) => ({ at: plain.slice(from, to), from })),
    problems: found,
  };
}
