import { differenceEuclidean, filterDeficiencyDeuter, filterDeficiencyProt, filterDeficiencyTrit, parse } from 'culori';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { hex as contrast } from 'wcag-contrast';
import { analyse } from '../../shared/analyse.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { changeInks } from '../../shared/review/marks.ts';
import { toPage } from '../../shared/review/page.ts';
import { changedFiles, comparedFiles, phaseNote, pictured, type PicturedSubject, toMarkdown } from '../../shared/review/report.ts';
import { palettes, themes } from '../../shared/scene/palette.ts';
import { type Scene, type Shape, stage } from '../../shared/scene/scene.ts';
import { drills } from '../scene/drills.ts';

type Edits = readonly (readonly [from: string, to: string])[];

function changed(text: string, edits: Edits, bare = false): PicturedSubject {
  const after = edits.reduce((made, [from, to]) => made.replaceAll(from, to), text);
  const [first] = pictured(changedFiles(comparedFiles([{ name: 'a.drill', before: analyse(text), after: analyse(after) }])), { theme: 'light', convention: 'solid pass', bare });
  return first!;
}

const hurry: Edits = [['  pole Post at (4.5, 8)\n', ''], ['(15, 13)', '(12, 13)'], ['  ball at Base', '  cone at (7, 8)\n  ball at Base']];
const inAHurry = changed(drills['in-a-hurry']!, hurry);

test('the picture of a comparison is as it was when somebody last looked at it', () => {
  const path = new URL('golden/in-a-hurry.svg', import.meta.url);
  const svg = toSvg(inAHurry.pictures!.over);
  if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(path, svg);
  expect(svg.split('\n')).toEqual(readFileSync(path, 'utf8').split('\n'));
});

describe('every kind of picture is sound and free of holes', () => {
  test.each([
    ['diamond', [['let wide = 6', 'let wide = 8']]],
    ['rondo', [['(4, 4)', '(3, 3)']]],
    ['three-zones', [['Back 15', 'Back 12']]],
    ['two-lanes', [['sequence "left" mirrors "right" across length', '']]],
    ['crowded-game', [['area 20 x 24', 'area 30 x 24']]],
  ] as const)('%s', (name, edits) => {
    const { before, after, over, beside } = changed(drills[name]!, edits).pictures!;
    for (const scene of [before!, after!, over, beside]) {
      const svg = toSvg(scene, { embedFont: false, interactive: true });
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      const parser = new SaxesParser({ xmlns: true });
      parser.on('error', (error) => {
        throw error;
      });
      parser.write(svg).close();
      const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
      expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    }
    expect([before!.width, before!.height, before!.plan]).toEqual([after!.width, after!.height, after!.plan]);
  });
});

describe('signs', () => {
  const { over } = inAHurry.pictures!;
  const of = (label: string): readonly Shape[] => over.marks.find((mark) => mark.label === label)!.shapes;
  /** How a sign is drawn, without its colours and its place. */
  const form = (shapes: readonly Shape[]): unknown => JSON.parse(JSON.stringify(shapes, (key, value: unknown) => (['fill', 'stroke', 'x', 'y'].includes(key) ? undefined : value)));

  test('moved, new and gone are told by shape as well as by colour', () => {
    const signs = ['Right: moved', 'the cone at (7, 8): new', 'the pole Post: gone'].map((label) => form(of(label)));
    expect(new Set(signs.map((sign) => JSON.stringify(sign))).size).toBe(3);
  });
  // WCAG 2.2, 1.4.11, and for the letters of who was there before 1.4.3.
  test.each(themes)('are seen on paper, like what was before, in %s', (theme) => {
    const palette = palettes[theme];
    for (const ink of [...Object.values(changeInks), 'wait'] as const) expect(contrast(palette[ink], palette.paper)).toBeGreaterThanOrEqual(3);
    expect(contrast(palette.note, palette.paper)).toBeGreaterThanOrEqual(4.5);
  });
  const eyes = { 'any eye': (colour: unknown) => colour, protanopia: filterDeficiencyProt(1), deuteranopia: filterDeficiencyDeuter(1), tritanopia: filterDeficiencyTrit(1) };
  // Distance in CIELAB (CIE76), as for the other inks.
  test.each(Object.keys(eyes) as (keyof typeof eyes)[])('new and gone are told apart with %s', (eye) => {
    for (const theme of ['light', 'dark'] as const) {
      const [a, b] = [changeInks.added, changeInks.removed].map((ink) => eyes[eye](parse(palettes[theme][ink])));
      expect(differenceEuclidean('lab65')(a, b)).toBeGreaterThanOrEqual(10);
    }
  });
  test('who does the same in both is drawn once', () => {
    const names = (scene: Scene) => scene.movers.map(({ label }) => label);
    expect(names(over).filter((label) => label.startsWith('Before'))).toEqual(['Before: Left', 'Before: Right', 'Before: Ball']);
  });
});

