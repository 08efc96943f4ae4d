import { extname, resolve } from 'node:path';
import { nearest } from '../../grammar/spelling.ts';
import { analyse, analyseDrill, type DrillAnalysis } from '../../shared/analyse.ts';
import type { Span } from '../../grammar/tree.ts';
import type { Problem } from '../../shared/problem.ts';
import { toHtml } from '../../shared/render/html.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { conventions } from '../../shared/scene/lines.ts';
import { themes } from '../../shared/scene/palette.ts';
import { stage, type Scene, type StageOptions } from '../../shared/scene/scene.ts';
import { command } from '../command.ts';
import { toGif } from '../gif.ts';
import { complain, Refusal, statusOf } from '../io.ts';
import { toPng } from '../png.ts';
import { progressOn, type Progress } from '../progress.ts';
import { readSource } from '../sources.ts';
import { counted } from '../text/report.ts';
import { workspaceOf } from '../workspace.ts';
import { writeWhole } from '../write.ts';

const kinds = ['.svg', '.png', '.html', '.gif'] as const;
type Kind = (typeof kinds)[number];

export const draw = command({
  name: 'draw',
  operands: 'FILE -o OUT',
  summary: 'the drawing, to scale: .svg, .png, .html (plays by itself in a browser) or .gif',
  more: ['FILE may be - for standard input. Problems at the level of errors and warnings are flagged on the drawing.'],
  takes: [1, 1],
  options: {
    out: { kind: 'text', value: 'OUT', short: 'o', help: 'the picture to write; its ending says which kind' },
    drill: { kind: 'text', value: 'NAME', help: 'which drill, or which of its progressions and regressions (the first drill)' },
    phase: { kind: 'text', value: 'NAME', help: 'which phase of a game (the first; .html has them all to choose from)' },
    at: { kind: 'number', value: 'SECONDS', least: 0, most: 86_400, help: 'everyone as they are at this time; .svg and .png only' },
    theme: { kind: 'choice', choices: themes, help: 'colours (light)' },
    convention: { kind: 'choice', choices: ['solid-pass', 'dashed-pass'], help: 'which line is solid and which dashed (solid-pass)' },
    scale: { kind: 'text', value: '1:N', help: 'drawing scale, such as 1:200 (the largest that fits)' },
    control: { kind: 'flag', help: 'also whose the ground is, in a phase' },
    animated: { kind: 'flag', help: 'an .svg that moves by itself' },
  },
  run: async ({ options, operands }, io) => {
    const out = options.out ?? missingOut();
    const kind = kindOf(out);
    if (options.animated && kind !== '.svg') throw new Refusal('--animated is for .svg; .html and .gif move without it.');
    if (options.at !== null && (options.animated || kind === '.html' || kind === '.gif')) throw new Refusal('--at is for a picture that stands still.');
    const source = await readSource(operands[0]!, io);
    const analysis = analyse(source.text, workspaceOf(source.path));
    const drill = chosen(analysis.drills, options.drill, source.name);
    const problems = problemsOn(drill, analysis.problems);
    const variation = analysis.drills.flatMap((each) => each.drill.changes).find(({ id }) => id === drill.drill.id);
    const staging: StageOptions = {
      theme: options.theme ?? 'light',
      convention: conventions.find((each) => each.replace(' ', '-') === options.convention) ?? conventions[0],
      problems: problems.filter(({ severity }) => severity === 'error' || severity === 'warning'),
      ...(options.scale === null ? {} : { scale: scaleOf(options.scale) }),
      ...(variation ? { variation } : {}),
      ...(options.at === null ? {} : { at: options.at }),
      control: options.control,
    };
    const [first, ...rest] = phasesIn(drill, options.phase, kind, source.name).map((phase) =>
      stage(drill, phase === null ? staging : { ...staging, phase, problems: withoutOtherPhases(drill, phase, staging.problems ?? []) }),
    );
    const scenes = [first!, ...rest] as const;
    const progress = progressOn(io);
    const picture = pictureOf(scenes, kind, options, progress);
    progress.clear();
    writeWhole(resolve(io.cwd, out), picture, out);
    if (options.at !== null && options.at > scenes[0].end) complain(io, [`Play is over after ${scenes[0].end.toFixed(1)} s: ${out} shows how it ends.`]);
    const errors = problems.filter(({ severity }) => severity === 'error').length;
    if (errors > 0) complain(io, [`${out} is drawn, with ${counted(errors, 'error')} in it; halfturn check ${source.name} shows more.`]);
    return statusOf([], problems);
  },
});

