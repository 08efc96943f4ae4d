import { straight } from '../geometry/path.ts';
import { ability, runAlong } from '../physics/runner.ts';
import { root } from '../physics/root.ts';
import type { Drill } from '../model/drill.ts';
import type { Related } from '../problem.ts';
import { lateFrom, type Move, type Pass, type Timeline } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { earlierBeat, lengthCures, straightThere, waitFirst } from './cures.ts';
import { long, seconds, spot, Who } from './say.ts';

/** Seconds late from which the pattern breaks. */
const broken = 0.5;

export const check: Check = {
  code: 'late-receiver',
  group: 'time',
  severity: 'error',
  title: 'The receiver is late',
  why: 'The ball is at the meeting place before its receiver: it rolls on, or they stretch for it and the next pass is late too. The run takes what a player of this age and tempo needs (reaction, acceleration, braking to receive), the ball what friction leaves it. Up to 0.2 s late passes for on time; past 0.5 s the pattern breaks.',
  source: 'Sprint times by age (Mendez-Villanueva et al. 2011) in the mono-exponential sprint model; rolling friction from the turf test. The two limits are a choice without a source.',
  bad: [
    `drill "Show" {
  age U12
  area 20 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to ⟦Wall⟧ while Wall shows to (7, 8)
    Wall passes to Base
  }
}
`,
  ],
  good: [
    `drill "Show" {
  age U12
  area 20 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base waits 2 s while Wall shows to (7, 8)
    Base passes to Wall
    Wall passes to Base
  }
}
`,
  ],
  inPhases: true,
  find: ({ drill, timeline }) =>
    timeline.passes.flatMap((pass) => {
      if (pass.slack === null || pass.slack > -lateFrom || pass.to === null) return [];
      const place = pass.action.receiverSpan ?? pass.action.targetSpan ?? pass.action.span;
      return problem(check, place, `${Who(pass.to)} gets to ${spot(drill, pass.toAt)} ${seconds(-pass.slack)} after the ball.`, {
        severity: pass.slack <= -broken ? 'error' : 'warning',
        help: advice(drill, pass),
        related: reasons(timeline, pass),
      });
    }),
  cures: (found, analysis, text) => {
    const pass = analysis.timeline.passes.find(
      (each) => (each.action.receiverSpan ?? each.action.targetSpan ?? each.action.span).from === found.span.from,
    );
    if (!pass || pass.slack === null) return [];
    return [...earlierBeat(analysis, pass, text), ...straightThere(analysis, pass, text), ...waitFirst(analysis, pass, text), ...lengthCures(found, analysis, text)];
  },
};

/** The movements that keep them: the run to the ball, and the one before it when that is not over in time. */
function reasons(timeline: Timeline, pass: Pass): Related[] {
  const moves = timeline.tracks.find((track) => track.actor === pass.to)?.moves ?? [];
  const last = pass.receiverMove;
  if (!last) return [];
  const own = last.action.span.from === pass.action.span.from ? [] : [{ span: last.action.span, message: `This run takes ${seconds(last.run.time)}.` }];
  const before = moves[moves.indexOf(last) - 1];
  if (!before || before.end <= last.asked) return own;
  return [...own, { span: before.action.span, message: `This keeps them until ${seconds(before.end)}; the ball is played at ${seconds(pass.start)}.` }];
}

/** What would bring them there in time: an earlier start, a shorter run, or a later ball. */
function advice(drill: Drill, pass: Pass): string {
  const late = -(pass.slack ?? 0);
  const move = pass.receiverMove;
  if (move && move.asked === pass.start && move.action.span.from === pass.action.span.from) {
    return `Send ${pass.to} there before the ball is played, or play it closer to where they are.`;
  }
  const later = `play the ball ${seconds(late)} later (${pass.from} waits ${seconds(late)})`;
  if (!move || move.kind !== 'run') return capital(`${later}.`);
  const reachable = lengthIn(drill, move, move.run.time - late);
  const shorter = reachable > 0.5 && reachable < move.path.length - 0.3 ? `shorten it from ${long(drill, move.path.length)} to ${long(drill, reachable)}, or ` : '';
  const earlier = move.asked >= late && move.asked < pass.start ? `start the run ${seconds(late)} earlier, or ` : '';
  return capital(`${earlier}${shorter}${later}.`);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Metres that the same runner covers in a time, from a stand; to a stand, unless in stride. */
function lengthIn(drill: Drill, move: Move, time: number): number {
  if (time <= 0) return 0;
  const powers = ability(drill.age.value, drill.tempo.value, move.action.gait, drill.runPace?.value ?? null);
  const timeOf = (length: number): number => runAlong(straight({ x: 0, y: 0 }, { x: length, y: 0 }), powers, { stop: !move.action.inStride }).time;
  const most = move.path.length;
  return timeOf(most) <= time ? most : root((length) => timeOf(length) - time, 0, most);
}
