import { differenceEuclidean, filterDeficiencyDeuter, filterDeficiencyProt, filterDeficiencyTrit, parse } from 'culori';
import { expect, test } from 'vitest';
import { colourDistance, type Vision } from '../../shared/space/colour.ts';

const colours = ['#e69f00', '#56b4e9', '#009e73', '#f0e442', '#0072b2', '#d55e00', '#cc79a7', '#000000', '#ffffff', '#c8202f', '#1d7a46'];
const distance = differenceEuclidean('lab65');
type Rgb = { readonly r: number; readonly g: number; readonly b: number };

/** culori puts its matrices on whatever it is given as rgb: linear values here, as in the paper. */
const seen: Readonly<Record<Exclude<Vision, 'normal'>, (colour: unknown) => unknown>> = {
  protan: filterDeficiencyProt(1), deutan: filterDeficiencyDeuter(1), tritan: filterDeficiencyTrit(1),
};

function expected(a: string, b: string, vision: Vision): number {
  const through = (hex: string): unknown => {
    const { r, g, b: blue } = parse(hex) as Rgb;
    const linear = [r, g, blue].map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4));
    const rgb = { mode: 'rgb', r: linear[0], g: linear[1], b: linear[2] };
    return { ...((vision === 'normal' ? rgb : seen[vision](rgb)) as object), mode: 'lrgb' };
  };
  return distance(through(a), through(b));
}

test.each(['normal', 'protan', 'deutan', 'tritan'] as const)('%s: every pair is as far apart as culori has it', (vision) => {
  for (const a of colours) for (const b of colours) expect(colourDistance(a, b, vision), `${a} ${b}`).toBeCloseTo(expected(a, b, vision), 2);
});
