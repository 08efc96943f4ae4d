import { long } from '../checks/say.ts';
import { distance } from '../geometry/point.ts';
import { formatNumber } from '../units.ts';
import { actionsOf, endOfTarget } from './lookup.ts';
import type { Open } from './open.ts';

export interface InlayHint {
  readonly at: number;
  readonly text: string;
  /** The same in a sentence. */
  readonly tip: string;
}

/** Behind every pass how long it is, and by how much its receiver is early (+) or late (−). */
export function inlayHints({ analysis }: Open): readonly InlayHint[] {
  return analysis.drills.flatMap((each) =>
    actionsOf(each).flatMap(({ action, pass }) => {
      if (!pass) return [];
      const length = long(each.drill, distance(pass.fromAt, pass.toAt));
      const { slack, to } = pass;
      const at = endOfTarget(action);
      if (slack === null) return [{ at, text: length, tip: `${length} long.` }];
      const time = `${formatNumber(Math.abs(slack), 1)} s`;
      const [sign, when] = slack < 0 ? ['−', 'after'] : ['+', 'before'];
      return [{ at, text: `${length} ${sign}${time}`, tip: `${length} long; ${to} is ready ${time} ${when} the ball.` }];
    }),
  );
}
