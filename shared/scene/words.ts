/** Beats as sentences, from the model alone. */
import type { Point } from '../geometry/point.ts';
import type { Action, Actor, ActorId, ChangedDrill, Drill, Part, Sequence } from '../model/drill.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { SceneBeat } from './scene.ts';
import { figure, lengthWords, measureOf } from './units.ts';

/** In order of time; `text` tells who does what, the lead first. */
export function beatWords(drill: Drill, timeline: Timeline): SceneBeat[] {
  const names = nameBook(drill);
  const labels = beatLabels(drill, timeline);
  const sequences = new Map(drill.sequences.map((sequence) => [sequence.id, sequence]));
  return timeline.beats.map(({ sequence, index, number, span, start, end }) => {
    const beat = sequences.get(sequence)?.beats[index];
    const meanwhile = beat?.meanwhile.map((part) => partWords(part, names)) ?? [];
    const lead = beat ? partWords(beat.lead, names) : '';
    return { number, label: labels.get(number) ?? `${number}`, span, start, end, text: meanwhile.length === 0 ? lead : `${lead} while ${meanwhile.join(', ')}` };
  });
}

/** Seconds within which beats of sequences side by side start together. */
const together = 0.05;

/** What beats are called, by number: 1, 2, 3 …, or 1a and 1b, 2a and 2b … where sequences side by side keep in step. */
export function beatLabels(drill: Drill, timeline: Timeline): ReadonlyMap<number, string> {
  const labels = new Map<number, string>();
  let told = 0;
  let step = 0;
  for (const group of drill.order) {
    const sequences = drill.sequences.filter(({ id }) => group.includes(id));
    const beats = timeline.beats.slice(told, told + sequences.reduce((sum, sequence) => sum + sequence.beats.length, 0));
    const lanes = sequences.map(({ id }) => beats.filter(({ sequence }) => sequence === id));
    const first = lanes[0] ?? [];
    const inStep = lanes.length > 1 && lanes.every((lane) => lane.length === first.length && lane.every(({ start }, index) => Math.abs(start - (first[index]?.start ?? 0)) < together));
    if (inStep) {
      for (const index of first.keys()) for (const [rank, lane] of lanes.entries()) labels.set(lane[index]?.number ?? 0, `${step + index + 1}${String.fromCharCode(97 + rank)}`);
    } else for (const [index, { number }] of beats.entries()) labels.set(number, `${step + index + 1}`);
    step += inStep ? first.length : beats.length;
    told += beats.length;
  }
  return labels;
}

/** A drill that is a progression or a regression of another, in words. */
export function variationWords({ kind, name }: Pick<ChangedDrill, 'kind' | 'name'>): string {
  return `${kind === 'progress' ? 'Progression' : 'Regression'}: ${name}`;
}

export function phaseWords({ name }: Sequence): string {
  return `Phase: ${name ?? ''}`;
}

export function actorName(actor: Actor): string {
  return actor.kind === 'next' ? `next ${actor.name}` : actor.name;
}

/** With its arrows as a word. */
export function aloud(words: string): string {
  return words.replaceAll('→', 'to');
}

/** A message without the marks that set names apart in an editor. */
export function plainWords(message: string): string {
  return message.replaceAll('`', '');
}

interface NameBook {
  readonly actor: (id: ActorId) => string;
  readonly thing: (id: string) => string | null;
  readonly place: (at: Point) => string;
  /** What stands there by its name, or the place. */
  readonly spot: (at: Point) => string;
}

function nameBook(drill: Drill): NameBook {
  const actors = new Map(drill.actors.map((actor) => [actor.id, actorName(actor)]));
  const things = new Map<string, string>();
  for (const thing of [...drill.furniture, ...drill.zones]) if (thing.name !== null) things.set(thing.id, thing.name);
  const measure = measureOf(drill);
  const place = (at: Point): string => `(${lengthWords(at.x, measure)}, ${lengthWords(at.y, measure)})`;
  return {
    actor: (id) => actors.get(id) ?? id,
    thing: (id) => things.get(id) ?? null,
    place,
    spot: (at) => drill.furniture.find((thing) => thing.name !== null && thing.at.x === at.x && thing.at.y === at.y)?.name ?? place(at),
  };
}

function partWords(part: Part, names: NameBook): string {
  return `${names.actor(part.actor)} ${part.chain.map((action) => actionWords(action, names)).join(' then ')}`;
}

function actionWords(action: Action, names: NameBook): string {
  const target = targetWords(action, names);
  const main = [action.verb, ...aboutWords(action, target, names)].join(' ');
  return [main, ...modifierWords(action, names)].join(', ').replace(/, (for |at |via |after )/g, ' $1');
}

function aboutWords(action: Action, target: string | null, names: NameBook): string[] {
  if (action.about === null) return target === null ? [] : [target];
  const { who, thing, at } = action.about;
  const about = (who && names.actor(who)) ?? (thing && names.thing(thing)) ?? names.place(at);
  const closes = /around|from|overlaps|presses|marks|underlaps/.test(action.verb);
  if (!closes) return [...(target === null ? [] : [target]), 'around', about];
  return target === null ? [about] : [about, 'to', target];
}

function targetWords(action: Action, names: NameBook): string | null {
  if (action.to !== null) return names.actor(action.to);
  if (action.station !== null) return action.station;
  if (action.thing !== null) return names.thing(action.thing) ?? (action.at && names.place(action.at));
  return action.at && names.place(action.at);
}

function modifierWords(action: Action, names: NameBook): string[] {
  const words: string[] = [];
  if (action.length !== null) words.push(`for ${figure(action.length)} s`);
  if (action.receiver !== null) words.push(`for ${names.actor(action.receiver)}`);
  if (action.firstTime && action.verb !== 'sets to' && action.verb !== 'sets into') words.push('first time');
  if (action.touches !== null) words.push(`in ${action.touches} touch${action.touches === 1 ? '' : 'es'}`);
  if (action.weight !== null) words.push(action.weight);
  if (action.lofted) words.push('lofted');
  if (action.inStride) words.push('in stride');
  if (action.via.length > 0) words.push(`via ${action.via.map((at) => names.spot(at)).join(' via ')}`);
  if (action.gait !== null) words.push(`at ${action.gait}`);
  if (action.after > 0) words.push(`after ${figure(action.after)} s`);
  return words;
}
