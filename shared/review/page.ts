/** Comparisons as one self-contained page: both versions play in step, and nothing in it comes from elsewhere or runs from a drill's text. */
import type { Flagged } from '../scene/flagged.ts';
import type { Mover, Scene, SceneBeat, StripAxis } from '../scene/scene.ts';
import { plainWords } from '../scene/words.ts';
import { fontCss } from '../render/font-css.ts';
import { toSvg } from '../render/svg.ts';
import { escapeXml } from '../render/xml.ts';
import { type Fact, isNewProblem, type Subject } from './comparison.ts';
import { script, scriptHash, style, styleHash } from './page-parts.ts';
import { flagOf, type Pictures } from './picture.ts';

/** What the script reads from the page, for every comparison. */
export interface ComparedData {
  /** Seconds of the longer of the two. */
  readonly end: number;
  readonly beats: readonly Pick<SceneBeat, 'label' | 'start'>[];
  readonly pictures: readonly {
    /** The class of its figure. */
    readonly place: 'before' | 'now' | 'over';
    readonly tracks: readonly Mover['track'][];
    readonly strip: (StripAxis & { readonly end: number }) | null;
  }[];
}

export interface Compared {
  /** In the list of what there is to see. */
  readonly title: string;
  readonly subject: Subject;
  /** Null for what has no picture, such as what the file says around its drills. */
  readonly pictures: Pictures | null;
  /** Another phase of the game that stands before it. */
  readonly further: boolean;
}

export interface PageOptions {
  readonly title: string;
  /** What the versions are called, such as `main` and `HEAD`. */
  readonly before: string;
  readonly after: string;
  /** For a page in an editor, whose policy knows its script and style by it; without it they are known by their hashes. */
  readonly nonce?: string;
  /** Without it the reader's colour scheme. */
  readonly theme?: 'light' | 'dark';
}

export function toPage(compared: readonly Compared[], { title, before, after, nonce, theme }: PageOptions): string {
  const mark = nonce === undefined ? '' : ` nonce="${escapeXml(nonce)}"`;
  const known = (hash: string) => (nonce === undefined ? `'${hash}'` : `'nonce-${escapeXml(nonce)}'`);
  const policy = ["default-src 'none'", `style-src ${known(styleHash)}`, `script-src ${known(scriptHash)}`, 'font-src data:', "base-uri 'none'", "form-action 'none'"].join('; ');
  return [
    `<!doctype html>\n<html lang="en"${theme === undefined ? '' : ` data-theme="${theme}"`}>\n<head>\n<meta charset="utf-8">\n`,
    `<meta http-equiv="Content-Security-Policy" content="${policy}">\n`,
    `<meta name="viewport" content="width=device-width, initial-scale=1">\n<title>${escapeXml(title)}</title>\n<style${mark}>${fontCss}\n${style}</style>\n</head>\n<body>\n<main>\n`,
    `<h1>${escapeXml(title)}</h1>\n<p class="versions">Before: ${escapeXml(before)}. Now: ${escapeXml(after)}.</p>\n`,
    overview(compared),
    compared.length > 1 ? `<p class="choice"><label>Show <select id="drill" autocomplete="off">${compared.map((each, index) => `<option value="${index}">${escapeXml(each.title)}</option>`).join('')}</select></label></p>\n` : '',
    compared.length === 0 ? '<p>Nothing changed.</p>\n' : '',
    ...compared.map((each, index) => section(each, `${index + 1}-`)),
    '</main>\n',
    `<script type="application/json" id="compare-data"${mark}>${JSON.stringify(compared.map(dataOf)).replaceAll('<', '\\u003c')}</script>\n<script${mark}>${script}</script>\n</body>\n</html>\n`,
  ].join('');
}

/** Of several drills: which got worse, which changed, which came or went, each with a link to where it is told. */
function overview(compared: readonly Compared[]): string {
  const all = compared.map((each, index) => ({ ...each, index })).filter(({ further }) => !further);
  if (all.length < 2) return '';
  const worse = all.filter(({ subject }) => subject.facts.some(isNewProblem));
  const whole = all.filter(({ subject }) => subject.kind !== 'file' && (subject.before === null || subject.after === null));
  const rest = all.filter((each) => !worse.includes(each) && !whole.includes(each));
  const list = (title: string, some: typeof all, words: (subject: Subject) => string) => (some.length === 0 ? '' : [
    `<h3>${title}</h3>\n<ul>\n`,
    ...some.map(({ title: name, subject, index }) => `<li><a href="#change-${index + 1}" data-show="${index}">${escapeXml(name)}</a>: ${escapeXml(words(subject))}</li>\n`),
    '</ul>\n',
  ].join(''));
  return [
    '<nav class="overview" aria-label="Overview">\n',
    list('Worse', worse, ({ facts }) => `${many(facts.filter(isNewProblem).length, 'new problem')}. ${facts.find(isNewProblem)!.sentence}`),
    list('Changed', rest, changesIn),
    list('New or gone', whole, ({ facts: [first] }) => first?.sentence ?? ''),
    '</nav>\n',
  ].join('');
}

function changesIn({ facts }: Subject): string {
  const own = facts.filter(({ shared }) => !shared);
  const matter = own.filter(({ grade }) => grade === 'matters');
  const [first] = matter;
  if (!first) return `${many(own.length, 'detail')}, nothing that matters on the grass.`;
  return `${many(matter.length, 'change')}. ${first.sentence}`;
}

