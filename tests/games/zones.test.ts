import SimplePointInAreaLocator from 'jsts/org/locationtech/jts/algorithm/locate/SimplePointInAreaLocator.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import Location from 'jsts/org/locationtech/jts/geom/Location.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import polygonClipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { alone, analyse } from '../../shared/analyse.ts';
import { countAt, zonesNamed } from '../../shared/games/zones.ts';
import { depthIn } from '../../shared/geometry/depth.ts';
import { area, overlap } from '../../shared/geometry/polygon.ts';
import type { Point } from '../../shared/geometry/point.ts';
import { randomFrom } from './random.ts';

/** A star-shaped zone round a point: simple, mostly not convex. */
function star(random: (low: number, high: number) => number): Point[] {
  const [x, y, corners] = [random(-5, 5), random(-5, 5), Math.floor(random(3, 9))];
  return Array.from({ length: corners }, (_, index) => {
    const [reach, turn] = [random(2, 9), ((index + random(0, 0.8)) * 2 * Math.PI) / corners];
    return { x: x + reach * Math.cos(turn), y: y + reach * Math.sin(turn) };
  });
}

const ring = (points: readonly Point[]): [number, number][] => points.map(({ x, y }) => [x, y]);
const areaOf = (shapes: readonly (readonly (readonly (readonly [number, number])[])[])[]): number =>
  shapes.reduce((sum, [outer, ...holes]) => sum + flat(outer!) - holes.reduce((all, hole) => all + flat(hole), 0), 0);
const flat = (corners: readonly (readonly [number, number])[]): number => area(corners.map(([x, y]) => ({ x, y })));

test('what two zones share, and what they cover together, is as polygon-clipping says', () => {
  const random = randomFrom(7);
  for (let index = 0; index < 300; index += 1) {
    const [a, b] = [star(random), star(random)];
    const shared = areaOf(polygonClipping.intersection([ring(a)], [ring(b)]));
    const together = areaOf(polygonClipping.union([ring(a)], [ring(b)]));
    expect(overlap(a, b), `pair ${index}`).toBeCloseTo(shared, 6);
    expect(area(a) + area(b) - overlap(a, b), `pair ${index}`).toBeCloseTo(together, 6);
  }
});

test('who is inside a zone, and how far from its border, is as jsts says', () => {
  const random = randomFrom(11);
  const factory = new GeometryFactory();
  for (let index = 0; index < 200; index += 1) {
    const points = star(random);
    const polygon = factory.createPolygon([...points, points[0]!].map(({ x, y }) => new Coordinate(x, y)));
    for (let each = 0; each < 10; each += 1) {
      const at = { x: random(-12, 12), y: random(-12, 12) };
      const corner = new Coordinate(at.x, at.y);
      const depth = depthIn({ kind: 'polygon', points }, at);
      expect(depth > 0).toBe(SimplePointInAreaLocator.locate(corner, polygon) === Location.INTERIOR);
      expect(Math.abs(depth)).toBeCloseTo(DistanceOp.distance(polygon.getExteriorRing(), factory.createPoint(corner)), 9);
    }
  }
});

describe('who is where when', () => {
  const text = `drill "Zones" {
  area 30 x 30
  split area by length into Back 10, Middle 10, Front 10
  zones Box 4 x 4 in corners of area
  team Red
  team Blue
  floaters Joker
  player Ann of Red at (5, 5)
  player Bea of Red at (25, 5)
  player Cid of Blue at (15, 8)
  player Eve of Joker at (2, 2)
  ball at Ann
  phase "Through" {
    Ann dribbles to (5, 25)
    Ann waits 1 s while Cid wins the ball from Ann
  }
}`;
  const { drill, phases } = analyse(text, alone).drills[0]!;
  const { numbers, possession, timeline } = phases[0]!;
  const at = (zone: string, time: number) => {
    const ids = zonesNamed(drill, zone).map(({ id }) => id);
    const { attackers, floaters, defenders } = countAt(drill, numbers.filter((each) => ids.includes(each.zone)), possession, time);
    return `${attackers} + ${floaters} v ${defenders}`;
  };
  const end = timeline.end + 1;

  test.each([
    ['Back', 0, '2 + 1 v 1'],
    ['Box', 0, '0 + 1 v 0'],
    ['BoxTopLeft', 0, '0 + 0 v 0'],
    ['Back', end, '0 + 1 v 1'],
    ['Front', end, '1 + 0 v 1'],
  ])('%s at %d s: %s', (zone, time, wanted) => {
    expect(at(zone, time)).toBe(wanted);
  });

  test('a stay begins and ends where the border is', () => {
    const [stay] = numbers.find(({ zone }) => zone === 'Middle')!.stays;
    const track = timeline.tracks.find(({ actor }) => actor === 'Ann')!;
    expect(stay!.actor).toBe('Ann');
    expect(stay!.cameBy).toBe(track.moves[0]);
    expect(stay!.leftBy).toBe(track.moves[0]);
  });

  test('the ball changes sides when it is won', () => {
    expect(possession.map(({ team }) => team)).toEqual(['Red', 'Blue']);
    expect(possession[0]!.to).toBe(possession[1]!.from);
  });
});
