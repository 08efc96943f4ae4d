/** The hooks and the files for CI that README.md shows, done step by step as git, a hook manager and the two services do them. */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Log } from 'sarif';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readSettings } from '../../shared/settings/settings.ts';
import { folder, misspelt, sound, type Told } from './halfturn.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const readme = readFileSync(join(root, 'README.md'), 'utf8');

/** The first block of this language that stands below these words. */
function block(language: string, below: string): string {
  const found = new RegExp(`${below}[^]*?^\`\`\`${language}\\n([^]*?)^\`\`\``, 'm').exec(readme);
  if (!found) throw new Error(`README.md has no ${language} below “${below}”.`);
  return found[1]!;
}

/** A folder with drills, and with the command line on the path and as one file. */
function project(drills: Readonly<Record<string, string>>): string {
  const cwd = folder({
    ...Object.fromEntries(Object.entries(drills).map(([name, text]) => [`drills/${name}`, text])),
    'tools/halfturn.js': `import ${JSON.stringify(join(root, 'server/cli.ts'))};\n`, 'tools/package.json': '{ "type": "module" }\n',
    'bin/halfturn': `#!/bin/sh\nexec node '${join(root, 'server/cli.ts')}' "$@"\n`,
  });
  chmodSync(join(cwd, 'bin/halfturn'), 0o755);
  return cwd;
}

function run(cwd: string, words: readonly string[], env: Readonly<Record<string, string>> = {}): Told {
  const path = [join(cwd, 'bin'), join(root, 'node_modules/.bin'), process.env['PATH']].join(delimiter);
  const { status, stdout, stderr } = spawnSync(words[0]!, words.slice(1), { cwd, encoding: 'utf8', env: { ...process.env, ...env, PATH: path } });
  return { status: status ?? -1, out: stdout, err: stderr };
}

/** Not in its printed form. */
function untidy(text: string): string {
  return text.replace('  ball', ' ball');
}

test('the settings that it shows are settings', () => {
  const { settings, misfits } = readSettings(block('json', 'A `halfturn.json`'));
  expect([misfits, settings.theme, settings.levels]).toEqual([[], 'print', { 'long-wait': 'off', 'pass-length': 'error' }]);
});

describe('the hook of git', () => {
  const commit = (drills: Readonly<Record<string, string>>): { readonly told: Told; readonly commits: string } => {
    const cwd = project(drills);
    const git = (...words: string[]): Told => run(cwd, ['git', '-c', 'user.name=Coach', '-c', 'user.email=coach@example.org', ...words]);
    git('init', '--quiet', '--template=');
    mkdirSync(join(cwd, '.git/hooks'), { recursive: true });
    writeFileSync(join(cwd, '.git/hooks/pre-commit'), block('sh', 'A git hook'));
    chmodSync(join(cwd, '.git/hooks/pre-commit'), 0o755);
    git('add', '--all');
    const told = git('commit', '--quiet', '--message', 'Drills');
    return { told, commits: git('rev-list', '--all', '--count').out.trim() };
  };
  test.each<[what: string, drills: Record<string, string>, commits: string, said: string]>([
    ['lets sound drills through', { 'a.drill': sound, 'two words.drill': sound }, '1', ''],
    ['lets a change without drills through', { 'readme.txt': 'Nothing to check' }, '1', ''],
    ['stops an error', { 'a.drill': sound, 'two words.drill': misspelt }, '0', 'unknown-name'],
    ['stops what is not in printed form', { 'a.drill': untidy(sound) }, '0', 'drills/a.drill is not in its printed form'],
  ])('%s', (_, drills, commits, said) => {
    const found = commit(drills);
    expect([found.commits, `${found.told.out}${found.told.err}`]).toEqual([commits, expect.stringContaining(said)]);
  });
});

