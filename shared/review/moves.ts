/** What moved because something else changed, in one sentence. */
import { distance, type Point } from '../geometry/point.ts';
import type { Difference } from './differences.ts';
import { metresIn } from '../units.ts';
import { capital, listed, said, type Speech, way } from './say.ts';

export type Followers = readonly Difference[];

/** `Left and Right stand 5 m from the middle, were 7 (wide)`; null when nobody would notice. */
export function moved(followers: Followers, causes: readonly Difference[], speech: Speech, all: readonly Difference[]): string | null {
  const because = causes.map(causeWords).join('; ');
  const standing = followers.filter(stands);
  const ends = endsOf(followers);
  const noticed = standing.filter((each) => spotsOf(each).some(({ from, to }) => distance(from, to) >= 0.05) || resized(each));
  if (noticed.length === 0) return ends === 0 ? null : `${capital(endWords(ends))} (${because}).`;
  const [cause] = causes;
  const middle = causes.length === 1 && cause ? fromTheMiddle(noticed, cause, speech, all) : null;
  const also = ends === 0 ? '' : `; ${endWords(ends)} too`;
  if (middle !== null) return `${middle} (${cause!.pair.after?.title})${also}.`;
  const sizes = new Set(noticed.map((each) => sizeWords(each, noticed.length, speech)));
  const [size] = sizes;
  if (size && sizes.size === 1 && noticed.every((each) => spotsOf(each).every(({ from, to }) => distance(from, to) < 0.05))) {
    return `${capital(listed(noticed.map(({ pair }) => pair.after!.title)))} ${size} (${cause?.pair.after?.kind === 'let' && causes.length === 1 ? cause.pair.after.title : because})${also}.`;
  }
  const ways = new Set(noticed.map((each) => spotsOf(each).map(({ from, to }) => way(from, to, speech)).join('')));
  const [only] = ways;
  const verb = noticed.length === 1 ? 'moves' : 'move';
  const how = ways.size === 1 && only ? `${verb} ${only}` : noticed.every(({ pair }) => pair.after?.kind === 'zone') ? `${noticed.length === 1 ? 'changes' : 'change'} with it` : verb;
  return `${capital(listed(noticed.map(({ pair }) => pair.after!.title)))} ${how} (${because})${also}.`;
}

/** `; Pivot and the ends of 2 movements go with it`, for the sentence of the cause itself; empty when nobody would notice. */
export function following(followers: Followers): string {
  const standing = followers.filter((each) => stands(each) && (spotsOf(each).some(({ from, to }) => distance(from, to) >= 0.05) || resized(each)));
  const ends = endsOf(followers);
  const names = [...standing.map(({ pair }) => pair.after!.title), ...(ends > 0 ? [ends === 1 ? 'the end of a movement' : `the ends of ${ends} movements`] : [])];
  if (names.length === 0) return '';
  return `; ${listed(names)} ${names.length === 1 && ends < 2 ? 'goes' : 'go'} with it`;
}

function causeWords({ pair: { before, after } }: Difference): string {
  const thing = (after ?? before)!;
  if (after === null) return `${thing.title} is gone`;
  if (before === null) return `${thing.title} is new`;
  return thing.kind === 'let' ? `${thing.title} is ${after.words}, was ${before.words}` : `${thing.title} changed`;
}

const standingKinds: ReadonlySet<string> = new Set(['zone', 'furniture', 'balls', 'station', 'player', 'area']);

function stands({ pair: { before, after } }: Difference): boolean {
  // A ball at a station goes where the station goes: nobody needs to be told.
  return before !== null && after !== null && standingKinds.has(after.kind) && after.kind !== 'balls';
}

function resized({ changes }: Difference): boolean {
  return ['width', 'length', 'radius', 'holds', 'height'].some((property) => Math.abs(changes.get(property)?.by ?? 0) >= 0.05);
}

const sizeNames: Readonly<Record<string, string>> = { width: ' wide', length: ' long', height: ' high', radius: ' in radius', holds: ' players' };

/** `is 3 m wide, was 2`; null unless exactly one size changed. */
function sizeWords({ changes }: Difference, many: number, speech: Speech): string | null {
  const sized = [...changes].filter(([property, change]) => property in sizeNames && Math.abs(change.by ?? 0) >= 0.05);
  const [only] = sized;
  if (!only || sized.length > 1) return null;
  const [now, old] = [said(only[1].after, only[1].unit, speech), said(only[1].before, only[1].unit, speech).replace(/ \D+$/, '')];
  return `${many === 1 ? 'is' : 'are'} ${now}${sizeNames[only[0]]}, ${many === 1 ? 'was' : 'were'} ${old}`;
}

function endsOf(followers: Followers): number {
  return followers.filter((each) => each.pair.after?.kind === 'action' && spotsOf(each).some(({ from, to }) => distance(from, to) >= 0.05)).length;
}

function endWords(ends: number): string {
  return ends === 1 ? '1 movement ends elsewhere' : `${ends} movements end elsewhere`;
}

export function spotsOf({ pair: { before, after } }: Difference): { readonly from: Point; readonly to: Point }[] {
  return before?.at && after?.at ? [{ from: before.at, to: after.at }] : [];
}

/** All as far from the middle of the area as a length says. */
function fromTheMiddle(standing: Followers, cause: Difference, speech: Speech, all: readonly Difference[]): string | null {
  const length = cause.changes.get('value');
  const area = all.find(({ pair }) => pair.after?.kind === 'area')?.pair;
  if (!length || !area?.before || !area.after || typeof length.before !== 'number' || typeof length.after !== 'number') return null;
  const [was, is] = [middleOf(area.before), middleOf(area.after)];
  // A bare number is in the unit of the drill.
  const [before, after] = [length.before * metresIn(speech.units), length.after * metresIn(speech.units)];
  for (const [far, words] of distances) {
    const fits = standing.every((each) => spotsOf(each).every(({ from, to }) => Math.abs(far(from, was) - before) < 0.01 && Math.abs(far(to, is) - after) < 0.01));
    if (!fits) continue;
    const verb = standing.length === 1 ? ['stands', 'was'] : ['stand', 'were'];
    const [now, old] = [said(after, 'm', speech), said(before, 'm', speech)];
    return `${capital(listed(standing.map(({ pair }) => pair.after!.title)))} ${verb[0]} ${now} ${words}, ${verb[1]} ${old.replace(/ \D+$/, '')}`;
  }
  return null;
}

const distances: readonly (readonly [(at: Point, middle: Point) => number, string])[] = [
  [distance, 'from the middle'],
  [(at, middle) => Math.abs(at.x - middle.x), 'to the side of the middle'],
  [(at, middle) => Math.abs(at.y - middle.y), 'up or down from the middle'],
];

function middleOf({ values }: { readonly values: Readonly<Record<string, { readonly value: number | string }>> }): Point {
  return { x: Number(values['width']?.value ?? 0) / 2, y: Number(values['length']?.value ?? 0) / 2 };
}