describe('what breaks now', () => {
  // Top and Base have the ball for each other no longer; what was wrong before is left alone.
  const noSet = changed(drills['diamond']!, [['    Pivot sets to Base\n', '']]);
  const { before, after, over, beside, flagged } = noSet.pictures!;
  const flags = (scene: Scene | null) => scene!.marks.filter(({ id }) => /^(?:now-)?problem-\d/.test(id)).map(({ label }) => label);
  const words = (scene: Scene) => scene.marks.flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])));

  test('is flagged where the ordinary drawing flags it, on every picture of the newer version', () => {
    expect(flagged.map(({ message }) => message)).toEqual(['Base has no ball to play: it is with Pivot.']);
    for (const scene of [after, over, beside]) expect(flags(scene)).toEqual(['1: Base has no ball to play: it is with Pivot.']);
    expect(flags(before)).toEqual([]);
    const edited = analyse(drills['diamond']!.replace('    Pivot sets to Base\n', ''));
    const [drill] = edited.drills;
    const plain = stage(drill!, { theme: 'light', convention: 'solid pass', problems: edited.problems.filter(({ code }) => code === 'no-ball') });
    const metres = ({ marks, plan }: Scene) => {
      const shape = marks.find(({ id }) => id === 'problem-1')!.shapes.find(({ kind }) => kind === 'text');
      return shape?.kind === 'text' ? [(shape.x - plan.left) / plan.perMetre, (plan.bottom - shape.y) / plan.perMetre] : [];
    };
    for (const scene of [after!, over]) for (const [axis, value] of metres(scene).entries()) expect(Math.abs(value - metres(plain)[axis]!)).toBeLessThan(1.5);
  });
  test('has its words beside the flags, once', () => {
    for (const scene of [over, beside]) expect(words(scene).filter((each) => each.includes('no ball to play'))).toEqual(['Base has no ball to play: it is with Pivot.']);
    expect(words(over)).toContain('NEW PROBLEMS');
  });
  test('is told apart from what was wrong already', () => {
    const { flagged: none } = changed(drills['in-a-hurry']!, [['age      U10', 'age      U11']]).pictures!;
    expect(none).toEqual([]);
  });
  test('of a drill that is new is all that is wrong with it', () => {
    const text = drills['in-a-hurry']!;
    const [one] = pictured(changedFiles(comparedFiles([{ name: 'a.drill', before: null, after: analyse(text) }])), { theme: 'light', convention: 'solid pass' });
    const { problems } = analyse(text);
    expect(one!.pictures!.flagged.length).toBe(problems.filter(({ severity }) => severity === 'error' || severity === 'warning').length);
    expect(one!.pictures!.flagged.length).toBeGreaterThan(1);
  });
  test('has the number of its flag on the page and in the comment', () => {
    const html = toPage([noSet], { title: 'What changed', before: 'a', after: 'b' });
    expect(html).toContain('aria-label="Flag 1"><b>1</b></span>New error: Base has no ball to play: it is with Pivot.</li>');
    expect(toMarkdown('What changed', [noSet], new Map([[noSet, 'a.svg']]))).toContain('- ⚠️ 1: New error: Base has no ball');
  });
});

