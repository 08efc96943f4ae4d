/** What the page of a part says: the drawing, how it starts, the play, the rules, what to coach, what to change, what to carry out. */
import type { DrillAnalysis } from '../analyse.ts';
import type { Point } from '../geometry/point.ts';
import { itemText } from '../measure/kit.ts';
import { headcount } from '../measure/measures.ts';
import type { Drill } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import type { Convention } from '../scene/lines.ts';
import { notesOf, type Note } from '../scene/notes.ts';
import type { Theme } from '../scene/palette.ts';
import { keyAlone, stage, type Scene } from '../scene/scene.ts';
import { figure as number, lengthWords, measureOf } from '../scene/units.ts';
import { aloud } from '../scene/words.ts';
import type { Group, SetUp, Tape } from '../session/analysis.ts';
import { leastOf } from '../session/need.ts';
import { tapesOf } from '../session/tapes.ts';
import { kitText, minutes as duration } from '../session/words.ts';
import { bullets, prose, section, titled, type Block, type Figure, type Heading, type Item, type Table } from './blocks.ts';
import { changes } from './changes.ts';
import { columnWidth } from './style.ts';
import { areaWords, counted, tally, toMend } from './words.ts';

export interface PartPage {
  readonly title: Heading;
  readonly facts: string;
  readonly figure: Figure;
  readonly blocks: readonly Block[];
  /** Of the drawing: 200 for 1:200. */
  readonly scale: number;
  /** All that are drawn, in order of their numbers. */
  readonly pictures: readonly Scene[];
}

export interface Laid {
  readonly setUp: SetUp;
  readonly groups: readonly Group[];
}

export interface PartOptions {
  readonly theme: Theme;
  readonly convention: Convention;
  /** Millimetres for the drawing; a small one has its key among the text. */
  readonly room: { readonly width: number; readonly height: number; readonly small: boolean };
  /** The number of the part's first picture among those of the sheet. */
  readonly firstPicture: number;
  /** Of the file. */
  readonly problems: readonly Problem[];
}

/** For the phases behind the first: a column wide, millimetres. */
const smallRoom = { width: columnWidth, height: 110 } as const;

/** Symbols and letters of the drawing, so that they can be read at arm's length. */
const enlarged = 1.25;

/** `laid`: what stands for it on the pitch, and where its groups are; null for a drill by itself. */
export function partPage(analysis: DrillAnalysis, laid: Laid | null, title: Heading, options: PartOptions): PartPage {
  const { drill } = analysis;
  const plays = drill.sequences.some(({ kind }) => kind === 'sequence');
  const phases = analysis.phases.map(({ phase }) => phase.name ?? phase.id);
  const [shown, ...others] = [...(plays || phases.length === 0 ? [null] : []), ...phases];
  const main = drawing(analysis, shown ?? null, options.room, options.room.small ? 1 : enlarged, options.firstPicture, options);
  const smaller = others.map((phase, index) => ({ phase, drawn: drawing(analysis, phase, { ...smallRoom, small: false }, 1, options.firstPicture + 1 + index, options) }));
  const notes = notesOf(analysis, null);
  return {
    title,
    facts: factsOf(analysis, main.scene),
    figure: main.figure,
    scale: main.scene.plan.scale,
    pictures: [main.scene, ...smaller.map(({ drawn }) => drawn.scene)],
    blocks: [
      ...toMend(drill.span, options.problems, drill.changes.map(({ span }) => span)),
      ...titled('How it starts', bullets([...startWords(drill), ...otherSizes(drill, laid?.groups ?? [])])),
      ...titled(shown === null || shown === undefined ? 'Play' : `Phase: ${shown}`, beats(main)),
      ...titled('Rotation', bullets(entries(notes, 'rotation'))),
      ...titled('Rules and scoring', bullets(rules(analysis).map(capital))),
      ...titled('Time', drill.bouts ? [prose(boutWords(drill.bouts))] : []),
      ...coaching(drill),
      ...titled('Questions', bullets(drill.questions)),
      ...titled('Safety', bullets(drill.safety)),
      ...titled('Notes on the drill', bullets(drill.notes)),
      ...changes(analysis),
      ...setting(analysis, laid),
      ...(options.room.small ? titled('Key', keyFigure(analysis, main.scene, options)) : []),
      ...smaller.flatMap(({ phase, drawn }) => [section(`Phase: ${phase ?? ''}${scaleUnless(main, drawn)}`), drawn.figure, ...beats(drawn)]),
    ],
  };
}

