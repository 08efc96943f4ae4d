import type { DrillAnalysis } from '../analyse.ts';
import { personAt } from '../timeline/at.ts';
import { touchRuleFor } from '../timeline/limit.ts';
import type { Touch, Track } from '../timeline/timeline.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';
import { Who } from './say.ts';

export const check: Check = {
  code: 'touch-limit',
  group: 'ball',
  severity: 'error',
  title: 'More touches than the rule allows',
  why: 'A `rule touches` binds the pattern too. The touches of each player are counted from receiving the ball to playing it on; a pass that does not say how many touches it takes keeps to the rule by itself.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  rule touches 2
  sequence {
    Base passes to Wall
    Wall passes to Base, ⟦in 3 touches⟧
  }
}
`,
  ],
  good: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  rule touches 2
  sequence {
    Base passes to Wall
    Wall passes to Base, in 2 touches
  }
}
`,
  ],
  cures: (found, _, text) =>
    [1, 2, 3, 4].map((count) => ({
      title: count === 1 ? 'Play it first time' : `Play it in ${count} touches`,
      about: `${count} touches`,
      edits: [{ span: found.span, text: count === 1 ? 'first time' : text.slice(found.span.from, found.span.to).replace(/\d+/, String(count)) }],
    })).reverse(),
  inPhases: true,
  find: (analysis) => (analysis.drill.touchRules.length === 0 ? [] : analysis.timeline.tracks.flatMap((track) => tooMany(analysis, track))),
};

function tooMany({ drill }: DrillAnalysis, track: Track): Problem[] {
  const actor = drill.actors.find((each) => each.id === track.actor);
  if (!actor) return [];
  return possessions(track).flatMap((touches) => {
    const last = touches.at(-1)!;
    const rule = touchRuleFor(drill, actor, personAt(track, last.end));
    const count = touches.reduce((sum, touch) => sum + touch.count, 0);
    if (rule === null || count <= rule.most) return [];
    const limit = rule.most;
    return problem(check, last.action.touchesSpan ?? last.action.span, `${Who(track.actor)} takes ${count} touches; the rule allows ${limit}.`, {
      help: limit === 1 ? 'Play it first time.' : `Play it on with touch ${limit}, or change the rule.`,
      related: [{ span: rule.span, message: 'This is the rule.' }],
    });
  });
}

/** The touches of a player, split after each one that gives the ball away. */
function possessions(track: Track): Touch[][] {
  const all: Touch[][] = [];
  let open: Touch[] = [];
  for (const touch of track.touches) {
    open.push(touch);
    const keeps = touch.action.verb === 'touches to' || touch.action.verb === 'dribbles to' || touch.action.verb === 'turns';
    if (keeps && touch !== track.touches.at(-1)) continue;
    all.push(open);
    open = [];
  }
  return all;
}
