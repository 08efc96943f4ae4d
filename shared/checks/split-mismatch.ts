import type { Drill, Split } from '../model/drill.ts';
import type { Fix, Problem } from '../problem.ts';
import { formatLength, formatNumber, metresIn } from '../units.ts';
import { problem, type Check } from './check.ts';
import { lengthCures } from './cures.ts';

/** Metres by which the sum may miss the side: a third of an area cannot be written exactly. */
const tolerance = 0.01;

export const check: Check = {
  code: 'split-mismatch',
  group: 'ground',
  severity: 'error',
  title: 'The strips do not add up',
  why: 'A split cuts the whole side into strips, one after the other. When they add up to less, some ground belongs to no zone and no rule holds there; when they add up to more, the last one lies outside.',
  source: null,
  bad: [
    `drill "Thirds" {
  age U13
  area 20 x 30
  split area by length into Back 12, Mid 8, Front ⟦12⟧
}
`,
    `drill "Halves" {
  age U13
  area 20 x 30
  zone Box 10 x 10 at area.centre
  split Box by width into Near 4, Far ⟦4⟧
}
`,
  ],
  good: [
    `drill "Thirds" {
  age U13
  area 20 x 30
  split area by length into Back 12, Mid 8, Front 10
}
`,
    `drill "Thirds" {
  age U13
  area 20 x 10
  split area by length into Back 3.33, Mid 3.33, Front 3.34
}
`,
  ],
  find: ({ drill }) => drill.splits.flatMap((split) => mismatch(drill, split)),
  // The strip itself has its exact fix; here the area and the numbers it is made of are tried.
  cures: (found, analysis, text) => lengthCures({ ...found, span: { from: 0, to: 0 } }, analysis, text),
};

function mismatch(drill: Drill, split: Split): Problem[] {
  const sum = sumOf(split);
  const missing = split.side - sum;
  if (Math.abs(missing) <= tolerance + 1e-9) return [];
  const length = (metres: number): string => formatLength(metres, drill.units, 2);
  const whole = split.of === 'area' ? 'the area' : `\`${split.of}\``;
  const is = `${whole} is ${length(split.side)} ${split.by === 'length' ? 'long' : 'wide'}`;
  const message = `The strips add up to ${length(sum)}, and ${is}: ${length(Math.abs(missing))} ${missing > 0 ? 'too little' : 'too much'}.`;
  const last = lastOf(split);
  const fitting = last.size + missing;
  const fixes = fitting > tolerance ? [lastStrip(drill, last, fitting)] : [];
  return [
    problem(check, last.span, message, {
      help: `${fixes.length > 0 ? `Make \`${last.name}\` ${length(fitting)}` : 'Make the strips smaller'}, or ${whole} ${length(sum)} ${split.by === 'length' ? 'long' : 'wide'}.`,
      fixes,
    }),
  ];
}

function lastStrip(drill: Drill, last: Split['strips'][number], size: number): Fix {
  const text = formatNumber(size / metresIn(drill.units), 2);
  return { title: `Make ${last.name} ${text} ${drill.units}`, edits: [{ span: last.span, text }] };
}

function sumOf(split: Split): number {
  return split.strips.reduce((sum, strip) => sum + strip.size, 0);
}

function lastOf(split: Split): Split['strips'][number] {
  return split.strips[split.strips.length - 1]!;
}
