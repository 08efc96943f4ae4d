/** Who is on the plan: badges where everyone starts, the queues behind them, and what moves them. */
import type { Drill } from '../model/drill.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { furnitureSymbol } from './furniture.ts';
import { onSheet } from './ground.ts';
import { badge, initials, laterBadge, keeperLooks, type Look, looks, radius } from './people.ts';
import type { Theme } from './palette.ts';
import { drawnOfQueue, type LaterPlace, queuePlace } from './places.ts';
import type { Mark, Mover, Plan, Shape } from './scene.ts';
import { circle, filled, group, text, type Spot } from './shapes.ts';
import { personTrack } from './tracks.ts';
import { actorName } from './words.ts';

export interface Person {
  readonly at: Spot;
  readonly r: number;
  /** Null for those further back in a queue, who have no part. */
  readonly mover: Mover | null;
}

export interface Cast {
  readonly people: readonly Person[];
  /** Marks of those who have no part. */
  readonly waiting: readonly Mark[];
  readonly letters: ReadonlyMap<string, string>;
}

export function castOf(drill: Drill, timeline: Timeline, plan: Plan, theme: Theme): Cast {
  const [look, keeperLook] = [looks(drill, theme), keeperLooks(drill, theme)];
  const letters = initials(drill.actors);
  const tracks = new Map(timeline.tracks.map((track) => [track.actor, track]));
  const stations = new Map(drill.stations.map((station) => [station.id, station]));
  const apart = setApart(drill.actors.filter(({ kind, station }) => station === null && kind !== 'next').map(({ id, home }) => ({ id, at: onSheet(plan, home) })));
  const people: Person[] = [];
  const waiting: Mark[] = [];
  for (const actor of drill.actors) {
    const behind = actor.kind === 'next';
    const track = tracks.get(actor.id) ?? { actor: actor.id, home: actor.home, moves: [], touches: [], walk: null };
    const station = actor.station === null ? undefined : stations.get(actor.station);
    const home = onSheet(plan, track.home);
    const at = behind && station ? onSheet(plan, queuePlace(drill, station, 1, plan.perMetre)) : (apart.get(actor.id) ?? home);
    const r = behind ? radius.waiting : radius.person;
    const shapes = actor.kind === 'coach' ? furnitureSymbol({ kind: 'coach', width: null, facing: null }, plan.perMetre).shapes
      : behind ? waitingBadge(look(actor.team)) : badge(actor.kind === 'keeper' ? keeperLook(actor.team) : look(actor.team), r, letters.get(actor.name) ?? '', actor.kind === 'keeper');
    people.push({
      at, r,
      mover: { id: `person-${actor.id}`, kind: 'person', span: actor.span, label: actorName(actor), shapes, track: personTrack(track, timeline.end, plan, { x: at.x - home.x, y: at.y - home.y }) },
    });
  }
  for (const station of drill.stations) {
    const drawn = Math.min(station.holds, drawnOfQueue);
    for (let number = 2; number < drawn; number += 1) {
      const at = onSheet(plan, queuePlace(drill, station, number, plan.perMetre));
      people.push({ at, r: radius.waiting, mover: null });
      const more = number === drawn - 1 && station.holds > drawn ? [text({ x: 0, y: 0.7 }, `+${station.holds - drawn + 1}`, 1.9, 'ink', { anchor: 'middle', weight: 'bold' })] : [];
      waiting.push({
        id: `waiting-${station.id}-${number}`, layer: 'people', span: station.span, label: `Waiting at ${station.name}`,
        shapes: [group(at, [...waitingBadge(look(station.team)), ...more])],
      });
    }
  }
  return { people, waiting, letters };
}

/** Millimetres between the middles of two badges that do not touch. */
const clear = radius.person * 2 + 0.6;

/** Players so close that their badges would hide each other, moved apart on the sheet until they first move. */
function setApart(players: readonly { readonly id: string; readonly at: Spot }[]): ReadonlyMap<string, Spot> {
  const spots = players.map(({ at }) => ({ ...at }));
  for (let round = 0; round < 6; round += 1) {
    for (const [index, one] of spots.entries()) {
      for (const other of spots.slice(0, index)) {
        const [dx, dy] = [one.x - other.x, one.y - other.y];
        if (Math.abs(dx) >= clear || Math.abs(dy) >= clear) continue;
        const away = Math.sqrt(dx * dx + dy * dy);
        if (!(away < clear)) continue;
        const push = (clear - away) / 2;
        const [x, y] = away > 0.01 ? [(dx / away) * push, (dy / away) * push] : [push, 0];
        [one.x, one.y, other.x, other.y] = [one.x + x, one.y + y, other.x - x, other.y - y];
      }
    }
  }
  return new Map(players.map(({ id }, index) => [id, spots[index] as Spot]));
}

function waitingBadge({ colour }: Look): Shape[] {
  return [circle({ x: 0, y: 0 }, radius.waiting, filled('paper', colour === 'ink' ? 'ink' : 'note', 0.4))];
}

export function laterMark({ at, actor, index, number }: LaterPlace, cast: Cast): Mark {
  const letters = number === null ? null : laterLetters(cast.letters.get(actor.name) ?? '', number);
  return {
    id: `later-${actor.id}-${index}`, layer: 'later', span: actor.span, label: number === null ? null : `${actorName(actor)}, place ${number}`,
    shapes: [group(at, laterBadge(letters))],
  };
}

/** A1, A2 behind letters; primes behind a digit, which would become another number. */
function laterLetters(letters: string, number: number): string {
  return /\d$/.test(letters) ? `${letters}${'″'.repeat(number >> 1)}${'′'.repeat(number & 1)}` : `${letters}${number}`;
}
