/** What stands beside the plan: the order of play, the key and the title block. Millimetres. */
import type { DrillAnalysis } from '../analyse.ts';
import type { Problem } from '../problem.ts';
import { cut, textWidth, wrap } from '../font/text.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import { itemText } from '../measure/kit.ts';
import type { Drill, Zone } from '../model/drill.ts';
import { controlInk, type Ground, hatchOf } from './control.ts';
import { ballShapes, furnitureNames, furnitureSymbol } from './furniture.ts';
import { boxOf } from './ground.ts';
import { laneSamples, otherLanes } from './lanes.ts';
import { type Convention, type LineKind, lineSample } from './lines.ts';
import { badge, keeperLooks, laterBadge, looks, radius } from './people.ts';
import type { Theme } from './palette.ts';
import type { Note } from './notes.ts';
import type { Mark, SceneBeat, Shape } from './scene.ts';
import { box, circle, filled, group, line, mm, path, polygon, stroked, text, type Spot } from './shapes.ts';
import { lengthWords, type Measure, measureOf } from './units.ts';
import { wonSymbol } from './wins.ts';
import { aloud, plainWords } from './words.ts';

/** A panel knows its height before it knows its place. */
export interface Panel {
  readonly height: number;
  readonly draw: (left: number, top: number) => Mark[];
}

// ---------------------------------------------------------------- order of play

const body = 2.4;
const leading = 3.3;

/** The beats as sentences; those beyond `most` millimetres are counted, not told. */
export function orderPanel(beats: readonly SceneBeat[], width: number, most: number): Panel | null {
  if (beats.length === 0) return null;
  const indent = beats.reduce((widest, { label }) => Math.max(widest, textWidth(label, body, 'bold')), 3.6);
  const entries = beats.map((beat) => ({ beat, lines: wrap(beat.text, width - indent - 2.4, body, 'medium', 3) }));
  let height = 5.5;
  let shown = 0;
  for (const { lines } of entries) {
    const next = height + lines.length * leading + 1;
    if (next > most && shown > 0) break;
    height = next;
    shown += 1;
  }
  const left = entries.length - shown;
  return {
    height: height + (left > 0 ? leading : 0),
    draw: (x, top) => {
      const marks: Mark[] = [heading('order', 'ORDER OF PLAY', x, top, width)];
      let y = top + 5.5;
      for (const { beat, lines } of entries.slice(0, shown)) {
        marks.push({
          id: `beat-${beat.number}`, layer: 'legend', span: beat.span, label: `${beat.label}. ${beat.text}`,
          shapes: [
            text({ x: x + indent, y: y + 2.3 }, beat.label, body, 'ball', { weight: 'bold', anchor: 'end' }),
            ...lines.map((words, index) => text({ x: x + indent + 1.6, y: y + 2.3 + index * leading }, words, body, 'ink')),
          ],
        });
        y += lines.length * leading + 1;
      }
      if (left > 0) marks.push({ id: 'beat-more', layer: 'legend', span: null, label: null, shapes: [text({ x: x + indent + 1.6, y: y + 2.3 }, `and ${left} more beats`, body, 'note')] });
      return marks;
    },
  };
}

/** So many problems get words beside the plan. */
export const mostProblems = 6;

/** The problems flagged on the plan, by number. */
export function problemPanel(problems: readonly Pick<Problem, 'message'>[], width: number, title = 'TO MEND'): Panel | null {
  if (problems.length === 0) return null;
  const shown = problems.slice(0, mostProblems).map((problem) => wrap(plainWords(problem.message), width - 6, body, 'medium', 3));
  const rest = untold(problems.length);
  return {
    height: 5.5 + shown.reduce((sum, lines) => sum + lines.length * leading + 1, 0) + (rest === null ? 0 : leading),
    draw: (x, top) => {
      const shapes: Shape[] = [];
      let y = top + 5.5;
      for (const [index, lines] of shown.entries()) {
        shapes.push(...flag({ x: x + 2, y: y + 1.4 }, index + 1));
        shapes.push(...lines.map((words, row) => text({ x: x + 5.2, y: y + 2.3 + row * leading }, words, body, 'ink')));
        y += lines.length * leading + 1;
      }
      if (rest !== null) shapes.push(text({ x: x + 5.2, y: y + 2.3 }, rest, body, 'note'));
      return [heading('problem-list', title, x, top, width), { id: 'problem-words', layer: 'legend', span: null, label: null, shapes }];
    },
  };
}

