/** What stands on the ground for a drill, each thing with its place in the drill's own coordinates. */
import { distance, plus, type Point } from '../geometry/point.ts';
import { markersOf, sameMarker } from '../measure/kit.ts';
import type { Drill, Furniture } from '../model/drill.ts';
import type { Thing } from './analysis.ts';

/** So many things of all groups together are worked out: more than any club has. */
export const mostThings = 2000;

/** The same things that the kit of the drill counts. */
export function thingsOf(drill: Drill): readonly Thing[] {
  return [...drill.furniture.flatMap(standing), ...markersOf(drill).map((at): Thing => ({ kind: 'disc', at }))];
}

function standing({ kind, at, width, facing }: Furniture): Thing[] {
  const here = { x: at.x, y: at.y };
  switch (kind) {
    case 'coach':
      return [];
    case 'gate': {
      const way = facing ?? { x: 0, y: 1 };
      const half = (width ?? 0) / 2;
      return [-half, half].map((across) => ({ kind: 'cone', at: plus(here, across * way.y, -across * way.x) }));
    }
    case 'cone':
    case 'disc':
    case 'pole':
    case 'mannequin':
    case 'goal':
    case 'minigoal':
    case 'hurdle':
    case 'ladder':
      return [{ kind, at: here }];
  }
}

/** The things of several groups in their places. Where the marker of one group lies, another needs none. */
export function together(things: readonly Thing[], places: readonly Point[]): readonly Thing[] {
  const all: Thing[] = [];
  const near = new Map<string, Point[]>();
  for (const place of places) {
    const own = things.map(({ kind, at }): Thing => ({ kind, at: plus(at, place.x, place.y) }));
    const added = own.filter(({ kind, at }) => !isMarker(kind) || !isNear(at, near));
    for (const { kind, at } of added) if (isMarker(kind)) addTo(near, at);
    all.push(...added);
  }
  return all;
}

function isMarker(kind: Thing['kind']): boolean {
  return kind === 'disc' || kind === 'cone';
}

/** Markers by square, a square as wide as the distance within which they are the same. */
type Near = Map<string, Point[]>;

function isNear(at: Point, near: Near): boolean {
  return [-1, 0, 1].some((i) => [-1, 0, 1].some((j) => near.get(square(at, i, j))?.some((other) => distance(other, at) < sameMarker)));
}

function addTo(near: Near, at: Point): void {
  const key = square(at, 0, 0);
  const known = near.get(key);
  if (known) known.push(at);
  else near.set(key, [at]);
}

function square({ x, y }: Point, i: number, j: number): string {
  return `${Math.floor(x / sameMarker) + i} ${Math.floor(y / sameMarker) + j}`;
}
