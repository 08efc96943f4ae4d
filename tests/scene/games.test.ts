import { describe, expect, it } from 'vitest';
import { hex as contrast } from 'wcag-contrast';
import { toSvg } from '../../shared/render/svg.ts';
import { isShown } from '../../shared/scene/frame.ts';
import { badge, keeperLooks, looks } from '../../shared/scene/people.ts';
import { type Ink, type Paint, palettes, themes } from '../../shared/scene/palette.ts';
import { colourDistance, visions } from '../../shared/space/colour.ts';
import { type Mark, type Scene, type Shape, stage } from '../../shared/scene/scene.ts';
import { analysed, drills } from './drills.ts';

const style = { theme: 'light', convention: 'solid pass' } as const;

/** Four keep the ball from two; the first phase ends with the ball lost, the second goes on from there. */
const game = `drill "Keep" {
  area 12 x 12
  zone Inner 6 x 6 at area.centre
  team Blues bib blue of 3
  team Reds bib yellow of 2
  floaters Jokers of 1
  player Blues1 of Blues at (6, 0.5)
  player Blues2 of Blues at (0.5, 6)
  player Blues3 of Blues at (11.5, 6)
  player Reds1 of Reds at (5, 5)
  player Reds2 of Reds at (7, 7)
  player Jokers1 of Jokers at (6, 11.5)
  ball at Blues1
  phase "Lost" {
    Blues1 passes to Blues2 while Reds1 presses Blues2, Reds2 marks Jokers1
    Reds1 wins the ball from Blues2
  }
  phase "Kept" after "Lost" {
    Reds1 dribbles to (6, 6) while Blues2 presses Reds1
    Reds1 passes to Reds2
  }
}`;

function drawn(phase?: string, control = false): Scene {
  return stage(analysed(game), { ...style, control, ...(phase === undefined ? {} : { phase }) });
}

function words(marks: readonly Mark[]): string[] {
  return marks.flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])));
}

describe('which phase is drawn', () => {
  it.each([
    ['the first, when nobody says', undefined, 'Keep, Phase: Lost', ['Blues1 passes to Blues2 while Reds1 presses Blues2, Reds2 marks Jokers1', 'Reds1 wins the ball from Blues2']],
    ['the one asked for', 'Kept', 'Keep, Phase: Kept', ['Reds1 dribbles to (6, 6) while Blues2 presses Reds1', 'Reds1 passes to Reds2']],
  ])('%s', (_, phase, title, beats) => {
    const scene = drawn(phase);
    expect([scene.title, scene.beats.map(({ text }) => text)]).toEqual([title, beats]);
  });
  it('starts where the one before it ends', () => {
    const at = (scene: Scene, id: string, from: 'start' | 'end') => scene.movers.find((mover) => mover.id === `person-${id}`)?.track.slice(...(from === 'start' ? [1, 3] : [-3, -1]));
    expect(at(drawn('Kept'), 'Reds2', 'start')).toEqual(at(drawn('Lost'), 'Reds2', 'end'));
  });
  it('is none for a drill with a sequence', () => {
    expect(stage(analysed(drills['kite'] as string), style).title).toBe('Kite, bounce and spin');
  });
});

