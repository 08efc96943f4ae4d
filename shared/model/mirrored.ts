/** `sequence "left" mirrors "right" across length`: the same beats with everyone and everything on the other side. */
import type { Across, Play, Span } from '../../grammar/tree.ts';
import { noMirrorImage } from '../checks/unknown-name.ts';
import { distance, type Point } from '../geometry/point.ts';
import { metresIn } from '../units.ts';
import type { Action, Beat, Located, Part, Sequence } from './drill.ts';
import { mirrored } from './places.ts';
import { areaBounds, type Scope } from './scope.ts';
import { spanOf } from './span.ts';
import { called, kindOf, spotOf, type Bounds, type Thing } from './things.ts';

/** Standing this near to the mirrored spot, in metres, counts as standing on it. */
const near = 0.25;

/** Null when the drill has no area, or someone has no counterpart. Everything in it carries the span of the statement. */
export function mirroredSequence(statement: Extract<Play, { kind: 'mirrored' }>, original: Sequence, scope: Scope): Sequence | null {
  const { span, across } = statement;
  const bounds = areaBounds(span, scope);
  if (bounds === null) return null;
  const mirror = mirrorOf(scope, bounds, across, span);
  const beats = original.beats.map((beat) => beatMirrored(beat, mirror));
  if (!mirror.whole()) return null;
  return {
    id: statement.name.text, kind: original.kind, name: statement.name.text, span, nameSpan: spanOf(statement.name),
    mirrorOf: original.id, after: null, beats,
  };
}

interface Mirror {
  readonly span: Span;
  readonly point: (point: Point) => Point;
  /** The name of the counterpart: of an actor (`next Base` too), a station or a thing. */
  readonly name: <T extends string | null>(name: T) => T;
  /** Whether everyone asked for so far had a counterpart. */
  readonly whole: () => boolean;
}

function mirrorOf(scope: Scope, bounds: Bounds, across: Across, span: Span): Mirror {
  const point = (at: Point) => mirrored(at, across, bounds);
  const images = new Map<string, string | null>();
  const image = (name: string): string | null => {
    const known = images.get(name);
    if (known !== undefined) return known;
    const found = counterpart(name, scope, point, span);
    images.set(name, found);
    return found;
  };
  const next = 'next ';
  return {
    span,
    point,
    name<T extends string | null>(name: T): T {
      if (name === null || name === 'coach') return name;
      const queued = name.startsWith(next);
      const found = image(queued ? name.slice(next.length) : name);
      if (queued && found !== null) scope.queued.add(found);
      return (queued ? `${next}${found}` : found) as T;
    },
    whole: () => [...images.values()].every((found) => found !== null),
  };
}

/** Whoever or whatever of the same sort is at the mirrored spot; reports when nobody is. */
function counterpart(name: string, scope: Scope, point: Mirror['point'], span: Span): string | null {
  const thing = scope.things.get(name);
  const spot = thing && spotOf(thing);
  if (!thing || !spot) return null;
  const wanted = point(spot);
  const sort = sortOf(thing);
  let best: { readonly name: string; readonly distance: number } | null = null;
  for (const [other, candidate] of scope.things) {
    const place = candidate && sortOf(candidate) === sort ? spotOf(candidate) : null;
    const off: number = place ? distance(place, wanted) : Infinity;
    if (off <= near && (best === null || off < best.distance)) best = { name: other, distance: off };
  }
  if (best === null) {
    const unit = metresIn(scope.units);
    scope.report(noMirrorImage(span, name, called(kindOf(thing)), { x: wanted.x / unit, y: wanted.y / unit }));
  }
  return best?.name ?? null;
}

/** Things that can stand in for each other. */
function sortOf(thing: Thing): string {
  return thing.kind === 'player' ? thing.player.team : kindOf(thing);
}

function beatMirrored(beat: Beat, mirror: Mirror): Beat {
  const lead = partMirrored(beat.lead, mirror);
  const meanwhile = beat.meanwhile.map((part) => partMirrored(part, mirror));
  return { ...beat, span: mirror.span, lead, meanwhile };
}

function partMirrored(part: Part, mirror: Mirror): Part {
  const { span } = mirror;
  const actor = mirror.name(part.actor);
  return { actor, subjectSpan: span, span, chain: part.chain.map((action) => actionMirrored(action, mirror)) };
}

function actionMirrored(action: Action, mirror: Mirror): Action {
  const { span } = mirror;
  const shown = (original: Span | null) => original && span;
  const at: Located | null = action.at && { ...mirror.point(action.at), span };
  return {
    ...action,
    span,
    verbSpan: span,
    at,
    to: mirror.name(action.to),
    station: mirror.name(action.station),
    thing: mirror.name(action.thing),
    targetSpan: shown(action.targetSpan),
    about: action.about && {
      at: mirror.point(action.about.at), who: mirror.name(action.about.who), thing: mirror.name(action.about.thing), span,
    },
    receiver: mirror.name(action.receiver),
    receiverSpan: shown(action.receiverSpan),
    touchesSpan: shown(action.touchesSpan),
    via: action.via.map(mirror.point),
  };
}
