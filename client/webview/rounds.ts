/** Who is where when: in one repetition, or in several in a row, where everyone plays the part that the rotation has brought them to. */
import { moverAt } from '../../shared/scene/frame.ts';
import type { Mover, Scene } from '../../shared/scene/scene.ts';
import type { Spot } from '../../shared/scene/shapes.ts';
import type { Turn } from './messages.ts';

export interface Play {
  /** Seconds of all repetitions together. */
  readonly length: number;
  /** Repetitions. */
  readonly count: number;
  /** Seconds from one start to the next. */
  readonly period: number;
  readonly momentAt: (time: number) => Moment;
  /** By the ids of movers and marks. What is a mark has its spot from where it is drawn. */
  readonly spotsAt: (moment: Moment) => ReadonlyMap<string, Lifted>;
}

export interface Moment {
  /** From 0. */
  readonly round: number;
  /** Seconds since this repetition began; after the scene's end people go to their next places. */
  readonly time: number;
}

/** Millimetres on the sheet, and metres above the ground. */
export interface Lifted extends Spot {
  readonly height: number;
}

export function once(scene: Scene): Play {
  return {
    length: scene.end, count: 1, period: scene.end,
    momentAt: (time) => ({ round: 0, time: Math.min(Math.max(time, 0), scene.end) }),
    spotsAt: ({ time }) => new Map(scene.movers.map((mover) => [mover.id, moverAt(mover.track, time)])),
  };
}

/** Seconds between the last movement and the next start, so that the eye can follow who goes where. */
const breath = 1;
const mostRounds = 30;

/** Until everyone is where they began; twice where nobody changes places. */
export function goingRound(scene: Scene, turn: Turn | null): Play {
  const period = Math.max(scene.end, turn?.interval ?? 0) + breath;
  const count = Math.min(mostRounds, Math.max(2, turn?.order ?? 2));
  const parts = partsOf(scene, turn);
  const playedAt = new Map(parts.flatMap((part) => (part.place === null ? [] : [[part.place, part]])));
  const partIn = (part: Part, round: number): Part => {
    let { place } = part;
    for (let gone = 0; place !== null && gone < round; gone += 1) place = turn?.image?.[place] ?? place;
    return place === null ? part : (playedAt.get(place) ?? part);
  };
  return {
    length: count * period, count, period,
    momentAt: (time) => {
      const round = Math.min(count - 1, Math.max(0, Math.floor(time / period)));
      return { round, time: Math.min(Math.max(time, 0) - round * period, period) };
    },
    spotsAt: ({ round, time }) => new Map(parts.map((part) => {
      const { x, y, height } = onTheWay(partIn(part, round).track, partIn(part, round + 1).track, time, period, scene.plan.perMetre);
      return [part.id, { x: x - part.base.x, y: y - part.base.y, height }];
    })),
  };
}

/** Somebody or a ball, with what is done from where they begin. */
interface Part {
  readonly id: string;
  /** Index in the rotation's places; null for balls, coaches and players of games. */
  readonly place: number | null;
  readonly track: Mover['track'];
  /** Where a mark is drawn. A mover is drawn about (0, 0). */
  readonly base: Spot;
}

function partsOf(scene: Scene, turn: Turn | null): Part[] {
  const placeOf = new Map((turn?.places ?? []).map(({ station, number }, index) => [idOf(station, number), index]));
  const movers = scene.movers.map((mover): Part => ({ id: mover.id, place: placeOf.get(mover.id) ?? null, track: mover.track, base: { x: 0, y: 0 } }));
  const queued = scene.marks.flatMap((mark): Part[] => {
    const place = placeOf.get(mark.id);
    const [shape] = mark.shapes;
    return place === undefined || shape?.kind !== 'group' ? [] : [{ id: mark.id, place, track: [0, shape.x, shape.y, 0], base: shape }];
  });
  return [...movers, ...queued];
}

/** As the drawing calls the first, the second and the others of a queue. */
function idOf(station: string, number: number): string {
  if (number === 1) return `person-${station}`;
  return number === 2 ? `person-next ${station}` : `waiting-${station}-${number - 1}`;
}

/** Metres a second at which people go to their next place once the scene has them at rest. */
const stroll = 1.8;

function onTheWay(track: Mover['track'], next: Mover['track'], time: number, period: number, perMetre: number): Lifted {
  const rests = track[track.length - 4] ?? 0;
  if (time <= rests) return moverAt(track, time);
  const from = moverAt(track, rests);
  const to = moverAt(next, 0);
  const away = Math.hypot(to.x - from.x, to.y - from.y) / perMetre;
  const leaves = Math.min(Math.max(rests, period - away / stroll), period - breath / 2);
  const share = Math.min(1, Math.max(0, time - leaves) / (period - leaves));
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share, height: from.height * (1 - share) };
}
