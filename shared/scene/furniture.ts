/** Cones, poles, goals and the rest from above, at true size unless that would be too small to see. */
import type { Furniture, FurnitureKind } from '../model/drill.ts';
import { type Box, boxAround, boxOf } from './ground.ts';
import type { Shape } from './scene.ts';
import { circle, filled, line, mm, path, polygon, polyline, stroked, text, type Spot } from './shapes.ts';

export const furnitureNames: Readonly<Record<FurnitureKind, string>> = {
  cone: 'Cone', disc: 'Disc', pole: 'Pole', mannequin: 'Mannequin', gate: 'Gate', goal: 'Goal', minigoal: 'Mini goal',
  hurdle: 'Hurdle', ladder: 'Ladder', coach: 'Coach',
};

/** True sizes in metres, as sold; the gate, the goal and the ladder bring their own width. */
const size = { cone: 0.3, disc: 0.2, pole: 0.1, mannequin: 0.6, minigoal: 1.2, hurdle: 0.6, ladderWidth: 0.5, ladderRung: 0.5, goalDepth: 1.5, minigoalDepth: 0.6 } as const;

export interface Symbol {
  readonly shapes: readonly Shape[];
  /** What it takes about (0, 0), millimetres on the sheet. */
  readonly box: Box;
}

/** The thing about (0, 0), turned as it faces. `perMetre` is in millimetres. */
export function furnitureSymbol(thing: Pick<Furniture, 'kind' | 'width' | 'facing'>, perMetre: number): Symbol {
  const metres = (length: number, least: number) => Math.max(length * perMetre, least);
  const facing = thing.facing ?? { x: 0, y: 1 };
  // Across to the right of the facing, forward along it; y points down on the sheet.
  const at = (across: number, forward: number): Spot => ({ x: across * facing.y + forward * facing.x, y: across * facing.x - forward * facing.y });
  const extent = (across: number, forward: number, back = forward) => ({ box: boxOf([at(-across, forward), at(across, forward), at(-across, -back), at(across, -back)]) });
  const round = (shapes: Shape[], r: number): Symbol => ({ shapes, box: boxAround({ x: 0, y: 0 }, r * 2) });
  switch (thing.kind) {
    case 'cone': {
      const r = metres(size.cone / 2, 1);
      return round([circle(at(0, 0), r, filled('paper', 'marker', 0.4)), circle(at(0, 0), r * 0.35, filled('marker'))], r);
    }
    case 'disc': {
      const r = metres(size.disc / 2, 0.8);
      return round([circle(at(0, 0), r, filled('paper', 'marker', 0.5))], r);
    }
    case 'pole': {
      const r = metres(size.pole / 2, 0.75);
      const arm = r + 0.75;
      return round([
        line({ x: -arm, y: 0 }, { x: arm, y: 0 }, stroked('marker', 0.3)), line({ x: 0, y: -arm }, { x: 0, y: arm }, stroked('marker', 0.3)),
        circle(at(0, 0), r, filled('marker')),
      ], arm);
    }
    case 'mannequin': {
      const half = metres(size.mannequin / 2, 1.5);
      return {
        shapes: [line(at(-half, 0), at(half, 0), stroked('marker', 1)), circle(at(0, 0), 0.85, filled('paper', 'marker', 0.4))],
        ...extent(half, 0.9),
      };
    }
    case 'gate': {
      const half = metres((thing.width ?? 1) / 2, 1.2);
      return {
        shapes: [
          line(at(-half, 0), at(half, 0), stroked('marker', 0.3, '0.8 0.8')),
          ...[-half, half].map((across) => circle(at(across, 0), 0.8, filled('marker'))),
        ],
        ...extent(half + 0.8, 0.8),
      };
    }
    case 'goal':
    case 'minigoal': {
      const half = metres((thing.width ?? size.minigoal) / 2, 1.4);
      const depth = metres(thing.kind === 'goal' ? size.goalDepth : size.minigoalDepth, 1.4);
      return { shapes: goal(at, half, depth), ...extent(half, 0.5, depth) };
    }
    case 'hurdle': {
      const half = metres(size.hurdle / 2, 1.4);
      const foot = 0.7;
      return {
        shapes: [
          line(at(-half, 0), at(half, 0), stroked('marker', 0.5)),
          ...[-half, half].map((across) => line(at(across, -foot), at(across, foot), stroked('marker', 0.4))),
        ],
        ...extent(half, foot),
      };
    }
    case 'ladder': {
      const half = metres((thing.width ?? 4) / 2, 3);
      const side = metres(size.ladderWidth / 2, 0.9);
      const rungs = Math.max(2, Math.round((half * 2) / metres(size.ladderRung, 1.4)));
      const rails = [-side, side].map((across) => line(at(across, -half), at(across, half), stroked('marker', 0.35)));
      const steps = Array.from({ length: rungs + 1 }, (_, index) => {
        const along = -half + (2 * half * index) / rungs;
        return line(at(-side, along), at(side, along), stroked('marker', 0.35));
      });
      return { shapes: [...rails, ...steps], ...extent(side, half) };
    }
    case 'coach':
      return {
        shapes: [polygon([{ x: -2.2, y: -1.7 }, { x: 2.2, y: -1.7 }, { x: 2.2, y: 1.7 }, { x: -2.2, y: 1.7 }], filled('paper', 'ink', 0.35)),
          text({ x: 0, y: 0.75 }, 'C', 2.2, 'ink', { weight: 'bold', anchor: 'middle' })],
        box: boxAround({ x: 0, y: 0 }, 4.4, 3.4),
      };
  }
}

/** A ball is drawn larger than it is: 22 cm would be a speck. */
export const ballRadius = 1;

export function ballShapes(): Shape[] {
  return [
    circle({ x: 0, y: 0 }, ballRadius, filled('paper', 'ink', 0.4)),
    path(`M${mm(-0.45)} ${mm(-0.1)}L0 ${mm(-0.45)}L${mm(0.45)} ${mm(-0.1)}L${mm(0.28)} ${mm(0.42)}L${mm(-0.28)} ${mm(0.42)}Z`, filled('ink')),
  ];
}

/** Of a heap with its number, millimetres. */
export const heapWidth = 7.5;

/** Balls that lie ready and are not in play: a small heap with their number. */
export function supplyShapes(count: number): Shape[] {
  const spots = [{ x: -1, y: 0.6 }, { x: 1, y: 0.6 }, { x: 0, y: -1.1 }].slice(0, Math.max(1, Math.min(3, count)));
  const heap = count === 1 ? [{ x: 0, y: 0 }] : spots;
  return [
    ...heap.map((at) => circle(at, 0.95, filled('paper', 'ink', 0.35))),
    ...(count > 1 ? [text({ x: 2.4, y: 0.8 }, `×${count}`, 2.2, 'note')] : []),
  ];
}

function goal(at: (across: number, forward: number) => Spot, half: number, depth: number): Shape[] {
  const frame = [at(-half, 0), at(-half, -depth), at(half, -depth), at(half, 0)];
  const steps = Math.max(2, Math.min(12, Math.round(half)));
  const net = Array.from({ length: steps - 1 }, (_, index) => {
    const across = -half + (2 * half * (index + 1)) / steps;
    return line(at(across, 0), at(across, -depth), stroked('note', 0.12));
  });
  return [
    ...net,
    line(at(-half, -depth / 2), at(half, -depth / 2), stroked('note', 0.12)),
    path(polyline(frame), stroked('marker', 0.35)),
    line(at(-half, 0), at(half, 0), stroked('marker', 0.9)),
  ];
}