describe('one over the other', () => {
  const boxes = ({ marks }: Scene) => marks.filter(({ layer }) => layer === 'labels' || layer === 'problems').flatMap(({ id, shapes }) => shapes.flatMap((shape) => {
    const [, x = NaN, y = NaN, wide = NaN, high = NaN] = shape.kind === 'path' ? (/^M(\S+) (\S+)h(\S+)v(\S+)h/.exec(shape.d) ?? []).map(Number) : [];
    return Number.isNaN(x) || id.startsWith('change-') ? [] : [{ id, x, y, wide, high }];
  }));
  test.each([
    ['diamond', [['let wide = 6', 'let wide = 4']]], ['diamond', [['let wide = 6', 'let wide = 5']]], ['in-a-hurry', hurry], ['two-balls', [['let side = 7', 'let side = 5.5']]],
  ] as const)('nobody who was there before stands on what is written: %s', (name, edits) => {
    const { over } = changed(drills[name]!, edits).pictures!;
    const ghosts = over.movers.filter(({ id, kind }) => id.startsWith('before-') && kind === 'person').map(({ track: [, x, y] }) => ({ x: x!, y: y! }));
    expect(ghosts.length).toBeGreaterThan(0);
    const covered = boxes(over).filter((box) => ghosts.some(({ x, y }) => x > box.x - 2.4 && x < box.x + box.wide + 2.4 && y > box.y - 2.4 && y < box.y + box.high + 2.4));
    expect(covered).toEqual([]);
  });
  test.each([
    ['diamond', [['let wide = 6', 'let wide = 8']], 'Now, Before, where it differs, Moved'],
    ['in-a-hurry', [['  ball at Base', '  cone at (7, 8)\n  ball at Base']], 'New'],
    ['in-a-hurry', [['  pole Post at (4.5, 8)\n', '']], 'Now, Before, where it differs, Gone'],
    ['in-a-hurry', [['age      U10', 'age      U11']], undefined],
  ] as const)('the key has what the picture shows, and no more: %s, %s', (name, edits, key) => {
    const { over } = changed(drills[name]!, edits).pictures!;
    expect(over.marks.find(({ id }) => id === 'change-key')?.label).toBe(key && `Key: ${key}`);
  });
});

describe('of a game', () => {
  const both = changed(drills['rondo']!, [['(4, 4)', '(3, 3)'], ['(6.5, 6)', '(7, 7)']]);
  test('the picture says which phase it shows, and the words which others changed', () => {
    const { before, after, over } = both.pictures!;
    for (const scene of [before!, after!, over]) expect(toSvg(scene)).toContain('>Phase: Round the outside</text>');
    expect(phaseNote(both)).toBe('the phase “Round the outside”; “Between the two” changed too');
    expect(toMarkdown('What changed', [both], new Map([[both, 'a.svg']]))).toContain('The picture shows the phase “Round the outside”; “Between the two” changed too.');
  });
  test('that also plays outside its phases, this comes first where it changed', () => {
    const own = drills['rondo']!.replace('  point technical', '  sequence {\n    Amber1 passes to Amber3\n    Amber3 passes to Amber1\n  }\n\n  point technical');
    const titles = (edits: Edits) => {
      const after = analyse(edits.reduce((text, [from, to]) => text.replace(from, to), own));
      const all = pictured(changedFiles(comparedFiles([{ name: 'a.drill', before: analyse(own), after }])), { theme: 'light', convention: 'solid pass', bare: true });
      return all.map((each) => [each.pictures!.phase, phaseNote(each)]);
    };
    const dribble = ['dribbles to (5, 6)', 'dribbles to (5, 5)'] as const;
    expect(titles([dribble])).toEqual([['Won', 'the phase “Won”']]);
    expect(titles([dribble, ['Amber3 passes to Amber1\n', 'Amber3 passes to Amber4\n    Amber4 passes to Amber1\n']]))
      .toEqual([[null, 'the play outside the phases; “Won” changed too'], ['Won', 'the phase “Won”']]);
  });
  test('one phase alone has no others; a drill without phases says nothing', () => {
    expect(phaseNote(changed(drills['rondo']!, [['Amber2 passes to Amber1 first time', 'Amber2 passes to Amber1']]))).toBe('the phase “Round the outside”');
    expect(phaseNote(inAHurry)).toBe('');
  });
});

