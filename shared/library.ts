/**
 * Halfturn for programs: read, write, build, check, measure and draw training drills. Runs in Node and in browsers; nothing here
 * reads a file, a clock or a network.
 */
import { shown } from '../grammar/json/leaf.ts';
import { print as printTree } from '../grammar/printer.ts';
import { treeOf } from '../grammar/reading.ts';
import type { File } from '../grammar/tree.ts';
import { alone, analyse as analyseText, type Analysis } from './analyse.ts';
import { htmlOf, svgOf, type DrawOptions, type SvgOptions } from './draw.ts';
import type { Measures } from './measure/measure.ts';
import type { Workspace } from './model/resolve.ts';
import type { Problem } from './problem.ts';
import { compare as compareAnalyses, type Comparison } from './review/compare.ts';
import { conventions } from './scene/lines.ts';
import { themes } from './scene/palette.ts';

export { fromJson } from '../grammar/json/from-json.ts';
export type { JsonFault } from '../grammar/json/from-json.ts';
export type { JsonFile, JsonLength, JsonPlace } from '../grammar/json/json.ts';
export { jsonSchema } from '../grammar/json/schema.ts';
export type { Fault } from '../grammar/parse.ts';
export { parse, print, toJson } from '../grammar/reading.ts';
export type * as Tree from '../grammar/tree.ts';
export type { Analysis };
export type { DrillAnalysis } from './analyse.ts';
export { drill, file } from './build/build.ts';
export type { DrillLines, FileLines, SessionLines } from './build/generated/statements.ts';
export { who } from './build/play.ts';
export type { Beat, Doing, Player } from './build/play.ts';
export { above, along, at, below, between, CannotBeWritten, leftOf, mirrorOf, moved, rightOf } from './build/values.ts';
export type { Length, Spot, Who } from './build/values.ts';
export type { Comparison, DrawOptions, SvgOptions };
export type { Fact } from './review/compare.ts';
export type { Measures };
export type { PassMeasure, PlayerMeasure } from './measure/measure.ts';
export type { Workspace };
export type { Problem };
export type { Edit, Fix, Related, Severity } from './problem.ts';

/** A drill as text, or as the tree that `parse`, `drill`, `file` and `fromJson` give. Places in a text are offsets in UTF-16 units. */
export type Source = string | File;

/**
 * Everything known about the drills of a file: who is where when, the rotation, the numbers, the problems. Any text gives an answer.
 * The workspace finds imported files; without one, imports find nothing.
 */
export function analyse(source: Source, workspace: Workspace = alone): Analysis {
  return analysed('analyse', source, workspace);
}

/** The problems, in order of place: `code`, `severity`, `message`, `help` and `span`. A problem at error level means that it will not work on the grass. */
export function check(source: Source, workspace: Workspace = alone): readonly Problem[] {
  return analysed('check', source, workspace).problems;
}

/** The numbers of each drill: metres, seconds, metres a second. */
export function measure(source: Source, workspace: Workspace = alone): readonly Measures[] {
  return analysed('measure', source, workspace).drills.map(({ measures }) => measures);
}

/**
 * What changed between two versions, as facts with sentences; null stands for a version that is not there. The two ways round
 * mirror each other, and a version compared with itself has no facts.
 */
export function compare(before: Source | null, after: Source | null, workspace: Workspace = alone): Comparison {
  const version = (source: Source | null) => (source === null ? null : analysed('compare', source, workspace));
  return compareAnalyses(version(before), version(after));
}

/** The drawing to scale as an SVG with its font in it, errors and warnings flagged; null when there is no such drill or phase. */
export function drawSvg(source: Source, options: SvgOptions = {}, workspace: Workspace = alone): string | null {
  return svgOf(analysed('drawSvg', source, workspace), drawing('drawSvg', options));
}

/** A page that plays by itself in any browser and fetches nothing, with every phase of a game; null when there is no such drill or phase. */
export function drawHtml(source: Source, options: DrawOptions = {}, workspace: Workspace = alone): string | null {
  return htmlOf(analysed('drawHtml', source, workspace), drawing('drawHtml', options));
}

function analysed(name: string, source: Source, workspace: Workspace): Analysis {
  return analyseText(typeof source === 'string' ? source : printTree(treeOf(name, source, 'a text or a tree')), workspace);
}

function drawing<Options extends DrawOptions>(name: string, options: Options): Options {
  if (typeof options !== 'object' || options === null) throw new TypeError(`\`${name}\` takes its options as an object, such as \`{ theme: 'print' }\`, not ${shown(options)}.`);
  const { theme, convention } = options;
  if (theme !== undefined && !themes.includes(theme)) throw new TypeError(`\`${name}\`: \`theme\` is ${listed(themes)}, not ${shown(theme)}.`);
  if (convention !== undefined && !conventions.includes(convention)) throw new TypeError(`\`${name}\`: \`convention\` is ${listed(conventions)}, not ${shown(convention)}.`);
  return options;
}

function listed(words: readonly string[]): string {
  return words.map((word) => `\`${word}\``).join(' or ');
}
