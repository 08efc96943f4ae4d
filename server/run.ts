/** How requests are answered: late enough to see that they were cancelled, and never with a crash. */
import { LSPErrorCodes, ResponseError, type CancellationToken } from 'vscode-languageserver';
import type { Runtime } from './runtime.ts';

/** For the person to read: the request was understood and cannot be done. */
export class Refused extends Error {}

/** Whether to go on; throws {@link Cancelled} when nobody waits for the answer any more. Between long steps of a work. */
export type Pause = () => Promise<void>;

class Cancelled extends Error {}

/** Answers with what the work gives, or with `otherwise` when it fails, which is logged. */
export type Run = <T>(token: CancellationToken, otherwise: T, work: (pause: Pause) => Promise<T>) => Promise<T | ResponseError<void>>;

export function runner(runtime: Pick<Runtime, 'turn'>, log: (message: string) => void): Run {
  return async (token, otherwise, work) => {
    const pause = async (): Promise<void> => {
      await runtime.turn();
      if (token.isCancellationRequested) throw new Cancelled();
    };
    try {
      await pause();
      return await work(pause);
    } catch (error) {
      if (error instanceof Cancelled) return new ResponseError<void>(LSPErrorCodes.RequestCancelled, 'Nobody waits for this any more.');
      if (error instanceof Refused) return new ResponseError<void>(LSPErrorCodes.RequestFailed, error.message);
      log(error instanceof Error ? (error.stack ?? error.message) : String(error));
      return otherwise;
    }
  };
}
