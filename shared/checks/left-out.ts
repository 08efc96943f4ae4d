import { needOf } from '../session/need.ts';
import type { PartSlot } from '../session/analysis.ts';
import { problem, type Check } from './check.ts';
import { endOf, partsOf, people } from './sessions.ts';

export const check: Check = {
  code: 'left-out',
  group: 'session',
  severity: 'error',
  title: 'Players with nothing to do',
  why: 'Nobody comes to training to look on. Everyone who is there and can take part is given a place in a group; a drill takes as many as stand in its teams and queues, and one more in each queue of two. Whoever is left over stands about, unless the part says that so many have a rest and take turns (`resting 1`).',
  source: 'That a queue takes one more than is written is a choice: no published figure was found.',
  bad: [
    `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  players 10
  part ⟦"Wall"⟧ 20 min groups 2 of "Wall"
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
  players 10
  part "Wall" 20 min groups 3 of "Wall"
}
`,
  ],
  find: null,
  findInSession: (analysis) => partsOf(analysis).flatMap((slot) => {
    const { part, groups, drill } = slot;
    const out = drill ? leftOut(slot) : 0;
    if (out <= 0) return [];
    const there = groups.reduce((sum, { members }) => sum + members.length, 0) + slot.resting.length;
    const most = needOf(drill!).most;
    const message = `${people(out)} of ${there} ${out === 1 ? 'has' : 'have'} nothing to do in "${part.name}": a group of \`${part.drill}\` takes ${most}.`;
    return problem(check, part.nameSpan, message, { help: 'Make another group, take a drill for more, or let them take turns (resting 1).' });
  }),
  curesInSession: (found, analysis) => {
    const slot = partsOf(analysis).find(({ part }) => part.nameSpan.from === found.span.from);
    const resting = slot && slot.part.resting.value + leftOut(slot);
    if (!slot || !resting) return [];
    const { span } = slot.part.resting;
    const edit = span ? { span, text: String(resting) } : { span: endOf(slot.part.span), text: ` resting ${resting}` };
    return [{ title: `Let ${resting} rest at a time and take turns`, about: 'resting', edits: [edit] }];
  },
};

/** Without a place beyond those who rest by plan, and too many in a group whose size is written. */
function leftOut({ part, groups, resting, drill }: PartSlot): number {
  const most = drill ? needOf(drill).most : Infinity;
  const surplus = groups.reduce((sum, { members }) => sum + Math.max(0, members.length - most), 0);
  return surplus + Math.max(0, resting.length - part.resting.value);
}