// ---------------------------------------------------------------- drawing

interface Drawing {
  readonly scene: Scene;
  readonly figure: Figure;
  readonly picture: number;
}

function drawing(analysis: DrillAnalysis, phase: string | null, room: PartOptions['room'], times: number, picture: number, { theme, convention }: PartOptions): Drawing {
  const scene = stage(analysis, { theme, convention, alone: { width: room.width, height: room.height, enlarged: times, key: !room.small }, ...(phase === null ? {} : { phase }) });
  const figure: Figure = {
    kind: 'figure', width: scene.width * times, height: scene.height * times, label: `${scene.title}. ${scene.description}`,
    content: { kind: 'scene', scene, enlarged: times, picture },
  };
  return { scene, figure, picture };
}

/** The title block has the scale of the first drawing. */
function scaleUnless(main: Drawing, { scene: { plan: { scale } } }: Drawing): string {
  return scale === main.scene.plan.scale ? '' : `, drawn 1:${scale}`;
}

function keyFigure(analysis: DrillAnalysis, { plan: { scale } }: Scene, options: PartOptions): Figure[] {
  const key = keyAlone(analysis, options, scale, columnWidth);
  return key === null ? [] : [{ kind: 'figure', width: columnWidth, height: key.height, label: 'Key to the drawing', content: { kind: 'shapes', shapes: key.shapes } }];
}

function beats({ scene, picture }: Drawing): Item[] {
  return scene.beats.map(({ label, text }, beat) => ({ kind: 'item', list: 'numbers', marker: label, text, plays: scene.end > 0 ? { picture, beat } : null }));
}

// ---------------------------------------------------------------- words

function factsOf({ drill, measures }: DrillAnalysis, scene: Scene): string {
  const space = measures.spacePerPlayer ? [`${number(Math.round(measures.spacePerPlayer.outfield))} m² a player`] : [];
  const area = areaWords(drill);
  return [
    ...(drill.theme === null ? [] : [drill.theme]),
    drill.ageLabel ?? 'adult', counted(measures.players, 'player'), ...(area === null ? [] : [area]), ...space, `tempo ${drill.tempo.value}`, ...(drill.level === null ? [] : [drill.level]), `drawn 1:${scene.plan.scale}`,
  ].join(' · ');
}

/** `3 m across, 2 m up`; beside the area how far from which side: nobody paces out −1 m. */
function placeWords({ area, units }: Drill, { x, y }: Point): string {
  const measure = measureOf({ units });
  const said = (metres: number, where: string) => `${lengthWords(metres, measure)} ${measure.name} ${where}`;
  const [across, up] = [said(x, 'across'), said(y, 'up')];
  if (!area) return `${across}, ${up}`;
  const sides = [
    { far: -x, words: said(-x, 'left of the area'), other: up }, { far: x - area.width, words: said(x - area.width, 'right of the area'), other: up },
    { far: -y, words: said(-y, 'below the area'), other: across }, { far: y - area.length, words: said(y - area.length, 'above the area'), other: across },
  ].filter(({ far }) => far > 0.005);
  const [only] = sides;
  // Off a corner each side says half of it.
  return sides.length === 2 ? sides.map(({ words }) => words).join(', ') : only ? `${only.words}, ${only.other}` : `${across}, ${up}`;
}

/** Who stands where, and where the balls are, before the first ball is played. */
function startWords(drill: Drill): string[] {
  const at = (spot: Point) => placeWords(drill, spot);
  const names = new Map(drill.actors.map(({ id, name }) => [id, name]));
  const keepers = drill.actors.filter(({ kind }) => kind === 'keeper');
  return [
    ...drill.stations.map(({ name, holds, at: spot }) => `${name}: ${counted(holds, 'player')}; ${at(spot)}.`),
    ...drill.teams.map(({ name, bib, size, kind }) => `${name}${kind === 'floaters' ? ', with whoever has the ball' : ''}: ${counted(size, 'player')}${bib === null ? '' : `, bibs ${bib}`}.`),
    ...keepers.map(({ name, team }) => `${name} keeps goal${team === null ? '' : ` for ${drill.teams.find(({ id }) => id === team)?.name ?? team}`}.`),
    ...drill.balls.map(({ count, holder, at: spot }) => {
      const where = holder === null ? `at ${at(spot)}` : `with ${names.get(holder) ?? holder}`;
      return `${counted(count, 'ball')} ${where}.`;
    }),
  ];
}

