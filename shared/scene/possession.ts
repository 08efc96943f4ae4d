/** The band over the time line of a phase that says whose ball it is, and where it is won or cut out. */
import { cut, textWidth } from '../font/text.ts';
import { doubtful } from '../games/lanes.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Drill } from '../model/drill.ts';
import { cutWords } from './lanes.ts';
import { type Look, looks } from './people.ts';
import type { Theme } from './palette.ts';
import type { Mark, Shape } from './scene.ts';
import { box, filled, group, mm, path, stroked, text } from './shapes.ts';
import { wonSymbol } from './wins.ts';

/** Millimetres. */
const height = 3.6;

/** `x` is where a time stands on the sheet; `top` the upper edge of the band. */
export function possessionBand(drill: Drill, { possession, timeline, phase }: PhaseAnalysis, theme: Theme, x: (time: number) => number, top: number): Mark[] {
  const look = looks(drill, theme);
  const names = new Map(drill.teams.map(({ id, name }) => [id, name]));
  const stretches = possession.map(({ from, to, team }, index): Mark => {
    const [left, width] = [x(from), x(to) - x(from)];
    const name = names.get(team) ?? team;
    const words = cut(name, width - 4, 2.3, 'bold');
    return {
      id: `possession-${index + 1}`, layer: 'strip', span: phase.span, label: `${name} have the ball from ${from.toFixed(1)} to ${to.toFixed(1)} s`,
      shapes: width > 0 ? bandShapes(look(team), left, top, width, words) : [],
    };
  });
  const wins: Mark = {
    id: 'possession-won', layer: 'strip', span: null, label: null,
    shapes: possession.slice(1).filter(({ from }) => from <= timeline.end).map(({ from }) => group({ x: x(from), y: top + height / 2 }, wonSymbol(2))),
  };
  return [...stretches, wins];
}

function bandShapes({ colour, filling, letters }: Look, left: number, top: number, width: number, words: string): Shape[] {
  const end = textWidth(words, 2.3, 'bold');
  const baseline = { x: left + 2.6, y: top + height / 2 + 0.8 };
  const solid = filling === 'solid' || filling === 'double';
  const hatch = Array.from({ length: Math.ceil((width + height) / 1.3) }, (_, index) => {
    const start = index * 1.3 - height;
    const [from, to] = [Math.max(0, start), Math.min(width, start + height)];
    return `M${mm(left + from)} ${mm(top + height - from + start)}L${mm(left + to)} ${mm(top + height - to + start)}`;
  }).join('');
  return [
    box(left, top, width, height, filled(solid ? colour : 'paper', 'ink', 0.25)),
    ...(solid ? [] : [path(hatch, stroked('ink', 0.5)), path(hatch, stroked(colour, 0.3)), ...(words === '' ? [] : [box(left + 1.8, top + 0.4, end + 1.6, height - 0.8, filled('paper'))])]),
    ...(words === '' ? [] : [text(baseline, words, 2.3, solid ? letters : 'ink', { weight: 'bold' })]),
  ];
}

/** In the row of the ball: from where an opponent has it first until it should have arrived, hatched, with the words. */
export function cutBlocks({ lanes, timeline }: PhaseAnalysis, ball: string, x: (time: number) => number, middle: number): Shape[] {
  return lanes.flatMap(({ race, pass: index }): Shape[] => {
    const pass = index === null ? undefined : timeline.passes[index];
    if (!race || !pass || pass.ball !== ball || race.margin >= -doubtful) return [];
    const from = x(pass.start + race.time);
    const width = Math.max(1.2, x(pass.arrival) - from);
    const bars = Array.from({ length: Math.floor(width / 1.1) }, (_, bar) => `M${mm(from + 0.3 + bar * 1.1)} ${mm(middle + 1.1)}l0.7 -2.2`).join('');
    return [
      box(from, middle - 1.2, width, 2.4, filled('late', 'late', 0.3)), path(bars, stroked('paper', 0.25)),
      text({ x: from, y: middle - 1.7 }, cutWords(race), 2.1, 'late', { weight: 'bold' }),
    ];
  });
}
