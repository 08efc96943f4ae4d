/**
 * Every number the simulation rests on, with where it comes from. The reference table is generated from this file.
 *
 * The flag says how far to trust a value: READ in the source itself, READ-2 in a page that restates the source,
 * COMPUTED from such values, MEMORY from general knowledge without a source at hand, CHOSEN as a modelling
 * choice that no source settles.
 */
export const constants = {
  // ---------------------------------------------------------------- the rolling and flying ball
  gravity: {
    value: 9.81,
    unit: 'm/s²',
    flag: 'MEMORY',
    source: 'Standard gravity, rounded',
    note: 'Pulls the ball down the ramp of the turf test and out of the air.',
  },
  rampHeight: {
    value: 1,
    unit: 'm',
    flag: 'READ-2',
    source: 'FIFA field test and EN 12234 ball roll, as described by a turf manufacturer and an agronomy firm',
    note: 'In the turf test the ball is let go at this height on a ramp of 45 degrees.',
  },
  shellFactor: {
    value: 2 / 3,
    unit: '1',
    flag: 'CHOSEN',
    source: 'Moment of inertia of a thin spherical shell',
    note: 'The ball turns like a thin shell, so part of the energy at the foot of the ramp is spin.',
  },
  rollDistance: {
    value: { grass: 5, turf: 7, indoor: 12 },
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Inside the windows of FIFA 2005 (4 to 8 m and 4 to 10 m, READ) and EN 12234 (5 to 12 m, READ-2)',
    note: 'How far the ball of the turf test rolls; a drill overrides it with its own `roll`.',
  },
  rollDistanceLimits: {
    value: { least: 0.5, most: 100 },
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'A roll distance outside these limits is taken as the nearer limit, so that friction is always a positive number.',
  },
  airDensity: {
    value: 1.2,
    unit: 'kg/m³',
    flag: 'READ',
    source: 'Modelling paper on the flight of footballs',
    note: 'Dry air near sea level at about 20 degrees.',
  },
  ballMass: {
    value: 0.43,
    unit: 'kg',
    flag: 'COMPUTED',
    source: 'Laws of the Game 2024/25, Law 2 §1: 0.410 to 0.450 kg (READ)',
    note: 'The middle of what the Law allows for a size 5 ball; smaller balls are not told apart.',
  },
  ballCircumference: {
    value: 0.69,
    unit: 'm',
    flag: 'COMPUTED',
    source: 'Laws of the Game 2024/25, Law 2 §1: 0.68 to 0.70 m (READ)',
    note: 'The middle of what the Law allows; it gives a diameter of 0.22 m.',
  },
  slowDrag: {
    value: 0.47,
    unit: '1',
    flag: 'READ',
    source: 'G. Palmer, Physics for Game Programmers, chapter 7, equation 7.54',
    note: 'Drag coefficient of a football below the change of regime (Reynolds number under 100,000, about 7 m/s).',
  },
  fastDrag: {
    value: 0.22,
    unit: '1',
    flag: 'READ',
    source: 'G. Palmer, Physics for Game Programmers, chapter 7, equation 7.54',
    note: 'Drag coefficient above the change of regime (Reynolds number over 135,000, about 9 m/s) and of every lofted ball.',
  },
  dragChange: {
    value: 8,
    unit: 'm/s',
    flag: 'CHOSEN',
    source: 'The middle of the passage from about 7 to about 9 m/s in the same equation',
    note: 'A rolling ball changes from one drag coefficient to the other at this speed, in one step.',
  },
  loftAngle: {
    value: 37.5,
    unit: '°',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'Every lofted ball leaves the foot at this elevation; its speed is what makes it land on the spot.',
  },
  arrivalSpeed: {
    value: { walk: 3, steady: 4, match: 6 },
    unit: 'm/s',
    flag: 'CHOSEN',
    source: 'Modelling choice below the median mean speeds of professional match passes (9 to 12 m/s, COMPUTED)',
    note: 'How fast a pass along the ground reaches its receiver at each tempo; no published values exist for drills.',
  },
  arrivalFactor: {
    value: { soft: 0.75, firm: 1.25, driven: 1.5 },
    unit: '1',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'What the words soft, firm and driven make of the arrival speed.',
  },
  greatestLaunch: {
    value: 22.6,
    unit: 'm/s',
    flag: 'READ',
    source: 'Qualls et al., IJES Conference Abstracts 11(11):9 (18 university men, maximal inside-foot pass, 81.24 km/h)',
    note: 'The hardest pass of an adult; that of younger players is smaller in proportion to their top running speed (CHOSEN).',
  },
  comfortableShare: {
    value: { roll: 0.65, loft: 0.8 },
    unit: '1',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'Passes along the ground, and lofted ones, up to this share of the greatest launch speed can be played well again and again.',
  },
  loftedFactor: {
    value: 1.3,
    unit: '1',
    flag: 'CHOSEN',
    source: 'Modelling choice: it carries a well-struck ball of a grown player about 40 m, as common practice has it',
    note: 'A lofted ball is struck with the instep, which can be harder than the inside of the foot by this factor.',
  },

  // ---------------------------------------------------------------- runners
  topSpeed: {
    value: { 14: 7.02, 16: 7.91, 18: 8.55 },
    unit: 'm/s',
    flag: 'READ-2',
    source: "Mendez-Villanueva et al. 2011, J Sports Sci 29(5):477-484 (flying 20 m, boys), as restated on a sensor maker's page",
    note: 'Top speed by age, on a straight line between the ages; adults run like U18.',
  },
  sprintTau: {
    value: { 14: 0.874, 16: 0.933, 18: 0.987 },
    unit: 's',
    flag: 'COMPUTED',
    source: 'Solved from the 10 m times of the same source, with the usual 0.3 s for the start of the clock',
    note: 'Time constant of the sprint: after it a runner has 63 % of the top speed.',
  },
  youngTopSpeed: {
    value: { 6: 4.6, 8: 5.2, 10: 5.8, 12: 6.4 },
    unit: 'm/s',
    flag: 'CHOSEN',
    source: 'Extrapolated downwards from U14; no published table was found',
    note: 'Top speed of the younger ages; those under six run like U6.',
  },
  youngSprintTau: {
    value: { 6: 0.67, 8: 0.72, 10: 0.77, 12: 0.82 },
    unit: 's',
    flag: 'CHOSEN',
    source: 'Extrapolated downwards from U14 along the trend of the computed values',
    note: 'Time constant of the sprint at the younger ages.',
  },
  effort: {
    value: { steady: 0.6, match: 0.9 },
    unit: '1',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'Share of the top speed that runs aim for at a tempo; at tempo walk everyone walks.',
  },
  gait: {
    value: { jog: 0.35, run: 0.65, sprint: 1 },
    unit: '1',
    flag: 'CHOSEN',
    source: 'Lands adults in the bands jog 2 to 4, run 4 to 7, sprint over 7 m/s of a published tutorial on tracking data (READ)',
    note: 'Share of the top speed for a run with a written gait, whatever the tempo.',
  },
  walkSpeed: {
    value: 1.6,
    unit: 'm/s',
    flag: 'CHOSEN',
    source: 'Below the 2 m/s at which the same tutorial ends walking (READ)',
    note: 'Speed of a brisk walk, the same at every age.',
  },
  slowestRun: {
    value: 0.5,
    unit: 'm/s',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'A slower pace than this is taken as this, so that every run comes to an end.',
  },
  reaction: {
    value: 0.25,
    unit: 's',
    flag: 'MEMORY',
    source: 'Simple visual reaction, about 0.2 to 0.25 s',
    note: 'Time between what sets a run off and its first step.',
  },
  braking: {
    value: 4,
    unit: 'm/s²',
    flag: 'CHOSEN',
    source: 'Just above the 3.5 m/s² that counts as very high in matches (Harper et al. 2019, Sports Med 49:1923-1947, READ)',
    note: 'Runners slow down with this to stop, to receive and before a curve.',
  },
  grip: {
    value: 4,
    unit: 'm/s²',
    flag: 'CHOSEN',
    source: 'Modelling choice, the same as braking',
    note: 'Sideways acceleration in a curve: its greatest speed is the root of grip times radius.',
  },
  carryShare: {
    value: 0.75,
    unit: '1',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'Share of the running speed that is left with the ball at the feet.',
  },

  // ---------------------------------------------------------------- bodies and paths
  poleClearance: {
    value: 0.5,
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'Distance at which a runner goes round a pole or a cone.',
  },
  mannequinClearance: {
    value: 0.7,
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'Distance at which a runner goes round a mannequin or another player.',
  },
  cornerRadius: {
    value: 1,
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'A run through a point rounds the corner with this radius where the legs are long enough.',
  },
  cornerCut: {
    value: 0.5,
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'A rounded corner misses its point by no more than this; sharper turns get a smaller radius.',
  },
  followBow: {
    value: { share: 0.12, most: 1 },
    unit: '1, m',
    flag: 'CHOSEN',
    source: 'Common practice, no source: who follows their pass keeps right of the ball and of who comes the other way',
    note: 'How far the way of a player who follows bulges to the right: this share of its length, at most this many metres.',
  },
  overlapWidth: {
    value: 1.5,
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'An overlap or underlap passes the team-mate on the ball at this distance.',
  },
  standingReach: {
    value: 0.8,
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Common practice, no source: who presses shuts the lane beside them with body and leg. The body itself is 0.3 m of it (RoboCup 2-D simulator, rcssserver serverparam.cpp)',
    note: 'From the middle of the body: a ball that comes this near is stopped from the stand, without a step and without time to react.',
  },
  reach: {
    value: 1,
    unit: 'm',
    flag: 'MEMORY',
    source: 'Modelling convention; the RoboCup 2-D simulator has 0.7 m beyond the body (READ)',
    note: 'How far from the middle of the body a player can get a foot to the ball.',
  },
  reachHeight: {
    value: 2.2,
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Modelling choice: a grown player who jumps to head a ball',
    note: 'A ball higher than this cannot be taken on its way.',
  },

  // ---------------------------------------------------------------- time on the ball
  controlTime: {
    value: 1.2,
    unit: 's',
    flag: 'COMPUTED',
    source: 'Median from receiving to releasing in an open record of professional matches (1,268 receptions)',
    note: 'From the arrival of the ball to the next pass when it is received and played in two touches.',
  },
  touchTime: {
    value: 0.6,
    unit: 's',
    flag: 'CHOSEN',
    source: 'Modelling choice: half of a reception in two touches',
    note: 'Each touch beyond the second adds this.',
  },
  dribbleTouchLength: {
    value: 2,
    unit: 'm',
    flag: 'CHOSEN',
    source: 'Modelling choice',
    note: 'A player who runs with the ball touches it once in this distance.',
  },
  turnTime: {
    value: 0.8,
    unit: 's',
    flag: 'CHOSEN',
    source: 'Modelling choice, near the 1 s that a full change of direction costs at 5 m/s (COMPUTED)',
    note: 'Time to turn with the ball.',
  },
} as const satisfies Record<string, Constant>;

