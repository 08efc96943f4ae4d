import type { Command, Option } from './command.ts';

export function overview(commands: readonly Command[]): string {
  return [
    'Halfturn checks, times and draws football training drills.',
    '',
    'Usage: halfturn COMMAND …',
    '',
    ...table(commands.map((each) => [each.name, each.summary])),
    '',
    'PATH is a file, a folder, a glob in quotes, or - for standard input.',
    'halfturn COMMAND --help says more. Exit status: 0 nothing at error level, 1 problems at error level, 2 not done.',
    '',
  ].join('\n');
}

export function helpOf(command: Command): string {
  const options = Object.entries(command.options).map(([name, option]): [string, string] => [written(name, option), option.help]);
  return [
    `Usage: halfturn ${command.name} ${command.operands}${options.length > 0 ? ' [options]' : ''}`.replace(/ +/g, ' '),
    '',
    `${command.summary[0]!.toUpperCase()}${command.summary.slice(1)}.`,
    ...command.more,
    '',
    ...table([...options, ['--help', 'this page']]),
    '',
  ].join('\n');
}

function written(name: string, option: Option): string {
  switch (option.kind) {
    case 'flag':
      return `--${name}`;
    case 'text':
      return `${option.short ? `-${option.short}, ` : ''}--${name} ${option.value}`;
    case 'number':
    case 'texts':
      return `--${name} ${option.value}`;
    case 'choice':
      return `--${name} ${option.choices.join('|')}`;
  }
}

function table(rows: readonly (readonly [string, string])[]): string[] {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`);
}