/** Of groups that are not as many as the drill says: queues are shorter or longer there. */
function otherSizes(drill: Drill, groups: readonly Group[]): string[] {
  const usual = headcount(drill);
  return groups.flatMap(({ number: at, members }) => {
    const more = members.length - usual;
    if (more === 0 || drill.stations.length === 0 || members.length < Math.max(1, leastOf(drill))) return [];
    return [`Group ${at}: ${counted(members.length, 'player')}, ${Math.abs(more)} ${more > 0 ? 'more' : 'fewer'} to wait in the queues.`];
  });
}

function entries(notes: readonly Note[], id: string): string[] {
  return (notes.find((note) => note.id === id)?.entries ?? []).map(({ text }) => aloud(text));
}

/** Without the bouts, which have their own place. */
function rules(analysis: DrillAnalysis): string[] {
  const all = notesOf(analysis, null).find(({ id }) => id === 'rules')?.entries ?? [];
  return all.filter(({ span }) => span === null || span !== analysis.drill.bouts?.span).map(({ text }) => text);
}

function boutWords({ count, length, rest }: NonNullable<Drill['bouts']>): string {
  return `${counted(count, 'bout')} of ${duration(length)}${rest > 0 ? `, ${duration(rest)} rest between them` : ''}: ${duration(count * length + Math.max(0, count - 1) * rest)} in all.`;
}

/** Roles at the beginning of a sentence; names stay as they are written. */
function capital(words: string): string {
  return words.replace(/^(?:attackers|defenders|floaters)\b/, (word) => `${word[0]?.toUpperCase()}${word.slice(1)}`);
}

const corners = ['technical', 'psychological', 'physical', 'social'] as const;

/** A point a line with its corner before it, so that a column's end parts none from its heading. */
function coaching({ points }: Drill): Block[] {
  return titled('Coaching points', bullets(corners.flatMap((corner) => {
    const title = `${corner[0]?.toUpperCase()}${corner.slice(1)}`;
    return points.filter((point) => point.corner === corner).map(({ text }) => `${title}: ${text}`);
  })));
}

// ---------------------------------------------------------------- kit and setting out

/** Of a drill by itself, or of all groups of a part; the distances are those of one group. */
function setting({ drill, measures }: DrillAnalysis, laid: Laid | null): Block[] {
  const setUp = laid?.setUp ?? null;
  const kit = setUp === null ? measures.kit.map(itemText) : [
    ...(setUp.things.length > 0 ? [tally(setUp.things)] : []),
    ...(setUp.balls > 0 ? [kitText('ball', setUp.balls)] : []),
    ...setUp.bibs.map(({ colour, count }) => kitText('bib', count, colour)),
  ];
  const tapes = setUp?.tapes ?? tapesOf(drill);
  const order = drill.area ? [prose('Where the diagonal is right, the corners are square.', 'small')] : [];
  return [
    ...titled('Kit', kit.length === 0 ? [] : [prose(`${kit.join(', ')}.`)]),
    ...titled('Setting out', tapes.length === 0 ? [] : [tapeTable(tapes), ...order, ...places(laid?.groups ?? [])]),
  ];
}

/** Where the bottom left corner of each group's area lies on the pitch. */
function places(groups: readonly Group[]): Block[] {
  const told = groups.flatMap(({ number: at, at: corner }) => (corner === null ? [] : [`${groups.length > 1 ? `group ${at} at ` : ''}${number(corner.x)}, ${number(corner.y)}`]));
  return told.length === 0 ? [] : [prose(`On the pitch, in metres across and up: ${told.join('; ')}.`, 'small')];
}

function tapeTable(tapes: readonly Tape[]): Table {
  return {
    kind: 'table',
    columns: [{ title: 'In this order', share: 0.52, right: false }, ...['m', 'yd', 'strides'].map((title) => ({ title, share: 0.16, right: true }))],
    rows: tapes.map((tape, index) => [`${index + 1}. ${tapeWords(tape)}`, tape.metres.toFixed(2), tape.yards.toFixed(1), `${tape.strides}`]),
  };
}

function tapeWords({ kind, what, from }: Tape): string {
  switch (kind) {
    case 'width':
    case 'length':
    case 'diagonal':
      return `${what}: ${kind}`;
    case 'point':
      return from === null ? what : `${what}, from ${from}`;
  }
}
