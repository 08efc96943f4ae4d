import type { Span } from '../../grammar/tree.ts';
import { seconds } from '../checks/say.ts';
import { sessionFacts } from './evening.ts';
import type { Open } from './open.ts';

export interface Lens {
  readonly span: Span;
  readonly title: string;
  /** Whether a click plays the drill; the others only say something. */
  readonly plays: boolean;
}

/**
 * Above every drill: how many players, how long one repetition takes, after how many everyone is home; and to play it. Above every session: how
 * long it takes, how many come, whether the kit is enough.
 */
export function lenses({ analysis }: Open): readonly Lens[] {
  const sessions = analysis.sessions.flatMap((each) => sessionFacts(each).map((title): Lens => ({ span: each.session.nameSpan, title, plays: false })));
  const drills = analysis.drills.flatMap(({ drill, measures, timeline }) => {
    const order = measures.rotation?.order;
    const facts = [
      ...(measures.players > 0 ? [`${measures.players} ${measures.players === 1 ? 'player' : 'players'}`] : []),
      ...(timeline.beats.length > 0 ? [`a repetition takes ${seconds(measures.duration)}`] : []),
      ...(order ? [`everyone is home after ${order} ${order === 1 ? 'repetition' : 'repetitions'}`] : []),
    ];
    const lens = (title: string, plays: boolean): Lens => ({ span: drill.nameSpan, title, plays });
    return [...(timeline.beats.length > 0 ? [lens('Play', true)] : []), ...facts.map((fact) => lens(fact, false))];
  });
  return [...drills, ...sessions];
}
