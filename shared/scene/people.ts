/** Players as badges: shape and fill tell the team, one or two letters tell who. */
import type { Actor, Drill, Id, Team } from '../model/drill.ts';
import { textWidth } from '../font/text.ts';
import { colourDistance, visions } from '../space/colour.ts';
import { bibColour, type Ink, type Paint, palettes, textOn, type Theme } from './palette.ts';
import type { Shape } from './scene.ts';
import { circle, filled, polygon, stroked, text } from './shapes.ts';

/** Radius on the sheet, millimetres, at every scale: who plays, who waits behind, where someone is later, the same with no room for letters. */
export const radius = { person: 2.6, waiting: 1.7, later: 2.1, passing: 0.9 } as const;

export interface Look {
  readonly outline: 'disc' | 'square' | 'hexagon' | 'triangle';
  readonly filling: 'solid' | 'rim' | 'banded' | 'double';
  readonly colour: Paint;
  /** Of letters on the colour. */
  readonly letters: Paint;
}

const teamLooks = [['disc', 'solid'], ['square', 'rim'], ['triangle', 'double'], ['disc', 'double']] as const;
const teamInks = ['team0', 'team1', 'team3'] as const;

/** How a team's players look; null stands for players without a team. */
export function looks(drill: Drill, theme: Theme): (team: Id | null) => Look {
  const plain: Look = { outline: 'disc', filling: 'solid', colour: 'ink', letters: 'paper' };
  const ranks = { team: 0, floaters: 0 };
  const table = new Map(drill.teams.map((team): [Id, Look] => {
    const rank = ranks[team.kind]++;
    // Whatever the bibs, floaters are never taken for a team.
    const [outline, filling] = team.kind === 'floaters' ? ['hexagon', 'banded'] as const : teamLooks[rank % teamLooks.length] as (typeof teamLooks)[number];
    const bib = theme === 'print' ? null : bibOf(team);
    return [team.id, {
      outline,
      filling,
      colour: bib ?? (team.kind === 'floaters' ? 'team2' : teamInks[rank % teamInks.length] as Paint),
      letters: bib ? textOn(bib) : 'paper',
    }];
  }));
  return (team) => (team === null ? plain : (table.get(team) ?? plain));
}

/** The colour that is written, or without one the colour that the name says: `Reds` are red. */
function bibOf({ bib, name }: Team): `#${string}` | null {
  return bib === null ? (bibColour(name) ?? bibColour(name.replace(/s$/, ''))) : bibColour(bib);
}

const keeperBibs = ['yellow', 'green', 'pink', 'turquoise', 'orange', 'purple', 'grey', 'black', 'white'] as const;
/** In CIE L*a*b*: as the check of the bibs has it. */
const apart = 20;

/** How a team's goalkeeper looks: as the team in shape and filling, in a colour that nobody else wears. */
export function keeperLooks(drill: Drill, theme: Theme): (team: Id | null) => Look {
  const look = looks(drill, theme);
  if (theme === 'print') return look;
  const worn = drill.teams.map(({ id }) => look(id).colour).map((colour) => (colour.startsWith('#') ? colour : palettes[theme][colour as Ink]));
  const table = new Map<Id | null, Look>();
  for (const { kind, team } of drill.actors) {
    if (kind !== 'keeper' || table.has(team)) continue;
    const colour = keeperBibs.map((bib) => bibColour(bib)!).find((each) => worn.every((other) => visions.every((vision) => colourDistance(each, other, vision) >= apart)));
    if (!colour) continue;
    worn.push(colour);
    table.set(team, { ...look(team), colour, letters: textOn(colour) });
  }
  return (team) => table.get(team) ?? look(team);
}

/** A badge about (0, 0). */
export function badge(look: Look, r: number, letters: string, keeper = false): Shape[] {
  const core: Shape[] = [];
  switch (look.filling) {
    case 'solid':
      core.push(outline(look, r, filled(look.colour, 'ink', 0.3)));
      break;
    case 'rim':
      core.push(outline(look, r, filled(look.colour, 'ink', 0.3)), outline(look, r * 0.7, filled('paper', 'ink', 0.2)));
      break;
    case 'banded':
      core.push(outline(look, r, filled('paper', 'ink', 0.4)), ...bands(r, look.colour));
      break;
    case 'double':
      core.push(outline(look, r, filled('paper', 'ink', 0.3)), outline(look, r * 0.84, filled(look.colour, 'ink', 0.3)));
      break;
  }
  if (keeper) core.push(circle({ x: 0, y: 0 }, r + 0.7, stroked('ink', 0.3)));
  const onColour = look.filling === 'solid' || look.filling === 'double';
  return [...core, ...lettering(letters, r, onColour ? look.letters : 'ink', look.outline === 'triangle' ? 0.35 : 0)];
}

