import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import type { SessionAnalysis } from '../../shared/session/analysis.ts';
import type { Figure, Table } from '../../shared/sheet/blocks.ts';
import { sessionSheet, type Sheet } from '../../shared/sheet/sheet.ts';
import { contentWidth } from '../../shared/sheet/style.ts';
import { minutes, people } from '../../shared/sheet/words.ts';
import { workspaceOf } from '../../server/workspace.ts';

const path = new URL('../../shared/examples/tuesday-evening.drill', import.meta.url).pathname;
const session = analyse(readFileSync(path, 'utf8'), workspaceOf(path)).sessions[0] as SessionAnalysis;
const laid = (perPage: 1 | 2): Sheet => sessionSheet(session, { theme: 'print', convention: 'solid pass', perPage, names: [], problems: [] });

function blocksOf<K extends 'figure' | 'table'>(sheet: Sheet, kind: K) {
  return sheet.pages.flatMap(({ number, bands }) => bands.flatMap(({ columns }) => columns.flat().flatMap(({ piece }) => (piece.kind === kind ? [{ number, block: piece.block as K extends 'figure' ? Figure : Table }] : []))));
}

describe('the front page', () => {
  it('has the time line to scale', () => {
    const strip = blocksOf(laid(1), 'figure')[0]?.block;
    const paths = strip?.content.kind === 'shapes' ? strip.content.shapes.flatMap((shape) => (shape.kind === 'path' ? [shape.d] : [])) : [];
    const boxes = paths.flatMap((d) => { const found = /^M([\d.]+) 1h([\d.]+)v12h/.exec(d); return found ? [[Number(found[1]), Number(found[2])]] : []; });
    // By hand: 12, 3, 18, 10, 4, 25 and 8 of 80 minutes on 186 mm are 2.325 mm a minute.
    const starts = [0, 12, 15, 33, 43, 47, 72, 80].map((minute) => minute * (contentWidth / 80));
    expect(boxes).toHaveLength(7);
    for (const [index, [left, width]] of boxes.entries()) {
      expect(left).toBeCloseTo(starts[index] as number, 1);
      expect(width).toBeCloseTo((starts[index + 1] as number) - (starts[index] as number), 1);
    }
  });
  it.each([1, 2] as const)('says on which page each part is, %i to a page', (perPage) => {
    const sheet = laid(perPage);
    const rows = blocksOf(sheet, 'table')[0]?.block.rows ?? [];
    const told = rows.filter((row) => row[5] !== '').map((row) => [row[2], Number(row[5])]);
    const found = told.map(([name]) => [name, sheet.pages.find(({ opens }) => opens?.split(' / ').includes(`${name}`.replace('  ', ' ')))?.number]);
    expect(told).toHaveLength(4);
    expect(told).toEqual(found);
  });
});

describe('drawings', () => {
  it('are to scale', () => {
    for (const { block } of blocksOf(laid(1), 'figure')) {
      if (block.content.kind !== 'scene') continue;
      const { scene: { plan }, enlarged } = block.content;
      expect(plan.perMetre * enlarged).toBeCloseTo(1000 / plan.scale, 9);
    }
  });
  it('say their scale: the first in the title block of its page, those behind it in their titles where it is another', () => {
    const sheet = laid(1);
    const scales = sheet.pages.flatMap(({ opens, block }) => block.flatMap(({ title, value }) => (title === 'SCALE' ? [[opens !== null, value]] : [])));
    expect(scales).toEqual([[true, '1:125'], [true, '1:250'], [true, '1:250'], [true, '1:500']]);
    const titles = sheet.pages.flatMap(({ bands }) => bands.flatMap(({ columns }) => columns.flat().flatMap(({ piece: { block } }) => (block.kind === 'heading' ? [block.text] : []))));
    expect(titles).toEqual(expect.arrayContaining(['Phase: Round the outside', 'Phase: Between the two, drawn 1:200', 'Phase: Won, drawn 1:200']));
  });
  it('are numbered as they stand in the sheet', () => {
    for (const perPage of [1, 2] as const) {
      const sheet = laid(perPage);
      const scenes = blocksOf(sheet, 'figure').flatMap(({ block: { content } }) => (content.kind === 'scene' ? [content] : []));
      for (const { scene, picture } of scenes) expect(sheet.pictures[picture]).toBe(scene);
      expect(scenes).toHaveLength(sheet.pictures.length);
    }
  });
});

it.each([[900, '15'], [450, '7:30'], [5, '0:05'], [0, '0']])('%i seconds are %s minutes', (seconds, words) => {
  expect(minutes(seconds)).toBe(words);
});

it.each([
  [[1, 2, 3, 5], [], 'players 1–3, 5'], [[4], [], 'player 4'], [[1, 2], ['Ann', 'Bo'], 'Ann, Bo'], [[1, 2, 3], ['Ann', null, 'Cy'], 'Ann, Cy, player 2'], [[1], ['דוד'], '\u2068דוד\u2069'],
])('%j of %j are %s', (members, names, words) => {
  expect(people(members, names)).toBe(words);
});
