import { statSync } from 'node:fs';
import { dirname, extname, resolve, sep } from 'node:path';
import { nearest } from '../../grammar/spelling.ts';
import { analyse, analyseDrill, type Analysis, type DrillAnalysis } from '../../shared/analyse.ts';
import { problemsOn } from '../../shared/checks/on-sheet.ts';
import { phasesOfPage } from '../../shared/draw.ts';
import type { Problem } from '../../shared/problem.ts';
import { toHtml } from '../../shared/render/html.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { withoutOtherPhases } from '../../shared/scene/flagged.ts';
import { conventions } from '../../shared/scene/lines.ts';
import { themes, type Theme } from '../../shared/scene/palette.ts';
import { stage, type Scene, type StageOptions } from '../../shared/scene/scene.ts';
import { atLevels } from '../../shared/service/levels.ts';
import type { FolderSettings } from '../../shared/settings/settings.ts';
import { command } from '../command.ts';
import { settingsReader } from '../folder-settings.ts';
import { toGif } from '../gif.ts';
import { complain, Refusal, statusOf, type Io } from '../io.ts';
import { manyOptions, throughAll } from '../many/many.ts';
import { toPng } from '../png.ts';
import { progressOn, type Progress } from '../progress.ts';
import { readSource } from '../sources.ts';
import { counted } from '../text/report.ts';
import { workspaceOf } from '../workspace.ts';
import { makeFolder, writeWhole } from '../write.ts';

export const formats = ['svg', 'png', 'html', 'gif'] as const;
type PictureFormat = (typeof formats)[number];
export type Kind = `.${PictureFormat}`;

export const draw = command({
  name: 'draw',
  operands: 'PATH… -o OUT',
  summary: 'the drawing, to scale: .svg, .png, .html (plays by itself in a browser) or .gif',
  more: [
    'PATH may be - for standard input. Several files, folders and globs are drawn into a folder: -o FOLDER/ --format png.',
    'Problems at the level of errors and warnings are flagged on the drawing.',
  ],
  takes: [1, Infinity],
  options: {
    out: { kind: 'text', value: 'OUT', short: 'o', help: 'the picture to write; its ending says which kind. Or a folder for a picture of every drill' },
    format: { kind: 'choice', choices: formats, help: 'the kind of the pictures in a folder (svg)' },
    drill: { kind: 'text', value: 'NAME', help: 'which drill, or which of its progressions and regressions (the first drill)' },
    phase: { kind: 'text', value: 'NAME', help: 'which phase of a game (the first; .html has them all to choose from)' },
    at: { kind: 'number', value: 'SECONDS', least: 0, most: 86_400, help: 'everyone as they are at this time; .svg and .png only' },
    theme: { kind: 'choice', choices: themes, help: 'colours (light)' },
    convention: { kind: 'choice', choices: ['solid-pass', 'dashed-pass'], help: 'which line is solid and which dashed (solid-pass)' },
    scale: { kind: 'text', value: '1:N', help: 'drawing scale, such as 1:200 (the largest that fits)' },
    control: { kind: 'flag', help: 'also whose the ground is, in a phase' },
    animated: { kind: 'flag', help: 'an .svg that moves by itself' },
    ...manyOptions,
  },
  run: async ({ options, operands }, io) => {
    const out = options.out ?? missingOut();
    if (isFolder(out, io.cwd)) return drawAll(out, options, operands, io);
    const [name, another] = operands;
    if (another !== undefined || isFolder(name!, io.cwd)) throw new Refusal(`${out} is one picture, and there are more to draw: halfturn draw PATH… -o FOLDER/`);
    if (options.format !== null) throw new Refusal(`The ending of ${out} says which kind of picture it is; --format is for -o FOLDER/.`);
    const kind = kindOf(out);
    agreeOn(kind, options);
    const source = await readSource(name!, io);
    const { settings, complaints } = settingsReader(io.cwd)(source.path);
    const analysis = analyse(source.text, workspaceOf(source.path));
    const drill = chosen(analysis.drills, options.drill, source.name);
    const progress = progressOn(io);
    const { picture, problems, end } = drawn(analysis, drill, source.name, kind, options, settings, progress);
    progress.clear();
    writeWhole(resolve(io.cwd, out), picture, out);
    complain(io, complaints);
    if (options.at !== null && options.at > end) complain(io, [`Play is over after ${end.toFixed(1)} s: ${out} shows how it ends.`]);
    const errors = problems.filter(({ severity }) => severity === 'error').length;
    if (errors > 0) complain(io, [`${out} is drawn, with ${counted(errors, 'error')} in it; halfturn check ${source.name} shows more.`]);
    return statusOf(complaints, problems);
  },
});

/** The words of the options as they were written; null for those that were not. */
export interface Wishes {
  readonly phase: string | null;
  readonly at: number | null;
  readonly theme: Theme | null;
  readonly convention: 'solid-pass' | 'dashed-pass' | null;
  readonly scale: string | null;
  readonly control: boolean;
  readonly animated: boolean;
}

export const noWishes: Wishes = { phase: null, at: null, theme: null, convention: null, scale: null, control: false, animated: false };

