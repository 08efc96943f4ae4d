/** Compiled against the packed package, as a user's program would be. */
import { analyse, at, CannotBeWritten, check, drawHtml, drawSvg, drill, file, fromJson, measure, parse, print, toJson } from 'halfturn';
import type { Doing, DrillLines, JsonFile, Length, Measures, Player, Problem, Spot, Tree } from 'halfturn';

const corner: Spot = at(1, '2 yd');
const width: Length = 'side + 2';

function ground(lines: DrillLines): Player {
  lines.let('side', 10);
  lines.area(width, 12);
  const post: 'Post' = lines.pole('Post', corner);
  lines.cone(null, post);
  return lines.station('Base', corner, { holds: 2 });
}

const tree: Tree.File = drill('Typed', (lines) => {
  const base = ground(lines);
  const run: Doing = base.runsTo(at(3, 3)).gait('sprint').then.winsTheBallFrom('Post');
  lines.sequence([run, run.while(base.next.holds())]);
  // @ts-expect-error A verb that the language does not have.
  lines.sequence([base.flies()]);
});

export const problems: readonly Problem[] = check(tree);
export const numbers: readonly Measures[] = measure(print(tree));
export const json: JsonFile = { kind: 'file', items: [{ kind: 'drill', name: 'd', body: { lines: [{ kind: 'station', name: 'A', at: [1, 2], holds: '2', margin: { gap: true } }] } }] };
// @ts-expect-error A property that a station does not have.
export const wrong: JsonFile = { kind: 'file', items: [{ kind: 'drill', name: 'd', body: { lines: [{ kind: 'station', name: 'A', at: [1, 2], hold: 2 }] } }] };
export const back: Tree.File | null = fromJson(toJson(parse('').file)).file;
export const drawn: readonly (string | null)[] = [drawSvg(tree, { theme: 'print', at: 2 }), drawHtml(file((lines) => lines.import('a.drill')))];
export const refused: string = new CannotBeWritten('').message;
export const ends: readonly number[] = analyse(tree).drills.map(({ timeline }) => timeline.end);