/** What the flags on the plan mean that are not in the list. */
function untold(count: number): string | null {
  const first = mostProblems + 1;
  if (count < first) return null;
  return count === first ? `${first} is told by the check.` : `${first} to ${count} are told by the check.`;
}

/** A small flag with a number. */
export function flag(at: Spot, number: number): Shape[] {
  const corners = [{ x: at.x, y: at.y - 1.9 }, { x: at.x + 2, y: at.y + 1.5 }, { x: at.x - 2, y: at.y + 1.5 }];
  return [
    polygon(corners, filled('paper', 'late', 0.4)),
    text({ x: at.x, y: at.y + 1.1 }, `${number}`, number > 9 ? 1.7 : 2, 'late', { weight: 'bold', anchor: 'middle' }),
  ];
}

// ---------------------------------------------------------------- words

/** A list under its title; null where it is higher than `most`. */
export function notePanel({ id, title, entries }: Note, width: number, most: number): Panel | null {
  if (entries.length * leading > most) return null;
  const indent = entries.reduce((widest, { about }) => (about === null ? widest : Math.max(widest, textWidth(about, body, 'bold') + 2)), 0);
  const written = entries.map((entry) => ({ entry, lines: wrap(entry.text, width - indent, body, 'medium', 4) }));
  const height = 5.5 + written.reduce((sum, { lines }) => sum + lines.length * leading + 0.6, 0);
  if (height > most) return null;
  return {
    height,
    draw: (x, top) => {
      let y = top + 5.5;
      return [heading(id, title.toUpperCase(), x, top, width), ...written.map(({ entry, lines }, index): Mark => {
        const from = y;
        y += lines.length * leading + 0.6;
        return {
          id: `${id}-${index + 1}`, layer: 'legend', span: entry.span, label: aloud(entry.about === null ? entry.text : `${entry.about}: ${entry.text}`),
          shapes: [
            ...(entry.about === null ? [] : [text({ x, y: from + 2.3 }, entry.about, body, 'note', { weight: 'bold' })]),
            ...lines.flatMap((words, row) => writing({ x: x + indent, y: from + 2.3 + row * leading }, words)),
          ],
        };
      })];
    },
  };
}

/** A line of writing; its arrows are drawn, for the font has none. */
function writing(at: Spot, words: string): Shape[] {
  const [first = '', ...rest] = words.split('→');
  const wide = textWidth('→', body, 'medium');
  const tip = wide - 0.4;
  const y = at.y - body * 0.27;
  let x = at.x + textWidth(first, body, 'medium');
  const shapes = [text(at, first.trimEnd(), body, 'ink')];
  for (const part of rest) {
    shapes.push(path(`M${mm(x + 0.1)} ${mm(y)}h${mm(tip)}m-0.5 -0.5l0.5 0.5l-0.5 0.5`, stroked('ink', 0.25)));
    const lead = part.length - part.trimStart().length;
    if (part.trim() !== '') shapes.push(text({ x: x + wide + textWidth(part.slice(0, lead), body, 'medium'), y: at.y }, part.trim(), body, 'ink'));
    x += wide + textWidth(part, body, 'medium');
  }
  return shapes;
}

// ---------------------------------------------------------------- key

