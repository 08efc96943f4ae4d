/**
 * How long it takes to carry things. No source was found for any of it: all are CHOSEN, after what one knows from the ground. Who is quicker
 * changes them here and nowhere else.
 */
import type { Thing } from './analysis.ts';

export const carrying = {
  /** Metres a second, walking with things in the hands. CHOSEN. */
  speed: 1.4,
  /** Seconds to pick one thing up, or to put it down where it belongs; and how many of them one carries at a time. CHOSEN. */
  things: {
    disc: { seconds: 2, load: 20 },
    cone: { seconds: 2, load: 10 },
    pole: { seconds: 5, load: 4 },
    hurdle: { seconds: 4, load: 4 },
    mannequin: { seconds: 8, load: 1 },
    ladder: { seconds: 15, load: 2 },
    minigoal: { seconds: 15, load: 1 },
    // Two carry it and anchor it: twice the way of one.
    goal: { seconds: 120, load: 0.5 },
  } satisfies Readonly<Record<Thing['kind'], { readonly seconds: number; readonly load: number }>>,
  /** Where the kit lies that is not on the ground: the bottom left corner of the pitch. CHOSEN. */
  pile: { x: 0, y: 0 },
  /** Rounds of matching are exact up to so many things of a kind; more are matched in blocks of so many, from left to right. CHOSEN for speed. */
  most: 80,
} as const;
