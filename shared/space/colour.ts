/** How far apart two colours look, also to eyes that tell fewer of them apart. */

/** Kinds of colour vision; the last three lack one of the three cones. */
export const visions = ['normal', 'protan', 'deutan', 'tritan'] as const;
export type Vision = (typeof visions)[number];

/**
 * The distance of two `#rrggbb` colours in CIE 1976 L*a*b* under daylight (D65): 2 is just seen side by side, 100 is black
 * and white. Vision without a cone by the matrices of Machado, Oliveira and Fernandes (2009), on linear RGB.
 */
export function colourDistance(a: string, b: string, vision: Vision): number {
  const [p, q] = [labOf(seenBy(vision, linearOf(a))), labOf(seenBy(vision, linearOf(b)))];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

type Three = readonly [number, number, number];
type Matrix = readonly [Three, Three, Three];

const lacking: Readonly<Record<Exclude<Vision, 'normal'>, Matrix>> = {
  protan: [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
  deutan: [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]],
  tritan: [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]],
};

/** sRGB to CIE XYZ (IEC 61966-2-1). */
const toXyz: Matrix = [[0.4123908, 0.3575843, 0.1804808], [0.212639, 0.7151687, 0.0721923], [0.0193308, 0.1191948, 0.9505322]];
const white: Three = [0.3127 / 0.329, 1, 0.3583 / 0.329];

function linearOf(colour: string): Three {
  const channel = (from: number): number => {
    const share = Number.parseInt(colour.slice(from, from + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

function seenBy(vision: Vision, colour: Three): Three {
  return vision === 'normal' ? colour : times(lacking[vision], colour);
}

function labOf(linear: Three): Three {
  const [x, y, z] = times(toXyz, linear).map((value, index) => {
    const share = value / white[index]!;
    return share > 216 / 24389 ? Math.cbrt(share) : ((24389 / 27) * share + 16) / 116;
  }) as unknown as Three;
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function times(matrix: Matrix, [x, y, z]: Three): Three {
  const [a, b, c] = matrix.map((row) => row[0] * x + row[1] * y + row[2] * z) as unknown as Three;
  return [a, b, c];
}
