import { constants, type Constant } from './constants.ts';

/** Every number the simulation rests on, as a Markdown table with its source and how far to trust it. */
export function constantsTable(): string {
  const rows = Object.entries(constants).map(([name, constant]) => row(name, constant));
  return `# The numbers behind the simulation

The flag says how far to trust a value: READ in the source itself, READ-2 in a page that restates the source, COMPUTED from
such values, MEMORY from general knowledge without a source at hand, CHOSEN as a modelling choice that no source settles.

| name | value | flag | what it is | source |
| --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
}

function row(name: string, { value, unit, flag, note, source }: Constant): string {
  const shown = typeof value === 'number' ? number(value) : Object.entries(value).map(([key, each]) => `${key}: ${number(each)}`).join(', ');
  return `| \`${name}\` | ${shown}${unit === '1' ? '' : ` ${unit}`} | ${flag} | ${note} | ${source} |`;
}

function number(value: number): string {
  return String(Math.round(value * 10000) / 10000);
}
