/** What a drill says before anybody moves: its header, what stands where, its rules and its words. */
import { spot } from '../checks/say.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { Drill, Furniture, Zone } from '../model/drill.ts';
import { boxOf } from '../scene/ground.ts';
import { furnitureNames } from '../scene/furniture.ts';
import { notesOf } from '../scene/notes.ts';
import type { Span } from '../../grammar/tree.ts';
import type { ThingKind } from './comparison.ts';
import { count, inUnit, metres, present, secondsOf, thing, type Thing, words, wordsIn } from './thing.ts';

export function groundOf(analysis: DrillAnalysis, text: string): Thing[] {
  const { drill } = analysis;
  return [
    headerOf(drill),
    ...drill.lets.map(({ name, value, span, valueSpan }) => thing({
      kind: 'let', id: name, title: name, span, words: wordsIn(text, valueSpan), values: { value: count(value), as: words(wordsIn(text, valueSpan)) },
    })),
    ...(drill.area ? [areaOf(drill.area, text)] : []),
    ...drill.zones.map((zone) => zoneOf(zone, text)),
    ...drill.furniture.map((each) => furnitureOf(drill, each, text)),
    ...drill.balls.map(({ at, count: many, holder, span }, index) => thing({
      kind: 'balls', id: `${index + 1}`, title: `${many === 1 ? 'the ball' : `the ${many} balls`} at ${holder ?? spot(drill, at)}`, span, words: wordsIn(text, span), at,
      traits: [holder ?? '', many === 1 ? 'one' : 'several'],
      values: present({ count: count(many), across: metres(at.x), up: metres(at.y), holder: holder === null ? null : words(holder) }),
    })),
    ...drill.teams.map(({ name, kind, bib, size, span }) => thing({
      kind: 'team', id: name, title: name, span, traits: [kind, bib ?? '', `${size}`],
      values: present({ size: count(size), bib: bib === null ? null : words(bib), kind: words(kind) }),
    })),
    ...drill.stations.map(({ name, at, holds, team, span }) => thing({
      kind: 'station', id: name, title: name, span, words: wordsIn(text, span), at, traits: rolesOf(drill, name),
      values: present({ across: metres(at.x), up: metres(at.y), holds: count(holds), team: team === null ? null : words(team) }),
    })),
    ...drill.actors.filter(({ kind }) => kind === 'player' || kind === 'keeper').map(({ name, kind, team, home, span }) => thing({
      kind: 'player', id: name, title: name, span, words: wordsIn(text, span), at: home, traits: [team ?? '', kind, ...rolesOf(drill, name)],
      values: present({ across: metres(home.x), up: metres(home.y), team: team === null ? null : words(team), as: words(kind) }),
    })),
    ...textsOf(analysis),
  ];
}

function headerOf(drill: Drill): Thing {
  const { age, ageLabel, players, units, tempo, ground, roll, passPace, runPace, theme, time, level, tags, order, nameSpan } = drill;
  const named = (value: string | null) => (value === null ? null : words(value));
  return thing({
    kind: 'drill', id: '', title: drill.name, span: nameSpan,
    values: present({
      name: words(drill.name), age: words(ageLabel ?? 'adult'), years: count(age.value), players: players && count(players.value), units: words(units), tempo: words(tempo.value),
      ground: words(ground.value), roll: roll && metres(roll.value), passPace: passPace && inUnit(passPace.value, 'm/s'), runPace: runPace && inUnit(runPace.value, 'm/s'),
      theme: named(theme), time: time && secondsOf(time.value), level: named(level), tags: tags.length === 0 ? null : words(tags.join(', ')),
      order: order.length < 2 && (order[0]?.length ?? 0) < 2 ? null : words(order.map((group) => group.join(' and ')).join(', ')),
    }),
  });
}

function areaOf({ width, length, marked, span }: NonNullable<Drill['area']>, text: string): Thing {
  return thing({
    kind: 'area', id: '', title: 'the area', span, words: wordsIn(text, span),
    values: present({ width: metres(width), length: metres(length), space: inUnit(width * length, 'm²'), marked: marked === null ? null : metres(marked) }),
  });
}