function missingOut(): never {
  throw new Refusal('Say where the picture goes: halfturn draw FILE -o OUT');
}

function kindOf(out: string): Kind {
  const kind = kinds.find((each) => each === extname(out).toLowerCase());
  if (!kind) throw new Refusal(`${out} must end in .svg, .png, .html or .gif.`);
  return kind;
}

function scaleOf(written: string): number {
  const scale = Number(/^(?:1:)?(\d+)$/.exec(written)?.[1]);
  if (!(scale >= 20 && scale <= 5000)) throw new Refusal(`--scale cannot be ${written}: it takes a drawing scale from 1:20 to 1:5000.`);
  return scale;
}

/** By name: a drill, or one of its progressions and regressions. */
function chosen(drills: readonly DrillAnalysis[], name: string | null, file: string): DrillAnalysis {
  const first = drills[0];
  if (!first) throw new Refusal(`There is no drill in ${file}.`);
  if (name === null) return first;
  const drill = drills.find((each) => each.drill.name === name);
  if (drill) return drill;
  const changes = drills.flatMap((each) => each.drill.changes);
  const change = changes.find((each) => each.name === name);
  if (change) return analyseDrill(change.drill);
  const names = [...drills.map((each) => each.drill.name), ...changes.map((each) => each.name)];
  const guess = nearest(name, names);
  throw new Refusal(`There is no drill “${name}” in ${file}; ${guess === null ? `there is ${names.map((each) => `“${each}”`).join(', ')}.` : `did you mean “${guess}”?`}`);
}

/** The phases to draw, by name: the one asked for, or for a page all that a game shows; null for what is drawn without being asked. */
function phasesIn({ drill, phases }: DrillAnalysis, asked: string | null, kind: Kind, file: string): readonly (string | null)[] {
  const names = phases.map(({ phase }) => phase.name ?? phase.id);
  if (asked === null) {
    const all = [...(names.length === 0 || drill.sequences.some((sequence) => sequence.kind === 'sequence') ? [null] : []), ...names];
    return kind === '.html' ? all : all.slice(0, 1);
  }
  if (names.includes(asked)) return [asked];
  if (names.length === 0) throw new Refusal(`“${drill.name}” in ${file} has no phases.`);
  const guess = nearest(asked, names);
  throw new Refusal(`There is no phase “${asked}” in “${drill.name}”; ${guess === null ? `there is ${names.map((each) => `“${each}”`).join(', ')}.` : `did you mean “${guess}”?`}`);
}

/** A phase's sheet has its own problems and those of the drill around it. */
function withoutOtherPhases({ phases }: DrillAnalysis, name: string, problems: readonly Problem[]): readonly Problem[] {
  const others = phases.filter(({ phase }) => phase.name !== name);
  return problems.filter(({ span }) => !others.some(({ phase }) => phase.span.from <= span.from && span.to <= phase.span.to));
}

/** Those of the drill itself; what only a progression or regression brings belongs on its own sheet. */
function problemsOn({ drill }: DrillAnalysis, problems: readonly Problem[]): readonly Problem[] {
  const within = (outer: Span, { span }: Problem): boolean => outer.from <= span.from && span.to <= outer.to;
  return problems.filter((problem) => within(drill.span, problem) && !drill.changes.some((change) => within(change.span, problem)));
}

/** Millimetres of sheet that a picture of pixels may be wide or high: past that no viewer opens it. */
const largestSheet = 3000;

function pictureOf(scenes: readonly [Scene, ...Scene[]], kind: Kind, { at, animated }: { readonly at: number | null; readonly animated: boolean }, progress: Progress): string | Uint8Array {
  const [scene] = scenes;
  const moment = at === null ? {} : { at };
  if ((kind === '.png' || kind === '.gif') && Math.max(scene.width, scene.height) > largestSheet) {
    throw new Refusal(`At 1:${scene.plan.scale} the sheet would be ${Math.ceil(Math.max(scene.width, scene.height) / 1000)} m long; draw an .svg, or choose a smaller scale such as 1:500.`);
  }
  switch (kind) {
    case '.svg':
      return toSvg(scene, { embedFont: true, animated, ...moment });
    case '.png':
      return toPng(toSvg(scene, moment));
    case '.html':
      return toHtml(scenes);
    case '.gif':
      return toGif(scene, { progress: (done, of) => progress.step(done, of, 'frames drawn') });
  }
}
