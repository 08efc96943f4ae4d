import { groups, type Check, type Group } from './check.ts';

const titles: Readonly<Record<Group, { readonly title: string; readonly about: string }>> = {
  writing: { title: 'Writing', about: 'The text itself: words, names, numbers, files.' },
  ground: { title: 'Ground', about: 'What stands where: areas, zones, furniture, sizes.' },
  ball: { title: 'Ball', about: 'Who has it, where it goes, whether it gets there.' },
  time: { title: 'Time', about: 'Who is where when: everything is played through with real runs and real balls.' },
  rotation: { title: 'Rotation', about: 'Who goes where for the next repetition.' },
  games: { title: 'Games', about: 'Teams, numbers and rules.' },
  session: { title: 'Session', about: 'A whole evening: time, players, kit, ground and changeovers.' },
  care: { title: 'Care', about: 'Cautions from published guidance. They know nothing of your place: local rules and the people on the spot come first.' },
};

/** The guide to all problems, as Markdown: what each code means, why it matters, an example of the fault and of its cure. */
export function problemGuide(checks: readonly Check[]): string {
  const parts = groups.map((group) => {
    const own = checks.filter((check) => check.group === group);
    const table = own.map((check) => `| [\`${check.code}\`](#${check.code}) | ${check.severity} | ${check.title} |`);
    const head = [`## ${titles[group].title}`, '', titles[group].about, '', '| code | level | what is wrong |', '| --- | --- | --- |', ...table, ''];
    return [...head, ...own.map(entry)].join('\n');
  });
  return [`# Problems\n`, introduction, ...parts].join('\n');
}

const introduction = `Every problem has a code that never changes, a level, and a place in the text. Errors break the drill, warnings make it
go wrong sooner or later, infos and hints are worth a thought. To silence one line, say why at its end or on the line above:
\`// allow late-receiver: walk-through first\`.
`;

function entry(check: Check): string {
  const source = check.source === null ? '' : `\n\nSource: ${check.source}`;
  return `### ${check.code}

${check.title}. ${check.why}${source}

\`\`\`drill
${check.bad[0]!.trim()}
\`\`\`

The fault is between ⟦ and ⟧. Like this it is sound:

\`\`\`drill
${check.good[0]!.trim()}
\`\`\`
`;
}
