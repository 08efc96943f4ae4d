/**
 * How long it takes to carry things. No source was found for any of it: all are CHOSEN, after what one knows from the ground. Who is quicker
 * changes them here and nowhere else.
 */
import type { Thing } from './analysis.ts';

export const carrying = {
  /** Metres a second, walking with things in the hands. CHOSEN. */
  speed: 1.4,
  /** Seconds to pick one up, and to put one down where it belongs, which is looked for; and how many of them one carries at a time. CHOSEN. */
  things: {
    disc: { up: 2, down: 5, load: 20 },
    cone: { up: 2, down: 5, load: 10 },
    pole: { up: 4, down: 8, load: 4 },
    hurdle: { up: 3, down: 6, load: 4 },
    mannequin: { up: 6, down: 10, load: 1 },
    ladder: { up: 15, down: 20, load: 2 },
    minigoal: { up: 10, down: 20, load: 1 },
    // Two carry it and anchor it: twice the way and the time of one.
    goal: { up: 60, down: 120, load: 0.5 },
  } satisfies Readonly<Record<Thing['kind'], { readonly up: number; readonly down: number; readonly load: number }>>,
  /** Where the kit lies that is not on the ground: the bottom left corner of the pitch. CHOSEN. */
  pile: { x: 0, y: 0 },
  /** Matching is exact up to so many things of a kind; more are matched in blocks, from left to right. CHOSEN for speed. */
  exactly: 80,
  block: 40,
} as const;
