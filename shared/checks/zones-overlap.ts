import { area, overlap, roundPolygon } from '../geometry/polygon.ts';
import { distance, type Point } from '../geometry/point.ts';
import type { Zone } from '../model/drill.ts';
import { boundsOf, type Bounds } from '../model/things.ts';
import { problem, type Check } from './check.ts';
import { lengthCures } from './cures.ts';

/** Square metres: less than this is rounding. */
const tolerance = 0.01;
/** Corners of the polygon that stands in for a circle beside straight sides. */
const roundness = 128;
/** Metres: circles that touch or hold each other no closer than this do not cross. */
const touching = 0.01;

export const check: Check = {
  code: 'zones-overlap',
  group: 'ground',
  severity: 'warning',
  title: 'Two zones share ground',
  why: 'A player where two zones overlap is in both, so nobody can say which rule holds, and the same space is counted twice. A zone wholly inside a larger one is fine, and so are two splits across each other.',
  source: null,
  bad: [
    `drill "Boxes" {
  age U13
  area 20 x 20
  zone Left 8 x 8 at (6, 10)
  zone ⟦Right⟧ 8 x 8 at (13, 10)
}
`,
    `drill "Ring" {
  age U13
  area 20 x 20
  zone Left 8 x 8 at (6, 10)
  zone ⟦Ring⟧ circle 4 at (13, 10)
}
`,
  ],
  good: [
    `drill "Boxes" {
  age U13
  area 20 x 20
  zone Left 8 x 8 at (6, 10)
  zone Right 8 x 8 at (14, 10)
}
`,
    `drill "Ring" {
  age U13
  area 20 x 20
  zone Box 8 x 8 at (10, 10)
  zone Ring circle 4 at (10, 10)
}
`,
  ],
  find: ({ drill }) => {
    const told = new Set<number>();
    const shapes = drill.zones.map(outlined);
    return shapes.flatMap((later, index) => {
      const span = later.zone.nameSpan;
      const earlier = told.has(span.from) ? undefined : shapes.slice(0, index).find((each) => crosses(each, later));
      if (!earlier) return [];
      told.add(span.from);
      return problem(check, span, `\`${later.zone.name}\` and \`${earlier.zone.name}\` share ground: whoever stands there is in both.`, {
        help: 'Move them apart, make one smaller, or put one wholly inside the other.',
        related: [{ span: earlier.zone.nameSpan, message: `This is \`${earlier.zone.name}\`.` }],
      });
    });
  },
  cures: (found, analysis, text) => {
    const zone = analysis.drill.zones.find((each) => each.nameSpan.from === found.span.from);
    return lengthCures({ ...found, span: zone?.span ?? found.span }, analysis, text);
  },
};

interface Outlined {
  readonly zone: Zone;
  readonly bounds: Bounds;
  readonly points: readonly Point[];
  readonly m2: number;
}

function outlined(zone: Zone): Outlined {
  const points = zone.shape.kind === 'polygon' ? zone.shape.points : roundPolygon(zone.shape.centre, zone.shape.radius, roundness);
  return { zone, bounds: boundsOf(zone.shape), points, m2: area(points) };
}

/** Whether two zones share ground while neither holds the other. */
function crosses(a: Outlined, b: Outlined): boolean {
  const across = Math.min(a.bounds.right, b.bounds.right) - Math.max(a.bounds.left, b.bounds.left);
  const up = Math.min(a.bounds.top, b.bounds.top) - Math.max(a.bounds.bottom, b.bounds.bottom);
  if (across <= 0 || up <= 0 || across * up <= tolerance || (a.zone.split && b.zone.split)) return false;
  if (a.zone.shape.kind === 'circle' && b.zone.shape.kind === 'circle') {
    const [gap, first, second] = [distance(a.zone.shape.centre, b.zone.shape.centre), a.zone.shape.radius, b.zone.shape.radius];
    return gap < first + second - touching && gap > Math.abs(first - second) + touching;
  }
  const shared = overlap(a.points, b.points);
  return shared > tolerance && shared < Math.min(a.m2, b.m2) - tolerance;
}
