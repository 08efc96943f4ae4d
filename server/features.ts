/** The questions of an editor, each answered by one feature of `shared/service`: here are only positions and forms. */
import {
  DocumentHighlightKind, FoldingRangeKind, type CancellationToken, type Color, type DocumentHighlight, type FoldingRange,
  type InlayHint, type Position, type ResponseError, type SelectionRange,
} from 'vscode-languageserver';
import {
  compareRequest, editRequest, pictureRequest, playCommand, sceneRequest, sheetRequest,
  type CompareParams, type EditAnswer, type EditParams, type PictureParams, type PlayArguments, type SceneAnswer, type SceneParams, type SheetAnswer, type SheetParams,
} from '../shared/protocol.ts';
import { sheetHtml } from '../shared/render/sheet-html.ts';
import { conventions } from '../shared/scene/lines.ts';
import { colourTexts, coloursOf } from '../shared/service/colours.ts';
import { comparison } from '../shared/service/comparison.ts';
import { complete, importsAt } from '../shared/service/complete.ts';
import { drag } from '../shared/service/drag.ts';
import { folds } from '../shared/service/folding.ts';
import { format, formatTyped } from '../shared/service/format.ts';
import { hover } from '../shared/service/hover.ts';
import { inlayHints } from '../shared/service/inlay.ts';
import { lenses } from '../shared/service/lens.ts';
import { links } from '../shared/service/links.ts';
import { occurrencesIn, symbolAt } from '../shared/service/occurrences.ts';
import type { Open } from '../shared/service/open.ts';
import { picture } from '../shared/service/picture.ts';
import { rename, renameable } from '../shared/service/rename.ts';
import { sheetAt } from '../shared/service/sheet.ts';
import { selectionsAt } from '../shared/service/selection.ts';
import { offsetAt, positionAt, rangeOf } from './convert.ts';
import type { Document } from './documents.ts';
import { actionsAt, fixAllEdits, type Later } from './lsp/actions.ts';
import { completionItems } from './lsp/completion.ts';
import { textEdits, workspaceEdit } from './lsp/edits.ts';
import { markup } from './lsp/markup.ts';
import { documentSymbols, flatSymbols, matches } from './lsp/symbols.ts';
import { encodedTokens } from './lsp/tokens.ts';
import { relatives, workspaceFiles, workspacePaths } from './neighbours.ts';
import { uriIn } from './places.ts';
import { Refused, runner, type Pause } from './run.ts';
import type { Session } from './session.ts';

