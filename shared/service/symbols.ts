/** The things of a file as an outline: drills with their people, ground and play. */
import type { Beat, File, SessionStatement, Span, Statement, TopLevel } from '../../grammar/tree.ts';
import type { NameKind } from '../model/names.ts';

export interface OutlineItem {
  readonly name: string;
  readonly kind: NameKind | 'beat' | 'part' | 'import' | 'rotate';
  readonly detail: string;
  readonly span: Span;
  /** Within `span`. */
  readonly nameSpan: Span;
  readonly children: readonly OutlineItem[];
}

export function outline(file: File, text: string): readonly OutlineItem[] {
  return file.items.flatMap((item) => itemsOf(item, text));
}

type Kind = OutlineItem['kind'];
type Line = TopLevel | Statement | SessionStatement | Beat;

function itemsOf(line: Line, text: string): OutlineItem[] {
  const item = (kind: Kind, name: string, { from, to }: Span, children: readonly OutlineItem[] = [], detail = ''): OutlineItem[] =>
    [{ name: name === '' ? kind : name, kind, detail, span: line.span, nameSpan: { from, to }, children }];
  const inside = (lines: readonly Line[]): OutlineItem[] => lines.flatMap((each) => itemsOf(each, text));
  switch (line.kind) {
    case 'drill':
    case 'session':
      return item(line.kind, line.name.text, line.name, inside(line.body.lines));
    case 'progress':
    case 'regress':
      return item('change', line.name.text, line.name, inside(line.body.lines), `${line.kind} ${line.lever}`);
    case 'sequence':
    case 'phase':
      return item(line.kind, line.name?.text ?? line.kind, line.name ?? keywordOf(line.span, line.kind), inside(line.body.lines));
    case 'mirrored':
      return item('sequence', line.name.text, line.name, [], `mirrors ${line.of.text}`);
    case 'beat':
      return item('beat', text.slice(line.span.from, line.span.to).replaceAll(/\s+/g, ' '), line.span);
    case 'part':
      return item('part', line.name.text, line.name, [], [text.slice(line.length.span.from, line.length.span.to), line.of?.text ?? []].flat().join(', '));
    case 'pause':
      return item('part', line.name?.text ?? 'pause', line.name ?? keywordOf(line.span, 'pause'), [], text.slice(line.length.span.from, line.length.span.to));
    case 'import':
      return item('import', line.path.text, line.path);
    case 'split':
      return line.into.flatMap(({ name }) => item('zone', name.text, name, [], `part of ${line.of.text}`));
    case 'let':
    case 'zone':
    case 'zones':
    case 'station':
    case 'team':
    case 'floaters':
    case 'player':
    case 'keeper':
      return item(line.kind, line.name.text, line.name);
    case 'cone':
    case 'disc':
    case 'pole':
    case 'mannequin':
    case 'gate':
    case 'goal':
    case 'minigoal':
    case 'hurdle':
    case 'ladder':
      return line.name ? item(line.kind, line.name.text, line.name) : [];
    case 'rotate':
      return item('rotate', text.slice(line.span.from, line.span.to), line.span);
    default:
      return [];
  }
}

function keywordOf({ from }: Span, word: string): Span {
  return { from, to: from + word.length };
}