function zoneOf({ name, shape, span }: Zone, text: string): Thing {
  const given = { kind: 'zone' as const, id: name, title: name, span, words: wordsIn(text, span) };
  if (shape.kind === 'circle') {
    const { centre, radius } = shape;
    return thing({ ...given, at: centre, traits: ['circle'], values: { shape: words('circle'), across: metres(centre.x), up: metres(centre.y), radius: metres(radius) } });
  }
  const { left, right, top, bottom } = boxOf(shape.points);
  const at = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const square = shape.points.length === 4 && shape.points.every(({ x, y }) => (x === left || x === right) && (y === top || y === bottom));
  const outline = shape.points.map(({ x, y }) => `${metres(x - at.x).value} ${metres(y - at.y).value}`).join(', ');
  return thing({
    ...given, at, traits: [`${shape.points.length} corners`],
    values: present({
      shape: words(square ? 'rectangle' : `${shape.points.length} corners`), across: metres(at.x), up: metres(at.y),
      width: metres(right - left), length: metres(bottom - top), outline: square ? null : words(outline),
    }),
  });
}

function furnitureOf(drill: Drill, { id, kind, name, at, width, height, facing, span }: Furniture, text: string): Thing {
  const noun = furnitureNames[kind].toLowerCase();
  const title = kind === 'coach' ? 'the coach' : name === null ? `the ${noun} at ${spot(drill, at)}` : `the ${noun} ${name}`;
  return thing({
    kind: 'furniture', id: name ?? id, title, span, words: wordsIn(text, span), at, traits: [kind, name === null ? 'unnamed' : 'named'],
    values: present({
      what: words(noun), across: metres(at.x), up: metres(at.y), width: width === null ? null : metres(width), height: height === null ? null : metres(height),
      facing: facing && inUnit((Math.atan2(facing.y, facing.x) * 180) / Math.PI, '°'),
    }),
  });
}

/** What somebody does and is done to, beat by beat: who plays the same part is the same, whatever the name. */
function rolesOf(drill: Drill, name: string): string[] {
  const roles: string[] = [];
  for (const [which, { mirrorOf, beats }] of drill.sequences.entries()) {
    if (mirrorOf !== null) continue;
    for (const { index, lead, meanwhile } of beats) {
      for (const { actor, chain } of [lead, ...meanwhile]) {
        for (const { verb, to } of chain) {
          if (actor === name) roles.push(`${which}.${index} ${verb}`);
          if (to === name) roles.push(`${which}.${index} ${verb} them`);
        }
      }
    }
  }
  return roles;
}

function textsOf(analysis: DrillAnalysis): Thing[] {
  const { drill } = analysis;
  const rules = notesOf(analysis, null).find(({ id }) => id === 'rules')?.entries ?? [];
  const list = (kind: TextKind, texts: readonly string[]) => texts.map((each, index) => textOf(kind, index, each, null));
  return [
    ...rules.map(({ text, span }, index) => thing({
      kind: 'rule', id: span === drill.bouts?.span ? 'bouts' : `${index + 1}`, title: drill.rules.some((rule) => rule.kind === 'text' && rule.span === span) ? `“${text}”` : text,
      span, traits: tokens(text), values: { text: words(text) },
    })),
    ...drill.points.map(({ corner, text, span }, index) => thing({
      kind: 'point', id: `${index + 1}`, title: `“${text}”`, span, traits: [corner, ...tokens(text)], values: { text: words(text), corner: words(corner) },
    })),
    ...list('question', drill.questions),
    ...list('safety', drill.safety),
    ...list('note', drill.notes),
  ];
}

type TextKind = Extract<ThingKind, 'question' | 'safety' | 'note'>;

export function textOf(kind: TextKind, index: number, text: string, span: Span | null): Thing {
  return thing({ kind, id: `${index + 1}`, title: `“${text}”`, span, traits: tokens(text), values: { text: words(text) } });
}

/** Words and numbers, for judging how alike two texts are. */
export function tokens(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}_]+|\p{N}+/gu) ?? [];
}
