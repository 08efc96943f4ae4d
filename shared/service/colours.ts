/** The colours of bibs, to be shown beside their words and picked. */
import type { Quote, Span, Statement, TopLevel, Word } from '../../grammar/tree.ts';
import { bibColour } from '../scene/palette.ts';
import type { Open } from './open.ts';

/** The words that a bib's colour can be written in, each colour once. */
export const bibNames = [
  'red', 'blue', 'green', 'yellow', 'orange', 'white', 'black', 'purple', 'pink', 'grey', 'brown', 'turquoise', 'navy',
] as const;

export interface Colour {
  readonly span: Span;
  readonly hex: `#${string}`;
}

export function coloursOf({ analysis }: Open): readonly Colour[] {
  return analysis.file.items.flatMap(writtenIn).flatMap(({ from, to, text }) => {
    const hex = bibColour(text);
    return hex === null ? [] : [{ span: { from, to }, hex }];
  });
}

/** How a colour can be written: its own word where it has one, else as a code; then the word that is nearest. */
export function colourTexts(hex: string): readonly string[] {
  const wanted = hex.toLowerCase();
  const nearest = [...bibNames].sort((a, b) => distance(wanted, bibColour(a)!) - distance(wanted, bibColour(b)!))[0]!;
  return bibColour(nearest) === wanted ? [nearest] : [`"${wanted}"`, nearest];
}

function writtenIn(line: TopLevel | Statement): readonly (Word | Quote)[] {
  switch (line.kind) {
    case 'team':
    case 'floaters':
      return line.bib ? [line.bib] : [];
    case 'drill':
    case 'progress':
    case 'regress':
      return line.body.lines.flatMap(writtenIn);
    case 'session':
      return line.body.lines.flatMap((each) => (each.kind === 'kit' ? each.items.flatMap(({ colour }) => colour ?? []) : []));
    default:
      return [];
  }
}

/** Squared, in the channels as they are written. */
function distance(a: string, b: string): number {
  const channel = (hex: string, at: number): number => Number.parseInt(hex.slice(at, at + 2), 16);
  return [1, 3, 5].reduce((sum, at) => sum + (channel(a, at) - channel(b, at)) ** 2, 0);
}
