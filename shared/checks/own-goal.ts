import { distance } from '../geometry/point.ts';
import type { Actor, Drill } from '../model/drill.ts';
import { problem, type Check } from './check.ts';
import { Who, who } from './say.ts';

const game = (goal: string): string => `drill "Two goals" {
  age U15
  area 30 x 40
  minigoal South at area.bottom facing up
  minigoal North at area.top facing down
  team Reds bib orange
  team Blues bib blue
  keeper Kit of Reds at 1 above South
  keeper Kai of Blues at 1 below North
  player Ann of Reds at (15, 20)
  player Bea of Reds at (5, 20)
  player Cid of Blues at (25, 20)
  ball at Ann
  phase "Finish" {
    Ann ⟦shoots at ${goal}⟧
  }
}
`;

export const check: Check = {
  code: 'own-goal',
  group: 'games',
  severity: 'warning',
  title: 'A shot at the goal of the own side',
  why: 'A goal belongs to the side whose goalkeeper stands nearer to it than to any other goal. Who shoots at it has mostly taken one name for the other. Goals without a goalkeeper belong to nobody.',
  source: null,
  bad: [game('South')],
  good: [game('North').replace(/[⟦⟧]/g, '')],
  inPhases: true,
  find: ({ drill, timeline }) =>
    timeline.passes.flatMap((pass) => {
      const shooter = drill.actors.find(({ id }) => id === pass.from);
      const guard = pass.kind === 'shot' && pass.action.thing !== null ? guardOf(drill, pass.action.thing) : undefined;
      if (!guard || !shooter || shooter.team !== guard.team) return [];
      return problem(check, pass.action.span, `${Who(shooter.id)} shoots at \`${pass.action.thing}\`, which is the goal of their own goalkeeper ${who(guard.id)}.`, {
        help: 'Shoot at the other goal, or put the goalkeeper of the other side into this one.',
        related: [{ span: guard.span, message: 'This goalkeeper stands there.' }],
      });
    }),
};

/** The goalkeeper who stands nearer to this goal than to any other one. */
function guardOf({ actors, furniture }: Drill, goal: string): Actor | undefined {
  const goals = furniture.filter(({ kind }) => kind === 'goal' || kind === 'minigoal');
  return actors.find(({ kind, home }) => {
    const nearest = goals.reduce((best, each) => (distance(home, each.at) < distance(home, best.at) ? each : best), goals[0]!);
    return kind === 'keeper' && nearest?.id === goal;
  });
}
