import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readFileSync, readdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inThreads } from '../../server/many/threads.ts';
import { partOf } from '../../server/many/shard.ts';
import { broken, folder, halfturn, misspelt, sound } from './halfturn.ts';

const mixed = {
  'a.drill': sound, 'b.drill': broken, 'c.drill': misspelt, 'in/d.drill': `${sound}${sound.replace('Two', 'Other')}`, 'in/e.drill': new Uint8Array([0xff]),
  'in/f.drill': sound, 'sizes.drill': 'let wide = 4\n', 'halfturn.json': '{ "severity": { "unused-nam": "off" } }',
};

describe('the parts of some files', () => {
  const names = fc.uniqueArray(fc.string({ minLength: 1 }), { maxLength: 40 });
  const parts = (all: readonly string[], n: number) => Array.from({ length: n }, (_, index) => partOf(all, `${index + 1}/${n}`));

  test('are disjoint, are all of them, and differ by one file at most', () => {
    fc.assert(fc.property(names, fc.integer({ min: 1, max: 12 }), (all, n) => {
      const found = parts(all, n);
      expect(found.flat().sort()).toEqual([...all].sort());
      const sizes = found.map((part) => part.length);
      expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
    }));
  });

  test('do not hang on the order in which they are named', () => {
    fc.assert(fc.property(names.chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))), ([all, shuffled]) => {
      expect(parts(shuffled, 3)).toEqual(parts(all, 3));
    }));
  });

  test('check what the whole checks', async () => {
    const cwd = folder(mixed);
    const files = async (more: string[]): Promise<string[]> =>
      JSON.parse((await halfturn(cwd, ['check', '.', '--format', 'json', ...more])).out).files.map(({ file }: { file: string }) => file);
    expect((await Promise.all(['1/3', '2/3', '3/3'].map((part) => files(['--shard', part])))).flat().sort()).toEqual(await files([]));
  });

  test('may be empty', async () => {
    expect(await halfturn(folder({ 'a.drill': sound }), ['check', '.', '--shard', '2/2'])).toEqual({ status: 0, out: '', err: '' });
  });
});

describe('the same bytes and the same status with any number of threads, whatever is wrong with some files', () => {
  test.each([
    [['check', '.']], [['check', '.', '--format', 'json']], [['check', '.', '--format', 'sarif']],
    [['measure', '.']], [['measure', '.', '--format', 'csv']], [['measure', '.', '--format', 'json']],
  ])('%j', async (words) => {
    const cwd = folder(mixed);
    const [one, four] = [await halfturn(cwd, [...words, '--jobs', '1']), await halfturn(cwd, [...words, '--jobs', '4'])];
    expect(four).toEqual(one);
    expect([one.status, one.err.includes('in/e.drill cannot be read: it is not text in UTF-8.')]).toEqual([2, true]);
  });

  test.each(['svg', 'png'])('draw .%s', async (format) => {
    const cwd = folder(mixed);
    const draw = (jobs: string) => halfturn(cwd, ['draw', '.', '-o', `out${jobs}/`, '--format', format, '--jobs', jobs]);
    const [one, four] = [await draw('1'), await draw('4')];
    expect(four.err.replaceAll('out4', 'out1')).toBe(one.err);
    const pictures = (jobs: string) => readdirSync(join(cwd, `out${jobs}`), { recursive: true, encoding: 'utf8' }).sort();
    expect(pictures('4')).toEqual(pictures('1'));
    expect(pictures('1')).toEqual(['a', 'b', 'c', 'in', 'in/d-1', 'in/d-2', 'in/f'].map((name) => (name === 'in' ? name : `${name}.${format}`)).sort());
    for (const name of pictures('1').filter((each) => each !== 'in')) {
      expect(readFileSync(join(cwd, 'out4', name)).equals(readFileSync(join(cwd, 'out1', name)))).toBe(true);
    }
  });
});

