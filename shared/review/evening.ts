/** Pictures of what changed in an evening: part after part the pitch with its groups on it, both versions to one scale. */
import { cut } from '../font/text.ts';
import type { Bounds } from '../model/things.ts';
import type { Mark, Plan, Scene, Shape } from '../scene/scene.ts';
import { box, filled, stroked, text } from '../scene/shapes.ts';
import type { SessionAnalysis } from '../session/analysis.ts';
import { extentOf, movedBy } from '../session/ground.ts';
import { border, caption, margin, type PictureOptions, type Pictures, sideBySide } from './picture.ts';

/** Null when nobody knows in either version where a group stands. Total. */
export function eveningPictures(before: SessionAnalysis | null, after: SessionAnalysis | null, options: PictureOptions): Pictures | null {
  const [was, is] = [before && partsOf(before), after && partsOf(after)];
  const parts = [...(was ?? []), ...(is ?? [])];
  if (parts.length === 0) return null;
  const frame = frameOf(parts, Math.max(was?.length ?? 0, is?.length ?? 0));
  const sheets = { before: was && sheetOf(was, 'Before', frame, options), after: is && sheetOf(is, 'Now', frame, options) };
  const beside = sideBySide(sheets.before, sheets.after, { title: `${(after ?? before)!.session.name}: before and now`, description: 'Where the groups of each part stand.', end: 0 });
  return { ...sheets, over: beside, beside, flagged: [], phase: null };
}

interface LaidPart {
  readonly title: string;
  readonly pitch: Bounds | null;
  readonly groups: readonly { readonly number: number; readonly players: number; readonly on: Bounds }[];
}

/** Those that have a place on the ground. */
function partsOf({ session, timetable }: SessionAnalysis): LaidPart[] {
  const pitch = session.pitch && { left: 0, bottom: 0, right: session.pitch.width, top: session.pitch.length };
  return timetable.flatMap((slot): LaidPart[] => {
    if (slot.kind !== 'part' || slot.drill === null) return [];
    const extent = extentOf(slot.drill.drill);
    const groups = slot.groups.flatMap(({ number, members, at }) => (at ? [{ number, players: members.length, on: movedBy(extent, at) }] : []));
    return groups.length === 0 ? [] : [{ title: `${slot.part.name}, minute ${Math.round(slot.start / 60)} to ${Math.round(slot.end / 60)}`, pitch, groups }];
  });
}

interface Frame {
  readonly plan: Plan;
  readonly ground: Bounds;
  /** Of one part, with its title above and free paper round it. */
  readonly cell: { readonly width: number; readonly height: number };
  readonly width: number;
  readonly height: number;
}

const columns = 2;
const gap = 8;
/** For the name of a part, and for what the sheet is called. */
const titleHeight = 6;
const head = 9;
/** From line to line of writing. */
const lines = 3;
const scales = [100, 200, 250, 300, 400, 500, 750, 1000, 1500, 2000, 5000] as const;
/** Millimetres that the ground of one part may take. */
const room = 62;

function frameOf(parts: readonly LaidPart[], most: number): Frame {
  const all = parts.flatMap(({ pitch, groups }) => [...(pitch ? [pitch] : []), ...groups.map(({ on }) => on)]);
  const ground = {
    left: Math.min(...all.map(({ left }) => left)), right: Math.max(...all.map(({ right }) => right)),
    bottom: Math.min(...all.map(({ bottom }) => bottom)), top: Math.max(...all.map(({ top }) => top)),
  };
  const longer = Math.max(ground.right - ground.left, ground.top - ground.bottom, 1);
  const scale = scales.find((each) => (longer * 1000) / each <= room) ?? Math.ceil((longer * 1000) / room);
  const perMetre = 1000 / scale;
  const cell = { width: Math.max((ground.right - ground.left) * perMetre, 45), height: (ground.top - ground.bottom) * perMetre + titleHeight };
  return {
    plan: { scale, perMetre, left: 0, bottom: 0 }, ground, cell,
    width: 2 * margin + columns * cell.width + (columns - 1) * gap, height: 2 * margin + head + Math.ceil(most / columns) * (cell.height + gap) - gap,
  };
}

function sheetOf(parts: readonly LaidPart[], name: 'Before' | 'Now', frame: Frame, { theme, convention }: PictureOptions): Scene {
  const { plan, cell, width, height } = frame;
  return {
    width, height, plan, theme, convention, title: name, description: parts.map(({ title }) => title).join('; '), movers: [], beats: [], notes: [], end: 0, strip: null,
    marks: [border(width, height), caption(name, null, frame), ...parts.map((part, index): Mark => {
      const [left, top] = [margin + (index % columns) * (cell.width + gap), margin + head + Math.floor(index / columns) * (cell.height + gap)];
      return { id: `part-${index + 1}`, layer: 'area', span: null, label: part.title, shapes: partShapes(part, left, top, frame) };
    })],
  };
}

function partShapes({ title, pitch, groups }: LaidPart, left: number, top: number, { plan: { perMetre }, ground, cell }: Frame): Shape[] {
  const boxOf = (on: Bounds) => ({
    x: left + (on.left - ground.left) * perMetre, y: top + titleHeight + (ground.top - on.top) * perMetre,
    width: (on.right - on.left) * perMetre, height: (on.top - on.bottom) * perMetre,
  });
  const frame = pitch && boxOf(pitch);
  return [
    text({ x: left, y: top + 3 }, cut(title, cell.width, 2.6, 'bold'), 2.6, 'ink', { weight: 'bold' }),
    ...(frame ? [box(frame.x, frame.y, frame.width, frame.height, stroked('note', 0.3))] : []),
    ...groups.flatMap(({ number, players, on }) => {
      const { x, y, width, height } = boxOf(on);
      const words = [...(groups.length > 1 && height > lines * 2.5 ? [`Group ${number}`] : []), `${players} players`];
      return [box(x, y, width, height, filled('tint', 'ink', 0.4)), ...words.map((line, index) => (
        text({ x: x + width / 2, y: y + height / 2 + 0.8 + (index - (words.length - 1) / 2) * lines }, cut(line, Math.max(width - 0.6, 4), 2.2, 'medium'), 2.2, 'ink', { anchor: 'middle' })
      ))];
    }),
  ];
}
