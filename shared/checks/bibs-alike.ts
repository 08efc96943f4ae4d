import type { Team } from '../model/drill.ts';
import { bibColour } from '../scene/palette.ts';
import { colourDistance, visions, type Vision } from '../space/colour.ts';
import { problem, type Check } from './check.ts';

/** Two colours nearer than this in CIE L*a*b* are taken for each other at a glance, from afar and in bad light. */
const alike = 20;

const game = (bib: string): string => `drill "Bibs" {
  age U15
  area 10 x 14
  team Reds bib red
  team ⟦Others⟧ bib ${bib}
  player Ann of Reds at (3, 3)
  player Bea of Others at (7, 11)
}
`;

export const check: Check = {
  code: 'bibs-alike',
  group: 'games',
  severity: 'warning',
  title: 'Two teams wear colours that look alike',
  why: 'Players choose a pass in the blink of an eye, by colour. One boy in twelve does not tell red from green as others do, so the colours are compared as they look to everyone, and to eyes that lack one of the three kinds of cones.',
  source: 'Machado, Oliveira and Fernandes (2009) for what eyes without a cone see; CIE 1976 distance. The limit of 20 is a choice without a source.',
  bad: [game('green'), game('"#d02030"')],
  good: [game('yellow').replace(/[⟦⟧]/g, '')],
  find: ({ drill }) => {
    const dyed = drill.teams.flatMap((team) => {
      const colour = team.bib === null ? null : bibColour(team.bib);
      return colour === null ? [] : [{ team, colour }];
    });
    return dyed.flatMap((later, index) => {
      for (const earlier of dyed.slice(0, index)) {
        const vision = visions.find((each) => colourDistance(earlier.colour, later.colour, each) < alike);
        if (vision) return [told(earlier.team, later.team, vision)];
      }
      return [];
    });
  },
};

function told(earlier: Team, later: Team, vision: Vision) {
  return problem(check, later.nameSpan, `The bibs of \`${later.name}\` (${later.bib}) and \`${earlier.name}\` (${earlier.bib}) cannot be told apart${toWhom[vision]}.`, {
    help: 'Take another colour for one of them; orange and blue, or yellow and black, are safe.',
    related: [{ span: earlier.nameSpan, message: `These are \`${earlier.name}\`.` }],
  });
}

const toWhom: Readonly<Record<Vision, string>> = {
  normal: '', protan: ' by who cannot see red', deutan: ' by who cannot see green', tritan: ' by who cannot see blue',
};
