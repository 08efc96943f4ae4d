import { expect, test } from 'vitest';
import { fromJson } from '../../grammar/json/from-json.ts';

const file = (...items: readonly unknown[]): unknown => ({ kind: 'file', items });
const drill = (...lines: readonly unknown[]): unknown => file({ kind: 'drill', name: 'd', body: { lines } });
const beat = (action: unknown): unknown => drill({ kind: 'sequence', body: { lines: [{ kind: 'beat', lead: { subject: 'A', chain: [action] } }] } });
const line = '/items/0/body/lines/0';
const action = `${line}/body/lines/0/lead/chain/0`;
const nested = (depth: number): unknown => (depth === 0 ? [] : [nested(depth - 1)]);
const blocks = (depth: number): unknown => ({ kind: 'progress', lever: 'task', name: 'x', body: { lines: depth === 0 ? [] : [blocks(depth - 1)] } });
const circle: { kind: string; items: unknown[] } = { kind: 'file', items: [] };
circle.items.push(circle);

/** What is wrong, and what is said of it first. */
const faults: readonly (readonly [what: string, json: unknown, path: string, message: string])[] = [
  ['no object', 7, '', 'must be an object with `kind`, not `7`'],
  ['null', null, '', 'must be an object with `kind`, not `null`'],
  ['a list', [], '', 'must be an object with `kind`, not a list'],
  ['no kind', { items: [] }, '', 'needs `kind`: `file`'],
  ['no items', { kind: 'file' }, '', 'needs `items`'],
  ['another kind of file', { kind: 'drill', items: [] }, '/kind', 'must be `file`, not `"drill"`'],
  ['an unknown statement', drill({ kind: 'stattion' }), `${line}/kind`, 'must be `"station"`, perhaps, not `"stattion"`'],
  ['a statement in the wrong place', file({ kind: 'station', name: 'A', at: 'B' }), '/items/0/kind', 'must be `drill`, `session`, `import` or `let`, not `"station"`'],
  ['a width that is a list', drill({ kind: 'area', size: { width: [], length: 2 } }), `${line}/size/width`, 'must be a number or a value in quotes such as `"3 yd"` or `"side + 2"`, not a list'],
  ['a width that is no value', drill({ kind: 'area', size: { width: '3 +', length: 2 } }), `${line}/size/width`, 'must be a value, not `"3 +"`: After `+` comes a number, such as `2`.'],
  ['a number without end', drill({ kind: 'players', count: Infinity }), `${line}/count`, 'must be a number or a value in quotes such as `"side + 2"`, not `Infinity`'],
  ['no number', drill({ kind: 'players', count: NaN }), `${line}/count`, 'must be a number or a value in quotes such as `"side + 2"`, not `NaN`'],
  ['a count with a unit', drill({ kind: 'players', count: '3 m' }), `${line}/count`, 'must be a count, not `"3 m"`: `m` cannot stand here. Before it the line is complete.'],
  ['a point of three', drill({ kind: 'ball', at: [1, 2, 3] }), `${line}/at`, 'must be a place such as `[2, 13]` or `"2 above Base"`, not a list'],
  ['a point without numbers', drill({ kind: 'ball', at: [1, true] }), `${line}/at`, 'must be a place such as `[2, 13]`: each of the two must be a number or a value in quotes such as `"3 yd"`, not `true`'],
  ['more than a place', drill({ kind: 'ball', at: 'A\nball at B' }), `${line}/at`, 'must be a place on one line and nothing else'],
  ['a place with a comment', drill({ kind: 'ball', at: 'A // b' }), `${line}/at`, 'must be a place on one line and nothing else'],
  ['a place that opens a block', drill({ kind: 'ball', at: 'A {' }), `${line}/at`, 'must be a place, not `"A {"`: `{` cannot stand here. Before it the line is complete.'],
  ['a word of the language as a name', drill({ kind: 'pole', name: 'to', at: 'A' }), `${line}/name`, 'must be a name that you choose, such as `"Base"`: `"to"` is a word of the language; with a capital letter it can be a name'],
  ['a name of two words', drill({ kind: 'pole', name: 'far post', at: 'A' }), `${line}/name`, 'must be a name that you choose, such as `"Base"`, one word of letters, digits and `_` that begins with a letter, not `"far post"`'],
  ['a text on two lines', drill({ kind: 'note', text: 'a\nb' }), `${line}/text`, 'must be a text on one line'],
  ['a text of quotation marks', drill({ kind: 'note', text: '"”»’' }), `${line}/text`, 'must be a text that does not hold all kinds of quotation marks, for it is written between some'],
  ['a missing property', drill({ kind: 'station', name: 'A' }), line, 'needs `at`'],
  ['a misspelt property', drill({ kind: 'station', name: 'A', at: 'B', hold: 2 }), `${line}/hold`, 'is not a property of this: did you mean `holds`?'],
  ['a property that does not belong', drill({ kind: 'station', name: 'A', at: 'B', colour: 'red' }), `${line}/colour`, 'is not a property of this: it has `kind`, `name`, `at`, `holds`, `of` and `margin`'],
  ['nothing said as null', drill({ kind: 'station', name: 'A', at: 'B', holds: null }), `${line}/holds`, 'must be a number or a value in quotes such as `"side + 2"`, not `null`'],
  ['an unknown rule', drill({ kind: 'rule', rule: 'at mosst', zone: 'Z', count: 2, who: 'W' }), `${line}/rule`, 'must be `"at most"`, perhaps, not `"at mosst"`'],
  ['a rule of no kind', drill({ kind: 'rule', text: 'a' }), line, 'needs `rule`: `text`, `touches`, `at most`, `at least`, `exactly` or `no`'],
  ['a rotation of nothing', drill({ kind: 'rotate' }), line, 'needs `chains`'],
  ['a rotation that does not follow', drill({ kind: 'rotate', follow: false }), `${line}/follow`, 'must be `true`'],
  ['a score of no kind', drill({ kind: 'score', points: 1, for: {} }), `${line}/for`, 'needs `kind`: `pass`, `dribble`, `win`, `goal` or `passes`'],
  ['a zone of another shape', drill({ kind: 'zone', name: 'Z', shape: { kind: 'box', radius: 2, at: 'A' } }), `${line}/shape`, 'needs `size`'],
  ['an unknown verb', beat({ verb: 'passs to', target: 'B' }), `${action}/verb`, 'must be `"passes to"`, perhaps, not `"passs to"`'],
  ['a verb that needs a target', beat({ verb: 'passes to' }), action, 'needs `target`'],
  ['a verb that takes none', beat({ verb: 'turns', target: 'B' }), `${action}/target`, 'is not a property of this: it has `verb` and `modifiers`'],
  ['an unknown modifier', beat({ verb: 'turns', modifiers: [{ kind: 'sof' }] }), `${action}/modifiers/0/kind`, 'must be `"soft"`, perhaps, not `"sof"`'],
  ['an unknown pace', beat({ verb: 'turns', modifiers: [{ kind: 'gait', gait: 'fast' }] }), `${action}/modifiers/0/gait`, 'must be `walk`, `jog`, `run` or `sprint`, not `"fast"`'],
  ['a chain without an action', drill({ kind: 'sequence', body: { lines: [{ kind: 'beat', lead: { subject: 'A', chain: [] } }] } }), `${line}/body/lines/0/lead/chain`, 'must be a list of one or more'],
  ['a rotation of one', drill({ kind: 'rotate', chains: [['A']] }), `${line}/chains/0`, 'must be a list of two or more'],
  ['a comment on two lines', drill({ kind: 'ball', at: 'A', margin: { beside: 'a\nb' } }), `${line}/margin/beside`, 'must be a comment: a text on one line'],
  ['a key that is a prototype', JSON.parse('{"kind":"file","items":[],"__proto__":{"x":1}}'), '/__proto__', 'is not a property of this: it has `kind`, `items` and `end`'],
  ['a kind that is a prototype', drill({ kind: '__proto__' }), `${line}/kind`, expect.stringMatching(/^must be one of the \d+ words that the schema lists, such as `let`, `age`, `players`, not `"__proto__"`$/) as string],
  ['a key with signs', { kind: 'file', items: [], 'a/b~c': 1 }, '/a~1b~0c', 'is not a property of this: it has `kind`, `items` and `end`'],
  ['lists in lists', nested(1000), '', 'must be an object with `kind`, not a list'],
  ['a file in itself', circle, '/items/0/kind', 'must be `drill`, `session`, `import` or `let`, not `"file"`'],
  ['blocks in blocks', drill(blocks(100)), `/items/0${'/body/lines/0'.repeat(64)}/body`, 'is inside 64 blocks already: no drill needs so many'],
  ['brackets as deep as they go, in a point', drill({ kind: 'ball', at: [`${'('.repeat(64)}1${')'.repeat(64)}`, 1] }), line, 'cannot be written: This is more than 64 deep: give a part of it a name with `let`, a pole or a station.'],
];

test.each(faults)('%s', (_, json, path, message) => {
  expect(fromJson(json)).toMatchObject({ file: null, faults: expect.arrayContaining([{ path, message }]) as unknown });
  expect(fromJson(json).faults[0]?.path).toBe(path);
});

test('of many faults the first hundred are told', () => {
  expect(fromJson(file(...Array.from({ length: 100_000 }, () => 7))).faults).toHaveLength(100);
});

test('a hundred thousand lines are read', () => {
  expect(fromJson(drill(...Array.from({ length: 100_000 }, () => ({ kind: 'ball', at: [1, 2] })))).faults).toEqual([]);
});
