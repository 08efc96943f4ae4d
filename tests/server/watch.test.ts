import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { runHalfturn } from '../../server/command-line.ts';
import { broken, folder, halfturn, misspelt, sound } from './halfturn.ts';

interface Watching {
  /** Comes back when something like this has been said since the last time. */
  readonly says: (wanted: RegExp | string) => Promise<void>;
  readonly stop: () => Promise<number>;
}

/** Runs `watch` in this process, up to where it waits for changes. */
async function watching(cwd: string, ...words: string[]): Promise<Watching> {
  let said = '';
  let wake = (): void => {};
  let interrupt = (): void => {};
  const hear = (text: string): void => {
    said += text;
    wake();
  };
  const ended = runHalfturn(['watch', ...words], {
    cwd, out: hear, err: hear, input: async () => new Uint8Array(), colour: false, watched: false, program: new URL('../../server/cli.ts', import.meta.url),
    onInterrupt: (stop) => {
      interrupt = stop;
      return () => {};
    },
  });
  const stop = (): Promise<number> => {
    interrupt();
    return ended;
  };
  onTestFinished(async () => void (await stop()));
  const says = async (wanted: RegExp | string): Promise<void> => {
    for (;;) {
      const at = typeof wanted === 'string' ? said.indexOf(wanted) : said.search(wanted);
      if (at >= 0) {
        const line = said.indexOf('\n', at);
        said = said.slice(line + 1);
        return;
      }
      await new Promise<void>((resolve) => (wake = resolve));
    }
  };
  await says('Ctrl-C ends it.');
  return { says, stop };
}

test('a file is checked again whenever it is saved, whatever is in it', async () => {
  const cwd = folder({ 'a.drill': sound });
  const { says, stop } = await watching(cwd, 'a.drill');
  const file = join(cwd, 'a.drill');
  for (const [text, wanted] of [
    [misspelt, '1 error in a.drill, checked in'], [broken, 'error syntax'], ['', 'No problems in a.drill'], ['drill "', 'error syntax'],
    [new Uint8Array([0xff]), 'a.drill cannot be read: it is not text in UTF-8.'], [sound, /No problems in a\.drill, checked in \d+ ms\.\n/],
  ] as const) {
    writeFileSync(file, text);
    await says(wanted);
  }
  expect(await stop()).toBe(0);
});

test('a file may go, come back, and be put in place by another name', async () => {
  const cwd = folder({ 'a.drill': sound, 'elsewhere/a': misspelt });
  const { says } = await watching(cwd, 'a.drill');
  rmSync(join(cwd, 'a.drill'));
  await says('a.drill is gone.');
  writeFileSync(join(cwd, 'a.drill'), sound);
  await says('No problems in a.drill');
  renameSync(join(cwd, 'elsewhere/a'), join(cwd, 'a.drill'));
  await says('1 error in a.drill');
});

test('of quick saves the newest wins, and its picture with it', async () => {
  const cwd = folder({ 'a.drill': sound });
  const { says } = await watching(cwd, 'a.drill', '-o', 'a.svg');
  for (let save = 1; save <= 50; save += 1) writeFileSync(join(cwd, 'a.drill'), sound.replace('Two', `Save ${save}`));
  for (;;) {
    await says(/a\.svg drawn in \d+ ms\.\n/);
    if (readFileSync(join(cwd, 'a.svg'), 'utf8').includes('>Save 50<')) break;
  }
  expect(readdirSync(cwd).sort()).toEqual(['a.drill', 'a.svg']);
});

test('a change of an imported file checks those that import it, also by way of another, and also when it comes into being', async () => {
  const cwd = folder({
    'package.json': '{}', 'in/a.drill': `import "../sizes.drill"\n${sound}`.replace('12 x 12', 'wide x wide'), 'in/b.drill': sound, 'sizes.drill': 'import "more.drill"\nlet wide = more\n',
  });
  const { says } = await watching(cwd, 'in');
  writeFileSync(join(cwd, 'more.drill'), 'let more = 12\n');
  await says('No problems in in/a.drill');
  writeFileSync(join(cwd, 'sizes.drill'), 'let broad = 12\n');
  await says('error unknown-name');
  writeFileSync(join(cwd, 'sizes.drill'), 'let wide = 12\n');
  await says('No problems in in/a.drill');
  rmSync(join(cwd, 'sizes.drill'));
  await says('error missing-import');
});

