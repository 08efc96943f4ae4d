import { youthFormats } from '../space/youthFormats.ts';
import { metresIn } from '../units.ts';
import { problem, type Check } from './check.ts';
import { formatFor, sizeWords, Thing } from './ground.ts';

/** Share by which a goal may differ: makers round, and metres and feet are rounded apart. */
const margin = 0.05;

export const check: Check = {
  code: 'goal-size',
  group: 'ground',
  severity: 'info',
  title: 'Not the goal of this age',
  why: 'Players learn to finish, and goalkeepers to stand, in the goal they play matches with. The goal is compared with the one that the association named here lists for the age; others list other sizes, and a smaller or larger one may be meant. Mini goals are not compared.',
  source: `${youthFormats.association}, ${youthFormats.edition}`,
  bad: [
    `drill "Finish" {
  age U13
  area 30 x 30
  ⟦goal Far 5 x 2 at area.top⟧
  station Base at (15, 5)
}
`,
  ],
  good: [
    `drill "Finish" {
  age U13
  area 30 x 30
  goal Far 21 ft x 7 ft at area.top
  station Base at (15, 5)
}
`,
  ],
  find: ({ drill }) => {
    const format = formatFor(drill);
    if (!format) return [];
    const [width, height] = [format.goal.width * metresIn('ft'), format.goal.height * metresIn('ft')];
    const differs = (is: number | null, listed: number): boolean => is !== null && Math.abs(is - listed) > margin * listed + 1e-9;
    return drill.furniture
      .filter((thing) => thing.kind === 'goal' && (differs(thing.width, width) || differs(thing.height, height)))
      .map((goal) => {
        const listed = `${sizeWords(drill, width, height)} (${format.goal.width} x ${format.goal.height} ft)`;
        const message = `${Thing(drill, goal)} is ${sizeWords(drill, goal.width!, goal.height!)}. For ${drill.ageLabel} ${youthFormats.association} lists ${listed}.`;
        return problem(check, goal.span, message, { help: 'Fine if it is the goal you have or want; otherwise change its size.' });
      });
  },
};
