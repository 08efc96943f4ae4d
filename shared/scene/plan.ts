/** The plan: furniture, ways, people and balls in their places, then words where they cover nothing. */
import type { DrillAnalysis } from '../analyse.ts';
import type { Point } from '../geometry/point.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Drill } from '../model/drill.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { originBox } from './area.ts';
import { castOf, laterMark } from './cast.ts';
import { ballsInPlay, furnitureOf, supplies } from './equipment.ts';
import type { Flagged } from './flagged.ts';
import { ballRadius, ballShapes, furnitureSymbol, heapWidth } from './furniture.ts';
import { type Box, boxAround, boxOf, onSheet } from './ground.ts';
import { labelRoom } from './labels.ts';
import { flags, names, numbers } from './lettering.ts';
import { cutMarks, laneMarks } from './lanes.ts';
import { type Convention, type DrawnLine, drawLines, type LineKind, lineKinds, type Way } from './lines.ts';
import { lineNames } from './panels.ts';
import { radius } from './people.ts';
import type { Theme } from './palette.ts';
import { drawnOfQueue, laterPlaces, queuePlace } from './places.ts';
import type { Mark, Mover, Plan } from './scene.ts';
import type { Spot } from './shapes.ts';
import { tallies } from './tallies.ts';
import { ballTrack } from './tracks.ts';
import { wonMarks } from './wins.ts';
import { beatLabels } from './words.ts';

export interface DrawnPlan {
  readonly marks: readonly Mark[];
  readonly movers: readonly Mover[];
  /** What stands there at the start: nothing is written on it. */
  readonly solids: readonly Box[];
}

export interface PlanOptions {
  readonly theme: Theme;
  readonly convention: Convention;
  readonly problems: readonly Flagged[];
  /** What the drill shows, when that is a phase. */
  readonly phase: PhaseAnalysis | null;
  /** The same with nothing but the moment that is drawn, if only one is. */
  readonly moment: PhaseAnalysis | null;
  readonly ways: readonly Way[];
  /** Where no words go, for what is drawn over the plan. */
  readonly clear?: readonly Box[];
}

/** `onPaper` is the grass on the sheet; words stay close to it. */
export function drawPlan({ drill, timeline }: DrillAnalysis, plan: Plan, onPaper: Box, { theme, convention, problems, phase, moment, ways, clear = [] }: PlanOptions): DrawnPlan {
  const cast = castOf(drill, timeline, plan, theme);
  const later = laterPlaces(drill, timeline, cast.people.map(({ at }) => at), plan);
  const people = cast.people.map(({ at, r }) => ({ ...at, r }));
  const passing = later.map(({ at, number }) => ({ ...at, r: number === null ? radius.passing : radius.later }));
  const discs = [...people, ...passing];
  const lines = drawLines(ways, plan, discs, convention);
  const furniture = furnitureOf(drill, plan);
  const balls = ballsInPlay(drill, timeline).map((ball): Mover => ({
    id: `ball-${ball.id}`, kind: 'ball', span: null, label: 'Ball', shapes: ballShapes(), track: ballTrack(ball, plan, radius.person + 0.5),
  }));

  const room = labelRoom({ left: onPaper.left - wordsReach, right: onPaper.right + 4.5, top: onPaper.top - 1.8, bottom: onPaper.bottom + wordsReach });
  const boxOfDisc = (disc: Spot & { readonly r: number }) => boxAround(disc, disc.r * 2 + 0.4);
  const solids = [
    ...people.map(boxOfDisc), ...furniture.map(({ solid }) => solid),
    ...balls.map(({ track }) => boxAround({ x: track[1] ?? 0, y: track[2] ?? 0 }, ballRadius * 2 + 0.6)),
  ];
  for (const box of [...solids, ...passing.map(boxOfDisc)]) room.block(box);
  for (const { head, points } of lines) {
    room.block(head);
    room.cross(points);
  }
  for (const box of clear) room.block(box);
  if (drill.area) room.block(originBox(plan));

  const marks: Mark[] = [
    ...furniture.map(({ mark }) => mark),
    ...lines.map(lineMark),
    ...later.map((place) => laterMark(place, cast)),
    ...cast.waiting,
    ...numbers(lines, beatLabels(drill, timeline), room),
    ...flags(problems, drill, timeline, plan, room),
    ...(moment ? [...cutMarks(moment, plan, room), ...wonMarks(moment, new Map(drill.teams.map(({ id, name }) => [id, name])), plan, room)] : []),
    ...names(drill, cast.letters, furniture, plan, room),
    ...(phase ? tallies(drill, phase, plan, room) : []),
    ...supplies(drill, timeline, plan, room),
    ...(phase ? laneMarks(phase, plan, room) : []),
  ];
  return { marks, movers: [...cast.people.flatMap(({ mover }) => (mover ? [mover] : [])), ...balls], solids };
}