describe('of an evening', () => {
  const text = `${drills['rondo']}session "Tuesday" {
  players 14
  pitch 60 x 45
  part "Warm up" 12 min groups 2 of "Four against two" resting 2 at (2, 2), (22, 2)
  pause 3 min
  part "Again" 10 min of "Four against two" at (40, 30)
  part "Talk" 5 min
}
`;
  const moved = analyse(text.replace('at (2, 2), (22, 2)', 'at (2, 30), (40, 2)'));
  const all = pictured(changedFiles(comparedFiles([{ name: 'a.drill', before: analyse(text), after: moved }])), { theme: 'light', convention: 'solid pass', bare: true });
  const { before, after, over, beside } = all.find(({ subject }) => subject.kind === 'session')!.pictures!;

  test('the pitch of each part is there before and now, to one scale, with its groups in their places', () => {
    expect([before!.width, before!.height, before!.plan]).toEqual([after!.width, after!.height, after!.plan]);
    expect(after!.marks.flatMap(({ label }) => label ?? [])).toEqual(['Warm up, minute 0 to 12', 'Again, minute 15 to 25']);
    const corners = (scene: Scene) => scene.marks.find(({ id }) => id === 'part-1')!.shapes.flatMap((shape) => (shape.kind === 'path' ? [(/^M(\S+) (\S+)h(\S+)v(\S+)h/.exec(shape.d) ?? []).slice(1).map(Number)] : []));
    const metres = (scene: Scene) => {
      const [pitch, ...groups] = corners(scene) as [number[], ...number[][]];
      return groups.map(([x, y, , high]) => [x! - pitch[0]!, pitch[1]! + pitch[3]! - y! - high!].map((length) => Math.round(length / scene.plan.perMetre)));
    };
    expect([metres(before!), metres(after!)]).toEqual([[[2, 2], [22, 2]], [[2, 30], [40, 2]]]);
  });
  test('the page shows both, but not one over the other', () => {
    expect(over).toBe(beside);
    const html = toPage(all, { title: 'What changed', before: 'a', after: 'b' });
    expect(html).not.toContain('value="over"');
    expect(html).toContain('value="swipe"');
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
  test('without a part on the ground there is no picture', () => {
    const bare = (minutes: number) => analyse(`session "A" {\n  players 8\n  part "Talk" ${minutes} min\n}\n`);
    expect(pictured(comparedFiles([{ name: 'a.drill', before: bare(5), after: bare(6) }]), { theme: 'light', convention: 'solid pass' }).map(({ pictures }) => pictures)).toEqual([null]);
  });
});

describe('the page', () => {
  const hostile = '</script><script>alert(1)</script><img src=x onerror=alert(2)>" autofocus onfocus="alert(3)';
  const text = drills['in-a-hurry']!.replace('"Pass and move"', `"${hostile.replaceAll('"', "'")}"`);
  const compared = changed(text, [...hurry, ['Triangle, in a hurry', hostile.replaceAll('"', "'")]], true);
  const page = (nonce?: string) => toPage([compared, compared], { title: hostile, before: hostile, after: 'HEAD', ...(nonce === undefined ? {} : { nonce, theme: 'dark' as const }) });
  const hash = (part: string) => `'sha256-${createHash('sha256').update(part).digest('base64')}'`;

  test('runs its own script and nothing that a drill says', () => {
    const html = page();
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? '';
    const parts = (tag: string) => [...html.matchAll(new RegExp(`<${tag}>([^]*?)</${tag}>`, 'g'))].map(([, part]) => part ?? '');
    expect(parts('script').map((part) => policy.includes(`script-src ${hash(part)}`))).toEqual([true]);
    expect(parts('style').map((part) => policy.includes(`style-src ${hash(part)}`))).toEqual([true]);
    expect(html.match(/<script/g)).toHaveLength(2);
    expect(html).not.toMatch(/<img| style="|<[^>]* on\w+="/);
  });
  test('in an editor is known by its nonce', () => {
    const html = page('abc123');
    expect(html).toContain("default-src 'none'; style-src 'nonce-abc123'; script-src 'nonce-abc123'; font-src data:");
    expect(html.match(/ nonce="abc123"/g)).toHaveLength(3);
    expect(html).toContain('<html lang="en" data-theme="dark">');
  });
  test('fetches nothing, and has no id twice', () => {
    const html = page();
    expect([...html.matchAll(/url\(([^)]{0,5})/g)].map(([, start]) => start)).toEqual(['data:', 'data:']);
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:\/\//);
    expect(html).not.toMatch(/ (?:src|href)="(?!#change-\d+")/);
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
  test('has every phase of a game in which something changed', () => {
    const rondo = drills['rondo']!;
    const after = analyse(rondo.replace('Navy1  of Navy at (4, 4)', 'Navy1  of Navy at (3, 3)').replace('(6.5, 6)', '(7, 7)'));
    const files = changedFiles(comparedFiles([{ name: 'a.drill', before: analyse(rondo), after }]));
    const [, second, ...rest] = pictured(files, { theme: 'light', convention: 'solid pass', bare: true });
    expect([second?.title, rest]).toEqual(['Four against two: Between the two', []]);
    const { span } = after.drills[0]!.phases[1]!.phase;
    const places = second!.subject.facts.map(({ spans }) => spans.after!);
    expect(places.length).toBeGreaterThan(0);
    expect(places.filter(({ from, to }) => from < span.from || to > span.to)).toEqual([]);
  });
  test('begins with what got worse, what changed, and what came or went, each with a link', () => {
    const pair = (name: string, edits: Edits) => ({ name: `${name}.drill`, before: analyse(drills[name]!), after: analyse(edits.reduce((made, [from, to]) => made.replaceAll(from, to), drills[name]!)) });
    const files = [
      pair('in-a-hurry', [['"Pass and move"', '"Pass, move"']]), { name: 'two-balls.drill', before: null, after: analyse(drills['two-balls']!) },
      pair('rondo', [['(4, 4)', '(3, 3)'], ['(6.5, 6)', '(7, 7)']]), pair('two-lanes', [['lane = 5', 'lane = 6']]),
    ];
    const html = toPage(pictured(changedFiles(comparedFiles(files)), { theme: 'light', convention: 'solid pass', bare: true }), { title: 'What changed', before: 'a', after: 'b' });
    const nav = /<nav class="overview"[^]*?<\/nav>/.exec(html)![0];
    expect([...nav.matchAll(/<h3>(.*?)<|<a href="#change-(\d)" data-show="(\d)">(.*?)</g)].map(([, title, section, show, name]) => title ?? [section, show, name])).toEqual([
      'Worse', ['3', '2', 'Four against two (rondo.drill)'],
      'Changed', ['1', '0', 'Triangle, in a hurry (in-a-hurry.drill)'], ['5', '4', 'Two lanes, third man (two-lanes.drill)'],
      'New or gone', ['2', '1', 'Two balls round the square (two-balls.drill)'],
    ]);
    expect(nav).toContain('3 new problems. New error: Navy1');
    for (const section of ['1', '2', '3', '5']) expect(html).toContain(`<section class="change" id="change-${section}"`);
  });
  test('of one drill has no overview', () => expect(toPage([compared], { title: 'What changed', before: 'a', after: 'b' })).not.toContain('class="overview"'));
  test('of nothing says so', () => {
    expect(toPage([], { title: 'What changed', before: 'a', after: 'b' })).toContain('<p>Nothing changed.</p>');
  });
});
