import type { Span } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'wrong-kind',
  group: 'writing',
  severity: 'error',
  title: 'Not the kind of thing that can do this',
  why: 'Players run and pass, goals are shot at, zones are played into. A cone that is asked to run, or a pass to a pole, is a name taken for another.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  pole Near at (6, 2)
  ball at Base
  sequence {
    ⟦Near⟧ runs to (6, 10)
  }
}
`,
    `drill "Two" {
  area 12 x 12
  let gap = 3
  station Base at 2 above ⟦gap⟧
}
`,
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall ⟦via (6, 10)⟧
    Wall passes to Base
  }
}
`,
  ],
  good: [
    `drill "Two" {
  area 12 x 12
  let gap = 3
  station Base at gap above area.bottom
}
`,
  ],
  find: null,
};

/** ``wrongKind(span, 'Near', 'a pole', 'only players can run')``: `Near` is a pole; only players can run. */
export function wrongKind(span: Span, name: string, what: string, because: string): Problem {
  return problem(check, spanOf(span), `\`${name}\` is ${what}; ${because}.`);
}

/** A ball that is to go round a corner. */
export function straightOnly(span: Span, modifier: 'via' | 'around'): Problem {
  return problem(check, spanOf(span), `A ball goes straight: \`${modifier}\` is for runs and dribbles.`, {
    help: 'Leave it out; dribble there, or play the ball in two passes.',
  });
}

/** A progression written inside another one. */
export function nestedChange(span: Span): Problem {
  return problem(check, spanOf(span), 'A change cannot hold another one; put it beside, in the drill itself.');
}