export interface KeyOptions {
  readonly theme: Theme;
  readonly convention: Convention;
  readonly kinds: readonly LineKind[];
  readonly waiting: boolean;
  readonly later: boolean;
  readonly phase: PhaseAnalysis | null;
  readonly grounds: readonly Ground[];
}

export const lineNames: Readonly<Record<LineKind, string>> = { pass: 'Pass', lofted: 'Lofted ball', shot: 'Shot', dribble: 'Run with the ball', run: 'Run without the ball', press: 'Pressing', mark: 'Covering an opponent', walk: 'To the next place' };

/** Only what the drawing uses. */
export function keyPanel({ drill }: DrillAnalysis, options: KeyOptions, width: number): Panel | null {
  const entries = keyEntries(drill, options);
  if (entries.length === 0) return null;
  const columns = Math.max(1, Math.floor(width / 38));
  const rows = Math.ceil(entries.length / columns);
  const pitch = 5.4;
  return {
    height: 6 + rows * pitch,
    draw: (x, top) => [
      heading('key', 'KEY', x, top, width),
      {
        id: 'key-entries', layer: 'legend', span: null, label: null,
        shapes: entries.flatMap(({ name, sample }, index) => {
          const at = { x: x + Math.floor(index / rows) * (width / columns), y: top + 8.4 + (index % rows) * pitch };
          return [group(at, sample), text({ x: at.x + 13, y: at.y + 0.8 }, cut(name, width / columns - 14, body, 'medium'), body, 'ink')];
        }),
      },
    ],
  };
}

interface KeyEntry {
  readonly name: string;
  /** Drawn about (0, 0), 11 mm wide to the right. */
  readonly sample: readonly Shape[];
}

function keyEntries(drill: DrillAnalysis['drill'], { theme, convention, kinds, waiting, later, phase, grounds }: KeyOptions): KeyEntry[] {
  const look = looks(drill, theme);
  const middle = { x: 5.5, y: 0 };
  const entries: KeyEntry[] = kinds.map((kind) => ({ name: lineNames[kind], sample: lineSample(kind, convention, { x: 0, y: kind === 'lofted' ? 0.7 : 0 }, 11) }));
  const plain = drill.actors.some((actor) => actor.team === null && actor.kind !== 'coach');
  if (plain) entries.push({ name: 'Player', sample: [group(middle, badge(look(null), 1.9, ''))] });
  for (const team of drill.teams) entries.push({ name: team.name, sample: [group(middle, badge(look(team.id), 1.9, ''))] });
  const keeper = keeperLooks(drill, theme);
  for (const { id, name } of drill.teams.filter(({ id }) => drill.actors.some(({ kind, team }) => kind === 'keeper' && team === id))) {
    entries.push({ name: `Goalkeeper of ${name}`, sample: [group(middle, badge(keeper(id), 1.9, '', true))] });
  }
  if (waiting) entries.push({ name: 'Waiting', sample: [circle(middle, radius.waiting - 0.2, filled('paper', 'ink', 0.4))] });
  if (later) entries.push({ name: 'Later place', sample: [group(middle, laterBadge(''))] });
  if (phase) entries.push(...phaseEntries(drill, phase, middle));
  if (grounds.length > 0) entries.push(...groundEntries(drill, grounds));
  if (drill.balls.length > 0) entries.push({ name: 'Ball', sample: [group(middle, ballShapes())] });
  const furniture = new Set(drill.furniture.map((thing) => thing.kind));
  for (const kind of furniture) {
    entries.push({ name: furnitureNames[kind], sample: [group(kind === 'goal' || kind === 'minigoal' ? { x: 5.5, y: -1 } : middle, furnitureSymbol({ kind, width: kind === 'goal' || kind === 'ladder' ? 3 : null, facing: kind === 'ladder' ? { x: 1, y: 0 } : null }, 1.6).shapes)] });
  }
  return entries;
}

