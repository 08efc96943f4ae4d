/** A file as lines that `git diff` can compare: a thing a line, in a steady order, with its numbers. */
import { analyseDrill, type Analysis, type DrillAnalysis } from '../analyse.ts';
import { groundOf } from './ground.ts';
import { sessionThings } from './other-things.ts';
import { numbersOf, playOf } from './play.ts';
import { place, said, type Speech } from './say.ts';
import type { Thing } from './thing.ts';

export function readable(analysis: Analysis): string {
  const { text, drills, file, problems } = analysis;
  const sessions = file.items.filter((item) => item.kind === 'session');
  return [
    ...drills.flatMap((each) => drillLines(each, text)),
    ...sessions.flatMap((node) => [`session “${node.name.text}”`, ...sessionThings(node, analysis).flatMap((thing) => (thing.kind === 'problem' ? [] : lineOf(thing, { units: 'm' })))]),
    ...problems.map(({ code, severity, message }) => `${severity} ${code}: ${message.replace(/\s+/g, ' ')}`),
  ].map((line) => `${line}\n`).join('');
}

function drillLines(each: DrillAnalysis, text: string): string[] {
  const lines = (analysis: DrillAnalysis, things: readonly Thing[]) => things.flatMap((thing) => lineOf(thing, analysis.drill));
  const written = lines(each, [...groundOf(each, text), ...playOf(each, text)]);
  return [
    `drill “${each.drill.name}”`, ...written, ...lines(each, numbersOf(each)),
    ...each.drill.changes.flatMap(({ kind, name, drill }) => {
      const changed = analyseDrill(drill);
      const own = lines(changed, [...groundOf(changed, text), ...playOf(changed, text)]).filter((line) => !written.includes(line));
      return [`  ${kind === 'progress' ? 'progression' : 'regression'} “${name}”`, ...own.map((line) => `  ${line}`)];
    }),
  ];
}

/** Beats go without their numbers, and passes without the time they start: one beat more is then one line more. */
function lineOf({ kind, title, values, words, at }: Thing, speech: Speech): string[] {
  const told = (properties: readonly string[], labels: Readonly<Record<string, string>> = {}) => properties
    .flatMap((property) => (values[property] && values[property].value !== '' ? [`${labels[property] ?? property} ${said(values[property].value, values[property].unit, speech)}`.trim()] : []))
    .join(', ');
  const rest = (without: readonly string[], labels?: Readonly<Record<string, string>>) => told(Object.keys(values).filter((property) => !without.includes(property)), labels);
  const line = (...parts: readonly string[]) => [`  ${parts.filter((part) => part !== '').join(', ')}`];
  switch (kind) {
    case 'action': return [];
    case 'beat': return [`    ${words}`];
    case 'drill': return line(rest(['name', 'years'], { passPace: 'passes arrive at', runPace: 'runs reach' }));
    case 'let': return [`  ${title} = ${words}`];
    case 'area': return line(`area ${told(['width', 'length', 'space', 'marked'], { width: 'wide', length: 'long', marked: 'marked every' })}`);
    case 'zone':
    case 'station':
    case 'player':
    case 'furniture':
    case 'balls': {
      const name = kind === 'furniture' || kind === 'balls' ? title.replace(/^the /, '').split(' at ')[0] : `${kind} ${title}`;
      return line(`${name} at ${at ? place(at, speech) : 'no place'}`, rest(['across', 'up', 'what', 'name', 'count', ...(values['as']?.value === 'player' ? ['as'] : [])], { team: 'of' }));
    }
    case 'team': return line(`team ${title}`, rest(['kind'], { size: 'of', bib: 'bibs' }));
    case 'rule':
    case 'point':
    case 'question':
    case 'safety':
    case 'note': return [`  ${kind} ${values['corner'] ? `${values['corner'].value} ` : ''}${values['text']?.value ?? ''}`];
    case 'sequence': return line(title.replace(/^the /, ''), told(['after', 'mirrors']));
    case 'pass': return line(`ball from ${values['from']?.value} to ${values['to']?.value}`, rest(['from', 'to', 'start'], passNames));
    case 'repetition': return line(title, rest([], repetitionNames));
    case 'rotation': return line('rotation', told(['ways', 'order', 'closes'], { ways: '', order: 'home after', closes: 'closes:' }));
    case 'role': return line(`${title} in a repetition`, rest([], { distance: 'runs', working: 'works', waiting: 'waits' }));
    case 'kit': return [`  ${title} to carry out: ${values['count']?.value}`];
    case 'import':
    case 'part':
    case 'progression':
    case 'problem': return line(title, rest(['name', 'path', 'number']));
  }
}

const passNames = {
  flight: 'under way', launch: 'leaves at', arrival: 'arrives at', slack: 'in hand', rival: 'opponent', margin: 'comes after', openLanes: 'open lanes',
} as const;
const repetitionNames = {
  duration: 'takes', interval: 'a start every', spaceEach: 'space a player', spaceOutfield: 'without goalkeepers',
  touchesEach: 'touches a minute', metresEach: 'runs a minute',
} as const;