/** One drill as a picture, with the problems that are told on it. What is not wished for is as the folder has it. */
export function drawn(
  analysis: Analysis, drill: DrillAnalysis, file: string, kind: Kind, wishes: Wishes, settings: FolderSettings, progress: Progress | null = null,
): { readonly picture: string | Uint8Array; readonly problems: readonly Problem[]; readonly end: number } {
  const problems = atLevels(problemsOn(analysis, drill), settings.levels);
  const variation = analysis.drills.flatMap((each) => each.drill.changes).find(({ id }) => id === drill.drill.id);
  const staging: StageOptions = {
    theme: wishes.theme ?? settings.theme ?? 'light',
    convention: conventions.find((each) => each.replace(' ', '-') === wishes.convention) ?? settings.convention ?? conventions[0],
    problems: problems.filter(({ severity }) => severity === 'error' || severity === 'warning'),
    ...(wishes.scale === null ? {} : { scale: scaleOf(wishes.scale) }),
    ...(variation ? { variation } : {}),
    ...(wishes.at === null ? {} : { at: wishes.at }),
    control: wishes.control,
  };
  const [first, ...rest] = phasesIn(drill, wishes.phase, kind, file).map((phase) =>
    stage(drill, phase === null ? staging : { ...staging, phase, problems: withoutOtherPhases(drill, phase, staging.problems ?? []) }),
  );
  return { picture: pictureOf([first!, ...rest], kind, wishes, progress), problems, end: first!.end };
}

/** Every drill of every file, into a folder that is arranged as theirs is. */
function drawAll(out: string, { jobs, shard, format, drill, ...wishes }: Wishes & Given, operands: readonly string[], io: Io): Promise<number> {
  const kind: Kind = `.${format ?? 'svg'}`;
  agreeOn(kind, wishes);
  if (drill !== null || wishes.phase !== null) throw new Refusal(`--${drill === null ? 'phase' : 'drill'} is for one picture; a folder gets every drill.`);
  const taken = new Set<string>();
  let drawings = 0;
  return throughAll({
    operands,
    jobs,
    shard,
    job: (names) => ({ name: 'draw', options: { kind, wishes, out, root: commonFolder(names, io.cwd), cwd: io.cwd } }),
    doing: 'files drawn',
    worthAThread: 10,
    save: ({ path, content }) => {
      if (taken.has(path)) throw new Refusal(`${path} is drawn already, from another file; give one of them another name.`);
      taken.add(path);
      makeFolder(dirname(resolve(io.cwd, path)), dirname(path));
      writeWhole(resolve(io.cwd, path), content, path);
      drawings += 1;
    },
  }, io, () => {
    if (drawings > 0) io.out(`${counted(drawings, 'drawing')} in ${out}\n`);
  });
}

interface Given {
  readonly jobs: number | null;
  readonly shard: string | null;
  readonly format: PictureFormat | null;
  readonly drill: string | null;
}

/** Said to be one by a slash at its end, or there as one. */
export function isFolder(name: string, cwd: string): boolean {
  return /[\\/]$/.test(name) || (statSync(resolve(cwd, name), { throwIfNoEntry: false })?.isDirectory() ?? false);
}

/** The innermost folder with all of these files in it. */
function commonFolder(names: readonly string[], cwd: string): string {
  const [first, ...rest] = names.filter((name) => name !== '-').map((name) => dirname(resolve(cwd, name)).split(sep));
  const shared = rest.reduce((common, each) => {
    const parting = common.findIndex((step, index) => step !== each[index]);
    return parting < 0 ? common : common.slice(0, parting);
  }, first ?? []);
  return shared.join(sep) || sep;
}

function agreeOn(kind: Kind, { animated, at }: Pick<Wishes, 'animated' | 'at'>): void {
  if (animated && kind !== '.svg') throw new Refusal('--animated is for .svg; .html and .gif move without it.');
  if (at !== null && (animated || kind === '.html' || kind === '.gif')) throw new Refusal('--at is for a picture that stands still.');
}

function missingOut(): never {
  throw new Refusal('Say where the picture goes: halfturn draw PATH… -o OUT');
}

export function kindOf(out: string): Kind {
  const format = formats.find((each) => `.${each}` === extname(out).toLowerCase());
  if (!format) throw new Refusal(`${out} must end in .svg, .png, .html or .gif.`);
  return `.${format}`;
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
function phasesIn(analysis: DrillAnalysis, asked: string | null, kind: Kind, file: string): readonly (string | null)[] {
  const { drill, phases } = analysis;
  const names = phases.map(({ phase }) => phase.name ?? phase.id);
  if (asked === null) return kind === '.html' ? phasesOfPage(analysis) : phasesOfPage(analysis).slice(0, 1);
  if (names.includes(asked)) return [asked];
  if (names.length === 0) throw new Refusal(`“${drill.name}” in ${file} has no phases.`);
  const guess = nearest(asked, names);
  throw new Refusal(`There is no phase “${asked}” in “${drill.name}”; ${guess === null ? `there is ${names.map((each) => `“${each}”`).join(', ')}.` : `did you mean “${guess}”?`}`);
}

/** Millimetres of sheet that a picture of pixels may be wide or high: past that no viewer opens it. */
const largestSheet = 3000;

function pictureOf(scenes: readonly [Scene, ...Scene[]], kind: Kind, { at, animated }: Pick<Wishes, 'at' | 'animated'>, progress: Progress | null): string | Uint8Array {
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
      return toGif(scene, { progress: (done, of) => progress?.step(done, of, 'frames drawn') });
  }
}