function phaseEntries(drill: Drill, phase: PhaseAnalysis, middle: Spot): KeyEntry[] {
  const { lanes, possession } = phase;
  const others = lanes.flatMap((report) => otherLanes(phase, report));
  const entries: [boolean, KeyEntry][] = [
    [others.some(({ open }) => open === 'ground'), { name: 'Open lane', sample: laneSamples.open }],
    [others.some(({ open }) => open === 'lofted'), { name: 'Open through the air', sample: laneSamples.lofted }],
    [others.some(({ open, by }) => open === null && by !== null), { name: 'Closed lane, by whom', sample: laneSamples.closed }],
    [possession.length > 1, { name: 'Ball won', sample: [group(middle, wonSymbol(2.1))] }],
    [drill.zones.length > 0 && possession.length > 0, { name: drill.actors.some(({ kind }) => kind === 'keeper') ? 'With v without, no keepers' : 'With the ball v without', sample: [box(0.5, -1.8, 10, 3.6, filled('paper', 'note', 0.3)), text({ x: 5.5, y: 0.9 }, '3 v 2', 2.5, 'ink', { weight: 'bold', anchor: 'middle' })] }],
  ];
  return entries.flatMap(([used, entry]) => (used ? [entry] : []));
}

// ---------------------------------------------------------------- control

/** The share of the ground that each side controls, moment by moment; null where nobody asked. */
export function groundPanel({ teams }: Drill, grounds: readonly Ground[], width: number): Panel | null {
  if (grounds.length === 0) return null;
  return {
    height: 12,
    draw: (x, top) => [heading('ground', 'GROUND CONTROLLED', x, top, width), ...grounds.map(({ control, start, end }, index): Mark => {
      const shares = control.shares.filter(({ share }) => share > 0);
      const words = shares.map(({ share, team }) => `${teams.find(({ id }) => id === team)?.name ?? ''} ${Math.round(share * 100)} %`);
      let left = x;
      return {
        id: `ground-${index + 1}`, layer: 'legend', span: null, label: `Ground controlled: ${words.join(', ')}`, during: { start, end },
        shapes: shares.flatMap(({ share }, which) => {
          const [from, room] = [left, width * share];
          left += room;
          return [box(from, top + 5.5, room, 2.4, filled('paper', controlInk, 0.6)), text({ x: from + 0.6, y: top + 10.8 }, cut(words[which] as string, room, body, 'medium'), body, 'ink')];
        }),
      };
    })],
  };
}

/** How each side's ground is hatched. */
function groundEntries(drill: Drill, grounds: readonly Ground[]): KeyEntry[] {
  const sides = drill.teams.filter((team) => grounds.some(({ control }) => control.shares.some((each) => each.team === team.id)));
  return sides.map(({ id, name }): KeyEntry => {
    const kind = hatchOf(drill, id);
    const lines = kind === 'across' ? [1, 3, 5, 7, 9].map((at) => `M${at} -1.8v3.6`) : [-1.6, -0.5, 0.6, 1.7].map((at) => `M0.5 ${at}h10`);
    return { name: `Ground of ${name}`, sample: [path(lines.join(''), stroked(controlInk, 0.18, kind === 'dotted' ? '0.3 1.2' : null))] };
  });
}

// ---------------------------------------------------------------- setting out

