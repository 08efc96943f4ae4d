import { nearest } from '../../grammar/spelling.ts';
import type { Span } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { formatNumber } from '../units.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'unknown-name',
  group: 'writing',
  severity: 'error',
  title: 'Nothing has this name',
  why: 'Whoever reads the sheet must find every name on the grass. A name that nothing carries is mostly a slip of the pen, or a cone that was renamed in one line and not in the next.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at 8 right of ⟦Bsae⟧
}
`,
    `drill "Two" {
  area 12 x 12
  station Base at area.⟦center⟧
}
`,
  ],
  good: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at 8 right of Base
}
`,
  ],
  find: null,
};

const numberWords: readonly string[] = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** A word or a string that names nothing. `wanted` is what was looked for: `station or player`. */
export function unknownName(word: Span & { readonly text: string }, wanted: string, candidates: Iterable<string>): Problem {
  const known = [...candidates];
  const guess = nearest(word.text, known);
  const quoted = word.to - word.from > word.text.length;
  const message = `There is no ${wanted} called \`${word.text}\`.`;
  const digits = wanted === 'number' ? numberWords.indexOf(word.text) + 1 : 0;
  if (digits > 0) return problem(check, spanOf(word), `Numbers are written in figures: \`${digits}\`.`, { fixes: [{ title: `Change to ${digits}`, edits: [{ span: spanOf(word), text: `${digits}` }] }] });
  if (guess === null) return problem(check, spanOf(word), message, { help: known.length > 0 && known.length <= 9 ? `There is: ${known.join(', ')}.` : null });
  return problem(check, spanOf(word), `${message} Did you mean \`${guess}\`?`, {
    fixes: [{ title: `Change to ${guess}`, edits: [{ span: spanOf(word), text: quoted ? `"${guess}"` : guess }] }],
  });
}

/** `5 yellow bibs` in the kit. */
export function colourFirst(colour: Span & { readonly text: string }, kind: Span & { readonly text: string }): Problem {
  const span = { from: colour.from, to: kind.to };
  const turned = `${kind.text} ${colour.text}`;
  return problem(check, span, `The colour comes last: \`${turned}\`.`, { fixes: [{ title: `Write ${turned}`, edits: [{ span, text: turned }] }] });
}

/** `area.centre` in a drill that has no area. */
export function noArea(span: Span): Problem {
  return problem(check, spanOf(span), 'The drill has no area yet, so nothing can be measured from it.', {
    help: 'Write its size first, wide x long: area 18 x 24.',
  });
}

/** `N7` of a team of four. */
export function noSuchPlayer(word: Span & { readonly text: string }, team: string, size: number): Problem {
  const players = size === 1 ? `one player, ${team}1` : `${size} players, ${team}1 to ${team}${size}`;
  return problem(check, spanOf(word), `There is no \`${word.text}\`: ${team} has ${players}.`);
}

/** A player of a team who has no place on the ground yet. */
export function notPlaced(word: Span & { readonly text: string }, team: string): Problem {
  return problem(check, spanOf(word), `\`${word.text}\` of ${team} does not stand anywhere yet.`, {
    help: `Give a place: player ${word.text} of ${team} at (3, 4).`,
  });
}

/** A mirrored sequence in which someone or something has nothing of its kind on the other side; `at` as it would be written. */
export function noMirrorImage(span: Span, name: string, what: string, at: { readonly x: number; readonly y: number }): Problem {
  return problem(check, span, `\`${name}\` has no mirror image: put ${what} at (${formatNumber(at.x, 2)}, ${formatNumber(at.y, 2)}).`);
}
