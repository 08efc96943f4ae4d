import { syntaxOf } from './form.ts';
import type { Context, StatementForm } from './form.ts';
import { modifierForms } from './modifiers.ts';
import { statementForms } from './statements/index.ts';
import { unitDocs, unitSpellings } from './units.ts';
import { verbForms } from './verbs.ts';
import { words } from './words.ts';
import type { WordGroup } from './words.ts';

/** The reference of the language in Markdown, for coaches. */
export function languageReference(madeBy: string): string {
  return [
    `<!-- ${madeBy} -->`,
    '# The drill language',
    opening,
    '## Writing',
    writing,
    '## How to read the forms',
    forms,
    ...contexts.flatMap(([context, title, about]) => [
      `## ${title}`, about, ...statementForms.filter(({ stands }) => stands[0] === context).map(statementEntry),
    ]),
    '## What players do',
    beats,
    table(['verb', 'what it means', 'example'], verbForms.map(({ verb, pieces, doc, example }) =>
      [code(`${verb} ${syntaxOf(pieces)}`.trim()), doc, code(example)])),
    '### How they do it',
    'These follow an action, with or without a comma before them.',
    table(['words', 'what they mean', 'example'], modifierForms.map(({ alternative, doc, example }) =>
      [code(syntaxOf(alternative.pieces)), doc, code(example)])),
    '## Places',
    places,
    table(['place', 'where it is', 'example'], [
      [code('(LENGTH, LENGTH)'), 'So far right and so far up from the bottom left corner of the area.', code('(6, 14)')],
      [code('NAME'), 'Where a station, a player or a piece of equipment is, or the middle of a zone.', code('Near')],
      [code('NAME.ANCHOR'), 'A corner, a side or the middle of the area or of a zone.', code('area.topRight')],
      [code('PLACE + (LENGTH, LENGTH)'), 'So far to the right and so far up from a place; negative numbers go left and down.', code('Near + (-2, 1)')],
      [code('LENGTH left of PLACE'), 'Also `right of`, `above` and `below`: so far from a place.', code('3 left of Near')],
      [code('between PLACE and PLACE'), 'Half-way.', code('between Near and Far')],
      [code('NUMBER from PLACE to PLACE'), 'Part of the way.', code('1/3 from Near to Far')],
      [code('mirror of PLACE across width|length'), 'The mirror image; across the length swaps left and right, across the width near and far.', code('mirror of Left across length')],
      [code('next NAME'), 'The player now waiting at a station.', code('next Base')],
    ]),
    `Anchors: ${of('anchor').map(({ word }) => code(word)).join(', ')}.`,
    '## Numbers and units',
    numbers,
    table(['unit', 'written', 'what it is'], Object.entries(unitDocs).map(([unit, doc]) =>
      [code(unit), [...unitSpellings].filter(([, meant]) => meant === unit).map(([word]) => code(word)).join(', '), doc])),
    '## Directions',
    `After ${code('facing')} comes ${code('up')}, ${code('down')}, ${code('left')}, ${code('right')} or a place.`,
    '## Words with a fixed meaning',
    table(['word', 'what it means', 'example'], of('value').map(({ word, doc, example }) => [code(word), doc, code(example)])),
    '## Words that cannot be names',
    'Everything in this list is spoken for; with a capital letter it is a name like any other (`left` is not, `Left` is).',
    [...new Set(words.filter(({ reserved }) => reserved).flatMap(({ word }) => word.split(' ')))].sort().map(code).join(' '),
  ].map((block) => `${block}\n`).join('\n');
}

const opening = `A file ends in \`.drill\` and holds drills and sessions. A line of a drill states one fact; a line of a sequence says what
happens next. What is written here is all there is: the words, what they mean, and an example of each.`;

const writing = `- A statement ends with its line, or with the brace that closes its block.
- A line that begins with \`while\`, \`then\` or a comma goes on with the one before; so does the line after one that ends with a comma.
  Comments may stand between them, blank lines may not.
- From \`//\` to the end of the line is a comment.
- The words of the language are in small letters. Every other word, in any script, can be a name: \`Left\`, \`Flügel\`, \`前\`.
- Words of your own stand in double quotes: \`"Find the free player"\`. Curly quotes, « » and \`‘ ’\` are understood as well.
- \`×\` is understood as \`x\`, \`4x4\` as \`4 x 4\`, \`→\` as \`->\`, and \`−\` and \`–\` as \`-\`.
- What may be left out at the end of a statement may stand in any order.
- There is one printed form: two spaces a block, columns where lines of one kind follow each other, and a beat of more than
  100 characters broken before \`while\`.`;

const forms = `Words in small letters are written as they are. \`NAME\` is a name, \`PLACE\` a place, \`LENGTH\` a number with or without a unit,
\`COUNT\` a number without one, \`"…"\` a text, \`LABEL\` a word or a text. What stands in \`[ ]\` may be left out; \`( | )\` is a choice; \`, …\` means more of the same.`;

const contexts: readonly (readonly [Context, string, string])[] = [
  ['file', 'Files', 'These stand on their own, outside every block.'],
  ['drill', 'Statements of a drill', 'These stand between `drill "…" {` and its `}`, and those that change something also in the block of `progress` and `regress`.'],
  ['session', 'Statements of a session', 'These stand between `session "…" {` and its `}`.'],
];

const beats = `A line in a sequence is a **beat**: a player, an action, then \`while\` and the actions that start with it, split by commas.
\`then\` chains the actions of one player: \`Left runs to (2, 8) then shows to (4, 8)\`. The player is the one who started this
repetition at that station; \`next Base\` is the one now waiting there. \`coach\` may play and be played to.`;

const places = 'Up the pitch is where y grows, right is where x grows. Places build on each other: `2 above Near` follows when `Near` moves.';

const numbers = `A bare number is in the drill's \`units\`. Values add, subtract, multiply and divide, with brackets: \`(wide + 2) / 3\`.
\`area.width\` and \`area.length\`, and the same of zones, are values too. A unit belongs to the number it follows; in \`18 x 24 yd\` it counts for both sides.`;

function statementEntry({ keyword, pieces, body, stands, doc, example }: StatementForm): string {
  const syntax = `${keyword} ${syntaxOf(pieces)}`.trim() + (body === null ? '' : ' { … }');
  const elsewhere = stands.length > 1 ? ` Also ${stands.slice(1).map((context) => (context === 'file' ? 'outside' : `in a ${context}`)).join(' and ')}.` : '';
  return `### ${keyword}\n\n${doc}${elsewhere}\n\n    ${syntax}\n\n\`\`\`drill\n${example}\n\`\`\``;
}

function of(group: WordGroup): typeof words {
  return words.filter((entry) => entry.group === group);
}

function code(text: string): string {
  return `\`${text.replaceAll('|', '\\|').split('\n').join(' ')}\``;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [head, head.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');
}
