/** What is said of a drill in code: lengths, places and names. All of it becomes the words that a person would write. */
import { readLeaf, shown } from '../../grammar/json/leaf.ts';
import { decimal } from '../../grammar/printer.ts';
import type { Across, Place } from '../../grammar/tree.ts';
import type { Player } from './play.ts';

/** A number in the unit of the drill, or a value as it is written: `'3 yd'`, `'side + 2'`, or the name that `let` gave back. */
export type Length = number | string;
/** A player as `station`, `player` and `keeper` give them back, or a name. */
export type Who = string | Player;
/** A place: two lengths, whoever or whatever stands there, or as it is written: `'area.topRight'`, `'2 above Base'`. */
export type Spot = readonly [Length, Length] | Who;

/** What was said cannot be written in the language; the message says what and why. Thrown at the call that said it. */
export class CannotBeWritten extends Error {
  override readonly name = 'CannotBeWritten';
}

/** So far right and so far up from the bottom left corner of the area: `(2, 13)`. */
export function at(x: Length, y: Length): Spot {
  return [length('at', x), length('at', y)];
}

/** `2 above Base` */
export function above(distance: Length, of: Spot): Spot {
  return beside('above', 'below', distance, 'above', of);
}

/** `2 below Base` */
export function below(distance: Length, of: Spot): Spot {
  return beside('below', 'above', distance, 'below', of);
}

/** `2 left of Base` */
export function leftOf(distance: Length, of: Spot): Spot {
  return beside('leftOf', 'rightOf', distance, 'left of', of);
}

/** `2 right of Base` */
export function rightOf(distance: Length, of: Spot): Spot {
  return beside('rightOf', 'leftOf', distance, 'right of', of);
}

/** Half-way: `between Base and Left` */
export function between(a: Spot, b: Spot): Spot {
  return place(`between ${spoken(a)} and ${spoken(b)}`);
}

/** Part of the way: `along('1/3', base, left)` is `1/3 from Base to Left`. */
export function along(fraction: Length, start: Spot, end: Spot): Spot {
  if (isNegative(fraction)) throw new CannotBeWritten(`\`along\`: part of the way must be 0 or more, not \`${fraction}\`.`);
  return place(`${distanceWords('along', fraction)} from ${spoken(start)} to ${spoken(end)}`);
}

/** `mirror of Left across length`: across the length swaps left and right, across the width near and far. */
export function mirrorOf(of: Spot, across: Across): Spot {
  return place(`mirror of ${spoken(of)} across ${across}`);
}

/** So far to the right and so far up from a place: `area.centre + (6, 1)`. Not from a place between others: give that a name. */
export function moved(from: Spot, right: Length, up: Length): Spot {
  const words = `${spoken(from)} + ${spoken([right, up])}`;
  const leaf = readLeaf(words, 'place');
  if ('node' in leaf && (leaf.node as Place).kind !== 'offset') throw new CannotBeWritten(`${shown(spoken(from))} cannot be moved: put a station, a cone or a pole there and move that.`);
  return place(words);
}

/** As it stands in the JSON form: names for people, in lists and objects too; what is undefined is left out. Numbers stay what they are. */
export function plain(said: unknown): unknown {
  if (Array.isArray(said)) return said.map(plain);
  if (typeof said !== 'object' || said === null) return said;
  if ('toJSON' in said && typeof said.toJSON === 'function') return said.toJSON() as unknown;
  return Object.fromEntries(Object.entries(said).filter(([, held]) => held !== undefined).map(([key, held]) => [key, plain(held)]));
}

/** Refuses what stands in place of the object with all that may be said besides. */
export function extra<More extends object>(more: More): More {
  if (typeof more === 'object' && more !== null && !Array.isArray(more)) return more;
  throw new CannotBeWritten(`What may be said besides stands in an object at the end, such as \`{ name: "Round" }\`, not ${shown(more)}.`);
}

/**
 * Refuses lengths and counts below nothing, in the JSON form. A place may lie beside the area, and what `let` gives a name to may
 * be any number.
 */
export function refuseNegative(said: unknown, what: string, path = ''): void {
  if (isNegative(said)) throw new CannotBeWritten(`\`${what}\`: ${path} must be 0 or more, not \`${said}\``);
  if (typeof said !== 'object' || said === null) return;
  if (Array.isArray(said)) for (const [index, each] of said.entries()) if (typeof each === 'object') refuseNegative(each, what, within(path, `${index}`));
  if (Array.isArray(said) || ('kind' in said && said.kind === 'let')) return;
  for (const [key, held] of Object.entries(said)) refuseNegative(held, what, within(path, key));
}

function within(path: string, key: string): string {
  return path === '' ? key : `${path}/${key}`;
}

function isNegative(said: unknown): said is number {
  return typeof said === 'number' && said < 0;
}

function beside(name: string, other: string, distance: Length, side: string, of: Spot): Spot {
  if (isNegative(distance)) throw new CannotBeWritten(`\`${name}\`: the distance must be 0 or more, not \`${distance}\`; for the other side there is \`${other}\`.`);
  return place(`${distanceWords(name, distance)} ${side} ${spoken(of)}`);
}

/** A sum needs brackets before `above`, or it would be a place that is moved. */
function distanceWords(what: string, distance: Length): string {
  const words = lengthWords(length(what, distance));
  return /[+-]/.test(words) && !/^\([^()]*\)$/.test(words) ? `(${words})` : words;
}

function lengthWords(length: Length): string {
  return typeof length === 'number' ? decimal(length) : length;
}

/** As it is, if it is one. */
function length(what: string, said: Length): Length {
  if (typeof said === 'string' || Number.isFinite(said)) return said;
  throw new CannotBeWritten(`\`${what}\`: a length must be a number or a value in quotes such as \`"3 yd"\`, not ${shown(said)}.`);
}

function spoken(spot: Spot): string {
  if (typeof spot === 'string') return spot;
  if (Array.isArray(spot)) for (const each of [spot[0], spot[1]]) length('at', each);
  else if (typeof spot !== 'object' || spot === null || !('name' in spot)) throw new CannotBeWritten(`This must be a place, such as \`at(2, 13)\`, or whoever stands there, not ${shown(spot)}.`);
  return 'name' in spot ? spot.name : `(${lengthWords(spot[0])}, ${lengthWords(spot[1])})`;
}

function place(words: string): Spot {
  const leaf = readLeaf(words, 'place');
  if ('fault' in leaf) throw new CannotBeWritten(`This must be ${leaf.fault}`);
  return words;
}
