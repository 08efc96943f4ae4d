import { existsSync, globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { shipped } from '../../client/build.mjs';
import { codes } from './read.ts';

interface Manifest {
  readonly icon: string;
  readonly contributes: {
    readonly commands: readonly { readonly command: string; readonly title: string }[];
    readonly menus: Readonly<Record<string, readonly { readonly command: string }[]>>;
    readonly keybindings: readonly { readonly command: string }[];
    readonly configuration: { readonly properties: Readonly<Record<string, { readonly default: unknown }>> };
  };
}

const root = new URL('../../', import.meta.url);
const text = readFileSync(new URL('package.json', root), 'utf8');
const { contributes, icon } = JSON.parse(text) as Manifest;
const declared = contributes.commands.map(({ command }) => command);
const sources = globSync('client/**/*.ts', { cwd: root.pathname }).map((file) => readFileSync(new URL(file, root), 'utf8')).join('\n');

test('every declared command is there, and every registered one declared or called by the server alone', () => {
  const registered = codes(readFileSync(new URL('client/commands.ts', root), 'utf8'));
  expect(registered.filter((name) => name !== 'halfturn.play').sort()).toEqual([...declared].sort());
});

test('menus and keys name declared commands', () => {
  const named = [...Object.values(contributes.menus).flat(), ...contributes.keybindings].map(({ command }) => command);
  expect(named.filter((command) => !declared.includes(command))).toEqual([]);
});

test('files that the manifest names for the editor are there and are packaged', () => {
  const named = [...JSON.stringify({ icon, contributes }).matchAll(/"\.?\/?((?:client|grammar|shared)\/[\w./-]+\.\w+)"/g)].map((found) => found[1]!);
  expect(named.filter((file) => !existsSync(new URL(file, root)))).toEqual([]);
  const packaged = new Set(shipped.flatMap((pattern) => globSync([pattern, `${pattern}/**/*`], { cwd: root.pathname })));
  expect(named.filter((file) => !packaged.has(file))).toEqual([]);
});

test('every setting is read somewhere', () => {
  const all = `${sources}${globSync('server/**/*.ts', { cwd: root.pathname }).map((file) => readFileSync(new URL(file, root), 'utf8')).join('\n')}`;
  const unread = Object.keys(contributes.configuration.properties).filter((name) => name !== 'halfturn.trace.server' && !new RegExp(`\\b${name.split('.').at(-1)}\\b`).test(all));
  expect(unread).toEqual([]);
});