export type Flag = 'READ' | 'READ-2' | 'COMPUTED' | 'MEMORY' | 'CHOSEN';

export interface Constant {
  readonly value: number | Readonly<Record<string | number, number>>;
  /** `1` for shares and factors. */
  readonly unit: string;
  readonly flag: Flag;
  readonly source: string;
  readonly note: string;
}

export type ConstantName = keyof typeof constants;

/** Fastest sprint at an age, m/s, and its time constant, s. */
export function sprint(age: number): { readonly topSpeed: number; readonly tau: number } {
  return { topSpeed: byAge(topSpeeds, age), tau: byAge(taus, age) };
}

interface Anchor {
  readonly year: number;
  readonly value: number;
}

const topSpeeds = anchors({ ...constants.youngTopSpeed.value, ...constants.topSpeed.value });
const taus = anchors({ ...constants.youngSprintTau.value, ...constants.sprintTau.value });

/** In order of age. */
export function anchors(values: Readonly<Record<number, number>>): readonly Anchor[] {
  return Object.entries(values).map(([year, value]) => ({ year: Number(year), value }));
}

/** Value at an age in years from anchors: straight lines between them, flat outside. */
export function byAge(rows: readonly Anchor[], age: number): number {
  const above = rows.findIndex((row) => row.year >= age);
  const upper = rows[above] ?? rows[rows.length - 1];
  const lower = rows[above - 1] ?? upper;
  if (!upper || !lower) return 0;
  return lower === upper ? upper.value : lower.value + ((upper.value - lower.value) * (age - lower.year)) / (upper.year - lower.year);
}
