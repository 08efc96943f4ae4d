import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import type { Change, Fact, FactKind, Subject, Values } from '../../shared/review/comparison.ts';
import { apply, compare } from '../../shared/review/compare.ts';
import { hostile } from '../support/hostile.ts';

const examples = new URL('../../shared/examples/', import.meta.url);
/** Where names are met twice: bibs of two teams, parts of an evening, a player in one beat. */
const twice = `import "a.drill"
import "a.drill"
let long = 12
drill "Again" {
  area long x 12
  team Red bib red of 2
  team Blue bib red of 2
  player Red1 of Red at (2, 2)
  player Blue1 of Blue at (10, 10)
  ball at Red1
  cone at (1, 1)
  cone at (1, 1)
  note "Twice"
  note "Twice"
  phase "Round" {
    Red1 passes to Blue1 while Blue1 runs to (9, 9), Blue1 runs to (8, 8), Blue1 runs to (9, 9)
    Red1 passes to Blue1
  }
}
drill "Again" {
  area 9 x 9
}
session "Tuesday" {
  players 14
  part "Game" 15 min of "Again"
  pause 2 min
  part "Game" 15 min of "Again"
  pause 2 min
}
`;
const demo = [twice, ...readdirSync(examples).filter((name) => name.endsWith('.drill')).map((name) => readFileSync(new URL(name, examples), 'utf8'))];

/** What a coach does to a drill: another number, another name, a line out, twice, or elsewhere, a sequence or a phase out. */
const edit = fc.record({
  kind: fc.constantFrom('number', 'number', 'name', 'cut', 'double', 'move', 'word', 'block'),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  to: fc.double({ min: 0, max: 1, noNaN: true }),
  number: fc.integer({ min: 1, max: 24 }),
});
type Edit = typeof edit extends fc.Arbitrary<infer E> ? E : never;

function edited(text: string, { kind, at, to, number }: Edit): string {
  const lines = text.split('\n');
  const line = Math.min(lines.length - 1, Math.floor(at * lines.length));
  const other = Math.min(lines.length - 1, Math.floor(to * lines.length));
  const pick = <T>(all: readonly T[]): T | undefined => all[Math.min(all.length - 1, Math.floor(at * all.length))];
  switch (kind) {
    case 'number': {
      const found = pick([...text.matchAll(/(?<=[ (])\d+(\.\d+)?(?=[ ,)\n])/g)]);
      return found ? text.slice(0, found.index) + number + text.slice(found.index + found[0].length) : text;
    }
    case 'name': {
      const name = pick([...text.matchAll(/(?:station|player|mannequin|pole|let|zone) +(\w+)/g)])?.[1];
      return name === undefined ? text : text.replaceAll(new RegExp(`\\b${name}\\b`, 'g'), `Other${number}`);
    }
    case 'cut': return lines.filter((_, index) => index !== line).join('\n');
    case 'double': return [...lines.slice(0, line + 1), ...lines.slice(line)].join('\n');
    case 'move': {
      const rest = lines.filter((_, index) => index !== line);
      return [...rest.slice(0, other), lines[line], ...rest.slice(other)].join('\n');
    }
    case 'block': {
      const found = pick([...text.matchAll(/\n {2}(?:sequence|phase)[^{\n]*\{[^}]*\}|\n {2}sequence .* mirrors .*/g)]);
      return found ? text.slice(0, found.index) + text.slice(found.index + found[0].length) : text;
    }
    case 'word': return text.replace(pick(['passes to', 'runs to', 'shows to', 'first time', 'lofted', 'steady', 'match', 'facing']) ?? '', pick(['runs to', 'passes to', 'firm', 'walk', 'holds']) ?? '');
  }
}

const pairs = fc.record({ base: fc.constantFrom(...demo), edits: fc.array(edit, { minLength: 1, maxLength: 5 }), more: fc.array(edit, { maxLength: 3 }) })
  .map(({ base, edits, more }) => ({ before: more.reduce(edited, base), after: edits.reduce(edited, base) }));

const sorted = (values: Values) => Object.fromEntries(Object.entries(values).sort(([a], [b]) => (a < b ? -1 : 1)));

test('the facts, applied to the older values, give the newer ones', () => {
  fc.assert(fc.property(pairs, ({ before, after }) => {
    for (const { values, facts } of compare(analyse(before), analyse(after)).subjects) {
      expect(sorted(apply(values.before, facts))).toEqual(sorted(values.after));
      const keys = facts.flatMap(({ changes }) => changes.map(({ key }) => key));
      expect(keys.length).toBe(new Set(keys).size);
    }
  }), { numRuns: 300 });
});