test('a folder: files come, change and go in it, and its pictures are kept', async () => {
  const cwd = folder({ 'in/a.drill': sound });
  const { says } = await watching(cwd, 'in', '-o', 'out/', '--format', 'html');
  mkdirSync(join(cwd, 'in/deep'));
  writeFileSync(join(cwd, 'in/deep/b.drill'), `${sound}${sound.replace('Two', 'Other')}`);
  await says(/No problems in in\/deep\/b\.drill, checked in \d+ ms; 2 drawings in out\/ drawn in \d+ ms\./);
  expect(readdirSync(join(cwd, 'out'), { recursive: true }).sort()).toEqual(['a.html', 'deep', 'deep/b-1.html', 'deep/b-2.html']);
  writeFileSync(join(cwd, 'in/a.drill'), misspelt);
  await says('1 error in in/a.drill');
  rmSync(join(cwd, 'in/deep'), { recursive: true });
  await says('in/deep/b.drill is gone.');
});

test('settings that change are seen', async () => {
  const cwd = folder({ 'in/a.drill': sound.replace('ball at', 'let spare = 3\n  ball at') });
  const { says } = await watching(cwd, 'in');
  writeFileSync(join(cwd, 'halfturn.json'), '{ "severity": { "unused-name": "error" } }');
  await says('1 error in in/a.drill');
  writeFileSync(join(cwd, 'in/halfturn.json'), '{ "severity": { "unused-nam": "off" } }');
  await says(/1 hint in in\/a\.drill[^]*halfturn\.json:1:17: There is no problem with the code `unused-nam`; did you mean `unused-name`\?/);
});

test('a picture that cannot be written is told, and nothing ends', async () => {
  const cwd = folder({ 'a.drill': sound, 'out': 'a file' });
  const { says } = await watching(cwd, 'a.drill', '-o', 'out/a.svg');
  writeFileSync(join(cwd, 'a.drill'), misspelt);
  await says(/1 error in a\.drill, checked in \d+ ms; The folder out cannot be made: it is there already\.\n/);
  rmSync(join(cwd, 'out'));
  writeFileSync(join(cwd, 'a.drill'), sound);
  await says('out/a.svg drawn in');
});

test('Ctrl-C ends it as a process', async () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const child = spawn(join(root, 'node_modules/.bin/node'), [join(root, 'server/cli.ts'), 'watch', 'a.drill'], { cwd: folder({ 'a.drill': sound }) });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (data) => {
      said += String(data);
      if (String(data).includes('Ctrl-C ends it.')) child.kill('SIGINT');
    });
  }
  const [status] = await once(child, 'close');
  expect([status, said.replace(/\d+ ms/, '1 ms')]).toEqual([0, 'No problems in a.drill, checked in 1 ms.\nWatching a.drill; Ctrl-C ends it.\nNo longer watching.\n']);
});

test.each<[words: string[], sentence: string]>([
  [['none.drill'], 'none.drill cannot be read: there is no such file or folder.'],
  [['.', '-o', 'a.svg'], 'a.svg is one picture, and there may be more to draw: halfturn watch FOLDER -o FOLDER/'],
  [['a.drill', '-o', 'a.pdf'], 'a.pdf must end in .svg, .png, .html or .gif.'],
  [['a.drill', '--format', 'png'], '--format is for -o FOLDER/; the ending of a picture says which kind it is.'],
])('%j is refused', async (words, sentence) => {
  expect(await halfturn(folder({ 'a.drill': sound }), ['watch', ...words])).toEqual({ status: 2, out: '', err: `halfturn: ${sentence}\n` });
});
