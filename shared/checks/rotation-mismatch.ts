import { arrivesAt } from '../rotation/rotate.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { problem, type Check } from './check.ts';
import { rotationSpan } from './places.ts';

export const check: Check = {
  code: 'rotation-mismatch',
  group: 'rotation',
  severity: 'error',
  title: 'The rotation line and the movements disagree',
  why: 'The `rotate` line is what is read out on the grass, the movements are what is played. Where a player’s last run leads to one station and the line sends them to another, half the group will follow each. A player whose movements end at no station simply walks to where the line sends them.',
  source: null,
  bad: [
    `drill "Triangle" {
  area 14 x 14
  station Base at (2, 2) holds 2
  station Left at (2, 12)
  station Right at (12, 12)
  ball at Base
  sequence {
    Base passes to Left while Base follows
    Left passes to Right
    Right passes to next Base
  }
  rotate ⟦Base -> Right⟧ -> Left -> Base
}
`,
  ],
  good: [
    `drill "Triangle" {
  area 14 x 14
  station Base at (2, 2) holds 2
  station Left at (2, 12)
  station Right at (12, 12)
  ball at Base
  sequence {
    Base passes to Left while Base follows
    Left passes to Right
    Right passes to next Base
  }
  rotate Base -> Left -> Right -> Base
}
`,
  ],
  find: (analysis) => {
    const { drill, timeline, rotation } = analysis;
    if (!rotation || drill.rotation.kind === 'read') return [];
    return rotation.moves.flatMap((move) => {
      const track = timeline.tracks.find((each) => each.actor === move.actor);
      const last = track?.moves.at(-1);
      const ends = track ? arrivesAt(drill, track) : null;
      if (!last || ends === null || ends === move.from || ends === move.to) return [];
      const said = move.to === move.from ? `leaves \`${move.from}\` where they are` : `sends \`${move.from}\` to \`${move.to}\``;
      return problem(check, move.span ?? rotationSpan(analysis), `The rotation ${said}, but their last movement takes them to \`${ends}\`.`, {
        help: help(analysis, move.from, ends),
        related: [{ span: last.action.span, message: `This takes \`${move.from}\` to \`${ends}\`.` }],
      });
    });
  },
  cures: (found, { drill, timeline }) => {
    if (drill.rotation.kind !== 'arrows') return [];
    return drill.rotation.arrows.flatMap((arrow) => {
      const track = timeline.tracks.find((each) => each.actor === arrow.from);
      const ends = track && arrivesAt(drill, track);
      if (arrow.span.from !== found.span.from || !ends) return [];
      return [{ title: `Rotate ${arrow.from} -> ${ends}`, about: 'arrow', edits: [{ span: arrow.span, text: `${arrow.from} -> ${ends}` }] }];
    });
  },
};

function help({ drill }: DrillAnalysis, from: string, ends: string): string {
  return drill.rotation.kind === 'arrows' ? `Write ${from} -> ${ends}, or change the movement.` : 'Write the arrows out, or change the movement.';
}
