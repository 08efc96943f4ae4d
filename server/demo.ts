/** `npm start`: checks, measures and draws the example drills, and says which files to open. */
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { analyse, type Analysis, type DrillAnalysis } from '../shared/analyse.ts';
import { htmlOf } from '../shared/draw.ts';
import type { Problem } from '../shared/problem.ts';
import { toSvg } from '../shared/render/svg.ts';
import { escapeXml } from '../shared/render/xml.ts';
import { sheetHtml } from '../shared/render/sheet-html.ts';
import { stage } from '../shared/scene/scene.ts';
import { sessionFacts } from '../shared/service/evening.ts';
import type { SessionAnalysis } from '../shared/session/analysis.ts';
import { sessionSheet } from '../shared/sheet/sheet.ts';
import { linesOf, positionAt } from './convert.ts';
import { printed } from './pdf.ts';
import { toPng } from './png.ts';
import { counted } from './text/report.ts';
import { workspaceOf } from './workspace.ts';

interface Drawn {
  readonly name: string;
  /** File name in the demo's folder, without its ending. */
  readonly base: string;
  readonly problems: readonly Problem[];
}

interface Sheet {
  readonly name: string;
  readonly base: string;
}

const examples = fileURLToPath(new URL('../shared/examples/', import.meta.url));
const target = fileURLToPath(new URL('../out/demo/', import.meta.url));
const here = (path: string): string => relative(process.cwd(), path) || '.';

mkdirSync(target, { recursive: true });
const drawn: Drawn[] = [];
const sheets: Sheet[] = [];
for (const file of readdirSync(examples).filter((name) => name.endsWith('.drill')).sort()) drawn.push(...await drawFile(file));
writeFileSync(join(target, 'index.html'), gallery(drawn, sheets));
console.log(`Open ${here(join(target, 'index.html'))} in a browser: it shows them all.`);
for (const { name, base } of drawn) {
  console.log(`  ${name}: ${['svg', 'png', 'html'].map((ending) => here(join(target, `${base}.${ending}`))).join(', ')}`);
}
console.log('The .html plays the drill, beat by beat.');

async function drawFile(file: string): Promise<Drawn[]> {
  const path = join(examples, file);
  const text = readFileSync(path, 'utf8');
  const whole = analyse(text, workspaceOf(path));
  const { drills, sessions, problems } = whole;
  for (const analysis of sessions) {
    const { span, name } = analysis.session;
    const own = problems.filter((problem) => span.from <= problem.span.from && problem.span.to <= span.to);
    const base = `${basename(file, '.drill')}-sheet`;
    const sheet = await sheetFiles(base, analysis, own);
    sheets.push({ name, base });
    console.log([`${name} (${here(path)})`, `  ${sessionFacts(analysis).join(', ')}.`, ...verdictOn(own, text), `  Its sheet for the touchline: ${sheet.join(', ')}`, ''].join('\n'));
  }
  return drills.map((analysis, index) => {
    const { span, name } = analysis.drill;
    const own = problems.filter((problem) => span.from <= problem.span.from && problem.span.to <= span.to);
    const base = `${basename(file, '.drill')}${drills.length > 1 ? `-${index + 1}` : ''}`;
    console.log(found(here(path), text, analysis, own));
    draw(base, whole, analysis, own);
    return { name, base, problems: own };
  });
}

function draw(base: string, whole: Analysis, analysis: DrillAnalysis, problems: readonly Problem[]): void {
  const flagged = problems.filter(({ severity }) => severity === 'error' || severity === 'warning');
  const scene = stage(analysis, { theme: 'light', convention: 'solid pass', problems: flagged });
  writeFileSync(join(target, `${base}.svg`), toSvg(scene, { embedFont: true }));
  writeFileSync(join(target, `${base}.png`), toPng(toSvg(scene)));
  writeFileSync(join(target, `${base}.html`), htmlOf(whole, { drill: analysis.drill.name }) ?? '');
}

function found(file: string, text: string, { drill, measures, phases }: DrillAnalysis, problems: readonly Problem[]): string {
  const play = phases.length > 0 ? `a game in ${counted(phases.length, 'phase')}` : `${counted(measures.passes.length, 'pass', 'passes')}, ${measures.duration.toFixed(1)} s a repetition`;
  return [
    `${drill.name} (${file})`,
    `  ${counted(measures.players, 'player')}, ${play}.`,
    ...verdictOn(problems, text),
    '',
  ].join('\n');
}

/** For the printer, and for the phone. */
async function sheetFiles(base: string, analysis: SessionAnalysis, problems: readonly Problem[]): Promise<string[]> {
  const options = { convention: 'solid pass', perPage: 1, names: [], problems } as const;
  const files = [`${base}.pdf`, `${base}.html`].map((name) => join(target, name));
  const { bytes } = await printed((measure) => sessionSheet(analysis, { ...options, theme: 'print', measure }), [], '.');
  writeFileSync(files[0]!, bytes);
  writeFileSync(files[1]!, sheetHtml(sessionSheet(analysis, { ...options, theme: 'light' })));
  return files.map(here);
}

function verdictOn(problems: readonly Problem[], text: string): string[] {
  const lines = linesOf(text);
  if (problems.length === 0) return ['  Nothing to mend.'];
  return [`  ${counted(problems.length, 'thing')} to look at:`, ...problems.map(({ span, message }) => `  - line ${positionAt(lines, span.from).line + 1}: ${message}`)];
}

function gallery(all: readonly Drawn[], evenings: readonly Sheet[]): string {
  const links = evenings.map(({ name, base }) => `<p>The sheet of <b>${escapeXml(name)}</b> for the touchline: <a href="${encodeURI(base)}.pdf">to print</a>, or <a href="${encodeURI(base)}.html">for the phone</a>.</p>`);
  const figures = all.map(({ name, base, problems }) => `<figure>
<a href="${encodeURI(base)}.html"><img src="${encodeURI(base)}.svg" alt="The drawing of ${escapeXml(name)}"></a>
<figcaption><b>${escapeXml(name)}</b>: ${problems.length === 0 ? 'nothing to mend' : `${counted(problems.length, 'thing')} to look at`}.
<a href="${encodeURI(base)}.html">Play it</a>, or open the <a href="${encodeURI(base)}.svg">SVG</a> or the <a href="${encodeURI(base)}.png">PNG</a>.</figcaption>
</figure>`);
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Halfturn: example drills</title>
<style>
body { font: 16px/1.5 system-ui, sans-serif; margin: 2rem; color: #1d2a33; background: #fff; }
main { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(30rem, 100%), 1fr)); gap: 2rem; }
figure { margin: 0; }
img { width: 100%; border: 1px solid #ddd7c4; }
</style>
<h1>Example drills</h1>
${links.join('\n')}
<main>
${figures.join('\n')}
</main>
</html>
`;
}
