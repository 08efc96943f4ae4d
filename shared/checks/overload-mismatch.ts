import type { DrillAnalysis } from '../analyse.ts';
import { countAt, staysIn, zonesNamed } from '../games/zones.ts';
import type { Drill, Rule } from '../model/drill.ts';
import { problem, type Check } from './check.ts';
import { passagesOf, type Passage } from './games.ts';
import { list } from './say.ts';

const game = (expect: string): string => `drill "Build up" {
  age U15
  area 30 x 30
  zone Back 30 x 15 in area.bottomLeft
  team Reds bib orange
  team Blues bib blue
  floaters Jokers bib white
  player Ann of Reds at (6, 8)
  player Bea of Reds at (24, 8)
  player Cid of Blues at (15, 12)
  player Dan of Blues at (15, 20)
  player Eve of Jokers at (15, 3)
  ball at Ann
  ${expect}
}
`;

export const check: Check = {
  code: 'overload-mismatch',
  group: 'games',
  severity: 'error',
  title: 'The overload is not what stands there',
  why: '`expect 4 v 2 in Back` says what the game is to give: four of the side with the ball, floaters counted in and goalkeepers left out, against two. It holds when it stands there at the start or at the end of a phase, or, without phases, when the game begins. Zones that share a name are counted together.',
  source: null,
  bad: [game('⟦expect 4 v 1 in Back⟧')],
  good: [game('expect 3 v 1 in Back')],
  find: (analysis) => analysis.drill.rules.flatMap((rule) => (rule.kind === 'expect' ? mismatch(analysis, rule) : [])),
};

function mismatch(analysis: DrillAnalysis, rule: Extract<Rule, { kind: 'expect' }>) {
  const moments = passagesOf(analysis).flatMap((passage) => momentsOf(analysis.drill, rule.zone, passage));
  if (moments.length === 0 || moments.some(({ ours, theirs }) => ours === rule.ours && theirs === rule.theirs)) return [];
  const seen = moments.slice(0, 4).map(({ when, ours, theirs }) => `${ours} v ${theirs} ${when}`);
  return problem(check, rule.span, `In \`${rule.zone}\` there are ${list(seen)}, never ${rule.ours} v ${rule.theirs}.`, {
    help: 'Write what stands there, or move players into the zone or out of it.',
    fixes: [...new Map(moments.slice(0, 4).map((moment) => [`${moment.ours} v ${moment.theirs}`, moment])).keys()].map((numbers) => ({
      title: `Expect ${numbers}`,
      edits: [{ span: rule.span, text: `expect ${numbers} in ${rule.zone}` }],
    })),
  });
}

interface Moment {
  readonly when: string;
  readonly ours: number;
  readonly theirs: number;
}

/** None while no side has the ball: then nobody is in possession. */
function momentsOf(drill: Drill, zone: string, { phase, timeline, possession }: Passage): Moment[] {
  if (possession.length === 0) return [];
  const numbers = zonesNamed(drill, zone).map(({ id, shape }) => ({ zone: id, stays: staysIn(shape, timeline, 0) }));
  const name = phase?.name ? ` of “${phase.name}”` : '';
  const times = phase === null ? [{ when: 'when it begins', time: 0 }] : [{ when: `at the start${name}`, time: 0 }, { when: `at the end${name}`, time: timeline.end }];
  return times.map(({ when, time }) => {
    const { attackers, floaters, defenders } = countAt(drill, numbers, possession, time);
    return { when, ours: attackers + floaters, theirs: defenders };
  });
}