/** Where someone is later: hollow, thin, with a number behind the letters; null where there is no room for them. */
export function laterBadge(letters: string | null): Shape[] {
  if (letters === null) return [circle({ x: 0, y: 0 }, radius.passing, filled('paper', 'later', 0.3))];
  return [circle({ x: 0, y: 0 }, radius.later, { fill: 'paper', stroke: 'later', width: 0.3, dash: '0.9 0.6' }), ...lettering(letters, radius.later, 'note', 0)];
}

/** One or two letters for every name, no two alike where the names differ. Players of a team go by their number. */
export function initials(actors: readonly Actor[]): ReadonlyMap<string, string> {
  const names = [...new Set(actors.map((actor) => actor.name))];
  const firsts = new Map<string, number>();
  for (const name of names) firsts.set(first(name), (firsts.get(first(name)) ?? 0) + 1);
  const taken = new Set<string>();
  const found = new Map<string, string>();
  const numbered = new Set(actors.filter((actor) => actor.team !== null && actor.station === null && /\d+$/.test(actor.name)).map((actor) => actor.name));
  for (const name of names) {
    if (numbered.has(name)) {
      found.set(name, Number(/\d+$/.exec(name)?.[0]).toString().slice(-2));
      continue;
    }
    const choices = firsts.get(first(name)) === 1 ? [first(name)] : pairs(name);
    const chosen = choices.find((choice) => !taken.has(choice)) ?? first(name);
    taken.add(chosen);
    found.set(name, chosen);
  }
  return found;
}

function first(name: string): string {
  return ([...name][0] ?? '?').toUpperCase();
}

function pairs(name: string): string[] {
  const [, ...rest] = [...name];
  const digits = /\d{1,2}$/.exec(name)?.[0];
  const numbered = digits === undefined ? [] : [`${first(name)}${digits}`];
  // LeftStart and left_start: the letter of the second word.
  const second = /(?:[\p{Ll}\d](\p{Lu})|_(\p{L}))/u.exec(name);
  const words = second ? [`${first(name)}${(second[1] ?? second[2] ?? '').toUpperCase()}`] : [];
  return [...numbered, ...words, ...[...rest.filter((char) => char !== '_'), ...'123456789'].map((char) => `${first(name)}${char}`)];
}

function lettering(letters: string, r: number, fill: Paint, drop: number): Shape[] {
  if (letters === '') return [];
  const size = Math.min(r * 1.12, (r * 1.12 * (r * 1.5)) / Math.max(r * 1.5, textWidth(letters, r * 1.12, 'bold')));
  return [text({ x: 0, y: size * 0.35 + drop * r }, letters, size, fill, { weight: 'bold', anchor: 'middle' })];
}

function outline(look: Look, r: number, pen: Parameters<typeof polygon>[1]): Shape {
  const corners = (count: number, size: number, turn: number) =>
    polygon(Array.from({ length: count }, (_, index) => {
      const angle = turn + (index * 2 * Math.PI) / count;
      return { x: Math.cos(angle) * size, y: Math.sin(angle) * size };
    }), pen);
  switch (look.outline) {
    case 'disc':
      return circle({ x: 0, y: 0 }, r, pen);
    case 'square':
      return corners(4, r * 1.22, Math.PI / 4);
    case 'hexagon':
      return corners(6, r * 1.1, 0);
    case 'triangle':
      return corners(3, r * 1.4, -Math.PI / 2);
  }
}

function bands(r: number, colour: Paint): Shape[] {
  return [-1, 1].map((side) => polygon([[0.55, 0.9], [-0.55, 0.9], [-0.8, 0.48], [0.8, 0.48]].map(([x = 0, y = 0]) => ({ x: r * x, y: r * y * side })), filled(colour, 'ink', 0.2)));
}
