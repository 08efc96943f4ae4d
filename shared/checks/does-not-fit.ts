import type { Problem } from '../problem.ts';
import type { PartSlot, SessionAnalysis } from '../session/analysis.ts';
import { extentOf, freePlace, isOn, movedBy, overlap } from '../session/ground.ts';
import { mostThings, thingsOf } from '../session/things.ts';
import { problem, type Check } from './check.ts';
import { partsOf, placeEdits, sizeText } from './sessions.ts';

export const check: Check = {
  code: 'does-not-fit',
  group: 'session',
  severity: 'error',
  title: 'No room on the pitch',
  why: 'Each group takes the area of its drill, from the bottom left corner that the part gives it. Areas that lie over each other or over the edge of the pitch cannot be laid. Groups may share a side. Where no place is written, groups stand in rows from the bottom left corner of the pitch.',
  source: null,
  bad: [
    `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  pitch 30 x 20
  part "Wall" 20 min groups 2 of "Wall" at (2, 2), ⟦(12, 2)⟧
}
`,
    `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  pitch 30 x 20
  part ⟦"Wall"⟧ 20 min groups 3 of "Wall"
}
`,
  ],
  good: [
    `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  pitch 30 x 20
  part "Wall" 20 min groups 2 of "Wall" at (2, 2), (14, 2)
}
`,
  ],
  find: null,
  findInSession: (analysis) => partsOf(analysis).flatMap((slot) => misplaced(slot, analysis).slice(0, 1)),
  curesInSession: (found, analysis) => {
    const { pitch } = analysis.session;
    const slot = partsOf(analysis).find(({ part: { span } }) => span.from <= found.span.from && found.span.to <= span.to);
    if (!slot?.drill || !pitch) return [];
    const extent = extentOf(slot.drill.drill);
    const places = slot.groups.flatMap(({ at }) => at ?? []);
    const wrong = slot.part.at.findIndex(({ span }) => span.from === found.span.from);
    const others = places.filter((_, index) => index !== wrong).map((at) => movedBy(extent, at));
    const free = places[wrong] ? freePlace(extent, places[wrong], others, pitch) : null;
    if (!free) return [];
    const moved = places.map((at, index) => (index === wrong ? free : at));
    const title = slot.groups.length === 1 ? 'Move it to the nearest place that is free' : `Move group ${wrong + 1} to the nearest place that is free`;
    return [{ title, about: 'place', edits: placeEdits(slot.part, moved, analysis.session) }];
  },
};

function misplaced({ part, groups, drill, setUp }: PartSlot, { session }: SessionAnalysis): Problem[] {
  const { pitch } = session;
  const surplus = part.at[groups.length];
  if (surplus) return [problem(check, surplus.span, `"${part.name}" has ${part.at.length} places for ${groups.length} ${groups.length === 1 ? 'group' : 'groups'}.`, { help: 'Write one place for each group.' })];
  if (!drill) return [];
  const things = setUp.things.length > 0 ? 0 : thingsOf(drill.drill).length * groups.length;
  if (things > mostThings) return [problem(check, part.nameSpan, `"${part.name}" lays ${things} things; up to ${mostThings} are worked out.`, { help: 'Make fewer groups, or mark less.' })];
  const extent = extentOf(drill.drill);
  const size = sizeText(session, extent.right - extent.left, extent.top - extent.bottom);
  const boxes = groups.map(({ at }) => movedBy(extent, at ?? { x: 0, y: 0 }));
  return groups.flatMap(({ number, assumed }, index) => {
    const box = boxes[index]!;
    const name = groups.length === 1 ? `"${part.name}"` : `Group ${number} of "${part.name}"`;
    const other = boxes.findIndex((each, earlier) => earlier < index && overlap(each, box));
    if (other >= 0) return problem(check, spanOf(part, index), `${name} takes ${size} and lies over group ${other + 1}.`, { help: 'Move one of them; they may share a side.' });
    if (!pitch || isOn(pitch, box)) return [];
    const ground = sizeText(session, pitch.width, pitch.length);
    if (!assumed) return problem(check, spanOf(part, index), `${name} takes ${size} and leaves the pitch of ${ground}.`, { help: 'Move it, or make the area smaller.' });
    const all = groups.length === 1 ? size : `${groups.length} groups of ${size}`;
    return problem(check, part.nameSpan, `There is no room for ${all} on the pitch of ${ground}.`, { help: 'Make fewer groups, or the area smaller.' });
  });
}

function spanOf(part: PartSlot['part'], index: number): Problem['span'] {
  return part.at[index]?.span ?? part.nameSpan;
}
