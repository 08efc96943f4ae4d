import { chmodSync, mkdirSync, readFileSync, readdirSync, lstatSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { workspaceOf } from '../../server/workspace.ts';
import { writeNew, writeWhole } from '../../server/write.ts';
import { folder, halfturn, misspelt, sound } from './halfturn.ts';

describe('a file is written whole or not at all', () => {
  test.each<[what: string, prepare: (cwd: string) => void, path: string, reason: string]>([
    ['write-protected', (cwd) => chmodSync(join(cwd, 'a'), 0o444), 'a', 'it is write-protected'],
    ['a folder', (cwd) => mkdirSync(join(cwd, 'b')), 'b', 'it is a folder'],
    ['below a file', () => {}, 'a/b', 'part of the path is a file, not a folder'],
    ['below nothing', () => {}, 'no/b', 'there is no such file or folder'],
    ['an endless link', (cwd) => symlinkSync('l', join(cwd, 'l')), 'l', 'its links lead round in a circle'],
    ['a very long name', () => {}, 'n'.repeat(300), 'the name is too long'],
  ])('not when it is %s', (_, prepare, path, reason) => {
    const cwd = folder({ a: 'old' });
    prepare(cwd);
    const before = readdirSync(cwd);
    expect(() => writeWhole(join(cwd, path), 'new', 'The file')).toThrow(`The file cannot be written: ${reason}.`);
    expect([readdirSync(cwd), readFileSync(join(cwd, 'a'), 'utf8')]).toEqual([before, 'old']);
  });

  test('keeps permissions and links', () => {
    const cwd = folder({ a: 'old' });
    chmodSync(join(cwd, 'a'), 0o640);
    symlinkSync('a', join(cwd, 'link'));
    writeWhole(join(cwd, 'link'), 'new', 'link');
    expect(readFileSync(join(cwd, 'a'), 'utf8')).toBe('new');
    expect([statSync(join(cwd, 'a')).mode & 0o777, lstatSync(join(cwd, 'link')).isSymbolicLink(), readdirSync(cwd)]).toEqual([0o640, true, ['a', 'link']]);
  });

  test('a new file never replaces one', () => {
    const cwd = folder({ a: 'old' });
    expect(() => writeNew(join(cwd, 'a'), 'new', 'a')).toThrow('a cannot be written: it is there already.');
    expect(readFileSync(join(cwd, 'a'), 'utf8')).toBe('old');
  });

  test.each([[['check', '--fix', '.'], 'a.drill'], [['format', '.'], 'a.drill']])('%j goes on with the others', async (words, kept) => {
    const cwd = folder({ 'a.drill': misspelt.replace('  age ', ' age '), 'b.drill': misspelt.replace('  age ', ' age ') });
    const before = readFileSync(join(cwd, kept), 'utf8');
    chmodSync(join(cwd, kept), 0o444);
    const told = await halfturn(cwd, words);
    expect([told.status, told.err]).toEqual([2, 'halfturn: a.drill cannot be written: it is write-protected.\n']);
    expect(readFileSync(join(cwd, kept), 'utf8')).toBe(before);
    expect(readFileSync(join(cwd, 'b.drill'), 'utf8')).not.toBe(before);
  });
});

describe('imports', () => {
  const reads = (imported: string): string => `import "${imported}"\n\n${sound}`;
  test.each<[imported: string, found: string[]]>([
    ['names.drill', []],
    ['../top.drill', []],
    ['deep/more.drill', []],
    ['none.drill', ['missing-import']],
    ['deep', ['missing-import']],
    ['../../outside.drill', ['outside-workspace']],
    ['/etc/hosts', ['outside-workspace']],
    ['leads-out.drill', ['outside-workspace']],
    ['leads-in.drill', []],
  ])('%s', async (imported, found) => {
    const cwd = folder({
      'outside.drill': sound, 'work/package.json': '{}', 'work/top.drill': 'let wide = 7\n', 'work/in/names.drill': 'let wide = 7\n',
      'work/in/deep/more.drill': 'let wide = 7\n', 'work/in/a.drill': reads(imported),
    });
    symlinkSync('../../outside.drill', join(cwd, 'work/in/leads-out.drill'));
    symlinkSync('../top.drill', join(cwd, 'work/in/leads-in.drill'));
    const { files: [file] } = JSON.parse((await halfturn(cwd, ['check', 'work/in/a.drill', '--level', 'warning', '--format', 'json'])).out);
    expect(file.problems.map((problem: { code: string }) => problem.code)).toEqual(found);
  });

  test.each<[what: string, files: Record<string, string>, path: string]>([
    ['the nearest project', { 'package.json': '', 'in/halfturn.json': '', 'in/deep/a.drill': '' }, 'deep/a.drill'],
    ['a project further up', { 'package.json': '', 'in/deep/a.drill': '' }, 'in/deep/a.drill'],
  ])('are looked for from %s', (_, files, path) => {
    const cwd = folder(files);
    expect(workspaceOf(join(cwd, 'in/deep/a.drill')).path).toBe(path);
  });

  test('standard input has none', async () => {
    const told = await halfturn(folder({ 'names.drill': sound }), ['check', '-', '--level', 'error'], { input: reads('names.drill') });
    expect(told.out).toContain('error outside-workspace');
  });
});
