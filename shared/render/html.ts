/** A scene as one self-contained page that plays: nothing is fetched, and its policy forbids that anything could be. */
import type { Note } from '../scene/notes.ts';
import type { Mover, Scene, SceneBeat, StripAxis } from '../scene/scene.ts';
import { fontCss } from './font-css.ts';
import { script, scriptHash, style, styleHash } from './page-parts.ts';
import { toSvg } from './svg.ts';
import { escapeXml } from './xml.ts';

/** What the player reads from the page, for every scene. */
export interface PlayerData {
  readonly end: number;
  readonly beats: readonly Pick<SceneBeat, 'label' | 'start' | 'end'>[];
  readonly tracks: readonly Mover['track'][];
  readonly strip: StripAxis | null;
}

/** Several scenes, such as the phases of a game, are shown one at a time. Screens take the reader's colour scheme, paper the inks for print; a scene in the print theme keeps them everywhere. */
export function toHtml(shown: Scene | readonly [Scene, ...Scene[]]): string {
  const scenes: readonly [Scene, ...Scene[]] = 'marks' in shown ? [shown] : shown;
  const [scene] = scenes;
  const plays = scenes.some(({ end }) => end > 0);
  return [
    `<!doctype html>\n<html lang="en"${scene.theme === 'print' ? ' data-theme="print"' : ''}>\n<head>\n<meta charset="utf-8">\n`,
    `<meta http-equiv="Content-Security-Policy" content="${policy}">\n`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">\n',
    `<title>${escapeXml(scene.title)}</title>\n<style>${fontCss}\n${style}</style>\n</head>\n<body>\n<main>\n<h1>${escapeXml(scene.title)}</h1>\n`,
    scenes.length > 1 ? choice(scenes) : '',
    ...scenes.map((each, index) => sceneSection(each, index)),
    '</main>\n',
    plays ? `<script type="application/json" id="player-data">${inScript(scenes.map(playerData))}</script>\n<script>${script}</script>\n` : '',
    '</body>\n</html>\n',
  ].join('');
}

const policy = [
  "default-src 'none'", `style-src '${styleHash}'`, `script-src '${scriptHash}'`, 'font-src data:', "base-uri 'none'", "form-action 'none'",
].join('; ');

function choice(scenes: readonly Scene[]): string {
  const options = scenes.map(({ title }, index) => `<option value="${index}">${escapeXml(title)}</option>`);
  return `<p class="choice"><label>Show <select id="scene" autocomplete="off">${options.join('')}</select></label></p>\n`;
}

function sceneSection(scene: Scene, index: number): string {
  const prefix = prefixOf(index);
  const plays = scene.end > 0;
  return [
    `<section class="scene" aria-label="${escapeXml(scene.title)}">\n`,
    `<figure>\n${toSvg(scene, { interactive: true, variables: true, prefix })}</figure>\n`,
    plays ? controls(scene.end) : '',
    `<ol class="beats" role="list" aria-label="Order of play">\n${scene.beats.map((beat, at) => beatItem(beat, plays ? { scene: index, beat: at } : null)).join('')}</ol>\n`,
    scene.notes.length > 0 ? `<div class="notes">\n${scene.notes.map((note) => noteSection(note, prefix)).join('')}</div>\n` : '',
    '</section>\n',
  ].join('');
}

/** Of the player; `about` says whose, where a page has several. */
export function controls(end: number, about = 'Player'): string {
  return [
    `<div class="controls" role="group" aria-label="${escapeXml(about)}">\n`,
    '<button class="play" type="button">Play</button>\n',
    '<button class="back" type="button" aria-label="Beat before">‹ Beat</button>\n<button class="next" type="button" aria-label="Next beat">Beat ›</button>\n',
    `<input class="time" type="range" min="0" max="${end.toFixed(2)}" step="0.05" value="0" aria-label="Time">\n`,
    `<output class="clock">0.0 / ${end.toFixed(1)} s</output>\n`,
    '<label>Speed <select class="speed"><option value="0.25">¼</option><option value="0.5">½</option><option value="1" selected>1</option><option value="2">2</option></select></label>\n',
    '<label><input class="loop" type="checkbox" checked> Again and again</label>\n</div>\n',
  ].join('');
}

function beatItem({ label, text }: SceneBeat, plays: Plays | null): string {
  const words = `<b>${escapeXml(label)}</b> ${escapeXml(text)}`;
  return plays === null ? `<li>${words}</li>\n` : `<li${playing(plays)}><button type="button">${words}</button></li>\n`;
}

/** A scene of the page and a beat of it, both from 0. */
interface Plays {
  readonly scene: number;
  readonly beat: number;
}

/** By which the player finds what plays a beat, wherever on the page it stands. */
export function playing({ scene, beat }: Plays): string {
  return ` data-scene="${scene}" data-beat="${beat}"`;
}

/** Keeps the ids of one scene from those of another. */
export function prefixOf(index: number): string {
  return index === 0 ? '' : `${index + 1}-`;
}

function noteSection({ id, title, entries }: Note, prefix: string): string {
  const item = ({ about, text }: Note['entries'][number]) => `<li>${about === null ? '' : `<b>${escapeXml(about)}:</b> `}${escapeXml(text)}</li>\n`;
  return `<section aria-labelledby="${prefix}about-${id}">\n<h2 id="${prefix}about-${id}">${escapeXml(title)}</h2>\n<ul>\n${entries.map(item).join('')}</ul>\n</section>\n`;
}

export function playerData({ end, beats, movers, strip }: Scene): PlayerData {
  return { end, beats: beats.map((beat) => ({ label: beat.label, start: beat.start, end: beat.end })), tracks: movers.map((mover) => mover.track), strip };
}

/** JSON that cannot close its script element. */
export function inScript(data: readonly PlayerData[]): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c');
}
