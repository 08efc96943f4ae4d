/** A place on the ground in metres: x to the right, y up the pitch, (0, 0) the bottom left corner of the area. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Not Math.hypot, which is many times slower: this is asked thousands of times a drill. */
export function distance(a: Point, b: Point): number {
  return Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2);
}

export function plus(a: Point, dx: number, dy: number): Point {
  return { x: a.x + dx, y: a.y + dy };
}

/** The point a fraction of the way from a to b; 0 gives a, 1 gives b. */
export function along(a: Point, b: Point, fraction: number): Point {
  return { x: a.x + (b.x - a.x) * fraction, y: a.y + (b.y - a.y) * fraction };
}
