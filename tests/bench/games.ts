/** How fast a game is judged, lanes included: node tests/bench/games.ts */
import { parse } from '../../grammar/parse.ts';
import { alone, analyse, analyseDrill } from '../../shared/analyse.ts';
import { lanesOf } from '../../shared/games/lanes.ts';
import { numbersOf } from '../../shared/games/zones.ts';
import { checks } from '../../shared/checks/index.ts';
import { resolve } from '../../shared/model/resolve.ts';
import { simulatePhase } from '../../shared/timeline/simulate.ts';
import { time } from './timing.ts';

/** Eleven against eleven with 30 beats: the ball goes round the back and up a side, and is won and won back on the way. */
const game = elevenASide(30);

const { file } = parse(game);
const drill = resolve(file, alone).drills[0]!;
const analysis = analyseDrill(drill);
const [phase] = analysis.phases;
const counts = { players: drill.actors.length, beats: phase!.timeline.beats.length, moments: phase!.lanes.length, lanes: phase!.lanes.reduce((sum, each) => sum + each.lanes.length, 0) };
console.log(Object.entries(counts).map(([what, count]) => `${count} ${what}`).join(', '));

const steps: readonly (readonly [string, () => unknown])[] = [
  ['parse', () => parse(game)],
  ['resolve', () => resolve(file, alone)],
  ['simulate the phase', () => simulatePhase(drill, phase!.phase, null)],
  ['lanes', () => lanesOf(drill, phase!.phase, phase!.timeline, phase!.possession)],
  ['numbers in zones', () => numbersOf(drill, phase!.timeline)],
  ['all checks', () => checks.map((check) => check.find?.(analysis))],
  ['the whole: text to problems', () => analyse(game)],
];
for (const [index, { median, p95, runs }] of time(steps.map(([, work]) => work)).entries()) {
  console.log(`${steps[index]![0].padEnd(30)} median ${median.toFixed(2)} ms, p95 ${p95.toFixed(2)} ms, ${runs} runs`);
}

function elevenASide(beats: number): string {
  const [reds, blues] = [shape((x, y) => [x, y]), shape((x, y) => [60 - x, 90 - y])];
  const players = (team: string, places: readonly (readonly [number, number])[]) => places.map(([x, y], index) => `  player ${team}${index + 1} of ${team} at (${x}, ${y})`);
  const ring = [2, 3, 4, 5, 8, 7, 6, 3];
  const lines = Array.from({ length: beats }, (_, index) => {
    const [from, to] = [ring[index % ring.length]!, ring[(index + 1) % ring.length]!];
    return `    Red${from} passes to Red${to} while Blue${9 + (index % 3)} presses Red${to}, Red${9 + (index % 2)} runs to (${20 + (index * 7) % 20}, ${50 + (index * 5) % 20})`;
  });
  return [
    'drill "Eleven a side" {', '  age U17', '  area 60 x 90', '  tempo match', '  split area by length into Back 30, Middle 30, Front 30',
    '  zones Box 8 x 8 in corners of area', '  team Red bib orange', '  team Blue bib blue', ...players('Red', reds), ...players('Blue', blues), '  ball at Red2',
    '  rule Front at most 6 attackers', '  rule Back at least 2 Red', '  rule Box at most 2 defenders', '  phase "Round the back" {', ...lines, '  }', '}', '',
  ].join('\n');
}

function shape(turn: (x: number, y: number) => readonly [number, number]): (readonly [number, number])[] {
  const places = [[30, 4], [8, 20], [22, 16], [38, 16], [52, 20], [20, 34], [30, 30], [42, 34], [12, 52], [30, 56], [48, 52]] as const;
  return places.map(([x, y]) => turn(x, y));
}
