import type { Action, Comment, Expression, Facing, File, Modifier, Place, Quote, Span, Subject, Word } from '../tree.ts';

/**
 * The JSON form of a file: the syntax tree without places in the text, its leaves as they are written. Properties that have nothing
 * to say are left out. Everything that the printed form shows is kept, comments and blank lines with it.
 */
export type JsonFile = JsonOf<File>;

/** A number of the drill's own unit, or anything else as it is written: `"3 yd"`, `"side + 2"`. */
export type JsonLength = number | string;
/** `[2, 13]`, or as it is written: `"Base"`, `"2 above Base"`. */
export type JsonPlace = string | readonly [JsonLength, JsonLength];

type JsonOf<T> =
  // A place that is a name has all that a value that is a name has, so places come first.
  T extends Place ? JsonPlace
    : T extends Facing ? JsonPlace
      : T extends Expression ? JsonLength
        : T extends Subject | Word | Quote | Comment ? string
          : T extends Action ? JsonAction
            : T extends readonly (infer Item)[] ? readonly JsonOf<Item>[]
              : T extends object ? JsonNode<T>
                : T;

type JsonNode<T> =
  & { readonly [K in Exclude<keyof T, keyof Span | 'span' | LeftOut<T>>]: JsonOf<T[K]> }
  & { readonly [K in Extract<keyof T, LeftOut<T>>]?: JsonOf<NonNullable<T[K]>> };

/** What is left out when it is null, false or an empty list. */
type LeftOut<T> = 'margin' | 'above' | 'gap' | 'end' | 'meanwhile' | 'follow' | 'chains'
  | { [K in keyof T]-?: null extends T[K] ? K : T[K] extends readonly Place[] ? (T extends { kind: 'part' } ? K : never) : never }[keyof T];

type JsonAction = Omit<JsonNode<Omit<Action, 'verbSpan' | 'modifiers'>>, never> & {
  /** How long `waits` waits. */
  readonly wait?: JsonLength;
  readonly modifiers?: readonly JsonOf<Exclude<Modifier, { kind: 'for' }>>[];
};
