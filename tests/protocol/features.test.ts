/** Every feature over the wire: what it gives is tested in tests/service, here that it arrives, at the right places, in the client's forms. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type {
  CodeAction, CodeLens, CompletionItem, DocumentDiagnosticReport, DocumentSymbol, Hover, Location, Range, SelectionRange, TextEdit, WorkspaceEdit,
} from 'vscode-languageserver/node';
import { applyEdits } from '../../shared/checks/edits.ts';
import { offsetAt, linesOf, positionAt } from '../../server/convert.ts';
import type { CompareAnswer, SceneAnswer, SheetAnswer } from '../../shared/protocol.ts';
import { square } from '../service/texts.ts';
import { full, minimal } from './clients.ts';
import { editor, type Editor } from './harness.ts';

const uri = 'file:///club/square.drill';
// Characters of two units, and lines that end in two characters, before everything that is asked for.
const late = square({ line: 'rotate   Base -> Left -> Base', beat: 'Left passes to Top' }).replace('2 left of Top', '(4, 2)');
const text = `// 🥅🥅 Ziel\n${late}`.replaceAll('\n', '\r\n');
const lines = linesOf(text);
const td = { textDocument: { uri } };

function position(part: string, plus = 1) {
  return positionAt(lines, text.indexOf(part) + plus);
}
function written(range: Range): string {
  return text.slice(offsetAt(lines, range.start), offsetAt(lines, range.end));
}
function after(edits: readonly TextEdit[]): string {
  return applyEdits(text, edits.map(({ range, newText }) => ({ span: { from: offsetAt(lines, range.start), to: offsetAt(lines, range.end) }, text: newText })));
}

describe.each([['full', full], ['minimal', minimal]])('a %s client', (name, init) => {
  const can = name === 'full';
  let e: Editor;
  beforeAll(async () => {
    e = await editor(init);
    await e.open(uri, text);
    await e.settle();
  });
  afterAll(() => e.close());

  test('problems', async () => {
    const pulled = can ? await e.ask<DocumentDiagnosticReport>('textDocument/diagnostic', td) : null;
    const items = (pulled?.kind === 'full' ? pulled.items : e.reports.at(-1)!.diagnostics).filter(({ code }) => code === 'late-receiver' || code === 'unused-name');
    expect(items.map(({ code, range, severity }) => [code, written(range), severity])).toEqual([['unused-name', 'wide', 4], ['late-receiver', 'Top', 1]]);
    expect(items[0]!.tags).toEqual(can ? [1] : undefined);
    expect(items[1]!.relatedInformation?.map(({ location }) => written(location.range))).toEqual(can ? ['runs to (4, 2)'] : undefined);
    expect(e.reports.length > 0).toBe(!can);
  });

  test('hover', async () => {
    const found = await e.ask<Hover>('textDocument/hover', { ...td, position: position('passes to Left') });
    expect(written(found.range!)).toBe('passes to');
    expect(found.contents).toMatchObject({ kind: can ? 'markdown' : 'plaintext', value: expect.stringContaining(can ? '**12 m**' : '12 m') });
    if (!can) expect((found.contents as { value: string }).value).not.toMatch(/[*`]/);
  });

  test('completion', async () => {
    const items = await e.ask<CompletionItem[]>('textDocument/completion', { ...td, position: position('Left passes to Top', 'Left passes to T'.length) });
    const replaced = items.slice(0, 3).map(({ label, textEdit }) => [label, textEdit && 'range' in textEdit ? written(textEdit.range) : '']);
    expect(replaced).toEqual([['Base', 'Top'], ['Left', 'Top'], ['Top', 'Top']]);
    const start = await e.ask<CompletionItem[]>('textDocument/completion', { ...td, position: position('  area', 2) });
    expect(start.some(({ insertTextFormat }) => insertTextFormat === 2)).toBe(can);
  });

  test('definition, references and highlights', async () => {
    const at = { ...td, position: position('passes to Left', 11) };
    expect((await e.ask<Location[]>('textDocument/definition', at)).map(({ range }) => range.start)).toEqual([position('station Left', 8)]);
    const references = await e.ask<Location[]>('textDocument/references', { ...at, context: { includeDeclaration: false } });
    const highlights = await e.ask<Location[]>('textDocument/documentHighlight', at);
    expect(references.map(({ range }) => written(range))).toEqual(Array(5).fill('Left'));
    expect(highlights.length).toBe(references.length + 1);
  });

  test('rename', async () => {
    const at = { ...td, position: position('station Left', 9) };
    expect(await e.ask('textDocument/prepareRename', at)).toMatchObject({ placeholder: 'Left' });
    const edit = await e.ask<WorkspaceEdit>('textDocument/rename', { ...at, newName: 'Wing' });
    const edits = can ? (edit.documentChanges![0] as { edits: TextEdit[] }).edits : edit.changes![uri]!;
    expect(after(edits)).toBe(text.replaceAll('Left', 'Wing'));
    await expect(e.ask('textDocument/rename', { ...at, newName: 'passes' })).rejects.toThrow('word of the language');
  });

  test('symbols', async () => {
    const symbols = await e.ask<DocumentSymbol[]>('textDocument/documentSymbol', td);
    expect(symbols[0]!.name).toBe('Square');
    expect(symbols[0]!.children !== undefined).toBe(can);
    const found = await e.ask<{ name: string }[]>('workspace/symbol', { query: 'bas' });
    expect(found.map((symbol) => symbol.name)).toEqual(['Base']);
  });

  test('folding and selection', async () => {
    const folds = await e.ask<{ startLine: number; endLine: number }[]>('textDocument/foldingRange', td);
    const last = lines.starts.length - 2;
    expect(folds[0]).toMatchObject({ startLine: 1, endLine: can ? last - 1 : last });
    const [selection] = await e.ask<SelectionRange[]>('textDocument/selectionRange', { ...td, positions: [position('Top runs')] });
    expect(written(selection!.range)).toBe('Top');
    expect(written(selection!.parent!.range)).toBe('Top runs to (4, 2)');
  });

  test('colouring, whole and in part', async () => {
    const { data } = await e.ask<{ data: number[] }>('textDocument/semanticTokens/full', td);
    expect(data.slice(0, 5)).toEqual([0, 0, '// 🥅🥅 Ziel'.length, e.capabilities.semanticTokensProvider!.legend.tokenTypes.indexOf('comment'), 0]);
    const range = { start: { line: 1, character: 0 }, end: { line: 2, character: 0 } };
    const part = await e.ask<{ data: number[] }>('textDocument/semanticTokens/range', { ...td, range });
    expect(part.data.slice(0, 3)).toEqual([1, 0, 'drill'.length]);
    expect(part.data.length).toBe(10);
  });

  test('formatting: whole, part, typed', async () => {
    const options = { tabSize: 4, insertSpaces: true };
    const whole = after(await e.ask<TextEdit[]>('textDocument/formatting', { ...td, options }));
    expect(whole).toContain('  rotate Base -> Left -> Base\r\n');
    const at = position('rotate', 3);
    const part = after(await e.ask<TextEdit[]>('textDocument/rangeFormatting', { ...td, range: { start: at, end: at }, options }));
    expect(part).toBe(text.replace('rotate   Base', 'rotate Base'));
    const typed = await e.ask<TextEdit[]>('textDocument/onTypeFormatting', { ...td, position: { line: at.line + 1, character: 0 }, ch: '\n', options });
    expect(after(typed)).toBe(part);
  });

  test('hints, lenses, colours, links', async () => {
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const hints = await e.ask<{ label: string; position: { line: number } }[]>('textDocument/inlayHint', { ...td, range });
    expect(hints.map(({ label }) => label.split(' s')[0]!.replace(/\d+(\.\d)?$/, 'N'))).toEqual(['12 m +N', '14 m −N', '12 m +N']);
    const titles = (await e.ask<CodeLens[]>('textDocument/codeLens', td)).map(({ command }) => [command!.title.replaceAll(/\d+(\.\d)?/g, 'N'), command!.command]);
    expect(titles.slice(0, 2)).toEqual(can ? [['Play', 'halfturn.play'], ['N players', '']] : [['N players', ''], [expect.stringContaining('repetition'), '']]);
    const colours = await e.ask<{ range: never; color: { red: number } }[]>('textDocument/documentColor', td);
    expect(colours.map((each) => written(each.range))).toEqual(['red']);
    const white = { red: 1, green: 1, blue: 1, alpha: 1 };
    const presentations = await e.ask<{ label: string }[]>('textDocument/colorPresentation', { ...td, color: white, range: colours[0]!.range });
    expect(presentations.map(({ label }) => label)).toEqual(['white']);
    expect(await e.ask('textDocument/documentLink', td)).toEqual([]);
  });

  test('code actions', async () => {
    const at = position('let wide', 5);
    const asked = (only?: string[]) =>
      e.ask<CodeAction[]>('textDocument/codeAction', { ...td, range: { start: at, end: at }, context: { diagnostics: [], ...(only ? { only } : {}) } });
    if (!can) {
      expect(e.capabilities.codeActionProvider).toBeUndefined();
      expect(await asked()).toEqual([]);
      return;
    }
    const actions = await asked();
    expect(actions.map(({ title, kind }) => [title, kind])).toEqual([
      [expect.stringContaining('wide'), 'quickfix'], ['Allow unused-name on this line', 'quickfix'], ['Explain unused-name', 'quickfix'],
    ]);
    expect(actions[0]).toMatchObject({ isPreferred: true, diagnostics: [{ code: 'unused-name' }] });
    expect(actions[0]!.edit!.documentChanges).toMatchObject([{ textDocument: { uri, version: 1 } }]);
    const [all] = await asked(['source.fixAll']);
    expect(all!.edit).toBeUndefined();
    const resolved = await e.ask<CodeAction>('codeAction/resolve', all);
    expect(after((resolved.edit!.documentChanges![0] as { edits: TextEdit[] }).edits)).not.toContain('let wide');
  });

  test('all of one kind at once', async () => {
    if (!can) return;
    const twice = 'file:///club/twice.drill';
    const written = 'drill "A" {\n  let a = 1\n  let b = 2\n  area 20 x 20\n}\n';
    await e.open(twice, written);
    const at = { line: 1, character: 6 };
    const asked = { textDocument: { uri: twice }, range: { start: at, end: at }, context: { diagnostics: [] } };
    const actions = await e.ask<CodeAction[]>('textDocument/codeAction', asked);
    const all = actions.find(({ title }) => title === 'Fix all of this kind (unused-name)')!;
    const { edit } = await e.ask<CodeAction>('codeAction/resolve', all);
    const edits = (edit!.documentChanges![0] as { edits: TextEdit[] }).edits;
    const around = linesOf(written);
    const spans = edits.map(({ range, newText }) => ({ span: { from: offsetAt(around, range.start), to: offsetAt(around, range.end) }, text: newText }));
    expect(applyEdits(written, spans)).not.toMatch(/let/);
  });

  test('a session with shorter changeovers', async () => {
    if (!can) return;
    const evening = 'file:///club/evening.drill';
    await e.open(evening, 'drill "A" {\n  area 9 x 9 marked every 3\n}\nsession "S" {\n  pitch 60 x 40\n  part "P" 15 min of "A" at (2, 2)\n  part "Q" 15 min of "A" at (40, 20)\n}\n');
    const at = { line: 6, character: 8 };
    const actions = await e.ask<CodeAction[]>('textDocument/codeAction', { textDocument: { uri: evening }, range: { start: at, end: at }, context: { diagnostics: [], only: ['refactor'] } });
    expect(actions).toMatchObject([{ kind: 'refactor.rewrite', edit: { documentChanges: [{ edits: [{ newText: '(2, 2)' }] }] } }]);
  });

  test('the picture, its file, and a drag', async () => {
    const style = { theme: 'light', convention: 'solid pass' };
    const scene = await e.ask<SceneAnswer>('halfturn/scene', { uri, drill: { offset: text.length }, ...style });
    expect(scene).toMatchObject({ version: 1, index: 0, drills: [{ name: 'Square' }], broken: null });
    expect(scene.problems.map(({ code }) => code)).toContain('late-receiver');
    expect(await e.ask('halfturn/picture', { uri, drill: { index: 0 }, ...style, format: 'png' })).toBe('cGljdHVyZQ==');
    expect(await e.ask('halfturn/scene', { uri, drill: { index: 7 }, ...style })).toBeNull();
    const from = text.indexOf('station Base');
    const handle = { kind: 'thing', statement: { from, to: text.indexOf('\r\n', from) } };
    const place = text.indexOf('(4, 4)');
    const edits = [{ span: { from: place, to: place + 6 }, text: '(5, 4)' }];
    expect(await e.ask('halfturn/edit', { uri, version: 1, handle, to: { x: 5, y: 3.9 } })).toEqual({ version: 1, edits });
    expect(await e.ask('halfturn/edit', { uri, version: 0, handle, to: { x: 5, y: 3.9 } })).toBeNull();
  });

  test('what changed from an older text', async () => {
    const asked = { uri, before: text.replace('(4, 4)', '(5, 4)'), beforeName: 'the last <commit>', theme: 'dark', convention: 'solid pass', nonce: 'abc' };
    const { html } = await e.ask<CompareAnswer>('halfturn/compare', asked);
    expect(html).toContain('Base stands at (4, 4), was at (5, 4): 1 m to the left');
    expect(html).toContain('Before: the last &lt;commit&gt;. Now: the text in the editor.');
    expect(html).toContain("script-src 'nonce-abc'");
    expect((await e.ask<CompareAnswer>('halfturn/compare', { ...asked, before: text })).html).toContain('<p>Nothing changed.</p>');
  });

  test('the sheet, as a page for a host with a nonce and as a file', async () => {
    const asked = { uri, offset: 0, names: null };
    const page = await e.ask<SheetAnswer>('halfturn/sheet', { ...asked, format: 'html', nonce: 'abc' });
    expect(page.title).toBe('Square');
    expect(page.content).toContain("script-src 'nonce-abc'");
    expect(await e.ask('halfturn/sheet', { ...asked, format: 'pdf' })).toEqual({ title: 'Square', content: btoa('Square'), faults: [] });
  });

  test('a text that is not open', async () => {
    const other = { textDocument: { uri: 'file:///club/nowhere.drill' } };
    expect(await e.ask('textDocument/hover', { ...other, position: { line: 0, character: 0 } })).toBeNull();
    expect(await e.ask('textDocument/completion', { ...other, position: { line: 0, character: 0 } })).toEqual([]);
    expect(await e.ask('halfturn/scene', { uri: 'file:///club/nowhere.drill', drill: { index: 0 } })).toBeNull();
  });

  test('a place past every end', async () => {
    const far = { line: 9999, character: 9999 };
    expect(await e.ask('textDocument/hover', { ...td, position: far })).toBeNull();
    expect((await e.ask<SelectionRange[]>('textDocument/selectionRange', { ...td, positions: [far] })).length).toBe(1);
  });
});