function many(number: number, one: string): string {
  return `${number} ${one}${number === 1 ? '' : 's'}`;
}

/** `prefix` keeps the ids of one comparison from those of another. */
function section({ title, subject, pictures }: Compared, prefix: string): string {
  const both = pictures?.before && pictures.after;
  return [
    `<section class="change" id="change-${prefix.slice(0, -1)}" data-view="side" aria-label="${escapeXml(title)}">\n`,
    both ? views(prefix, isOverlaid(pictures)) : '',
    pictures ? figures(pictures, prefix) : '',
    pictures && pictures.over.end > 0 ? controls(pictures.over.end) : '',
    factsOf(subject.facts, pictures?.flagged ?? []),
    '</section>\n',
  ].join('');
}

function views(prefix: string, overlaid: boolean): string {
  const radio = (value: string, label: string) => `<label><input type="radio" name="${prefix}view" value="${value}" autocomplete="off"${value === 'side' ? ' checked' : ''}> ${label}</label>\n`;
  return `<fieldset class="views"><legend>Look at them</legend>\n${radio('side', 'side by side')}${overlaid ? radio('over', 'one over the other') : ''}${radio('swipe', 'swiping')}${radio('fade', 'fading')}</fieldset>\n${share}`;
}

const share = '<label class="share">Before <input type="range" min="0" max="100" step="1" value="50" autocomplete="off" aria-label="How much of each is seen"> Now</label>\n';

/** Of an evening there is nothing to lay over each other. */
function isOverlaid({ over, beside }: Pictures): boolean {
  return over !== beside;
}

function figures(pictures: Pictures, prefix: string): string {
  const { before, after, over } = pictures;
  const figure = (scene: Scene | null, place: string, label: string) => (
    scene ? `<figure class="${place}" aria-label="${label}">\n${toSvg(scene, { interactive: true, variables: true, prefix: `${prefix}${place}-` })}</figure>\n` : ''
  );
  const both = before !== null && after !== null;
  return [
    `<div class="pair${both ? '' : ' alone'}">\n${figure(before, 'before', 'Before')}${figure(after, 'now', 'Now')}${both ? '<div class="edge"></div>\n' : ''}</div>\n`,
    both && isOverlaid(pictures) ? figure(over, 'over', 'One over the other') : '',
  ].join('');
}

function controls(end: number): string {
  return [
    '<div class="controls" role="group" aria-label="Player">\n',
    '<button class="play" type="button">Play</button>\n',
    '<button class="back" type="button" aria-label="Beat before">‹ Beat</button>\n<button class="next" type="button" aria-label="Next beat">Beat ›</button>\n',
    `<input class="time" type="range" min="0" max="${end.toFixed(2)}" step="0.05" value="0" autocomplete="off" aria-label="Time">\n`,
    `<output class="clock">0.0 / ${end.toFixed(1)} s</output>\n`,
    '<label>Speed <select class="speed" autocomplete="off"><option value="0.25">¼</option><option value="0.5">½</option><option value="1" selected>1</option><option value="2">2</option></select></label>\n',
    '<label><input class="loop" type="checkbox" autocomplete="off" checked> Again and again</label>\n</div>\n',
  ].join('');
}

/** Those whose problem is flagged on the picture carry the number of the flag. */
function factsOf(facts: readonly Fact[], flagged: readonly Flagged[]): string {
  const own = facts.filter(({ shared }) => !shared);
  const list = (items: readonly string[]) => `<ul class="facts" role="list">\n${items.join('')}</ul>\n`;
  const item = (fact: Fact) => {
    const number = flagOf(fact, flagged);
    const sort = isNewProblem(fact) ? 'problem' : fact.kind;
    return number === null ? `<li class="${sort}">${escapeXml(fact.sentence)}</li>\n` : flaggedItem(number, fact.sentence);
  };
  const [matter, detail] = [own.filter(({ grade }) => grade === 'matters'), own.filter(({ grade }) => grade === 'detail')];
  const told = new Set(own.map((fact) => flagOf(fact, flagged)));
  // Of a drill that is new the problems are counted in one fact.
  const more = flagged.flatMap(({ message }, index) => (told.has(index + 1) ? [] : [flaggedItem(index + 1, plainWords(message))]));
  const items = [...matter.map(item), ...more];
  return [
    `<h2>What changed</h2>\n${items.length > 0 ? list(items) : '<p>Nothing that matters on the grass.</p>\n'}`,
    detail.length > 0 ? `<details>\n<summary>${many(detail.length, 'detail')}</summary>\n${list(detail.map(item))}</details>\n` : '',
  ].join('');
}

function flaggedItem(number: number, words: string): string {
  return `<li class="flagged"><span class="flag" role="img" aria-label="Flag ${number}"><b>${number}</b></span>${escapeXml(words)}</li>\n`;
}

function dataOf({ pictures }: Compared): ComparedData {
  if (!pictures) return { end: 0, beats: [], pictures: [] };
  const { before, after, over } = pictures;
  const places = [['before', before], ['now', after], ['over', before && after ? over : null]] as const;
  return {
    end: over.end,
    beats: (after ?? before ?? over).beats.map(({ label, start }) => ({ label, start })),
    pictures: places.flatMap(([place, scene]) => (scene ? [{ place, tracks: scene.movers.map(({ track }) => track), strip: scene.strip && { ...scene.strip, end: scene.end } }] : [])),
  };
}
