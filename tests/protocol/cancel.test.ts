import { expect, test } from 'vitest';
import { CancellationTokenSource } from 'vscode-languageserver/node';
import { square } from '../service/texts.ts';
import { full, minimal } from './clients.ts';
import { editor } from './harness.ts';

const uri = 'file:///club/square.drill';

test.each([
  ['textDocument/hover', { position: { line: 1, character: 3 } }],
  ['textDocument/codeAction', { range: { start: { line: 0, character: 0 }, end: { line: 30, character: 0 } }, context: { diagnostics: [] } }],
  ['textDocument/diagnostic', {}],
])('a request that nobody waits for any more is not answered: %s', async (method, params) => {
  const e = await editor(full);
  await e.open(uri, square());
  const source = new CancellationTokenSource();
  const asked = e.client.sendRequest(method, { textDocument: { uri }, ...params }, source.token);
  source.cancel();
  await expect(asked).rejects.toMatchObject({ code: -32800 });
  await expect(e.ask('textDocument/hover', { textDocument: { uri }, position: { line: 1, character: 3 } })).resolves.not.toBeNull();
  await e.close();
});

test('a long work stops between its steps', async () => {
  const files = Object.fromEntries(Array.from({ length: 50 }, (_, index) => [`file:///club/${index}.drill`, square()]));
  const e = await editor(full, { disk: files });
  const source = new CancellationTokenSource();
  const asked = e.client.sendRequest('workspace/symbol', { query: '' }, source.token);
  // The work has begun when a later request is answered; the first file is read after it.
  await e.ask('textDocument/foldingRange', { textDocument: { uri } });
  source.cancel();
  await expect(asked).rejects.toMatchObject({ code: -32800 });
  await e.close();
});

test('after the shutdown nothing waits, watches or reports', async () => {
  const e = await editor(minimal, { disk: { 'file:///club/sizes.drill': 'let wide = 4\n' } });
  await e.open(uri, `import "sizes.drill"\n${square()}`);
  await e.settle();
  expect([...e.watched.keys()]).toEqual(['file:///club/sizes.drill', 'file:///club/halfturn.json']);
  await e.change(uri, 2, [{ text: square() }]);
  const reports = e.reports.length;
  await e.close();
  expect(e.clock.waiting()).toBe(0);
  expect(e.watched.size).toBe(0);
  expect(e.reports.length).toBe(reports);
});

test('two servers in one process know nothing of each other', async () => {
  const [one, two] = [await editor(minimal), await editor(minimal)];
  await one.open(uri, 'drill {\n}\n');
  await two.open(uri, square());
  await one.settle();
  await two.settle();
  expect(one.reports.at(-1)!.diagnostics[0]!.code).toBe('syntax');
  expect(two.reports.at(-1)!.diagnostics.map(({ code }) => code)).not.toContain('syntax');
  await one.close();
  await two.close();
});
