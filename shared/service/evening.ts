/** What there is to say about a session and its parts. */
import type { DrillNode, SessionNode, Span } from '../../grammar/tree.ts';
import { list } from '../checks/say.ts';
import { placeEdits } from '../checks/sessions.ts';
import type { Fix } from '../problem.ts';
import type { Changeover, PartSlot, SessionAnalysis, Slot } from '../session/analysis.ts';
import { kitText, minutes } from '../session/words.ts';
import { formatLength, formatNumber } from '../units.ts';
import { importedPaths } from './occurrences.ts';
import { touches, type Open } from './open.ts';

export function sessionAt({ analysis }: Open, offset: number): SessionAnalysis | null {
  return analysis.sessions.find(({ session: { span } }) => touches(span, offset)) ?? null;
}

/** A part at its name: who plays in which group, what it needs, what there is to do before it. Markdown. */
export function partFacts(open: Open, offset: number): { readonly span: Span; readonly text: string } | null {
  const analysis = sessionAt(open, offset);
  const index = analysis?.timetable.findIndex((slot) => slot.kind === 'part' && touches(slot.part.nameSpan, offset)) ?? -1;
  const slot = analysis?.timetable[index];
  if (!analysis || slot?.kind !== 'part') return null;
  const { part } = slot;
  const facts = [
    `**${part.name}**: minute ${formatNumber(slot.start / 60, 1)} to ${formatNumber(slot.end / 60, 1)}`,
    ...peopleFacts(slot, analysis),
    ...kitFacts(slot),
    ...workFacts(index, analysis),
    ...analysis.changeovers.filter(({ from, to }) => from !== null && to === index).map(changeoverFact),
  ];
  return { span: part.nameSpan, text: facts.join('\n\n') };
}

function peopleFacts({ groups, resting, aside, away }: PartSlot, { register }: SessionAnalysis): string[] {
  if (register.length === 0) return [];
  const sizes = groups.map(({ members }) => members.length);
  const playing = groups.length === 1 ? `${sizes[0]} play` : `${groups.length} groups of ${list(sizes.map(String))}`;
  const others = [[resting, 'rest'], [aside, 'cannot take part'], [away, 'not there yet']] as const;
  return [`${[playing, ...others.filter(([who]) => who.length > 0).map(([who, why]) => `${who.length} ${why}`)].join('; ')}.`];
}

function kitFacts({ setUp }: PartSlot): string[] {
  const kinds = [...new Set(setUp.things.map(({ kind }) => kind))];
  const needs = [
    ...kinds.map((kind) => kitText(kind, setUp.things.filter((thing) => thing.kind === kind).length)),
    ...(setUp.balls > 0 ? [kitText('ball', setUp.balls)] : []),
    ...setUp.bibs.map(({ colour, count }) => kitText('bib', count, colour)),
  ];
  return needs.length === 0 ? [] : [`Needs ${list(needs)}.`];
}

function workFacts(slot: number, { figures, session }: SessionAnalysis): string[] {
  const part = figures.perPart.find((each) => each.slot === slot);
  if (!part) return [];
  const told = [
    ...(part.work === null ? [] : [`${minutes(part.work)} at work`]),
    ...(part.touches === null ? [] : [`${formatNumber(part.touches, 0)} touches`]),
    ...(part.metres === null ? [] : [formatLength(part.metres, session.units, 0)]),
    ...(part.withBall === null ? [] : [`${minutes(part.withBall)} on the ball`]),
  ];
  return [
    ...(told.length === 0 ? [] : [`A player: ${told.join(', ')}.`]),
    ...(part.like === null ? [] : [`Bouts near a published design: ${part.like.text} (${part.like.source}).`]),
  ];
}

function changeoverFact({ stays, moves, comesUp, goesDown, seconds, hands }: Changeover): string {
  const work = [[stays.length, 'stay'], [moves.length, 'move'], [comesUp.length, 'come up'], [goesDown.length, 'go down']] as const;
  const done = work.filter(([count]) => count > 0).map(([count, what]) => `${count} ${what}`).join(', ');
  return `To set up: ${done === '' ? 'nothing' : `${done}; about ${minutes(seconds)} with ${hands} ${hands === 1 ? 'pair' : 'pairs'} of hands`}.`;
}

/** How long, how many, and whether the kit is enough. */
export function sessionFacts({ timetable, register, kit, session }: SessionAnalysis): string[] {
  const short = kit.filter((line) => line.short > 0).map((line) => kitText(line.kind, line.short, line.colour));
  return [
    ...(timetable.length > 0 ? [minutes(timetable.reduce((end, slot: Slot) => Math.max(end, slot.end), 0))] : []),
    ...(register.length > 0 ? [`${register.length} ${register.length === 1 ? 'player' : 'players'}`] : []),
    ...(short.length > 0 ? [`kit short: ${list(short)}`] : session.kit.length > 0 && kit.length > 0 ? ['the kit is enough'] : []),
  ];
}

/** Puts the groups of all parts where the changeovers are shortest; null where they are already, and elsewhere than on a part or the name of its session. */
export function rearranged(open: Open, offset: number): Fix | null {
  const analysis = sessionAt(open, offset);
  if (!analysis?.proposal || ![analysis.session.nameSpan, ...analysis.session.parts.map(({ span }) => span)].some((span) => touches(span, offset))) return null;
  const { at, written, proposed } = analysis.proposal;
  const slots = analysis.timetable.filter((slot) => slot.kind === 'part');
  const edits = slots.flatMap((slot, index) => {
    const same = at[index]!.every((place, group) => place.x === slot.groups[group]?.at?.x && place.y === slot.groups[group]?.at?.y);
    return same ? [] : placeEdits(slot.part, at[index]!, analysis.session);
  });
  return { title: `Put the groups where changeovers take ${minutes(proposed)} instead of ${minutes(written)}`, edits };
}

/** The drills of imported files, with their files. */
export function importedDrills(open: Open): readonly { readonly node: DrillNode; readonly path: string }[] {
  return importedPaths(open).flatMap((path) => {
    const found = open.workspace.read(path);
    if (found === null || found === 'outside') return [];
    return found.file.items.flatMap((node) => (node.kind === 'drill' ? [{ node, path }] : []));
  });
}

/** The progressions and regressions of a drill that a part can name. */
export function changesOf(open: Open, drill: string): readonly string[] {
  const own = open.analysis.file.items.find((item) => item.kind === 'drill' && item.name.text === drill);
  const node = own?.kind === 'drill' ? own : importedDrills(open).find((each) => each.node.name.text === drill)?.node;
  return (node?.body.lines ?? []).flatMap((line) => (line.kind === 'progress' || line.kind === 'regress' ? [line.name.text] : []));
}

/** The names of the parts of the session at an offset. */
export function partNames({ analysis }: Open, offset: number): readonly string[] {
  const node = analysis.file.items.find((item): item is SessionNode => item.kind === 'session' && touches(item.span, offset));
  return [...new Set((node?.body.lines ?? []).flatMap((line) => (line.kind === 'part' ? [line.name.text] : [])))];
}
