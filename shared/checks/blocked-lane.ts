import { distance, type Point } from '../geometry/point.ts';
import { closestOnSegment } from '../geometry/closest.ts';
import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { races } from '../games/possession.ts';
import type { Furniture } from '../model/drill.ts';
import { lastBegun } from '../timeline/at.ts';
import { queueSpot } from '../timeline/queue.ts';
import type { Pass, Track } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { lengthCures, playOver } from './cures.ts';
import { spot, Who, who } from './say.ts';

/** Metres from the middle of the ball's way at which something stands in it. The ball itself is 0.11 m to each side. */
const reach = { pole: 0.25, mannequin: 0.45, player: 0.5 };
/** What stands this close to either end of the pass is part of it (a pole shown to, a queue behind its first): metres. */
const ends = 1.3;

export const check: Check = {
  code: 'blocked-lane',
  group: 'ball',
  severity: 'warning',
  title: 'Something stands in the way of the pass',
  why: 'A ball on the ground does not go through a pole, a mannequin, a goal post or a player who stands still. The way of every ground pass is measured against them; lofted balls fly over, and who stands in goal is there for the shot.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  pole Post at (6, 6)
  ball at Base
  sequence {
    Base ⟦passes to Wall⟧
    Wall passes to Base, lofted
  }
}
`,
  ],
  good: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  pole Post at (6, 7)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base
  }
}
`,
  ],
  inPhases: true,
  find: (analysis) =>
    analysis.timeline.passes.flatMap((pass) => {
      const obstacle = pass.flight.kind === 'roll' ? obstacleOf(analysis, pass) : null;
      if (!obstacle) return [];
      const to = pass.to === null ? '' : ` to ${who(pass.to)}`;
      return problem(check, pass.action.span, `${obstacle.name} stands in the way of the ball from ${who(pass.from)}${to}.`, {
        help: pass.kind === 'shot' ? 'Shoot from a step to the side, or clear the way first.' : 'Move one of the two ends a step to the side, play around it, or write `lofted`.',
        related: [{ span: obstacle.span, message: obstacle.where }],
      });
    }),
  cures: (found, analysis, text) => {
    const isShot = analysis.timeline.passes.some(({ kind, action }) => kind === 'shot' && action.span.from === found.span.from);
    return [...(isShot ? [] : [playOver(found.span)]), ...lengthCures(found, analysis, text)];
  },
};

interface Obstacle {
  readonly name: string;
  /** Said at the line it comes from. */
  readonly where: string;
  readonly span: Span;
  readonly gap: number;
}

function obstacleOf({ drill, timeline }: DrillAnalysis, pass: Pass): Obstacle | null {
  const clear = (at: Point): boolean => distance(at, pass.fromAt) > ends && distance(at, pass.toAt) > ends;
  const things = drill.furniture.flatMap((thing) =>
    thing.id === pass.action.thing ? [] : postsOf(thing).map((post) => ({ ...post, name: nameOf(thing), where: 'This is in the way.', span: thing.span })),
  );
  const waiting = drill.stations.flatMap((station) =>
    Array.from({ length: Math.max(0, station.holds - 2) }, (_, index) => ({
      at: queueSpot(drill, station, index + 2),
      reach: reach.player,
      name: `The queue at \`${station.name}\``,
      where: `${station.holds} stand here, and those who wait are in the way.`,
      span: station.span,
    })),
  );
  const people = timeline.tracks.flatMap((track) => {
    if (track.actor === pass.from || track.actor === pass.to || races(drill, pass, track.actor)) return [];
    if (pass.kind === 'shot' && drill.actors.some(({ id, kind }) => id === track.actor && kind === 'keeper')) return [];
    const at = restsAt(track, pass);
    if (!at || closestOnSegment(at, pass.fromAt, pass.toAt).distance >= reach.player) return [];
    const actor = drill.actors.find((each) => each.id === track.actor)!;
    const where = distance(at, actor.home) < 0.5 ? 'They stand here.' : `They start here, and stand at ${spot(drill, at)} then.`;
    return [{ at, reach: reach.player, name: Who(track.actor), where, span: actor.span }];
  });
  return (
    [...things, ...waiting, ...people]
      .filter(({ at }) => clear(at))
      .map((each) => ({ ...each, gap: closestOnSegment(each.at, pass.fromAt, pass.toAt).distance - each.reach }))
      .filter((each) => each.gap < 0)
      .sort((a, b) => a.gap - b.gap)[0] ?? null
  );
}

/** The upright parts of a thing that stop a ball on the ground. */
function postsOf(thing: Furniture): { readonly at: Point; readonly reach: number }[] {
  switch (thing.kind) {
    case 'pole':
      return [{ at: thing.at, reach: reach.pole }];
    case 'mannequin':
    case 'hurdle':
      return [{ at: thing.at, reach: reach.mannequin }];
    case 'goal':
    case 'minigoal': {
      const half = (thing.width ?? 0) / 2;
      const side = { x: -(thing.facing?.y ?? 0), y: thing.facing?.x ?? 1 };
      return [-half, half].map((offset) => ({ at: { x: thing.at.x + side.x * offset, y: thing.at.y + side.y * offset }, reach: reach.pole }));
    }
    case 'cone':
    case 'disc':
    case 'gate':
    case 'ladder':
    case 'coach':
      return [];
  }
}

function nameOf(thing: Furniture): string {
  return thing.name === null ? `A ${thing.kind === 'minigoal' ? 'mini goal' : thing.kind}` : `\`${thing.name}\``;
}

/** Where somebody stands while the ball is on its way; null for who is on the move then. */
function restsAt(track: Track, pass: Pass): Point | null {
  const last = lastBegun(track.moves, pass.arrival);
  if (last && last.end > pass.start) return null;
  return last ? last.path.to : track.home;
}
