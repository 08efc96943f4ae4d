/** A sheet as one self-contained page: on a screen it flows and plays, on paper it breaks where it was laid out. Nothing is fetched. */
import type { Figure } from '../sheet/blocks.ts';
import type { Band, Placed } from '../sheet/flow.ts';
import type { Piece } from '../sheet/lay.ts';
import type { Page, Sheet } from '../sheet/sheet.ts';
import { tidy } from '../sheet/wrap.ts';
import { fontCss } from './font-css.ts';
import { controls, inScript, playerData, playing, prefixOf } from './html.ts';
import { script, scriptHash, sheetStyle, sheetStyleHash } from './page-parts.ts';
import { shapesToSvg, toSvg } from './svg.ts';
import { escapeXml } from './xml.ts';

/** `nonce`: in a page whose host allows only what carries it; without one the page's own policy knows its style and script by their hashes. */
export function sheetHtml(sheet: Sheet, { nonce }: { readonly nonce?: string } = {}): string {
  const [style, code] = nonce === undefined ? [`'${sheetStyleHash}'`, `'${scriptHash}'`] : [`'nonce-${nonce}'`, `'nonce-${nonce}'`];
  const policy = ["default-src 'none'", `style-src ${style}`, `script-src ${code}`, 'font-src data:', "base-uri 'none'", "form-action 'none'"].join('; ');
  const own = nonce === undefined ? '' : ` nonce="${escapeXml(nonce)}"`;
  const moves = sheet.pictures.some(({ end }) => end > 0);
  return [
    `<!doctype html>\n<html lang="en"${sheet.theme === 'print' ? ' data-theme="print"' : ''}>\n<head>\n<meta charset="utf-8">\n`,
    `<meta http-equiv="Content-Security-Policy" content="${policy}">\n`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">\n',
    `<title>${escapeXml(sheet.title)}</title>\n<style${own}>${fontCss}\n${sheetStyle}</style>\n</head>\n<body>\n<main>\n`,
    ...sheet.pages.map((page, index) => pageHtml(page, index === 0)),
    '</main>\n',
    moves ? `<script type="application/json" id="player-data"${own}>${inScript(sheet.pictures.map(playerData))}</script>\n<script${own}>${script}</script>\n` : '',
    '</body>\n</html>\n',
  ].join('');
}

function pageHtml({ number, bands, goesOn, block }: Page, first: boolean): string {
  const fields = block.map(({ title, value }) => `<div><span>${escapeXml(title)}</span>${escapeXml(value)}</div>`);
  return [
    `<article class="page${goesOn ? ' goes-on' : ''}" aria-label="Page ${number}">\n`,
    ...bands.map((band) => bandHtml(band, first)),
    `<div class="block" aria-hidden="true">${fields.join('')}</div>\n</article>\n`,
  ].join('');
}

function bandHtml({ kind, columns }: Band, first: boolean): string {
  return `<div class="band ${kind}">\n${columns.map((column) => `<div class="column">\n${columnHtml(column, first)}</div>\n`).join('')}</div>\n`;
}

/** Items that follow each other are one list. */
function columnHtml(column: readonly Placed[], first: boolean): string {
  const parts: string[] = [];
  let open: 'numbers' | 'bullets' | null = null;
  for (const { piece } of column) {
    const list = piece.kind === 'item' ? piece.block.list : null;
    if (list !== open && open !== null) parts.push(open === 'numbers' ? '</ol>\n' : '</ul>\n');
    if (list !== open && list !== null) parts.push(list === 'numbers' ? '<ol class="numbers" role="list">\n' : '<ul class="bullets" role="list">\n');
    open = list;
    parts.push(pieceHtml(piece, first));
  }
  if (open !== null) parts.push(open === 'numbers' ? '</ol>\n' : '</ul>\n');
  return parts.join('');
}

/** On the first page the title is the page's; below it come sections, and the titles of parts beside those. */
function pieceHtml(piece: Piece, first: boolean): string {
  switch (piece.kind) {
    case 'heading': {
      const { rank, number, text, aside } = piece.block;
      const level = { title: first ? 1 : 2, section: first ? 2 : 3, minor: first ? 3 : 4 }[rank];
      if (rank !== 'title') return `<h${level} class="${rank}" dir="auto">${lines(piece.lines, text)}</h${level}>\n`;
      const before = number === null ? '' : `<span class="number">${escapeXml(number)}</span>`;
      const after = aside === null ? '' : `<p class="aside">${escapeXml(aside)}</p>`;
      return `<header class="title">${before}<h${level} dir="auto">${lines(piece.lines, text)}</h${level}>${after}</header>\n`;
    }
    case 'text':
      return `<p class="${piece.block.style}" dir="auto">${lines(piece.lines, piece.block.text)}</p>\n`;
    case 'item': {
      const { marker, text, plays } = piece.block;
      const words = `<span class="marker">${escapeXml(marker ?? '')}</span><span class="words" dir="auto">${lines(piece.lines, text)}</span>`;
      return plays === null ? `<li>${words}</li>\n` : `<li${playing({ scene: plays.picture, beat: plays.beat })}><button type="button">${words}</button></li>\n`;
    }
    case 'table':
      return tableHtml(piece);
    case 'figure':
      return figureHtml(piece.block);
    case 'blank':
      return `<div class="blank"><p>${lines(piece.lines, piece.block.label)}</p>${'<i></i>'.repeat(piece.block.lines)}</div>\n`;
  }
}

/** Each line apart, for paper; with the spaces between them that the text has, for screens. */
function lines(texts: readonly string[], text: string): string {
  const whole = tidy(text);
  let at = 0;
  return texts.map((line) => {
    at += line.length;
    const space = whole[at] === ' ';
    if (space) at += 1;
    return `<span class="line">${escapeXml(line)}</span>${space ? ' ' : ''}`;
  }).join('');
}

function tableHtml({ block: { columns, rows: texts }, rows }: Extract<Piece, { kind: 'table' }>): string {
  const cells = (row: (typeof rows)[number], words: readonly string[], tag: 'th' | 'td') => row.cells.map((each, index) => {
    const column = columns[index];
    const names = [...(tag === 'th' ? [`share-${Math.round((column?.share ?? 0) * 100)}`] : []), ...(column?.right ? ['right'] : [])];
    return `<${tag}${tag === 'th' ? ' scope="col"' : ''}${names.length > 0 ? ` class="${names.join(' ')}"` : ''} dir="auto">${lines(each, words[index] ?? '')}</${tag}>`;
  }).join('');
  const [head, ...body] = rows;
  return [
    `<div class="scroll" tabindex="0" role="group" aria-label="${escapeXml(columns.map(({ title }) => title).join(', '))}"><table>\n<thead><tr>`,
    head ? cells(head, columns.map(({ title }) => title), 'th') : '',
    '</tr></thead>\n<tbody>\n',
    ...body.map((row, index) => `<tr>${cells(row, texts[index] ?? [], 'td')}</tr>\n`),
    '</tbody></table></div>\n',
  ].join('');
}

function figureHtml({ width, height, label, content }: Figure): string {
  if (content.kind === 'shapes') return `<figure>${shapesToSvg(content.shapes, width, height, label)}</figure>\n`;
  const { scene, enlarged, picture } = content;
  const svg = toSvg(scene, { interactive: true, variables: true, prefix: prefixOf(picture), enlarged });
  return `<figure class="scene">\n${svg}${scene.end > 0 ? controls(scene.end, `Player: ${scene.title}`) : ''}</figure>\n`;
}
