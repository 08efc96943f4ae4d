import type { Command } from '../command.ts';

/** In the order of the help page; each is loaded when it is asked for, so that no command waits for what only others need. */
export const commands: Readonly<Record<string, () => Promise<Command>>> = {
  check: async () => (await import('./check.ts')).check,
  draw: async () => (await import('./draw.ts')).draw,
  sheet: async () => (await import('./sheet.ts')).sheet,
  format: async () => (await import('./format.ts')).format,
  measure: async () => (await import('./measure.ts')).measure,
  compare: async () => (await import('./compare.ts')).compare,
  convert: async () => (await import('./convert.ts')).convert,
  explain: async () => (await import('./explain.ts')).explain,
  new: async () => (await import('./new.ts')).newDrill,
  watch: async () => (await import('./watch.ts')).watch,
  serve: async () => (await import('./serve.ts')).serve,
};

export function allCommands(): Promise<readonly Command[]> {
  return Promise.all(Object.values(commands).map((load) => load()));
}
