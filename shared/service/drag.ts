/** Moving a thing on the pitch by changing its text, in the way the text was written. */
import type { Place, Space, Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { Point } from '../geometry/point.ts';
import type { Id } from '../model/drill.ts';
import { boundsOf, centreOf } from '../model/things.ts';
import type { Edit } from '../problem.ts';
import type { Written } from './adjust.ts';
import { moved } from './move.ts';
import { nodeAround } from './nodes.ts';
import { drillAt, type Open } from './open.ts';
import { originalOf } from './originals.ts';
import { resized, type Side } from './resize.ts';

/** What is dragged. */
export type Handle =
  /** A station, a player, a piece of furniture, a ball supply, a zone as a whole: by the place of its statement. */
  | { readonly kind: 'thing'; readonly statement: Span }
  /** Where an action leads: the end of a run, a pass into space; `way` is the id of its mark, needed in a mirrored sequence, whose one statement makes them all. */
  | { readonly kind: 'end'; readonly action: Span; readonly way?: string }
  /** A side of a zone or of the area; `zone` is its id, needed where one statement makes several. */
  | { readonly kind: 'side'; readonly statement: Span; readonly side: Side; readonly zone?: Id }
  /** A corner of a polygon. */
  | { readonly kind: 'corner'; readonly statement: Span; readonly index: number };

/**
 * The edits that bring a thing to a place (metres). Numbers are rounded to a step of the unit they are written in, so the
 * thing comes to lie within half a step of the place, across and up. Null when the text does not say where it is.
 */
export function drag(open: Open, handle: Handle, to: Point): readonly Edit[] | null {
  const span = handle.kind === 'end' ? handle.action : handle.statement;
  const analysis = drillAt(open, span.from);
  if (!analysis) return null;
  const edits = dragged(open, handle, to, analysis);
  // What is rewritten must hold no comment: it would be lost.
  return edits?.some((edit) => open.text.slice(edit.span.from, edit.span.to).includes('//')) ? null : edits;
}

function dragged(open: Open, handle: Handle, to: Point, analysis: DrillAnalysis): readonly Edit[] | null {
  const context: Written = { text: open.text, units: analysis.drill.units };
  switch (handle.kind) {
    case 'thing': {
      const found = thingAt(open, analysis, handle.statement);
      return found && moved(found.place, found.at, to, context);
    }
    case 'end': {
      const image = handle.way === undefined ? null : originalOf(open, analysis, handle.action, handle.way);
      const found = endOf(open, analysis, image?.action.span ?? handle.action);
      return found && moved(found.place, found.at, image?.point(to) ?? to, context);
    }
    case 'side': {
      const statement = nodeAround(open.analysis.file, handle.statement, isSpace);
      return statement && resized(open, statement, handle, to, analysis);
    }
    case 'corner': {
      const statement = nodeAround(open.analysis.file, handle.statement, isSpace);
      const place = statement?.kind === 'zone' && statement.shape.kind === 'polygon' ? statement.shape.points[handle.index] : undefined;
      const shape = analysis.drill.zones.find((zone) => statement?.kind === 'zone' && zone.name === statement.name.text)?.shape;
      const at = shape?.kind === 'polygon' ? shape.points[handle.index] : undefined;
      return place && at ? moved(place, at, to, context) : null;
    }
  }
}

// ---------------------------------------------------------------- what is dragged

interface FoundPlace {
  readonly place: Place;
  readonly at: Point;
}

function thingAt({ analysis: { file } }: Open, { drill }: DrillAnalysis, statement: Span): FoundPlace | null {
  const things = [...drill.stations, ...drill.furniture, ...drill.balls].filter(({ span }) => span.from === statement.from);
  const at = things[0]?.at ?? drill.actors.find(({ span }) => span.from === statement.from)?.home;
  const zone = drill.zones.find(({ span }) => span.from === statement.from);
  const isLine = (node: object): node is Placed => 'margin' in node && 'span' in node && (node.span as Span).from === statement.from;
  const line = nodeAround(file, statement, isLine);
  const place = line?.at ?? line?.shape?.at;
  const found = at ?? (zone && centreOf(boundsOf(zone.shape)));
  return isPlace(place) && found ? { place, at: found } : null;
}

function endOf({ analysis: { file } }: Open, { drill }: DrillAnalysis, span: Span): FoundPlace | null {
  const actions = drill.sequences.filter(({ mirrorOf }) => mirrorOf === null)
    .flatMap(({ beats }) => beats.flatMap(({ lead, meanwhile }) => [lead, ...meanwhile])).flatMap(({ chain }) => chain);
  const action = actions.find((each) => each.span.from === span.from);
  const isAction = (node: object): node is { readonly target: Place } => 'verb' in node && 'target' in node && isPlace(node.target);
  const node = nodeAround(file, span, isAction);
  const at = action?.at ?? drill.actors.find(({ id }) => id === action?.to)?.home;
  return node && at ? { place: node.target, at } : null;
}

/** A statement that may say where; of a session's part `at` is a list. */
interface Placed {
  readonly at?: unknown;
  readonly shape?: { readonly at?: unknown };
}

const placeKinds: ReadonlySet<unknown> = new Set<Place['kind']>([
  'at', 'name', 'anchor', 'offset', 'beside', 'between', 'along', 'mirror',
]);

function isPlace(value: unknown): value is Place {
  return typeof value === 'object' && value !== null && 'kind' in value && placeKinds.has(value.kind);
}

const spaceKinds: ReadonlySet<unknown> = new Set<Space['kind']>(['area', 'zone', 'zones', 'split']);

function isSpace(node: object): node is Space {
  return 'kind' in node && 'margin' in node && spaceKinds.has(node.kind);
}
