import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checks } from '../../shared/checks/index.ts';
import { readJson } from '../../shared/settings/json.ts';
import { noSettings, readSettings, settingsSchema } from '../../shared/settings/settings.ts';
import { hostile } from '../support/hostile.ts';
import { marked } from '../support/marked.ts';

const fits = new Ajv({ allErrors: true }).compile(settingsSchema());

describe('good files', () => {
  test.each<[text: string, found: object]>([
    ['{}', {}],
    ['{ "$schema": "./halfturn.schema.json" }', {}],
    ['{ "severity": {} }', {}],
    ['{ "severity": { "long-wait": "off", "syntax": "error" } }', { levels: { 'long-wait': 'off', syntax: 'error' } }],
    ['{ "convention": "dashed pass" }', { convention: 'dashed pass' }],
    ['\ufeff{\r\n"theme":"print",\r\n"guide":"https://example.org/{code}"}', { theme: 'print', guide: 'https://example.org/{code}' }],
    ['{ "guide": "" }', {}],
    ['{ "\\u0074heme": "dark" }', { theme: 'dark' }],
  ])('%s', (text, found) => {
    expect(readSettings(text)).toEqual({ settings: { ...noSettings, ...found }, misfits: [] });
    expect(fits(JSON.parse(text.replace('\ufeff', '')))).toBe(true);
  });
});

describe('what is wrong is told at its place, and the rest holds', () => {
  test.each<[text: string, messages: string[]]>([
    ['{ ⟦"severty"⟧: {}, "theme": "dark" }', ['There is no setting `severty`; did you mean `severity`?']],
    ['{ ⟦"pitch"⟧: 3, "theme": "dark" }', ['There is no setting `pitch`.']],
    ['{ "severity": { ⟦"long-wiat"⟧: "off" }, "theme": "dark" }', ['There is no problem with the code `long-wiat`; did you mean `long-wait`?']],
    ['{ "severity": { ⟦"rain"⟧: "off" }, "theme": "dark" }', ['There is no problem with the code `rain`.']],
    ['{ "severity": { "long-wait": ⟦"warn"⟧ }, "theme": "dark" }', ['`long-wait` takes "error", "warning", "info", "hint" or "off".']],
    ['{ "severity": { "long-wait": ⟦"Warnin"⟧ }, "theme": "dark" }', ['`long-wait` takes "error", "warning", "info", "hint" or "off". Did you mean "warning"?']],
    ['{ "severity": { "long-wait": ⟦false⟧ }, "theme": "dark" }', ['`long-wait` takes "error", "warning", "info", "hint" or "off".']],
    ['{ "severity": ⟦"off"⟧, "theme": "dark" }', ['`severity` should stand in braces: { "name": "value" }.']],
    ['{ "convention": ⟦"dashed-pass"⟧, "theme": "dark" }', ['`convention` takes "solid pass" or "dashed pass". Did you mean "dashed pass"?']],
    ['{ "guide": ⟦[1, {"a": 2}]⟧, "theme": "dark" }', ['`guide` takes a text in double quotes.']],
    ['{ ⟦"severty"⟧: {}, "guide": ⟦3⟧, "theme": "dark" }', ['There is no setting `severty`; did you mean `severity`?', '`guide` takes a text in double quotes.']],
  ])('%s', (text, messages) => {
    const { plain, spans } = marked(text);
    expect(readSettings(plain)).toEqual({
      settings: { ...noSettings, theme: 'dark' },
      misfits: messages.map((message, index) => ({ span: spans[index]!, message })),
    });
    expect(fits(JSON.parse(plain))).toBe(false);
  });
});

describe('a file that is not JSON', () => {
  test.each<[text: string, message: string]>([
    ['⟦⟧', 'The file ends too soon.'],
    ['{ "theme": "dark"⟦⟧', '`,` or `}` should stand here.'],
    ['{ "theme" ⟦"dark"⟧ }', '`:` should stand here.'],
    ['{ "theme": "dark", ⟦}⟧', '`}` cannot stand here: words stand in double quotes.'],
    ['{ ⟦theme⟧: "dark" }', '`theme` cannot stand here: words stand in double quotes.'],
    ['{ ⟦3⟧: "dark" }', 'A name in double quotes should stand here.'],
    ['{ "theme": ⟦dark⟧ }', '`dark` cannot stand here: words stand in double quotes.'],
    ['{} ⟦{⟧}', 'The file should end here.'],
    ['⟦//⟧ dark\n{}', '`//` cannot stand here: words stand in double quotes.'],
    [`${'['.repeat(100)}⟦[⟧`, 'Braces are nested too deep here.'],
  ])('%s', (text, message) => {
    const { plain, spans } = marked(text);
    expect(readSettings(plain)).toEqual({ settings: noSettings, misfits: [{ span: spans[0], message }] });
  });
});

test('JSON is read as JSON.parse reads it', () => {
  const plain = (json: ReturnType<typeof readJson>): unknown => {
    if ('message' in json) throw new SyntaxError(json.message);
    if (json.kind === 'object') return Object.fromEntries(json.members.map(({ name, value }) => [name, plain(value)]));
    return json.kind === 'array' ? json.items.map(plain) : json.value;
  };
  const attempt = (work: () => unknown): unknown => {
    try {
      return { value: work() };
    } catch {
      return 'unreadable';
    }
  };
  fc.assert(fc.property(fc.json({ maxDepth: 4 }), fc.nat(), fc.constantFrom('', '"', '{', ']', ':', 'x', '1'), (text, at, added) => {
    const cut = at % (text.length + 1);
    const spoilt = text.slice(0, cut) + added + text.slice(cut + (at % 2));
    expect(attempt(() => plain(readJson(spoilt)))).toEqual(attempt(() => JSON.parse(spoilt)));
  }), { numRuns: 2000 });
});

test('any text gives settings', () => {
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: fc.constantFrom(...'{}[]",:\\ax1 \n') }), fc.constantFrom(...hostile.map(({ text }) => text()))), (text) => {
    const { misfits } = readSettings(text);
    for (const { span } of misfits) expect(0 <= span.from && span.from <= span.to && span.to <= text.length).toBe(true);
  }));
});

test('the schema knows every code', () => {
  for (const { code } of checks) expect([code, fits({ severity: { [code]: 'off' } })]).toEqual([code, true]);
});