test('the hooks of a hook manager are given the files that they ask for', () => {
  const { repos: [{ hooks }] } = parse(block('yaml', 'The same for teams')) as { repos: [{ hooks: { entry: string; files: string; language: string }[] }] };
  const cwd = project({ 'a.drill': sound, 'b.drill': untidy(misspelt), 'c.txt': '' });
  const files = readdirSync(join(cwd, 'drills')).map((name) => `drills/${name}`);
  for (const { entry, files: pattern } of hooks) {
    const wanted = files.filter((name) => new RegExp(pattern).test(name));
    expect(wanted).toEqual(['drills/a.drill', 'drills/b.drill']);
    expect([run(cwd, [...entry.split(' '), wanted[0]!]).status, run(cwd, [...entry.split(' '), ...wanted]).status]).toEqual([0, 1]);
  }
  expect(hooks.map(({ language }) => language)).toEqual(['system', 'system']);
});

describe('GitHub', () => {
  const { jobs: { check } } = parse(block('yaml', 'On GitHub')) as {
    jobs: { check: { strategy: { matrix: { part: number[] } }; steps: { run?: string; uses?: string; with?: Record<string, unknown> }[] } };
  };
  const parts = check.strategy.matrix.part;
  /** The statuses of the steps of all machines, and the files with problems in the reports that are uploaded. */
  const ci = (drills: Readonly<Record<string, string>>): { readonly statuses: number[]; readonly faulty: string[] } => {
    const machines = parts.map((part) => {
      const cwd = project(drills);
      const filled = (text: string): string => text.replaceAll('${{ matrix.part }}', String(part));
      const statuses = check.steps.flatMap((step) => (step.run === undefined ? [] : [run(cwd, ['bash', '-e', '-c', filled(step.run)]).status]));
      const report = String(check.steps.find(({ uses }) => uses?.includes('upload-sarif'))!.with!['sarif_file']);
      const log = JSON.parse(readFileSync(join(cwd, report), 'utf8')) as Log;
      return { statuses, faulty: log.runs[0]!.results!.map((result) => result.locations![0]!.physicalLocation!.artifactLocation!.uri!) };
    });
    return { statuses: machines.flatMap(({ statuses }) => statuses), faulty: machines.flatMap(({ faulty }) => faulty) };
  };

  test('passes sound drills', () => {
    expect(ci({ 'a.drill': sound, 'b.drill': sound, 'c.drill': sound, 'd.drill': sound })).toEqual({ statuses: [0, 0, 0, 0, 0, 0], faulty: [] });
  });
  test('shows every error once', () => {
    const { statuses, faulty } = ci({ 'a.drill': misspelt, 'b.drill': sound, 'c.drill': misspelt, 'd.drill': misspelt });
    expect([statuses, faulty.sort()]).toEqual([[0, 1, 0, 0, 0, 1], ['drills/a.drill', 'drills/c.drill', 'drills/d.drill']]);
  });
});

test('GitLab draws and checks every file on one of its machines', () => {
  const { drills: { script, parallel, artifacts } } = parse(block('yaml', 'On GitLab')) as {
    drills: { script: string[]; parallel: number; artifacts: { paths: string[] } };
  };
  const drawings: string[] = [];
  const statuses = Array.from({ length: parallel }, (_, index) => {
    const cwd = project({ 'a.drill': sound, 'b.drill': misspelt, 'c.drill': sound, 'in/d.drill': sound });
    const env = { CI_NODE_INDEX: String(index + 1), CI_NODE_TOTAL: String(parallel) };
    const found = script.map((line) => run(cwd, ['bash', '-e', '-c', line], env).status);
    drawings.push(...readdirSync(join(cwd, artifacts.paths[0]!), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.svg')));
    return found;
  });
  expect(statuses).toEqual([[0, 0, 0], [0, 1, 1], [0, 0, 0]]);
  expect(drawings.sort()).toEqual(['a.svg', 'b.svg', 'c.svg', 'in/d.svg']);
});