/** The points to set out, measured from the corner at (0, 0), as a surveyor lists them; null when there are none. */
export function pointsPanel(drill: Drill, width: number, most: number): Panel | null {
  const measure = measureOf(drill);
  const things = drill.furniture.filter((thing) => thing.kind !== 'coach');
  const points = [
    ...drill.stations.map(({ id, name, at, span }) => ({ id, name, at, span })),
    ...things.map(({ id, name, kind, at, span }) => ({ id, name: name ?? furnitureNames[kind], at, span })),
    ...drill.zones.flatMap((zone) => zonePoints(zone, measure)),
  ];
  // Long names need the whole width.
  const columns = points.every(({ name }) => textWidth(name, body, 'medium') < (width - 6) / 2 - 22) ? 2 : 1;
  const rows = Math.ceil(points.length / columns);
  const foot = drill.zones.length > 0 ? 'Zones by their lower left corner, across × up; circles by their middle.' : null;
  const height = 9.5 + rows * leading + (foot === null ? 0 : leading);
  if (points.length === 0 || height > most) return null;
  const room = (width - 6 * (columns - 1)) / columns;
  return {
    height,
    draw: (x, top) => {
      const heads: Shape[] = [];
      for (let index = 0; index < Math.min(columns, points.length); index += 1) {
        const left = x + index * (room + 6);
        heads.push(text({ x: left + room - 11, y: top + 7.4 }, 'ACROSS', 1.6, 'note', { anchor: 'end' }), text({ x: left + room, y: top + 7.4 }, 'UP', 1.6, 'note', { anchor: 'end' }));
      }
      return [heading('points', `SETTING OUT, ${measure.name}`, x, top, width), { id: 'point-heads', layer: 'legend', span: null, label: null, shapes: heads },
        ...(foot === null ? [] : [{ id: 'point-foot', layer: 'legend', span: null, label: null, shapes: [text({ x, y: top + 11 + rows * leading }, cut(foot, width, 1.9, 'medium'), 1.9, 'note')] } as const]),
        ...points.map(({ id, name, at, span }, index): Mark => {
          const left = x + Math.floor(index / rows) * (room + 6);
          const y = top + 11 + (index % rows) * leading;
          const [across, up] = [lengthWords(at.x, measure), lengthWords(at.y, measure)];
          return {
            id: `point-${id}`, layer: 'legend', span, label: `${name}: ${across} across, ${up} up`,
            shapes: [
              text({ x: left, y }, cut(name, room - 22, body, 'medium'), body, 'ink'),
              text({ x: left + room - 11, y }, across, body, 'ink', { anchor: 'end' }),
              text({ x: left + room, y }, up, body, 'ink', { anchor: 'end' }),
            ],
          };
        })];
    },
  };
}

/** A rectangle by its lower left corner and its size, a circle by its middle; other zones corner by corner. */
function zonePoints({ id, name, shape, span }: Zone, measure: Measure): { id: string; name: string; at: Spot; span: Zone['span'] }[] {
  if (shape.kind === 'circle') return [{ id: `zone-${id}`, name: `${name}, radius ${lengthWords(shape.radius, measure)}`, at: shape.centre, span }];
  const { left, right, top, bottom } = boxOf(shape.points);
  const onEdges = shape.points.every(({ x, y }) => (x === left || x === right) && (y === top || y === bottom));
  if (onEdges && shape.points.length === 4) {
    return [{ id: `zone-${id}`, name: `${name}, ${lengthWords(right - left, measure)} × ${lengthWords(bottom - top, measure)}`, at: { x: left, y: top }, span }];
  }
  return shape.points.map((at, index) => ({ id: `zone-${id}-${index + 1}`, name: `${name}, corner ${index + 1}`, at, span }));
}

// ---------------------------------------------------------------- title block