describe('what only games have', () => {
  it('lines that end differently for pressing, covering and running', () => {
    const heads = drawn().marks.filter(({ id }) => id.startsWith('run-Reds')).map(({ label, shapes }) => [label, shapes.at(-1)?.kind === 'path' ? (shapes.at(-1) as Extract<Shape, { kind: 'path' }>).d.replace(/[^A-Z]/g, '') : '']);
    expect(heads).toEqual([['Pressing, Reds1', 'ML'], ['Covering an opponent, Reds2', 'MA'], ['Pressing, Reds1', 'ML']]);
  });
  it('one mark for each change of the ball, in the phase where it happens', () => {
    const won = (scene: Scene) => scene.marks.filter(({ id }) => id.startsWith('won-')).map(({ label }) => label);
    expect([won(drawn('Lost')), won(drawn('Kept'))]).toEqual([['Reds win the ball'], []]);
  });
  it('the numbers in a zone at every time', () => {
    const { marks, end } = drawn('Kept');
    const tallies = marks.filter(({ id }) => id.startsWith('tally-Inner'));
    const moments = Array.from({ length: 50 }, (_, index) => (end * index) / 49);
    expect(moments.filter((time) => tallies.filter((mark) => isShown(mark, time)).length > 1)).toEqual([]);
    expect([words(tallies.filter((mark) => isShown(mark, 0))), words(tallies.filter((mark) => isShown(mark, end)))]).toEqual([[], ['1 v 0']]);
  });
  it('lanes of one moment at a time, which say who closes what by how much', () => {
    const lanes = drawn().marks.filter(({ layer }) => layer === 'lanes');
    const first = lanes.filter((mark) => isShown(mark, 0));
    expect(first.map(({ id, label }) => [id, label])).toEqual([
      ['lane-1-Blues3', 'Blues1 to Blues3: open'],
      ['lane-1-Jokers1', 'Blues1 to Jokers1: closed by Reds2 by 0.7 s'],
      ['nearest-1', 'Blues1 to Blues2: Reds1 0.2 s too late'],
    ]);
    expect(words(first)).toEqual(['Reds2 first by 0.7 s', 'Reds1 0.2 s too late']);
    const ids = (svg: string) => [...svg.matchAll(/id="((?:lane|nearest)-\d+[^"]*)"/g)].map(([, id]) => id);
    expect(ids(toSvg(drawn()))).toEqual(first.map(({ id }) => id));
    expect(ids(toSvg(drawn(), { interactive: true }))).toEqual(lanes.map(({ id }) => id));
  });
  it('whose ball it is over the time line', () => {
    expect(words(stage(analysed(drills['rondo'] as string), { ...style, phase: 'Won' }).marks.filter(({ id }) => id.startsWith('possession-')))).toEqual(['Amber', 'Navy']);
  });
  it('a ball that is cut out, on the plan and on the time line', () => {
    const { marks } = stage(analysed(drills['crowded-game'] as string), style);
    expect(words(marks.filter(({ layer }) => layer !== 'lanes')).filter((text) => text.startsWith('Green4 first by'))).toEqual(['Green4 first by 0.4 s', 'Green4 first by 0.4 s']);
  });
  it('entries in the key only for what is drawn', () => {
    const key = (scene: Scene) => words(scene.marks.filter(({ id }) => id === 'key-entries'));
    expect(key(drawn())).toEqual(expect.arrayContaining(['Pressing', 'Covering an opponent', 'Ball won', 'Closed lane, by whom']));
    expect(key(drawn('Kept')).filter((name) => /Covering|Ball won|Ground/.test(name))).toEqual([]);
  });
  it('the ground each side controls when asked, shares of the whole', () => {
    const { marks } = drawn('Lost', true);
    const shares = words(marks.filter((mark) => mark.id === 'ground-1')).map((text) => Number(/(\d+) %/.exec(text)?.[1]));
    expect(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 100)).toBeLessThanOrEqual(2);
    expect([drawn('Lost', true), drawn('Lost')].map((scene) => scene.marks.some(({ layer }) => layer === 'control'))).toEqual([true, false]);
  });
});

describe('the picture of one moment', () => {
  const at = (phase: string, time: number) => stage(analysed(game), { ...style, phase, at: time });
  const ways = (scene: Scene) => scene.marks.filter(({ layer }) => layer === 'paths').map(({ id }) => id);
  const key = (scene: Scene) => words(scene.marks.filter(({ id }) => id === 'key-entries'));
  it('has the ways of its beat and says when it is', () => {
    expect(new Set(ways(at('Lost', 0.5)))).toEqual(new Set(['pass-1', 'run-Reds1-1', 'run-Reds2-1']));
    expect(at('Lost', 0.5).title).toBe('Keep, Phase: Lost, After 0.5 s');
    expect(ways(at('Lost', 99))).toEqual(['run-Reds1-2']);
  });
  it('has in its key what it shows', () => {
    expect(key(at('Lost', 0.5))).toEqual(expect.arrayContaining(['Pass', 'Pressing', 'Covering an opponent']));
    expect(key(at('Lost', 0.5))).not.toEqual(expect.arrayContaining(['Ball won']));
    expect(key(at('Lost', 99)).filter((name) => /^Pass|lane|Covering|Later/.test(name))).toEqual([]);
  });
});