test('the values are those that are measured', () => {
  const of = (values: Values, pattern: RegExp) => Object.entries(values).filter(([key]) => pattern.test(key)).map(([, value]) => value).sort();
  const digits = (numbers: readonly number[]) => numbers.map((value) => Math.round(value * 1e6) / 1e6 + 0).sort();
  fc.assert(fc.property(pairs, ({ before, after }) => {
    const analysis = analyse(after);
    for (const { kind, after: version, values } of compare(analyse(before), analysis).subjects) {
      if (kind !== 'drill' || !version) continue;
      const { measures, phases, drill } = analysis.drills[version.drill]!;
      const lengths = [...measures.passes.map(({ length }) => length), ...phases.flatMap(({ timeline }) => timeline.passes.map(({ fromAt, toAt }) => Math.hypot(fromAt.x - toAt.x, fromAt.y - toAt.y)))];
      expect(of(values.after, /^pass .*\/length$/)).toEqual(digits(lengths));
      expect(of(values.after, /^pass .*\/slack$/)).toEqual(digits([...measures.passes, ...phases.flatMap(({ timeline }) => timeline.passes)].flatMap(({ slack }) => slack ?? [])));
      expect(of(values.after, /^kit .*\/count$/)).toEqual(digits(measures.kit.map(({ count }) => count)));
      expect(of(values.after, /^station .*\/across$/)).toEqual(digits(drill.stations.map(({ at }) => at.x)));
      expect(values.after['repetition/interval'] ?? null).toEqual(measures.interval && digits([measures.interval.seconds])[0]);
      expect(values.after['rotation/order'] ?? null).toEqual(measures.rotation?.order ?? null);
      expect(of(values.after, /^problem .*\/code$/).length).toBe(analysis.problems.filter(({ span }) => drill.span.from <= span.from && span.to <= drill.span.to && !drill.changes.some((change) => change.span.from <= span.from && span.to <= change.span.to)).length);
    }
  }), { numRuns: 60 });
});

test('a file compared with itself says nothing', () => {
  fc.assert(fc.property(pairs, ({ after }) => {
    expect(compare(analyse(after), analyse(after)).subjects.flatMap(({ facts }) => facts)).toEqual([]);
  }), { numRuns: 60 });
});

/** The same fact seen from the other side, without its words and the keys that the older version names. */
function mirrored({ kind, about, changes, grade, spans, shared }: Fact): unknown {
  const kinds: Readonly<Record<FactKind, FactKind>> = { added: 'removed', removed: 'added', moved: 'moved', renamed: 'renamed', changed: 'changed' };
  return plain({ kind: kinds[kind], about: { kind: about.kind, before: about.after, after: about.before }, grade, shared, spans: { before: spans.after, after: spans.before },
    changes: changes.map((change): Change => ({ ...change, before: change.after, after: change.before, by: change.by === null ? null : -change.by + 0 })) });
}
function plain({ kind, about, changes, grade, spans, shared }: Pick<Fact, 'kind' | 'about' | 'changes' | 'grade' | 'spans' | 'shared'>): unknown {
  const told = changes.map(({ key, before, after, unit, by }) => JSON.stringify([key.replace(/^.*\//, ''), before, after, unit, by])).sort();
  return { kind, about, grade, spans, shared, told };
}
const inOrder = (all: readonly unknown[]) => all.map((each) => JSON.stringify(each)).sort();

test('the two ways round mirror each other', () => {
  fc.assert(fc.property(pairs, ({ before, after }) => {
    const [a, b] = [analyse(before), analyse(after)];
    const facts = (subjects: readonly Subject[]) => subjects.flatMap((subject) => subject.facts);
    expect(inOrder(facts(compare(b, a).subjects).map(plain))).toEqual(inOrder(facts(compare(a, b).subjects).map(mirrored)));
  }), { numRuns: 150 });
});

describe('nothing throws', () => {
  const texts = [{ what: 'nothing', text: () => '' }, { what: 'half a drill', text: () => 'drill "X" {\n sequence {' }, ...hostile];
  test.each(texts)('$what', ({ text }) => {
    const [broken, sound] = [analyse(text()), analyse(demo[0]!)];
    for (const [before, after] of [[broken, sound], [sound, broken], [broken, broken], [null, broken], [broken, null], [null, null]] as const) {
      const comparison = compare(before, after);
      expect(JSON.parse(JSON.stringify(comparison))).toEqual(comparison);
      for (const { sentence } of comparison.subjects.flatMap(({ facts }) => facts)) expect(sentence).not.toMatch(/undefined|NaN|\[object|null/);
    }
  });
});

test('sentences of any pair say what they mean', () => {
  fc.assert(fc.property(pairs, ({ before, after }) => {
    for (const { facts } of compare(analyse(before), analyse(after)).subjects) {
      for (const { sentence } of facts) expect(sentence).toMatch(/^\p{L}|^\d|^“/u);
      for (const { sentence } of facts) expect(sentence).not.toMatch(/undefined|NaN|\[object|Infinity|\bnull\b| {2}|: \.|: $/);
    }
  }), { numRuns: 150 });
});
