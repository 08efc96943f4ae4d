import { kitText } from '../session/words.ts';
import { problem, type Check } from './check.ts';
import { lineBefore, partsOf } from './sessions.ts';

/** A line that speaks of it shows that the coach has thought of it. */
const thoughtOf = /goal|anchor|weight|peg/i;

export const check: Check = {
  code: 'movable-goal',
  group: 'care',
  severity: 'info',
  title: 'Goals are carried',
  why: 'A goal that is not anchored can tip over and kill. Goals of any size are anchored or weighted in use and in storage, nobody climbs on them or swings from them, and they are looked over before each use. Told once a session, unless a `safety` line speaks of the goals. Your association, the maker of the goal and the venue may ask for more: their rules come first.',
  source: 'Goalpost safety guidance of The FA with DCMS, HSE and BSI; Laws of the Game 2024/25, Law 1 §10: goals "must be firmly secured to the ground"; CPSC, Guidelines for movable soccer goal safety, 1995: 23 deaths from tipping goals in the USA from 1979',
  bad: [
    `drill "Finish" {
  players 1
  area 20 x 20
  minigoal Far at (10, 19) facing down
  station Base at (10, 3)
}

session "Tuesday" {
  part ⟦"Finish"⟧ 20 min of "Finish"
}
`,
  ],
  good: [
    `drill "Finish" {
  players 1
  area 20 x 20
  minigoal Far at (10, 19) facing down
  station Base at (10, 3)
}

session "Tuesday" {
  safety "Anchor the goals, also when they are put away"
  part "Finish" 20 min of "Finish"
}
`,
  ],
  find: null,
  findInSession: (analysis) => {
    const parts = partsOf(analysis);
    const lines = [...analysis.session.safety, ...parts.flatMap(({ drill }) => drill?.drill.safety ?? [])];
    const first = parts.find(({ setUp }) => setUp.things.some(isGoal));
    if (!first || lines.some((line) => thoughtOf.test(line))) return [];
    const goals = (['goal', 'minigoal'] as const).flatMap((kind) => {
      const count = first.setUp.things.filter((thing) => thing.kind === kind).length;
      return count > 0 ? [kitText(kind, count)] : [];
    });
    return [problem(check, first.part.nameSpan, `"${first.part.name}" has ${goals.join(' and ')}: goals are anchored in use and in storage, and nobody climbs on them.`, {
      help: 'Say it in a `safety` line. This is guidance (The FA with DCMS, HSE and BSI; Law 1 §10); local rules and the people on the spot come first.',
    })];
  },
  curesInSession: (_, { session: { parts } }, text) => {
    const first = parts.find((part) => part.kind === 'part');
    return first ? [{ title: 'Add a safety line', about: 'safety', edits: [lineBefore(first, 'safety "Anchor the goals, also when they are put away"', text)] }] : [];
  },
};

function isGoal({ kind }: { readonly kind: string }): boolean {
  return kind === 'goal' || kind === 'minigoal';
}