/** What the key has to explain, at a scale of 1:`scale`. */
export function usedKinds({ drill, timeline }: DrillAnalysis, ways: readonly Way[], scale: number): { kinds: readonly LineKind[]; waiting: boolean; later: boolean } {
  const plan: Plan = { left: 0, bottom: 0, scale, perMetre: 1000 / scale };
  // What the badges at its ends hide is not drawn.
  const used = new Set(ways.filter((way) => way.beats.length > 0 || way.path.length * plan.perMetre > radius.person * 2).map((way) => way.kind));
  return {
    kinds: lineKinds.filter((kind) => used.has(kind)),
    waiting: drill.stations.some((station) => station.holds > 1),
    later: laterPlaces(drill, timeline, standing(drill, plan), plan).length > 0,
  };
}

/** Where everyone is drawn at the start. */
function standing(drill: Drill, plan: Plan): Spot[] {
  const playing = drill.actors.filter(({ kind }) => kind !== 'next').map(({ home }) => home);
  const queuing = drill.stations.flatMap((station) => Array.from({ length: Math.max(0, Math.min(station.holds, drawnOfQueue) - 1) }, (_, index) => queuePlace(drill, station, index + 1, plan.perMetre)));
  return [...playing, ...queuing].map((at) => onSheet(plan, at));
}

/** All that is drawn on the grass at so many millimetres a metre, in metres; `top` is the least y. */
export function grassOf(drill: Drill, timeline: Timeline, perMetre: number): Box {
  const around = (at: Point, reach: number): Point[] => [{ x: at.x - reach, y: at.y - reach }, { x: at.x + reach, y: at.y + reach }];
  const points: Point[] = drill.area ? [{ x: 0, y: 0 }, { x: drill.area.width, y: drill.area.length }] : [];
  for (const actor of drill.actors) points.push(...around(actor.home, 0.7));
  for (const station of drill.stations) {
    for (let number = 1; number < Math.min(station.holds, drawnOfQueue); number += 1) points.push(...around(queuePlace(drill, station, number, perMetre), 0.7));
  }
  for (const thing of drill.furniture) {
    const { left, right, top, bottom } = furnitureSymbol(thing, perMetre).box;
    points.push({ x: thing.at.x + left / perMetre, y: thing.at.y - bottom / perMetre }, { x: thing.at.x + right / perMetre, y: thing.at.y - top / perMetre });
  }
  for (const supply of drill.balls) points.push(...around(supply.at, supply.count > 1 ? Math.max(0.5, heapWidth / 2 / perMetre) : 0.5));
  for (const { shape } of drill.zones) points.push(...(shape.kind === 'polygon' ? shape.points : around(shape.centre, shape.radius)));
  for (const pass of timeline.passes) points.push(pass.fromAt, pass.toAt);
  for (const track of timeline.tracks) for (const move of track.moves) points.push(...around(move.path.to, 0.5));
  const sound = points.filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
  return sound.length === 0 ? { left: 0, right: 10, top: 0, bottom: 10 } : boxOf(sound);
}

/** What the overall dimensions measure: the area, or without one everything that is set out. */
export function measuredExtent(drill: Drill, grass: Box): Box {
  if (drill.area) return { left: 0, right: drill.area.width, top: 0, bottom: drill.area.length };
  const points = [...drill.stations.map((station) => station.at), ...drill.furniture.map((thing) => thing.at)];
  return points.length === 0 ? grass : boxOf(points);
}

/** Millimetres beyond the grass where there are dimensions: as near as the values of the chain leave free. */
const wordsReach = 2.6;

function lineMark({ way, shapes }: DrawnLine): Mark {
  return { id: way.id, layer: 'paths', span: way.span, label: `${lineNames[way.kind]}, ${way.actor}`, shapes };
}
