import type { PartSlot, SessionAnalysis } from '../session/analysis.ts';
import { leastOf, needOf } from '../session/need.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';
import { list } from './say.ts';
import { partsOf, people } from './sessions.ts';

export const check: Check = {
  code: 'too-few-players',
  group: 'session',
  severity: 'error',
  title: 'More players needed than come',
  why: 'A team that is short or a place where nobody stands breaks the part. Counted are those who are there by then and can take part; teams must be full, and a queue works while one plays and one waits.',
  source: null,
  bad: [
    `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  players 6
  part ⟦"Wall"⟧ 20 min groups 2 of "Wall"
  part "Again" 10 min groups 2 of "Wall"
  joins 1 keeper for "Again"
}
`,
  ],
  good: [
    `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  players 7
  part "Wall" 20 min groups 2 of "Wall"
  part "Again" 10 min groups 2 of "Wall"
  joins 1 keeper for "Again"
}
`,
  ],
  find: null,
  findInSession: (analysis) => {
    if (analysis.session.players === null) return [];
    const special = notAllThere(analysis);
    return special.length > 0 ? special : partsOf(analysis).flatMap(tooFew);
  },
};

/** More who join later or cannot take part than come at all. */
function notAllThere({ session: { players, without, joins } }: SessionAnalysis): Problem[] {
  const special = [...without, ...joins].reduce((sum, { count }) => sum + count, 0);
  if (!players?.span || special <= players.value) return [];
  return [problem(check, players.span, `${people(players.value)} come, but ${special} join later or cannot take part.`, { help: 'Those who join later and those who look on count among the players.' })];
}

function tooFew(slot: PartSlot): Problem[] {
  const { part, groups, drill, resting } = slot;
  const there = groups.reduce((sum, { members }) => sum + members.length, 0) + resting.length;
  const written = part.sizes?.reduce((sum, size) => sum + size, 0) ?? 0;
  const who = there === 0 ? 'nobody is there' : there === 1 ? '1 is there' : `${there} are there`;
  if (written > there) {
    return [problem(check, part.nameSpan, `Groups of ${list(part.sizes!.map(String))} need ${people(written)}, and ${who} for "${part.name}".`, { help: 'Make the groups smaller, or leave their sizes to be worked out (groups 2).' })];
  }
  const least = drill ? needOf(drill).least : 0;
  const short = groups.find(({ members }) => members.length < least);
  if (!short) return [];
  const each = groups.length === 1 ? `\`${part.drill}\` needs ${people(least)}` : `Each of ${groups.length} groups of \`${part.drill}\` needs ${people(least)}`;
  const rest = part.resting.value > 0 ? `, of whom ${part.resting.value} ${part.resting.value === 1 ? 'rests' : 'rest'}` : '';
  return [problem(check, part.nameSpan, `${each}, and ${who} for "${part.name}"${rest}.`, { help: helpFor(slot, there, least) })];
}

/** What helps here: nobody makes fewer groups than one, and who rests can play. */
function helpFor({ part, groups, drill }: PartSlot, there: number, least: number): string {
  const playing = groups.length * least;
  const resting = part.resting.value;
  if (resting > 0 && there >= playing) return playing === there ? 'Let nobody rest: leave out `resting`.' : `Let fewer rest: \`resting ${there - playing}\`.`;
  const enough = drill?.drill.changes.find((change) => leastOf(change.drill) * groups.length <= there - resting);
  const easier = enough ? `Play it \`with "${enough.name}"\`` : 'Take a drill for fewer players, or write a version of it for fewer (`regress people`) and play that (`with`)';
  return groups.length > 1 ? `${easier}, or make fewer groups.` : `${easier}.`;
}
