import { expect, test } from 'vitest';
import { alone, analyse } from '../../shared/analyse.ts';
import { applyEdits } from '../../shared/checks/edits.ts';
import { withFixes } from '../../shared/checks/cure.ts';

/** The fixes offered for the one problem of this code, and what is left after each of them. */
function offered(code: string, text: string): { readonly title: string; readonly line: string; readonly left: string[] }[] {
  const problem = withFixes(analyse(text), alone).find((each) => each.code === code)!;
  return problem.fixes.map(({ title, edits }) => {
    const mended = applyEdits(text, edits);
    const line = mended.split('\n').find((each) => !text.split('\n').includes(each)) ?? '';
    return { title, line: line.trim(), left: analyse(mended).problems.map((each) => each.code) };
  });
}

const late = `drill "Show" {
  age U12
  area 24 x 16
  let far = 4
  station Base at (2, 8)
  station Wall at (14, 8)
  station Side at (8, 2)
  ball at Base
  sequence {
    Base passes to Side
    Side passes to Base
    Base passes to Wall while Wall runs to far above Wall then runs to 1 above Wall
    Wall passes to Base
  }
}
`;

const open = `drill "Triangle" {
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
  rotate Base -> Left -> Right
}
`;

test('a late receiver may set off a beat earlier, be waited for, or have less far to go', () => {
  expect(offered('late-receiver', late)).toEqual([
    { title: 'Let Wall set off one beat earlier', line: 'Side passes to Base while Wall runs to far above Wall then runs to 1 above Wall', left: [] },
    { title: 'Let Base wait 2.5 s first', line: 'Base waits 2.5 s while Wall runs to far above Wall then runs to 1 above Wall', left: [] },
    { title: 'Let far be 1.5 instead of 4', line: 'let far = 1.5', left: [] },
  ]);
});

test('an open rotation gets its missing arrow', () => {
  expect(offered('rotation-open', open)).toEqual([{ title: 'Add the missing arrow Right -> Base', line: 'rotate Base -> Left -> Right -> Base', left: [] }]);
});

test('nothing is offered that would bring a new problem', () => {
  const text = open.replace('(12, 12)', '(12, 15)');
  for (const problem of withFixes(analyse(text), alone)) {
    for (const { edits } of problem.fixes) {
      const before = analyse(text).problems.map((each) => each.code);
      const after = analyse(applyEdits(text, edits)).problems.map((each) => each.code);
      expect(after.filter((code) => !before.includes(code))).toEqual([]);
    }
  }
});
