import type { Rotation } from '../rotation/rotation.ts';
import { problem, type Check } from './check.ts';
import { missingArrow } from './cures.ts';
import { rotationSpan } from './places.ts';
import { list } from './say.ts';

export const check: Check = {
  code: 'role-never-played',
  group: 'rotation',
  severity: 'warning',
  title: 'Some players never play some roles',
  why: 'The rotation falls into circles that never meet: however often it is repeated, players of one circle do not get to play in the other. That may be meant (a fixed server, two groups side by side); then say so with `// allow role-never-played: why`. A drill in which nobody moves on at all is taken as meant.',
  source: 'A permutation falls into disjoint cycles (elementary algebra).',
  bad: [
    `drill "Square" {
  area 14 x 14
  station Base at (2, 2) holds 2
  station Left at (2, 12)
  station Right at (12, 12)
  station Low at (12, 2)
  ball at Base
  sequence {
    Base passes to Left
    Left passes to Right
    Right passes to Low
    Low passes to next Base
  }
  ⟦rotate Base -> Left -> Right -> Base⟧
}
`,
  ],
  good: [
    `drill "Square" {
  area 14 x 14
  station Base at (2, 2) holds 2
  station Left at (2, 12)
  station Right at (12, 12)
  station Low at (12, 2)
  ball at Base
  sequence {
    Base passes to Left
    Left passes to Right
    Right passes to Low
    Low passes to next Base
  }
  rotate Base -> Left -> Right -> Low -> Base
}
`,
  ],
  find: (analysis) => {
    const circles = circlesOf(analysis.rotation);
    if (circles.length < 2 || circles.every((circle) => circle.length === 1)) return [];
    const largest = circles.reduce((most, circle) => (circle.length > most.length ? circle : most));
    const apart = circles.filter((circle) => circle !== largest);
    const alone = apart.every((circle) => circle.length === 1) ? apart.flat() : null;
    const message = alone
      ? `${list(alone.map(code))} ${alone.length === 1 ? 'is' : 'are'} left out of the rotation: whoever starts there stays there, and nobody else gets to play there.`
      : `The rotation falls into circles that never meet: ${circles.map((circle) => `${list(circle.map(code))}`).join('; ')}.`;
    return [
      problem(check, rotationSpan(analysis), message, {
        help: `Join them with one more arrow, or say that it is meant: // allow role-never-played: fixed servers`,
      }),
    ];
  },
  cures: (_, analysis) => missingArrow(analysis),
};

/** The stations whose players mix, circle by circle, in order of the text. */
function circlesOf(rotation: Rotation | null): string[][] {
  if (!rotation?.image) return [];
  const circles: Set<string>[] = [];
  for (const cycle of rotation.cycles) {
    const stations = new Set(cycle.map((index) => rotation.places[index]!.station));
    const joined = circles.filter((circle) => [...circle].some((station) => stations.has(station)));
    for (const circle of joined) {
      circle.forEach((station) => stations.add(station));
      circles.splice(circles.indexOf(circle), 1);
    }
    circles.push(stations);
  }
  return circles.map((circle) => [...circle]);
}

function code(name: string): string {
  return `\`${name}\``;
}