describe('draw into a folder', () => {
  test.each<[what: string, words: string[], out: string, err: string, drawn: string[]]>([
    ['that is there', ['a.drill', '-o', 'pictures'], '1 drawing in pictures\n', '', ['a.svg']],
    ['that is not', ['in', '-o', 'new/deep/', '--format', 'html'], '2 drawings in new/deep/\n', '', ['b.html', 'c.html']],
    ['arranged as the drills are', ['.', '-o', 'new/'], '3 drawings in new/\n', '', ['a.svg', 'in/b.svg', 'in/c.svg']],
    ['once a name', ['a.drill', 'a.txt', '-o', 'new'.concat('/')], '2 drawings in new/\n', '', ['a.svg', 'a.txt.svg']],
  ])('%s', async (_, words, out, err, drawn) => {
    const cwd = folder({ 'a.drill': sound, 'a.txt': sound, 'in/b.drill': sound, 'in/c.drill': sound });
    mkdirSync(join(cwd, 'pictures'));
    const target = words[words.indexOf('-o') + 1]!;
    expect(await halfturn(cwd, ['draw', ...words])).toEqual({ status: 0, out, err });
    expect(readdirSync(join(cwd, target), { recursive: true, encoding: 'utf8', withFileTypes: true }).filter((each) => each.isFile()).length).toBe(drawn.length);
    for (const name of drawn) expect(readFileSync(join(cwd, target, name)).length).toBeGreaterThan(1000);
  });

  test('never draws two drills into one picture', async () => {
    const cwd = folder({ 'a.drill': `${sound}${sound.replace('Two', 'Other')}`, 'a-1.drill': sound });
    const told = await halfturn(cwd, ['draw', '.', '-o', 'new/']);
    expect(told).toEqual({
      status: 2, out: '2 drawings in new/\n', err: 'halfturn: new/a-1.svg is drawn already, from another file; give one of them another name.\n',
    });
  });
});

test.each([['1'], ['2']])('Ctrl-C ends a long run with %s at work: said, with status 130, and every picture whole', async (jobs) => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const cwd = folder(Object.fromEntries(Array.from({ length: 400 }, (_, index) => [`${index}.drill`, sound])));
  const words = [join(root, 'server/cli.ts'), 'draw', '.', '-o', 'out/', '--jobs', jobs];
  const child = spawn(join(root, 'node_modules/.bin/node'), words, { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
  const said = { out: '', err: '' };
  child.stdout.on('data', (data) => (said.out += String(data)));
  child.stderr.on('data', (data) => (said.err += String(data)));
  const some = setInterval(() => {
    if (!readdirSync(cwd).includes('out') || readdirSync(join(cwd, 'out')).length < 4) return;
    clearInterval(some);
    child.kill('SIGINT');
  }, 5);
  const [status] = await once(child, 'close');
  expect([status, said.out]).toEqual([130, '']);
  expect(said.err).toMatch(/^halfturn: stopped after \d+ of 400 files\.\n$/);
  const pictures = readdirSync(join(cwd, 'out'));
  expect(pictures.length).toBeLessThan(400);
  for (const name of pictures) expect(readFileSync(join(cwd, 'out', name), 'utf8')).toMatch(/^<svg [^]*<\/svg>\n$/);
  expect(Number(/\d+/.exec(said.err)![0])).toBe(pictures.length);
});

test('a thread that breaks loses the file it had in hand, and no other', async () => {
  const cwd = folder({
    'worker.mjs': `import { parentPort } from 'node:worker_threads';
      parentPort.on('message', (item) => {
        if (item === 'c') throw new Error('broken');
        parentPort.postMessage({ out: item, undone: [] });
      });`,
  });
  const found: string[] = [];
  await inThreads({
    items: ['a', 'b', 'c', 'd', 'e'], threads: 2, program: pathToFileURL(join(cwd, 'worker.mjs')),
    orders: { job: { name: 'measure', options: { format: 'text', cwd } }, cwd },
    done: (index, { out, undone }) => (found[index] = out || undone.join(' ')), stopped: new AbortController().signal,
  });
  expect(found).toEqual(['a', 'b', 'c is left out; this should not happen: broken.', 'd', 'e']);
});

test('a link to nothing is told, and stops nothing', async () => {
  const cwd = folder({ 'a.drill': sound });
  symlinkSync('gone', join(cwd, 'b.drill'));
  expect(await halfturn(cwd, ['check', '.', '--jobs', '2'])).toEqual({
    status: 2, out: 'No problems in 1 file, but 1 other thing went wrong.\n', err: 'halfturn: b.drill cannot be read: there is no such file or folder.\n',
  });
});
