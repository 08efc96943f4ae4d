/** What happens while somebody types. */
import { afterEach, expect, test } from 'vitest';
import type { InitializeParams, PublishDiagnosticsParams } from 'vscode-languageserver/node';
import { square } from '../service/texts.ts';
import { full, minimal } from './clients.ts';
import { editor, type Editor } from './harness.ts';

const uri = 'file:///club/square.drill';
const sound = square().replace('  let wide = 4\n', '');
let e: Editor;
afterEach(() => e.close());

async function started(text = sound, init: Partial<InitializeParams> = minimal): Promise<void> {
  e = await editor(init);
  await e.open(uri, text);
  await e.settle();
}

const codes = (report: PublishDiagnosticsParams | undefined) => report?.diagnostics.map(({ code, range }) => `${code} ${range.start.line}:${range.start.character}`);
const insert = (line: number, character: number, text: string, gone = 0) => ({
  range: { start: { line, character }, end: { line, character: character + gone } }, text,
});

test('ten quick edits give one report, and it is right', async () => {
  await started();
  const before = e.reports.length;
  const word = 'cone at No';
  for (const [index, letter] of [...word].entries()) await e.change(uri, 2 + index, [insert(1, index, letter)]);
  await e.settle();
  expect(e.reports.length).toBe(before + 1);
  expect(e.reports.at(-1)!.version).toBe(1 + word.length);
  await e.change(uri, 99, [{ text: `${sound.replace('  age U13', '  cone at No\n  age U13')}` }]);
  await e.settle();
  expect(codes(e.reports.at(-1))).toEqual(['unknown-name 1:10']);
});

test('under continuous typing there is a report every 100 ms', async () => {
  await started();
  const before = e.reports.length;
  for (let version = 2; version < 302; version++) {
    await e.change(uri, version, [insert(0, 0, ' ')]);
    await e.ask('textDocument/foldingRange', { textDocument: { uri } });
    e.clock.pass(1);
  }
  await e.ask('textDocument/foldingRange', { textDocument: { uri } });
  expect(e.reports.length - before).toBe(3);
  await e.settle();
  expect(e.reports.at(-1)!.version).toBe(301);
});

test('edits that are not newer are left out', async () => {
  await started();
  await e.change(uri, 5, [insert(1, 0, '  cone at Five\n')]);
  await e.change(uri, 4, [insert(1, 0, '  cone at Four\n')]);
  await e.change(uri, 5, [insert(1, 0, '  cone at Five\n')]);
  await e.settle();
  expect(codes(e.reports.at(-1))).toEqual(['unknown-name 1:10']);
  expect(e.reports.at(-1)!.version).toBe(5);
});

test('several changes in one message are made one after the other', async () => {
  await started();
  await e.change(uri, 2, [insert(1, 0, '  cone at Here\n'), insert(1, 10, 'Nowhere', 4), insert(1, 17, '\r\n  pole at There')]);
  await e.settle();
  expect(codes(e.reports.at(-1))).toEqual(['unknown-name 1:10', 'unknown-name 2:10']);
});

test.each<[string, string, string]>([
  ['line ends of two characters', sound.replace('  age', '  cone at Nowhere\r\n  age').replaceAll(/\r?\n/g, '\r\n'), 'unknown-name 1:10'],
  ['characters of two units', sound.replace('  age', '  theme "🥅🥅"\n  cone at 🥅\n  age'), 'syntax 2:10'],
  ['a name in another script', sound.replace('  age', '  note "𝒻🥅" // 🥅\n  cone at 𝒻𝒻\n  age'), 'unknown-name 2:10'],
])('%s', async (_, text, code) => {
  await started(text);
  expect(codes(e.reports.at(-1))).toContain(code);
});

test('positions after characters of two units are edited where they are', async () => {
  await started(sound.replace('  age', '  note "🥅🥅" // Base\n  age'));
  await e.change(uri, 2, [insert(1, '  note "🥅'.length, 'x', 2)]);
  const found = await e.ask<{ children: unknown }[]>('textDocument/documentSymbol', { textDocument: { uri } });
  expect(found.length).toBeGreaterThan(0);
  await e.change(uri, 3, [insert(1, '  note "🥅x"'.length, '\n  cone at Nowhere')]);
  await e.settle();
  expect(codes(e.reports.at(-1))).toEqual(['unknown-name 2:10']);
});

test('a text that is closed has no problems; opened again, it is read anew', async () => {
  await started(sound.replace('  age', '  cone at Nowhere\n  age'));
  expect(e.reports.at(-1)!.diagnostics.length).toBe(1);
  await e.client.sendNotification('textDocument/didClose', { textDocument: { uri } });
  await e.settle();
  expect(e.reports.at(-1)).toEqual({ uri, diagnostics: [] });
  await e.change(uri, 9, [{ text: 'drill {' }]);
  await e.open(uri, sound, 1);
  await e.settle();
  expect(e.reports.at(-1)).toMatchObject({ uri, version: 1, diagnostics: [] });
});

test('an answer is for the text that was asked about', async () => {
  await started();
  const asked = e.ask<{ name: string }[]>('textDocument/documentSymbol', { textDocument: { uri } });
  await e.change(uri, 2, [{ text: 'drill "Other" {\n}\n' }]);
  expect((await asked)[0]!.name).toBe('Square');
  expect((await e.ask<{ name: string }[]>('textDocument/documentSymbol', { textDocument: { uri } }))[0]!.name).toBe('Other');
});

test('a client that asks for problems gets them of the newest text, and hears when nothing has changed', async () => {
  await started(sound, full);
  const pull = (previousResultId?: string) => e.ask<{ kind: string; resultId: string; items?: unknown[] }>(
    'textDocument/diagnostic', { textDocument: { uri }, ...(previousResultId ? { previousResultId } : {}) },
  );
  const first = await pull();
  expect(first).toMatchObject({ kind: 'full', items: [] });
  expect(await pull(first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
  await e.change(uri, 2, [insert(1, 0, '  cone at Nowhere\n')]);
  expect((await pull(first.resultId)).items?.length).toBe(1);
  expect(e.reports).toEqual([]);
});

test('our own client hears of every version that was analysed', async () => {
  await started(sound, full);
  await e.change(uri, 7, [insert(0, 0, '// x\n')]);
  await e.settle();
  expect(e.heard.filter(({ method }) => method === 'halfturn/analysed').map(({ params }) => params)).toEqual([{ uri, version: 1 }, { uri, version: 7 }]);
});
