import type { Span } from '../../grammar/tree.ts';
import type { Drill } from '../model/drill.ts';
import { heading, headingFor } from '../session/guidance.ts';
import { problem, type Check } from './check.ts';
import { partsOf } from './sessions.ts';

/** Words of a drill that is about heading; `head up` is not. */
const words = /\bhead(er|ers|ing|ed)\b/i;

export const check: Check = {
  code: 'heading-guidance',
  group: 'care',
  severity: 'info',
  title: 'Heading at this age',
  why: 'Associations limit heading in training for young players. Told of is a drill whose words speak of heading, and one with crosses through the air, for players of up to 18 years; a `safety` line that speaks of heading says that it has been thought of. The guidance changes and differs between countries: that of your own association comes first.',
  source: heading.source,
  bad: [
    `drill "Finish" {
  age U11
  players 2
  area 40 x 30
  station Wing at (36, 20)
  station Top at (20, 20)
  ball at Wing
  sequence {
    Wing ⟦crosses to⟧ Top
    Top passes to Wing, soft
  }
}
`,
  ],
  good: [
    `drill "Finish" {
  age U11
  players 2
  area 40 x 30
  station Wing at (36, 20)
  station Top at (20, 20)
  ball at Wing
  safety "No heading: take it down with the foot or the chest"
  sequence {
    Wing crosses to Top
    Top passes to Wing, soft
  }
}
`,
  ],
  find: ({ drill }) => {
    const span = headed(drill);
    const guidance = drill.age.span && headingFor(drill.age.value);
    return span && guidance ? [told(span, `\`${drill.name}\``, drill.ageLabel, guidance)] : [];
  },
  findInSession: (analysis) => {
    const { age, ageLabel, safety } = analysis.session;
    const guidance = age.span && headingFor(age.value);
    if (!guidance || safety.some((line) => /head/i.test(line))) return [];
    // A drill of this file with an age of its own has been told already.
    const found = partsOf(analysis).find(({ drill, file }) => drill && headed(drill.drill) && (file !== null || drill.drill.age.span === null));
    return found ? [told(found.part.nameSpan, `"${found.part.name}"`, ageLabel, guidance)] : [];
  },
};

function told(span: Span, what: string, age: string | null, guidance: string): ReturnType<typeof problem> {
  return problem(check, span, `${what} has balls to head; for ${age} the guidance is ${guidance}.`, {
    help: `Play it along the ground, let it be taken with the foot or the chest, or say in a \`safety\` line what you do. This is guidance (${heading.source}); local rules come first.`,
  });
}

/** Where it speaks of heading: the first cross through the air, or its name. */
function headed(drill: Drill): Span | null {
  if (drill.safety.some((line) => /head/i.test(line))) return null;
  const actions = drill.sequences.flatMap(({ beats }) => beats.flatMap(({ lead, meanwhile }) => [lead, ...meanwhile].flatMap(({ chain }) => chain)));
  const cross = actions.find(({ verb, weight }) => verb === 'crosses to' && weight !== 'driven');
  const texts = [drill.name, drill.theme ?? '', ...drill.notes, ...drill.tags, ...drill.points.map(({ text }) => text), ...drill.rules.map((rule) => (rule.kind === 'text' ? rule.text : ''))];
  return cross?.verbSpan ?? (texts.some((text) => words.test(text)) ? drill.nameSpan : null);
}
