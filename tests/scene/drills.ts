import { readFileSync } from 'node:fs';
import { analyse, type DrillAnalysis } from '../../shared/analyse.ts';
import type { Sequence } from '../../shared/model/drill.ts';

/** Drills that between them use everything that is drawn; the later ones are crowded. */
export const drills: Readonly<Record<string, string>> = {
  kite: readFileSync(new URL('../support/kite.drill', import.meta.url), 'utf8'),
  ...Object.fromEntries(['diamond', 'in-a-hurry', 'two-balls', 'two-lanes', 'rondo', 'three-zones', 'switch-to-the-corners', 'crowded-game'].map((name) => [
    name, readFileSync(new URL(`../../shared/examples/${name}.drill`, import.meta.url), 'utf8'),
  ])),
  square: `drill "Wall passes in a square" {
  age U11
  players 12
  area 12 x 12
  cone A at area.bottomLeft
  cone B at area.bottomRight
  cone C at area.topRight
  cone D at area.topLeft
  station One at 1 above A holds 4
  station Two at 1 left of B holds 2
  station Three at 1 below C holds 2
  station Four at 1 right of D holds 2
  station Middle at area.centre
  ball at One
  balls 6 at Four
  sequence {
    One passes to Middle while Two shows to 2 above B
    Middle sets to One
    One passes to Middle while Two drops to B
    Middle passes to Two while One follows
    Two passes to Middle, firm while Three shows to 3 left of C
    Middle passes to Three
    Three dribbles to Four
    Three passes to Middle
    Middle passes to Four
    Four passes to One, lofted
  }
}`,
  game: `drill "Four goals" {
  age U13
  players 13
  units yd
  area 32 x 22
  split area by width into West 10, Middle 12, East 10
  zone Ring circle 3 at area.centre
  goal North 5 x 2 at area.top facing down
  minigoal SW at 5 right of area.bottomLeft facing up
  minigoal SE at 5 left of area.bottomRight facing up
  gate G1 at (3, 10) width 2 facing right
  mannequin M1 at (20, 15)
  hurdle H1 at (8, 3)
  ladder L1 at (26, 4)
  coach at (33, 2)
  balls 8 at (33, 5)
  team Red bib red of 5
  team Yellow bib yellow of 5
  floaters Joker bib blue of 2
  player Red1 of Red at (5, 5)
  player Red2 of Red at (15, 4)
  player Red3 of Red at (25, 6)
  player Red4 of Red at (9, 12)
  player Red5 of Red at (22, 12)
  player Yellow1 of Yellow at (6, 8)
  player Yellow2 of Yellow at (15, 8)
  player Yellow3 of Yellow at (24, 9)
  player Yellow4 of Yellow at (10, 15)
  keeper Yellow5 of Yellow at (15, 19)
  player Joker1 of Joker at (1, 14)
  player Joker2 of Joker at (29, 14)
  ball at Red1
  order "Switch"
  phase "Switch" {
    Red1 passes to Red2 while Yellow2 presses Red2
    Red2 passes to Red3 while Yellow3 presses Red3, Red5 overlaps Red3 to (27, 14)
    Red3 passes to Joker2
    Joker2 crosses to Red4 while Red4 runs to (15, 16) at sprint
    Red4 shoots at North
  }
}`,
  crowd: `drill "Nineteen and forty" {
  area 30 x 24
${Array.from({ length: 19 }, (_, index) => `  station S${index + 1} at (${3 + (index % 5) * 6}, ${2 + Math.floor(index / 5) * 6})`).join('\n')}
  ball at S1
  sequence {
${Array.from({ length: 40 }, (_, index) => `    S${((index * 7) % 19) + 1} passes to S${(((index + 1) * 7) % 19) + 1}`).join('\n')}
  }
}`,
};

export const drillNames = Object.keys(drills);

/** The sequences that a picture shows without being asked: of a game its first phase. */
export function shownIn({ drill, phases }: DrillAnalysis): readonly Sequence[] {
  return phases[0] ? [phases[0].phase] : drill.sequences;
}

export function analysed(text: string): DrillAnalysis {
  return analyse(text).drills[0] as DrillAnalysis;
}
