import type { DrillAnalysis } from '../analyse.ts';
import { passing } from '../games/breaches.ts';
import { countAt, staysOf, zonesNamed } from '../games/zones.ts';
import type { Drill, Rule } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';
import { isKeeper, passagesOf, type Passage } from './games.ts';
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
  why: '`expect 4 v 2 in Back` says what the game is to give: four of the side with the ball, floaters counted in and goalkeepers left out, against two. It holds when it stands there as the game is set out; or else, at some moment of every phase in which somebody has the ball in that zone, for half a second at least. Who stands on the line is in. Zones that share a name are counted together.',
  source: 'Half a second: a choice without a source. On the line is in: common practice, no source.',
  bad: [game('⟦expect 4 v 1 in Back⟧')],
  good: [game('expect 3 v 1 in Back')],
  find: (analysis) => analysis.drill.rules.flatMap((rule) => (rule.kind === 'expect' ? mismatch(analysis, rule) : [])),
};

function mismatch(analysis: DrillAnalysis, rule: Expect): Problem[] {
  const { drill } = analysis;
  const passages = passagesOf(analysis).filter(({ possession }) => possession.length > 0);
  const opening = passages.filter(({ phase }) => phase === null || phase.after === null).map((passage) => countIn(drill, rule, passage, 0));
  const playing = passages.filter((passage) => passage.phase !== null && playsIn(drill, rule, passage)).map((passage) => ({ passage, seen: seenIn(drill, rule, passage) }));
  const wanted = `${rule.ours} v ${rule.theirs}`;
  const failing = playing.filter(({ seen }) => !seen.includes(wanted));
  if (passages.length === 0 || opening.includes(wanted) || (playing.length > 0 && failing.length === 0)) return [];
  const begins = opening.length > 0 ? `${list([...new Set(opening)])} when the game begins` : 'other numbers';
  const later = failing.map(({ passage, seen }) => `${list(seen.slice(0, 4))} in ${passage.phase?.name ? `“${passage.phase.name}”` : 'the phase'}`);
  const everywhere = new Set([...opening, ...playing.flatMap(({ seen }) => seen)]);
  const where = everywhere.size === 1 && opening.length > 0 && playing.length > 0 ? `${[...everywhere].join('')} throughout` : [begins, ...later.slice(0, 3)].join('; ');
  const keepers = zonesNamed(drill, rule.zone).some((zone) => passages.some((passage) => staysOf(passage, zone).some(({ actor }) => isKeeper(drill, actor))));
  const always = [...new Set([...opening, ...(playing[0]?.seen ?? []).filter((numbers) => playing.every(({ seen }) => seen.includes(numbers)))])];
  return [problem(check, rule.span, `In \`${rule.zone}\` there are ${where}, and not ${wanted}${keepers ? ' (goalkeepers are not counted)' : ''}.`, {
    help: 'Write what stands there, or move players into the zone or out of it.',
    fixes: always.slice(0, 4).map((numbers) => ({ title: `Expect ${numbers}`, edits: [{ span: rule.span, text: `expect ${numbers} in ${rule.zone}` }] })),
  })];
}

type Expect = Extract<Rule, { kind: 'expect' }>;

function countIn(drill: Drill, { zone }: Expect, passage: Passage, time: number): string {
  const numbers = zonesNamed(drill, zone).map((each) => ({ zone: each.id, stays: staysOf(passage, each) }));
  const { attackers, floaters, defenders } = countAt(drill, numbers, passage.possession, time);
  return `${attackers + floaters} v ${defenders}`;
}

/** The numbers that stand there for half a second at least, in order of time. */
function seenIn(drill: Drill, rule: Expect, passage: Passage): string[] {
  const stays = zonesNamed(drill, rule.zone).flatMap((each) => staysOf(passage, each));
  const changes = [0, ...passage.possession.map(({ from }) => from), ...stays.flatMap(({ start, end, leftBy }) => (leftBy === null ? [start] : [start, end]))];
  const times = [...new Set(changes)].sort((a, b) => a - b);
  return [...new Set(times.filter((time, index) => (times[index + 1] ?? Infinity) - time >= passing).map((time) => countIn(drill, rule, passage, time)))];
}

/** Whether somebody has the ball there, plays it from there or gets it there. */
function playsIn(drill: Drill, { zone }: Expect, passage: Passage): boolean {
  const { timeline } = passage;
  return zonesNamed(drill, zone).some((each) => {
    const stays = staysOf(passage, each);
    return timeline.balls.some(({ stretches }) => stretches.some((stretch) => {
      const { start, end } = stretch;
      const holder = stretch.kind === 'flight' ? timeline.passes[stretch.pass]!.from : stretch.holder;
      const until = stretch.kind === 'flight' ? start : end;
      return stays.some((stay) => stay.actor === holder && stay.start <= until && (stay.leftBy === null || start < stay.end));
    }));
  });
}