/** The fields of a title block (ISO 7200) that a drill has. No date: the same drill gives the same sheet. */
export function titlePanel({ drill, measures }: DrillAnalysis, scale: number, convention: Convention, under: readonly string[], width: number): Panel {
  const measure = measureOf(drill);
  const inner = width - 5;
  const name = wrap(drill.name === '' ? 'Drill' : drill.name, inner, 4.4, 'bold', 2);
  const change = under.flatMap((words) => wrap(words, inner, 3.1, 'bold', 2));
  const theme = wrap(drill.theme ?? '', inner, 2.7, 'medium', 2);
  const kit = wrap(measures.kit.map(itemText).join(', ') || '–', inner, 2.5, 'medium', 2);
  const area = drill.area ? `${lengthWords(drill.area.width, measure)} × ${lengthWords(drill.area.length, measure)} ${measure.name}` : '–';
  const cells = [
    ['AGE', drill.ageLabel ?? 'adult'], ['PLAYERS', `${measures.players}`], ['AREA', area], ['SCALE', `1:${scale}`],
  ] as const;
  const lines = convention === 'solid pass' ? 'pass solid, run dashed' : 'pass dashed, run solid';
  const named = name.length * 5 + change.length * 4;
  const nameHeight = 4.2 + named + theme.length * 3.5 + 1.4;
  const kitHeight = 4.4 + kit.length * 3.2;
  const cellHeight = 7.6;
  const height = nameHeight + 2 * cellHeight + kitHeight;
  return {
    height,
    draw: (x, top) => {
      const shapes: Shape[] = [
        box(x, top, width, height, filled('paper', 'ink', 0.45)),
        ...caption('DRILL', x, top),
        ...name.map((words, index) => text({ x: x + 2, y: top + 7.6 + index * 5 }, words, 4.4, 'ink', { weight: 'bold' })),
        ...change.map((words, index) => text({ x: x + 2, y: top + 6.9 + name.length * 5 + index * 4 }, words, 3.1, 'ink', { weight: 'bold' })),
        ...theme.map((words, index) => text({ x: x + 2, y: top + 6.6 + named + index * 3.5 }, words, 2.7, 'ink')),
      ];
      let y = top + nameHeight;
      const rule = (from = x, to = x + width) => shapes.push(line({ x: from, y }, { x: to, y }, stroked('ink', 0.25)));
      const divide = (at: number) => shapes.push(line({ x: at, y }, { x: at, y: y + cellHeight }, stroked('ink', 0.25)));
      rule();
      const shares = [0, 0.18, 0.4, 0.76, 1];
      for (const [index, [title, value]] of cells.entries()) {
        const left = x + width * (shares[index] as number);
        const room = width * ((shares[index + 1] as number) - (shares[index] as number)) - 3;
        if (index > 0) divide(left);
        shapes.push(...caption(title, left, y), text({ x: left + 2, y: y + 6.2 }, cut(value, room, 2.9, 'bold'), 2.9, 'ink', { weight: 'bold' }));
      }
      y += cellHeight;
      rule();
      shapes.push(...caption('KIT', x, y), ...kit.map((words, index) => text({ x: x + 2, y: y + 6 + index * 3.2 }, words, 2.5, 'ink')));
      y += kitHeight;
      rule();
      const split = x + width * 0.58;
      divide(split);
      shapes.push(...caption('LINES', x, y), text({ x: x + 2, y: y + 6.1 }, lines, 2.5, 'ink'));
      shapes.push(...caption('SHEET', split, y), text({ x: split + 2, y: y + 6.1 }, 'Setting-out plan', 2.5, 'ink'));
      return [{ id: 'title', layer: 'title', span: drill.nameSpan, label: `${[drill.name, ...under].filter((words) => words !== '').join(', ')}, scale 1:${scale}`, shapes }];
    },
  };
}

// ---------------------------------------------------------------- parts

/** The title of a panel, with a rule behind it. */
export function heading(id: string, words: string, x: number, top: number, width: number): Mark {
  const end = textWidth(words, 1.9, 'bold');
  return {
    id: `heading-${id}`, layer: 'legend', span: null, label: null,
    shapes: [
      text({ x, y: top + 3.2 }, words, 1.9, 'note', { weight: 'bold' }),
      line({ x: x + end + 2, y: top + 2.5 }, { x: x + width, y: top + 2.5 }, stroked('gridMajor', 0.25)),
    ],
  };
}

function caption(words: string, x: number, y: number): Shape[] {
  return [text({ x: x + 2, y: y + 2.7 }, words, 1.6, 'note', { weight: 'bold' })];
}
