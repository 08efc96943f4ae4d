import { nearest } from '../../grammar/spelling.ts';
import { groups, type Check } from '../../shared/checks/check.ts';
import { checks } from '../../shared/checks/index.ts';
import { command } from '../command.ts';
import { fine, Refusal } from '../io.ts';

export const explain = command({
  name: 'explain',
  operands: '[CODE]',
  summary: 'a problem’s reason, examples and source',
  more: ['Without a code it lists them all.'],
  takes: [0, 1],
  options: {},
  run: ({ operands: [code] }, io) => {
    io.out(code === undefined ? list() : explanation(found(code)));
    return fine;
  },
});

function found(code: string): Check {
  const check = checks.find((each) => each.code === code);
  if (check) return check;
  const guess = nearest(code, checks.map((each) => each.code));
  throw new Refusal(`There is no problem with the code ${code}; ${guess === null ? 'halfturn explain lists them.' : `did you mean ${guess}?`}`);
}

function list(): string {
  const width = Math.max(...checks.map((check) => check.code.length));
  return groups
    .map((group) => ({ group, members: checks.filter((check) => check.group === group) }))
    .filter(({ members }) => members.length > 0)
    .map(({ group, members }) => [
      group,
      ...members.map((check) => `  ${check.code.padEnd(width)}  ${check.severity.padEnd('warning'.length)}  ${check.title}`),
      '',
    ].join('\n'))
    .join('\n');
}

function explanation(check: Check): string {
  return [
    `${check.code} (${check.severity}): ${check.title}`,
    '',
    check.why,
    ...(check.source === null ? [] : ['', `Source: ${check.source}`]),
    '',
    ...example('Like this it is a problem, at the place between ⟦ and ⟧:', check.bad[0]),
    ...example('Like this it is not:', check.good[0]),
  ].join('\n');
}

function example(title: string, text: string | undefined): string[] {
  return text === undefined ? [] : [title, '', ...text.trimEnd().split('\n').map((line) => `    ${line}`.trimEnd()), ''];
}
