/** The quick fixes of a problem, from where the editor has them too. */
import * as vscode from 'vscode';
import { type BaseLanguageClient, type CodeAction, CodeActionKind, CodeActionRequest } from 'vscode-languageclient';
import type { Problem } from '../shared/problem.ts';

export interface Cure {
  readonly title: string;
  readonly edit: () => Promise<vscode.WorkspaceEdit>;
}

export async function curesOf(client: BaseLanguageClient, document: vscode.TextDocument, { code, span }: Problem): Promise<readonly Cure[]> {
  const range = client.code2ProtocolConverter.asRange(new vscode.Range(document.positionAt(span.from), document.positionAt(span.to)));
  const found = await client.sendRequest(CodeActionRequest.type, {
    textDocument: client.code2ProtocolConverter.asTextDocumentIdentifier(document), range, context: { diagnostics: [], only: [CodeActionKind.QuickFix] },
  });
  const at = JSON.stringify(range.start);
  return (found ?? []).flatMap((action): readonly Cure[] => {
    // What only silences a problem is never preferred nor less preferred.
    if (!isAction(action) || !action.edit || action.isPreferred === undefined) return [];
    const { title, edit } = action;
    const own = action.diagnostics?.some((each) => each.code === code && JSON.stringify(each.range.start) === at);
    return own ? [{ title, edit: () => client.protocol2CodeConverter.asWorkspaceEdit(edit) }] : [];
  });
}

function isAction(action: object): action is CodeAction {
  return 'kind' in action;
}