export function answerQuestions(session: Session): void {
  const { connection, documents, runtime, client, preferences } = session;
  const run = runner(runtime, (message) => connection.console.error(message));

  /** About a text: its version is that of the moment the question came in. */
  function about<P extends { readonly textDocument: { readonly uri: string } }, T>(
    otherwise: T,
    answer: (asked: { readonly params: P; readonly document: Document; readonly open: Open; readonly pause: Pause }) => T | Promise<T>,
  ): (params: P, token: CancellationToken) => Promise<T | ResponseError<void>> {
    return async (params, token) => {
      const document = documents.get(params.textDocument.uri);
      if (!document) return otherwise;
      return run(token, otherwise, async (pause) => answer({ params, document, open: (await documents.analysed(document)).open, pause }));
    };
  }
  const offsetOf = ({ lines }: Document, position: Position): number => offsetAt(lines, position);

  connection.onHover(about(null, ({ params, document, open }) => {
    const found = hover(open, offsetOf(document, params.position));
    return found && { contents: markup(found.text, client()), range: rangeOf(document.lines, found.span) };
  }));

  connection.onCompletion(about([], async ({ params, document, open }) => {
    const offset = offsetOf(document, params.position);
    const importing = importsAt(open, offset);
    // Elsewhere a slash divides, or begins a comment.
    if (params.context?.triggerCharacter === '/' && !importing) return [];
    const { folder } = document.place;
    const files = importing && folder !== null ? await workspacePaths(session, folder) : [];
    return completionItems(complete(open, offset, files), document, client());
  }));

  connection.onDefinition(about(null, async ({ params, document, open }) => {
    const found = symbolAt(open, offsetOf(document, params.position));
    if (!found) return null;
    const files = await relatives(session, document, open);
    return files.flatMap((file) => occurrencesIn(file.open, found.symbol)
      .filter(({ role }) => role === 'declaration')
      .map(({ span }) => ({ uri: file.document.uri, range: rangeOf(file.document.lines, span) })));
  }));

  connection.onReferences(about([], async ({ params, document, open, pause }) => {
    const found = symbolAt(open, offsetOf(document, params.position));
    if (!found) return [];
    const files = await relatives(session, document, open, found.symbol.name, pause);
    return files.flatMap((file) => occurrencesIn(file.open, found.symbol)
      .filter(({ role }) => role === 'use' || params.context.includeDeclaration)
      .map(({ span }) => ({ uri: file.document.uri, range: rangeOf(file.document.lines, span) })));
  }));

  connection.onDocumentHighlight(about([], ({ params, document, open }): DocumentHighlight[] => {
    const found = symbolAt(open, offsetOf(document, params.position));
    const spans = found ? occurrencesIn(open, found.symbol) : [];
    return spans.map(({ span, role }) => ({ range: rangeOf(document.lines, span), kind: role === 'declaration' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read }));
  }));

  connection.onPrepareRename(about(null, ({ params, document, open }) => {
    const found = renameable(open, offsetOf(document, params.position));
    if (found && 'why' in found) throw new Refused(found.why);
    return found && { range: rangeOf(document.lines, found.span), placeholder: found.name };
  }));

  connection.onRenameRequest(about(null, async ({ params, document, open, pause }) => {
    const offset = offsetOf(document, params.position);
    const symbol = symbolAt(open, offset)?.symbol;
    if (!symbol) return null;
    const files = await relatives(session, document, open, symbol.name, pause);
    const renaming = rename(open, offset, params.newName, files.map((file) => file.open));
    if (renaming?.kind === 'refused') throw new Refused(renaming.why);
    const edited = (renaming?.files ?? []).flatMap(({ path, edits }) => {
      const file = files.find((each) => each.open.workspace.path === path);
      return file ? [{ document: file.document, edits }] : [];
    });
    return renaming && workspaceEdit(edited, client());
  }));

  connection.onDocumentSymbol(about([], ({ document, open: { analysis } }) =>
    (client().outlines ? documentSymbols(document, analysis.file) : flatSymbols(document, analysis.file))));

  connection.onWorkspaceSymbol(({ query }, token) => run(token, [], async (pause) => {
    const files = await workspaceFiles(session, null, pause);
    return files.flatMap((file) => flatSymbols(file)).filter(({ name }) => matches(query, name)).slice(0, mostSymbols);
  }));

  connection.onFoldingRanges(about([], ({ document, open }) => folds(open).map(({ span, kind }): FoldingRange => {
    const { start, end } = rangeOf(document.lines, span);
    const about = kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {};
    if (!client().lineFolding) {
      return { startLine: start.line, startCharacter: start.character, endLine: end.line, endCharacter: end.character, ...about };
    }
    // The line of the closing brace stays.
    const last = document.lines.text[span.to - 1] === '}' ? end.line - 1 : end.line;
    return { startLine: start.line, endLine: Math.max(start.line, last), ...about };
  })));

  connection.onSelectionRanges(about([], ({ params, document, open }) => params.positions.map((position): SelectionRange => {
    const ranges = selectionsAt(open, offsetOf(document, position)).map((span): SelectionRange => ({ range: rangeOf(document.lines, span) }));
    return ranges.reduceRight((parent, { range }) => ({ range, parent }));
  })));

  connection.languages.semanticTokens.on(about({ data: [] }, ({ document, open }) => ({
    data: encodedTokens(document, open, { from: 0, to: document.lines.text.length }),
  })));
  connection.languages.semanticTokens.onRange(about({ data: [] }, ({ params, document, open }) => ({
    data: encodedTokens(document, open, { from: offsetOf(document, params.range.start), to: offsetOf(document, params.range.end) }),
  })));

  connection.onDocumentFormatting(about([], ({ document, open }) => textEdits(document, format(open))));
  connection.onDocumentRangeFormatting(about([], ({ params, document, open }) =>
    textEdits(document, format(open, { from: offsetOf(document, params.range.start), to: offsetOf(document, params.range.end) }))));
  connection.onDocumentOnTypeFormatting(about([], ({ params: { ch, position }, document, open }) =>
    (ch === '\n' || ch === '}' ? textEdits(document, formatTyped(open, offsetOf(document, position), ch)) : [])));

  connection.languages.inlayHint.on(about([], async ({ params, document, open }) => {
    const [from, to] = [offsetOf(document, params.range.start), offsetOf(document, params.range.end)];
    const shown = (await preferences(document)).inlayHints ? inlayHints(open).filter(({ at }) => from <= at && at <= to) : [];
    return shown.map(({ at, text, tip }): InlayHint => ({ position: positionAt(document.lines, at), label: text, tooltip: tip, paddingLeft: true }));
  }));

  connection.onCodeLens(about([], ({ document, open }) => {
    const known = lenses(open).filter(({ plays }) => !plays || client().own);
    return known.map(({ span, title, plays }) => {
      const args: PlayArguments = [document.uri, span.from];
      const command = plays ? { title, command: playCommand, arguments: [...args] } : { title, command: '' };
      return { range: rangeOf(document.lines, span), command };
    });
  }));

  connection.onDocumentColor(about([], ({ document, open }) =>
    coloursOf(open).map(({ span, hex }) => ({ range: rangeOf(document.lines, span), color: colourOf(hex) }))));
  connection.onColorPresentation(({ color, range }) =>
    colourTexts(hexOf(color)).map((label) => ({ label, textEdit: { range, newText: label } })));

  connection.onDocumentLinks(about([], ({ document, open }) => links(open).map(({ span, path }) => ({
    range: rangeOf(document.lines, span), target: uriIn(document.place.folder!, path),
  }))));

  connection.onCodeAction(about([], async ({ params, document, open, pause }) => {
    if (!client().actions) return [];
    const { range, context } = params;
    const asked = { document, open, from: offsetOf(document, range.start), to: offsetOf(document, range.end), only: context.only };
    return actionsAt(asked, client(), await preferences(document), pause);
  }));
  connection.onCodeActionResolve((action, token) => run(token, action, async () => {
    const later = action.data as Later | undefined;
    const document = later && documents.get(later.uri);
    if (!later || !document) return action;
    const { open } = await documents.analysed(document);
    return { ...action, edit: workspaceEdit([{ document, edits: fixAllEdits(later, open) }], client()) };
  }));

  const shown = async (document: Document, open: Open, params: SceneParams): Promise<SceneAnswer | null> => {
    const { levels, convention } = await preferences(document);
    const found = picture(open, { ...params, convention: params.convention ?? convention ?? conventions[0] }, levels);
    return found && { version: document.version!, ...found };
  };
  asked(sceneRequest, (params: SceneParams, document, open) => shown(document, open, params));
  asked(pictureRequest, async (params: PictureParams, document, open) => {
    const found = await shown(document, open, params);
    return found && runtime.picture(found.scene, params.format);
  });
  asked(compareRequest, async (params: CompareParams, document, open) => {
    const { convention } = await preferences(document);
    return comparison(open, { ...params, convention: params.convention ?? convention ?? conventions[0] });
  });
  asked(sheetRequest, async (params: SheetParams, _, open): Promise<SheetAnswer | null> => {
    const found = sheetAt(open, params);
    if (!found) return null;
    const { sheet: { title }, faults } = found;
    if (params.format === 'html') return { title, content: sheetHtml(found.sheet, params.nonce === undefined ? {} : { nonce: params.nonce }), faults };
    const pdf = await runtime.pdf((measure) => sheetAt(open, params, measure)?.sheet ?? found.sheet);
    return pdf && { title, content: base64(pdf.bytes), faults: [...faults, ...(pdf.missing === null ? [] : [pdf.missing])] };
  });
  asked(editRequest, (params: EditParams, document, open): EditAnswer | null => {
    const edits = document.version === params.version ? drag(open, params.handle, params.to) : null;
    return edits && { version: params.version, edits };
  });

  /** One of the questions of our own extension. */
  function asked<P extends { readonly uri: string }>(
    method: string, answer: (params: P, document: Document, open: Open) => unknown,
  ): void {
    connection.onRequest(method, async (params: P, token: CancellationToken): Promise<unknown> => {
      const document = documents.get(params.uri);
      return document ? run<unknown>(token, null, async () => answer(params, document, (await documents.analysed(document)).open)) : null;
    });
  }
}

/** In a browser too. */
function base64(bytes: Uint8Array): string {
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}

/** A list of more is no help to anybody. */
const mostSymbols = 500;

function colourOf(hex: string): Color {
  const channel = (at: number): number => Number.parseInt(hex.slice(at, at + 2), 16) / 255;
  return { red: channel(1), green: channel(3), blue: channel(5), alpha: 1 };
}

function hexOf({ red, green, blue }: Color): string {
  return `#${[red, green, blue].map((share) => Math.round(share * 255).toString(16).padStart(2, '0')).join('')}`;
}
