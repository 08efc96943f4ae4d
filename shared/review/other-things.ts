/** Things beside the play of a drill: its problems and progressions, what stands in the file around it, sessions. */
import type { Expression, Let, SessionNode, Span } from '../../grammar/tree.ts';
import type { Analysis, DrillAnalysis } from '../analyse.ts';
import type { Drill } from '../model/drill.ts';
import { within } from '../model/span.ts';
import { plainWords } from '../scene/words.ts';
import { unitNamed } from '../units.ts';
import { textOf, tokens } from './ground.ts';
import type { SessionAnalysis } from '../session/analysis.ts';
import { kitText } from '../session/words.ts';
import { count, present, secondsOf, thing, type Thing, type Valued, words, wordsIn } from './thing.ts';

/** Those inside a span and outside of others. */
export function problemsIn({ problems, text }: Analysis, span: Span, without: readonly Span[]): Thing[] {
  const own = problems.filter((problem) => within(span, problem.span) && !without.some((other) => within(other, problem.span)));
  return own.map(({ code, severity, message, span: at }, index) => thing({
    kind: 'problem', id: `${index + 1}`, title: (misread.has(code) ? message.replaceAll(/`([^`]*)`/g, '“$1”') : plainWords(message)).replace(/\.$/, ''), span: at, traits: [code, ...tokens(wordsIn(text, at)), ...tokens(message)],
    values: { code: words(code), severity: words(severity), message: words(plainWords(message)) },
  }));
}

/** Their words are about the text itself, so what is quoted of it has to be told apart. */
const misread: ReadonlySet<string> = new Set(['syntax', 'unknown-name', 'unknown-unit']);

export function progressionsOf({ drill }: DrillAnalysis): Thing[] {
  return drill.changes.map(({ kind, lever, name, span }) => thing({
    kind: 'progression', id: name, title: `${kind === 'progress' ? 'progression' : 'regression'} “${name}”`, span, traits: [kind, ...tokens(name)],
    values: { name: words(name), kind: words(kind), lever: words(lever) },
  }));
}

/** What the file says outside of drills and sessions. */
export function fileThings(analysis: Analysis): Thing[] {
  const { file, text } = analysis;
  const bodies = file.items.filter((item) => item.kind === 'drill' || item.kind === 'session').map(({ span }) => span);
  return [
    ...file.items.flatMap((item): Thing[] => {
      if (item.kind === 'let') return [letOf(item, text)];
      if (item.kind !== 'import') return [];
      const path = item.path.text;
      return [thing({ kind: 'import', id: path, title: `“${path}”`, span: item.span, values: { path: words(path) } })];
    }),
    ...problemsIn(analysis, { from: 0, to: text.length }, bodies),
  ];
}

function letOf({ name, value, span }: Let, text: string): Thing {
  const said = wordsIn(text, value.span);
  return thing({ kind: 'let', id: name.text, title: name.text, span, words: said, values: { as: words(said) } });
}

export function sessionThings(node: SessionNode, analysis: Analysis): Thing[] {
  const { text } = analysis;
  const said = (span: Span) => words(wordsIn(text, span));
  const header: Record<string, ReturnType<typeof words> | null> = { name: words(node.name.text) };
  const things: Thing[] = [];
  const worked = analysis.sessions.find(({ session }) => session.span.from === node.span.from);
  for (const line of node.body.lines) {
    switch (line.kind) {
      case 'part': {
        const length = timeOf(line.length);
        things.push(thing({
          kind: 'part', id: line.name.text, title: `“${line.name.text}”`, span: line.span, traits: tokens(`${line.name.text} ${line.of?.text ?? ''}`),
          values: present({
            name: words(line.name.text), lasts: length === null ? said(line.length.span) : secondsOf(length), groups: line.groups.length === 0 ? null : words(line.groups.map(({ span }) => wordsIn(text, span)).join(', ')),
            drill: line.of && words(line.of.text), progression: line.change && words(line.change.text), resting: line.resting && said(line.resting.span), sizes: worked ? sizesOf(worked, line.span) : null,
            at: line.at.length === 0 ? null : words(line.at.map(({ span }) => wordsIn(text, span)).join(', ')), number: count(things.length + 1),
          }),
        }));
        break;
      }
      case 'pause': {
        const length = timeOf(line.length);
        const name = line.name?.text ?? 'pause';
        things.push(thing({
          kind: 'part', id: name, title: line.name ? `the pause “${name}”` : 'the pause', span: line.span, traits: ['pause', ...tokens(name)],
          values: { lasts: length === null ? said(line.length.span) : secondsOf(length), number: count(things.length + 1) },
        }));
        break;
      }
      case 'length': header['time'] = said(line.length.span); break;
      case 'pitch': header['pitch'] = said(line.size.span); break;
      case 'hands': header['hands'] = said(line.count.span); break;
      case 'without': case 'joins':
        things.push(thing({ kind: 'note', id: `${things.length + 1}`, title: wordsIn(text, line.span), span: line.span, traits: tokens(wordsIn(text, line.span)), values: { text: said(line.span) } }));
        break;
      case 'kit':
        header['kit'] = words(line.items.map(({ count: many, what, colour }) => [wordsIn(text, many.span), what.text, colour?.text ?? ''].join(' ').trim()).join(', '));
        break;
      case 'let': things.push(letOf(line, text)); break;
      case 'age': case 'units': case 'ground': header[line.kind] = words(line.value.text); break;
      case 'players': header['players'] = said(line.count.span); break;
      case 'theme': header['theme'] = words(line.text.text); break;
      case 'note': case 'question': case 'safety':
        things.push(textOf(line.kind, things.length, line.text.text, line.span));
        break;
    }
  }
  const changing = worked?.changeovers.reduce((sum, { seconds }) => sum + seconds, 0);
  if (changing !== undefined) header['changeovers'] = secondsOf(Math.round(changing));
  return [
    thing({ kind: 'drill', id: '', title: node.name.text, span: node.name, values: present(header) }), ...things, ...kitThings(worked), ...problemsIn(analysis, node.span, []),
  ];
}

/** How large the groups of a part come out. */
function sizesOf({ timetable }: SessionAnalysis, span: Span): Valued | null {
  const slot = timetable.find((each) => each.kind === 'part' && each.part.span.from === span.from);
  return slot?.kind === 'part' && slot.groups.length > 0 ? words(slot.groups.map(({ members }) => members.length).join(' + ')) : null;
}

/** What is needed on the evening. */
function kitThings(worked: SessionAnalysis | undefined): Thing[] {
  return (worked?.kit ?? []).map(({ kind, colour, needed }) => {
    const what = kitText(kind, 2, colour).slice(2);
    return thing({ kind: 'kit', id: what, title: what, span: null, values: { count: count(needed) } });
  });
}

/** Seconds, of a number written out; null for what has to be worked out. */
function timeOf(expression: Expression): number | null {
  if (expression.kind !== 'number' || expression.unit === null) return null;
  const unit = unitNamed(expression.unit.text);
  return unit?.kind === 'time' ? expression.value * unit.factor : null;
}

/** Where the drill's own lines are not: in its progressions. */
export function changeSpans({ changes }: Drill): Span[] {
  return changes.map(({ span }) => span);
}
