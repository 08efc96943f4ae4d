/** A server that falls over is started again, and the reader is told in plain words; one that keeps falling over waits to be asked. */
import * as vscode from 'vscode';
import { CloseAction, ErrorAction, type ErrorHandler } from 'vscode-languageclient';

const most = 4;
/** Milliseconds. */
const within = 3 * 60_000;

export function restartingKindly(start: () => Promise<void>): ErrorHandler {
  let crashes: number[] = [];
  return {
    error: () => ({ action: ErrorAction.Continue }),
    closed: () => {
      const now = Date.now();
      crashes = [...crashes.filter((at) => now - at < within), now];
      if (crashes.length < most) {
        // The client itself would only write it into its log.
        void vscode.window.showInformationMessage(once);
        return { action: CloseAction.Restart, handled: true };
      }
      void offer(async () => {
        crashes = [];
        await start();
      });
      return { action: CloseAction.DoNotRestart, handled: true };
    },
  };
}

const once = 'The part of Halfturn that checks drills stopped and was started again. Nothing you wrote is lost.';

async function offer(start: () => Promise<void>): Promise<void> {
  const again = 'Start again';
  const chosen = await vscode.window.showWarningMessage('Halfturn keeps stopping while it checks these drills. Your text is safe; checks and the pitch are off until it is started again.', again);
  if (chosen === again) await start();
}
