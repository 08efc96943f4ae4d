import type { DrillAnalysis } from '../analyse.ts';
import { surplus } from '../rotation/rotate.ts';
import { problem, type Check } from './check.ts';
import { missingArrow } from './cures.ts';
import { list } from './say.ts';
import { rotationSpan } from './places.ts';

export const check: Check = {
  code: 'rotation-open',
  group: 'rotation',
  severity: 'error',
  title: 'The rotation does not close',
  why: 'After one repetition every place must be filled again by one player. Where more come than go, a queue grows; where more go than come, a place is empty and the second repetition cannot be played.',
  source: null,
  bad: [
    `drill "Triangle" {
  area 14 x 14
  station Base at (2, 2) holds 2
  station Left at (2, 12)
  station Right at (12, 12)
  ball at Base
  sequence {
    Base passes to Left
    Left passes to Right
    Right passes to next Base
  }
  ⟦rotate Base -> Left -> Right⟧
}
`,
  ],
  good: [
    `drill "Triangle" {
  area 14 x 14
  station Base at (2, 2) holds 2
  station Left at (2, 12)
  station Right at (12, 12)
  ball at Base
  sequence {
    Base passes to Left
    Left passes to Right
    Right passes to next Base
  }
  rotate Base -> Left -> Right -> Base
}
`,
  ],
  find: (analysis) => {
    const { drill, rotation } = analysis;
    if (!rotation || rotation.closed || rotation.moves.some((move) => move.to === null)) return [];
    const count = (sign: 1 | -1): string[] =>
      drill.stations.filter((station) => Math.sign(surplus(rotation.moves, station.id)) === sign).map((station) => `\`${station.name}\``);
    const [full, empty] = [count(1), count(-1)];
    return [
      problem(check, rotationSpan(analysis), `After one repetition ${list(empty)} ${verb(empty)} a player short and ${list(full)} ${verb(full)} one too many.`, {
        help: help(analysis),
      }),
    ];
  },
  cures: (_, analysis) => missingArrow(analysis),
};

function verb(names: readonly string[]): string {
  return names.length === 1 ? 'is' : 'are each';
}

function help({ drill }: DrillAnalysis): string {
  const twice = drill.rotation.kind === 'arrows' ? drill.rotation.arrows.find((arrow, index, all) => all.findIndex((other) => other.from === arrow.from) !== index) : undefined;
  if (twice) return `\`${twice.from}\` has two arrows that lead away, and only one player leaves it in a repetition: take one out.`;
  return drill.rotation.kind === 'arrows'
    ? 'Let the arrows come back to where they began, so that every place is left by one and taken by one.'
    : 'Let somebody move on to each place that is left, or write who goes where: rotate A -> B -> A';
}
