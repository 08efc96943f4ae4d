import type { Context, Family, Piece, StatementForm } from '../form.ts';
import type { SessionStatement, Statement, TopLevel } from '../tree.ts';

type Every = Statement | SessionStatement | TopLevel;
type Kind = Every['kind'];
type FieldsOf<T> = T extends unknown ? Exclude<keyof T, 'kind' | 'span' | 'margin' | 'body'> & string : never;

interface About<K extends Kind> {
  readonly pieces: readonly Piece<FieldsOf<Extract<Every, { kind: K }>>>[];
  readonly doc: string;
  readonly example: string;
  readonly stands?: readonly Context[];
  readonly body?: Context;
  readonly family?: Family;
  readonly head?: number;
}

/** A statement that begins with the name of its kind. Unless told otherwise it stands in a drill and has no block. */
export function statement<K extends Kind>(kind: K, about: About<K>): StatementForm {
  return { ...keyed<K>(kind, about), kind };
}

/** A statement whose keyword begins several kinds: its pieces set the kind. */
export function keyed<K extends Kind>(keyword: string, about: About<K>): StatementForm {
  const { pieces, doc, example, stands = ['drill'], body = null, family = null, head = 0 } = about;
  return { keyword, kind: null, pieces, stands, body, family, head, doc, example };
}
