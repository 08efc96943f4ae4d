import type { Area, Drill } from '../model/drill.ts';
import { boundsOf, type Bounds } from '../model/things.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';
import { lengthCures } from './cures.ts';
import { list, long } from './say.ts';

/** Metres: what rounding adds to a zone that ends on a line of the area. */
const tolerance = 0.05;

export const check: Check = {
  code: 'zone-outside-area',
  group: 'ground',
  severity: 'error',
  title: 'A zone sticks out of the area',
  why: 'A zone is a part of the area: its markers stand inside or on the lines. One that sticks out would be marked on ground that the drill does not have, and the space of its players would be counted wrong.',
  source: null,
  bad: [
    `drill "Box" {
  age U13
  area 20 x 20
  zone ⟦Box⟧ 8 x 8 at (10, 17)
}
`,
    `drill "Ring" {
  age U13
  area 20 x 20
  zone ⟦Ring⟧ circle 5 at (4, 10)
}
`,
  ],
  good: [
    `drill "Box" {
  age U13
  area 20 x 20
  zone Box 8 x 8 at (10, 16)
}
`,
    `drill "Ring" {
  age U13
  area 20 x 20
  zone Ring circle 5 at (5, 10)
}
`,
  ],
  find: ({ drill }) => (drill.area ? stickingOut(drill, drill.area) : []),
  cures: (found, analysis, text) => {
    const zone = analysis.drill.zones.find((each) => each.nameSpan.from === found.span.from);
    return lengthCures({ ...found, span: zone?.span ?? found.span }, analysis, text);
  },
};

/** One problem for each name: four zones in the corners are one statement. Strips are looked at by `split-mismatch`. */
function stickingOut(drill: Drill, area: Area): Problem[] {
  const told = new Set<number>();
  return drill.zones.flatMap((zone) => {
    const sides = sidesCrossed(boundsOf(zone.shape), area);
    if (zone.split || sides.length === 0 || told.has(zone.nameSpan.from)) return [];
    told.add(zone.nameSpan.from);
    const words = list(sides.map(({ side, by }) => `${long(drill, by)} at the ${side}`));
    return problem(check, zone.nameSpan, `\`${zone.name}\` sticks out of the area by ${words}.`, {
      help: 'Make it smaller or move it, or make the area larger.',
    });
  });
}

function sidesCrossed({ left, right, bottom, top }: Bounds, area: Area): { readonly side: string; readonly by: number }[] {
  return [
    { side: 'left', by: -left },
    { side: 'right', by: right - area.width },
    { side: 'bottom', by: -bottom },
    { side: 'top', by: top - area.length },
  ].filter(({ by }) => by > tolerance);
}
