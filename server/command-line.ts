import { nearest } from '../grammar/spelling.ts';
import manifest from '../package.json' with { type: 'json' };
import { allCommands, commands } from './commands/all.ts';
import { helpOf, overview } from './help.ts';
import { complain, fine, Refusal, refused, type Io } from './io.ts';

/** Runs the command line; the words come after the program's name. Gives the exit status and never throws. */
export async function runHalfturn(words: readonly string[], io: Io): Promise<number> {
  try {
    return await run(words, io);
  } catch (error) {
    complain(io, [error instanceof Refusal ? error.message : `this should not happen: ${String(error)}`]);
    return refused;
  }
}

async function run([first, ...rest]: readonly string[], io: Io): Promise<number> {
  if (first === '--help' || first === '-h' || first === 'help') {
    io.out(overview(await allCommands()));
    return fine;
  }
  if (first === '--version') {
    io.out(`${manifest.version}\n`);
    return fine;
  }
  if (first === undefined) throw new Refusal('Say what to do; halfturn --help lists the commands.');
  const load = Object.hasOwn(commands, first) ? commands[first] : undefined;
  if (!load) {
    const guess = nearest(first, Object.keys(commands));
    throw new Refusal(`There is no command ${first}${guess === null ? '; halfturn --help lists them.' : `; did you mean ${guess}?`}`);
  }
  const command = await load();
  if (asksForHelp(rest)) {
    io.out(helpOf(command));
    return fine;
  }
  return command.run(rest, io);
}

/** `--` ends the options: what follows are names. */
function asksForHelp(words: readonly string[]): boolean {
  const end = words.indexOf('--');
  return (end < 0 ? words : words.slice(0, end)).some((word) => word === '--help' || word === '-h');
}
