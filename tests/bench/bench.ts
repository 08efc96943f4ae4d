/** How fast it is: run with `npm run bench`. Prints tables; fails only when the parsers compared do not read the same. */
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { isDeepStrictEqual } from 'node:util';
import { parse } from '../../grammar/parse.ts';
import { columns } from '../../server/text/columns.ts';
import { alone, analyse, analyseDrill } from '../../shared/analyse.ts';
import { checks } from '../../shared/checks/index.ts';
import { resolve } from '../../shared/model/resolve.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { stage } from '../../shared/scene/scene.ts';
import { simulate } from '../../shared/timeline/simulate.ts';
import { parseConcrete } from './concrete.ts';
import { parseWithNearley } from './nearley.ts';
import { parseWithPeggy } from './peggy.ts';
import { slope, time } from './timing.ts';

const ordinary = readFileSync(new URL('ordinary.drill', import.meta.url), 'utf8');
const style = { theme: 'light', convention: 'solid pass' } as const;

console.log(`Node ${process.version}, ${cpus()[0]?.model ?? 'unknown processor'}`);
heading('An ordinary drill, 8 players and 12 beats, warm');
ordinaryDrill();
heading('Parsing, the same part of the language in every parser');
parsers();
heading('From 10 to 10,000 beats');
growth();

function ordinaryDrill(): void {
  const { file } = parse(ordinary);
  const { drills: [drill] } = resolve(file, alone);
  const analysis = analyseDrill(drill!);
  const found = analyse(ordinary).problems.length;
  if (found > 0) console.log(`The drill has ${found} problems; it should have none.`);
  const steps: readonly (readonly [string, () => unknown])[] = [
    ['the whole: text to problems and SVG', () => drawn(ordinary)],
    ['parse', () => parse(ordinary)],
    ['resolve', () => resolve(file, alone)],
    ['simulate', () => simulate(drill!)],
    ['check', () => checks.map((check) => check.find?.(analysis))],
    ['stage and SVG', () => toSvg(stage(analysis, style))],
  ];
  // Each by itself and, because the engine goes on improving code for some seconds, after long warming, as a server that answers one key after the other runs it.
  const timings = steps.flatMap(([, work]) => time([work], 2000, 5000));
  table(['step', 'p10 ms', 'median ms', 'p95 ms', 'runs'], timings.map(({ p10, median, p95, runs }, index) => [steps[index]![0], p10.toFixed(3), median.toFixed(3), p95.toFixed(3), runs]));
}

function parsers(): void {
  const reference = plain(parseWithPeggy(ordinary));
  for (const [name, other] of [['nearley', parseWithNearley], ['chevrotain, concrete tree', parseConcrete]] as const) {
    if (!isDeepStrictEqual(plain(other(ordinary)), reference)) throw new Error(`${name} reads the benchmark's drill differently`);
  }
  if (!isDeepStrictEqual(outline(parse(ordinary).file), outline(reference))) throw new Error('the grammar reads the benchmark’s drill differently');

  const text = ordinary.repeat(20);
  const megabytes = text.length / 1e6;
  const runs = [
    ['plain loop over the characters', () => scan(text)],
    ['grammar, tree inside the parser', () => parse(text)],
    ['chevrotain, concrete tree first', () => parseConcrete(text)],
    ['peggy', () => parseWithPeggy(text)],
    ['nearley', () => parseWithNearley(text)],
  ] as const;
  const speeds = time(runs.map(([, work]) => work)).map(({ median }) => megabytes / (median / 1000));
  const [loop, ours, concrete] = speeds;
  table(['parser', 'MB/s', 'times slower than the loop'], speeds.map((speed, index) => [runs[index]![0], speed.toFixed(2), (loop! / speed).toFixed(0)]));
  const faster = ours! > concrete! ? 'inside the parser' : 'by way of a concrete tree';
  console.log(`Reading with the tree built ${faster} is ${(Math.max(ours!, concrete!) / Math.min(ours!, concrete!)).toFixed(1)} times as fast; the grammar, which reads the whole language and keeps comments, builds it inside the parser.`);
}

function growth(): void {
  const sizes = [10, 100, 1000, 10_000];
  const rows = sizes.map((beats) => {
    const text = longDrill(beats);
    const before = heap();
    const kept = analyse(text);
    const held = heap() - before;
    const analysis = kept.drills[0]!;
    const [parsed, analysed, drew, whole] = time([
      () => parse(text),
      () => analyse(text),
      () => toSvg(stage(analysis, style)),
      () => drawn(text),
    ]).map(({ median }) => median) as [number, number, number, number];
    return { beats, held, parse: parsed, analyse: analysed, draw: drew, whole };
  });
  table(['beats', 'parse ms', 'analyse ms', 'draw ms', 'whole ms', 'held MB'], rows.map((row) => [
    row.beats, ...[row.parse, row.analyse, row.draw, row.whole].map((each) => each.toFixed(1)), (row.held / 1e6).toFixed(1),
  ]));
  const slopes = (['parse', 'analyse', 'draw', 'whole'] as const).map((step) =>
    `${step} ${slope(rows.slice(1).map((row) => [row.beats, row[step]])).toFixed(2)}`);
  console.log(`Slope of cost against beats from 100 up, both logarithmic (1 is linear): ${slopes.join(', ')}.`);
  console.log(`The process holds ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB in all.`);
}

function drawn(text: string): string {
  return analyse(text).drills.map((analysis) => toSvg(stage(analysis, style))).join('');
}

/** A drill of this many passes round a square. */
function longDrill(beats: number): string {
  const corners = ['Base', 'Left', 'Top', 'Right'];
  const passes = Array.from({ length: beats }, (_, index) => `    ${corners[index % 4]} passes to ${corners[(index + 1) % 4]}\n`);
  return `drill "Long" {
  players 4
  area 20 x 20
  station Base at (4, 4)
  station Left at (4, 16)
  station Top at (16, 16)
  station Right at (16, 4)
  ball at Base
  sequence {
${passes.join('')}  }
}
`;
}

function scan(text: string): number {
  let sum = 0;
  for (let index = 0; index < text.length; index += 1) sum = (sum + text.charCodeAt(index)) | 0;
  return sum;
}

/** Without prototypes, and without the span of the file, which not every parser gives. */
function plain(tree: unknown): unknown {
  return JSON.parse(JSON.stringify((tree as { items: unknown }).items));
}

/** Every kind and verb of a tree with its place, which the trees of all parsers share. */
function outline(tree: unknown): string[] {
  if (typeof tree !== 'object' || tree === null) return [];
  const { kind, verb, span } = tree as { kind?: string; verb?: string; span?: { from: number; to: number } };
  const own = (kind ?? verb) && span && kind !== 'file' ? [`${kind ?? verb} ${span.from}-${span.to}`] : [];
  return [...own, ...Object.values(tree).flatMap(outline)].sort();
}

function heap(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed;
}

function heading(text: string): void {
  console.log(`\n${text}\n`);
}

function table(head: readonly string[], rows: readonly (readonly (string | number)[])[]): void {
  console.log(columns(head, rows).map((row) => `  ${row}`).join('\n'));
}
