import { severities, type Problem, type Severity } from '../problem.ts';

/** A workspace's own level for each code; `off` leaves its problems out. */
export type Levels = Readonly<Record<string, Severity | 'off'>>;

/** What of a setting can be understood. */
export function levelsFrom(setting: unknown): Levels {
  if (typeof setting !== 'object' || setting === null) return {};
  return Object.fromEntries(Object.entries(setting).filter((entry): entry is [string, Severity | 'off'] => isLevel(entry[1])));
}

export function atLevels(problems: readonly Problem[], levels: Levels): readonly Problem[] {
  return problems.flatMap((problem) => {
    const level = Object.hasOwn(levels, problem.code) ? levels[problem.code]! : problem.severity;
    return level === 'off' ? [] : [level === problem.severity ? problem : { ...problem, severity: level }];
  });
}

function isLevel(value: unknown): value is Severity | 'off' {
  return value === 'off' || severities.some((severity) => severity === value);
}