describe('colours that nobody has written', () => {
  const dressed = (lines: string) => analysed(`drill "D" {\n area 30 x 30\n${lines}\n}`).drill;
  it.each([['Reds', '#c8202f'], ['Red', '#c8202f'], ['Whites', '#ffffff'], ['Navy', '#1c2f5e'], ['Tigers', 'team0']])('%s', (name, colour) => {
    expect(looks(dressed(` team ${name} of 1\n place 1 ${name} in area`), 'light')(name).colour).toBe(colour);
  });
  it('goalkeepers wear what nobody else wears, and are in the key', () => {
    const teams = ' team Reds bib yellow\n team Blues bib green\n keeper Kit of Reds at (15, 1)\n keeper Kai of Blues at (15, 29)\n player Ann of Reds at (9, 9)\n player Bea of Blues at (20, 20)';
    const drill = dressed(teams);
    const [look, keeper] = [looks(drill, 'light'), keeperLooks(drill, 'light')];
    const worn = [look('Reds'), look('Blues'), keeper('Reds'), keeper('Blues')].map(({ colour }) => colour);
    const pairs = worn.flatMap((a, index) => worn.slice(index + 1).map((b) => [a, b] as const));
    // As the check of the bibs: 20 in CIE L*a*b*, to all kinds of eyes.
    expect(pairs.filter(([a, b]) => visions.some((vision) => colourDistance(a, b, vision) < 20))).toEqual([]);
    expect(words(stage(analysed(`drill "D" {\n area 30 x 30\n${teams}\n}`), style).marks.filter(({ id }) => id === 'key-entries'))).toEqual(expect.arrayContaining(['Goalkeeper of Reds', 'Goalkeeper of Blues']));
  });
});

it('a lane through the air has its own line in the key', () => {
  const key = words(stage(analysed(drills['switch-to-the-corners'] as string), style).marks.filter(({ id }) => id === 'key-entries'));
  expect(key).toEqual(expect.arrayContaining(['Open lane', 'Open through the air']));
});

it('rules and coaching points are on every sheet, however full it is', () => {
  for (const name of ['rondo', 'three-zones', 'switch-to-the-corners']) {
    const scene = stage(analysed(drills[name] as string), style);
    const ids = new Set(scene.marks.map(({ id }) => id));
    expect(scene.notes.flatMap(({ id, entries }) => entries.map((_, index) => `${id}-${index + 1}`)).filter((id) => !ids.has(id)), name).toEqual([]);
  }
});

describe.each(themes)('badges in %s', (theme) => {
  const palette = palettes[theme];
  const colour = (paint: Paint) => (paint.startsWith('#') ? paint : palette[paint as Ink]);
  const { drill } = analysed(game);
  const look = looks(drill, theme);
  it.each(drill.teams.map(({ id }) => id))('of %s have letters and edges that are seen', (team) => {
    const shapes = badge(look(team), 2.6, '7');
    const letter = shapes.at(-1) as Extract<Shape, { kind: 'text' }>;
    const ground = look(team).filling === 'solid' ? look(team).colour : 'paper';
    // WCAG 2.2, success criteria 1.4.3 and 1.4.11.
    expect(contrast(colour(letter.fill), colour(ground))).toBeGreaterThanOrEqual(4.5);
    const edges = shapes.flatMap((shape) => (shape.kind === 'path' || shape.kind === 'circle' ? [shape.stroke] : []));
    expect(edges.map((edge) => (edge === null ? 0 : contrast(colour(edge), palette.paper))).filter((seen) => seen < 3)).toEqual([]);
  });
  it('of no two teams share shape and filling', () => {
    expect(new Set(drill.teams.map(({ id }) => `${look(id).outline} ${look(id).filling}`)).size).toBe(drill.teams.length);
  });
});
