/** What there is to know about the thing a name stands for. */
import type { Expression, Let, Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { list, long, seconds } from '../checks/say.ts';
import { distance, type Point } from '../geometry/point.ts';
import { area as areaOf, contains } from '../geometry/polygon.ts';
import type { ActorId, Station, Zone } from '../model/drill.ts';
import { boundsOf } from '../model/things.ts';
import { formatNumber, unitNamed } from '../units.ts';
import { nodeAround } from './nodes.ts';
import type { Symbol } from './occurrences.ts';
import { drillAt, type Open } from './open.ts';

/** Sentences; the drill is the one at the offset. */
export function factsOf(symbol: Symbol, open: Open, offset: number): string[] {
  const { name, kind } = symbol;
  const analysis = drillAt(open, offset);
  if (kind === 'let') return letFacts(symbol, analysis, open);
  if (!analysis) return [];
  const { drill } = analysis;
  const named = <T extends { readonly name: string | null }>(things: readonly T[]): T | undefined => things.find((each) => each.name === name);
  const [station, zone, actor, thing, team] = [named(drill.stations), named(drill.zones), named(drill.actors), named(drill.furniture), named(drill.teams)];
  if (kind === 'area') return areaFacts(analysis);
  if (station) return stationFacts(station, analysis);
  if (zone) return zoneFacts(zone, analysis);
  if (actor) return [`Starts at ${place(actor.home, analysis)}.`, ...workFacts(actor.id, analysis)];
  if (thing) return [`Stands at ${place(thing.at, analysis)}.`];
  return team ? [`${counted(team.size, 'player')}${team.bib === null ? '' : ` in ${team.bib}`}.`] : [];
}

/** Who is there when, and how long they wait. */
function stationFacts({ id, name, at, holds }: Station, analysis: DrillAnalysis): string[] {
  const moves = analysis.rotation?.moves ?? [];
  const coming = moves.filter((move) => move.to === id && move.from !== id).map(({ actor }) => `${actor} comes here${arrival(actor, analysis)}`);
  const going = moves.find((move) => move.actor === name && move.from === id)?.to ?? id;
  const changes = [...coming, ...(going === id ? [] : [`${name} goes on to ${going}`])];
  return [
    `At ${place(at, analysis)}. ${counted(holds, 'player')} here at the start.`,
    ...(changes.length > 0 ? [`In one repetition ${list(changes)}.`] : []),
    ...workFacts(name, analysis),
    ...queueFacts(holds, analysis),
  ];
}

function arrival(actor: ActorId, { timeline }: DrillAnalysis): string {
  const track = timeline.tracks.find((each) => each.actor === actor);
  const end = track?.walk?.end ?? track?.moves.at(-1)?.end;
  return end === undefined ? '' : ` at ${seconds(end)}`;
}

function queueFacts(holds: number, { measures: { interval } }: DrillAnalysis): string[] {
  if (!interval || holds < 2) return [];
  const wait = seconds((holds - 1) * interval.seconds);
  return [`The last in the queue waits ${wait} for their turn, with a start every ${seconds(interval.seconds)}.`];
}

function workFacts(actor: ActorId, { measures, drill }: DrillAnalysis): string[] {
  const own = measures.perPlayer.find((each) => each.actor === actor);
  if (!own) return [];
  const time = `Of the ${seconds(measures.duration)} of a repetition: ${seconds(own.working)} at work, ${seconds(own.waiting)} waiting`;
  return [`${time}; ${counted(own.touches, 'touch', 'touches')}, ${long(drill, own.distance)} covered.`];
}

function zoneFacts({ shape }: Zone, analysis: DrillAnalysis): string[] {
  const { drill } = analysis;
  const queued = drill.stations.filter(({ at }) => within(shape, at)).reduce((sum, { holds }) => sum + holds, 0);
  const placed = drill.actors.filter(({ kind, home }) => (kind === 'player' || kind === 'keeper') && within(shape, home)).length;
  const m2 = shape.kind === 'circle' ? Math.PI * shape.radius ** 2 : areaOf(shape.points);
  const { left, right, bottom, top } = boundsOf(shape);
  const size = shape.kind === 'circle' ? `${long(drill, right - left)} across` : `${long(drill, right - left)} x ${long(drill, top - bottom)}`;
  return [`${size}, ${formatNumber(m2, 0)} m².`, ...shared(m2, queued + placed, 'Inside at the start')];
}

function areaFacts({ drill: { area }, drill, measures }: DrillAnalysis): string[] {
  if (!area) return [];
  const m2 = area.width * area.length;
  return [
    `${long(drill, area.width)} x ${long(drill, area.length)}, ${formatNumber(m2, 0)} m².`,
    ...shared(m2, measures.players, 'Taking part'),
    `Its diagonal is ${long(drill, Math.hypot(area.width, area.length))}: measure it to square the corners.`,
  ];
}

function shared(m2: number, players: number, who: string): string[] {
  return players > 0 ? [`${who}: ${counted(players, 'player')}, ${formatNumber(m2 / players, 1)} m² each.`] : [];
}

function within(shape: Zone['shape'], at: Point): boolean {
  return shape.kind === 'circle' ? distance(shape.centre, at) <= shape.radius : contains(shape.points, at, 0);
}

function letFacts(symbol: Symbol, analysis: DrillAnalysis | null, open: Open): string[] {
  const entry = open.analysis.names.find(({ name, kind, path }) => kind === 'let' && name === symbol.name && path === null);
  const written = entry ? valueAt(open, entry.span) : null;
  if (!written) return symbol.path === open.workspace.path ? [] : [`From \`${symbol.path}\`.`];
  const text = `\`${open.text.slice(written.span.from, written.span.to)}\``;
  const value = analysis?.drill.lets.find(({ name }) => name === symbol.name)?.value;
  if (value === undefined || !analysis || written.kind === 'number') return [text];
  return [`${text} = ${isLength(written) ? long(analysis.drill, value) : formatNumber(value, 2)}`];
}

function valueAt({ analysis }: Open, name: Span): Expression | null {
  const isLet = (node: object): node is Let => 'kind' in node && node.kind === 'let' && (node as Let).name.from === name.from;
  return nodeAround(analysis.file, name, isLet)?.value ?? null;
}

/** Whether what is written is a length by itself, without looking at the names in it. */
function isLength(expression: Expression): boolean {
  switch (expression.kind) {
    case 'number': return expression.unit !== null && unitNamed(expression.unit.text)?.kind === 'length';
    case 'name': return false;
    case 'measure': return true;
    case 'group': return isLength(expression.inner);
    case 'negative': return isLength(expression.of);
    case 'sum': return expression.terms.some(({ of }) => isLength(of));
    case 'product': return expression.factors.filter(({ of }) => isLength(of)).length === 1;
  }
}

function place(at: Point, { drill }: DrillAnalysis): string {
  return `(${long(drill, at.x)}, ${long(drill, at.y)})`;
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
