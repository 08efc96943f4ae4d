import { headcount } from '../measure/measures.ts';
import type { Drill, Team } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

const game = (placed: number): string => `drill "Three each" {
  age U15
  area 25 x 30
  team Red bib red of 3
  team ⟦Blue⟧ bib blue of 3
  place 3 Red in area
  place ${placed} Blue in area
}
`;

export const check: Check = {
  code: 'player-count',
  group: 'games',
  severity: 'error',
  title: 'The players do not add up',
  why: 'The number at the top is what the coach counts on the evening, and what space, touches and waiting are worked out for. It must be the number who stand in the queues and the teams. And everybody in a team needs a place: who has none is missing from the drawing, the lanes and the numbers in zones.',
  source: null,
  bad: [
    `drill "Two" {
  players ⟦4⟧
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}
`,
    game(2),
  ],
  good: [
    `drill "Two" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}
`,
    game(3).replace(/[⟦⟧]/g, ''),
  ],
  find: ({ drill }) => [...miscounted(drill), ...drill.teams.flatMap((team) => unplaced(drill, team))],
};

function miscounted(drill: Drill): Problem[] {
  const placed = headcount(drill);
  if (!drill.players?.span || placed === 0 || drill.players.value === placed) return [];
  return [
    problem(check, drill.players.span, `${drill.players.value} players are written, and ${placed} stand on the pitch.`, {
      help: `Correct the number, or ${placesHelp(drill)}.`,
      fixes: [{ title: `Write players ${placed}`, edits: [{ span: drill.players.span, text: String(placed) }] }],
    }),
  ];
}

function placesHelp({ stations, teams }: Drill): string {
  const [team] = teams;
  return stations.length === 0 && team ? `make a team larger or smaller (${team.kind} ${team.name} of ${Math.max(1, team.size - 1)})` : 'let the stations hold more or fewer (holds 2)';
}

/** Who belongs to a team of a game and has no place is not drawn, and counted nowhere. */
function unplaced(drill: Drill, { id, name, size, nameSpan }: Team): Problem[] {
  const standing = drill.stations.filter(({ team }) => team === id).reduce((sum, { holds }) => sum + holds, 0);
  const placed = standing + drill.actors.filter(({ team, station }) => team === id && station === null).length;
  const isGame = drill.actors.some(({ kind }) => kind === 'player' || kind === 'keeper');
  if (placed >= size || !isGame) return [];
  const few = placed === 0 ? 'none' : placed === 1 ? 'one' : String(placed);
  return [
    problem(check, nameSpan, `\`${name}\` has ${size === 1 ? '1 player' : `${size} players`}, and ${few} of them ${placed > 1 ? 'have' : 'has'} a place; who has none is not drawn and plays no part.`, {
      severity: 'warning',
      help: `Give ${size - placed === 1 ? 'the other one' : `the other ${size - placed}`} a place (\`place ${size - placed} ${name} in area\`), or write the team smaller.`,
    }),
  ];
}
