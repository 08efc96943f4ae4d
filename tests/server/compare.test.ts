import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { folder, halfturn, sound, type Told } from './halfturn.ts';

const wider = sound.replace('8 right of Base', '9 right of Base');
const wall = 'Wall stands at (11, 6), was at (10, 6): 1 m to the right';
const other = sound.replace('"Two"', '"Other"').replace('Base passes to Wall', 'Base passes to Wall, firm');
const said = (out: string): Told => ({ status: 0, out, err: '' });
const refusal = (err: string): Told => ({ status: 2, out: '', err: `halfturn: ${err}\n` });

describe('two files', () => {
  test('the facts are printed', async () => {
    const { status, out, err } = await halfturn(folder({ 'a.drill': sound, 'b.drill': wider }), ['compare', 'a.drill', 'b.drill']);
    expect([status, err]).toEqual([0, '']);
    expect(out.split('\n').slice(0, 5)).toEqual([
      'b.drill', '  Two', `    > ${wall}.`, '    ~ Pass 1, Base to Wall: 1 m longer (9 m, was 8); Wall has 1.6 s in hand, had 1.5 s.', '    ~ Pass 2, Wall to Base: 1 m longer (9 m, was 8); Base has 4.5 s in hand, had 4.2 s.',
    ]);
  });
  test('the same says so', async () => {
    expect(await halfturn(folder({ 'a.drill': sound, 'b.drill': sound }), ['compare', 'a.drill', 'b.drill'])).toEqual(said('Nothing changed.\n'));
  });
  test('names cannot steer the terminal', async () => {
    const { out } = await halfturn(folder({ 'a.drill': sound, 'b.drill': sound.replace('"Two"', '"T\u001b[31mwo"') }), ['compare', 'a.drill', 'b.drill']);
    expect(out).toContain('T\ufffd[31mwo');
  });
});

describe('what is written', () => {
  const written = async (name: string, more: readonly string[] = [], after = wider + other): Promise<{ readonly cwd: string; readonly text: string }> => {
    const cwd = folder({ 'a.drill': sound + sound.replace('"Two"', '"Other"'), 'b.drill': after });
    expect(await halfturn(cwd, ['compare', 'a.drill', 'b.drill', '-o', name, ...more])).toMatchObject({ status: 0, out: '' });
    return { cwd, text: readFileSync(join(cwd, name), 'utf8') };
  };
  const parsed = (svg: string): void => {
    const parser = new SaxesParser({ xmlns: true });
    parser.on('error', (error) => {
      throw error;
    });
    parser.write(svg).close();
  };

  test('.html has both drills, its policy, and nothing from elsewhere', async () => {
    const { text } = await written('out.html');
    expect([...(/<select id="drill".*?<\/select>/.exec(text)?.[0] ?? '').matchAll(/<option value="\d">([^<]*)/g)].map(([, name]) => name)).toEqual(['Two', 'Other']);
    expect(text).toMatch(/^<!doctype html>[^]*default-src 'none'[^]*<\/html>\n$/);
    expect(text.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:\/\//);
    expect(text).toContain(`<li class="moved">${wall}.</li>`);
  });
  test('.md links to pictures that are there and whole', async () => {
    const { cwd, text } = await written('out of town.md');
    const links = [...text.matchAll(/!\[[^\]]*\]\(([^)]*)\)/g)].map(([, link]) => decodeURIComponent(link!));
    expect(links).toEqual(['out of town/two.svg', 'out of town/other.svg']);
    for (const link of links) parsed(readFileSync(join(cwd, link), 'utf8'));
    expect(text).toContain(`- ➡️ ${wall}.\n`);
    expect(readdirSync(cwd).sort()).toEqual(['a.drill', 'b.drill', 'out of town', 'out of town.md']);
  });
  test('.svg is one picture, over each other or side by side', async () => {
    const [over, beside] = [await written('a.svg', [], wider), await written('a.svg', ['--beside', '--theme', 'print', '--drill', 'Two'])];
    for (const { text } of [over, beside]) parsed(text);
    expect(over.text).toContain('Before, where it differs');
    expect(beside.text.match(/>(BEFORE|NOW)</g)).toEqual(['>BEFORE<', '>NOW<']);
  });
  test('.svg of several drills says that there are more', async () => {
    const cwd = folder({ 'a.drill': sound + sound.replace('"Two"', '"Other"'), 'b.drill': wider + other });
    expect((await halfturn(cwd, ['compare', 'a.drill', 'b.drill', '-o', 'a.svg'])).err).toBe('halfturn: a.svg shows “Two”; 1 more drill changed: name one with --drill, or write .html.\n');
  });
  test('.svg of a game says which phase it shows, and which others changed', async () => {
    const rondo = readFileSync(new URL('../../shared/examples/rondo.drill', import.meta.url), 'utf8');
    const cwd = folder({ 'a.drill': rondo, 'b.drill': rondo.replace('(4, 4)', '(3, 3)').replace('(6.5, 6)', '(7, 7)') });
    const both = 'halfturn: a.svg shows the phase “Round the outside”; “Between the two” changed too: name one with --phase, or write .html.\n';
    expect((await halfturn(cwd, ['compare', 'a.drill', 'b.drill', '-o', 'a.svg'])).err).toBe(both);
    expect((await halfturn(cwd, ['compare', 'a.drill', 'b.drill', '-o', 'a.svg', '--phase', 'Between the two'])).err).toContain('a.svg shows the phase “Between the two”; “Round the outside” changed too');
    expect(readFileSync(join(cwd, 'a.svg'), 'utf8')).toContain('>Phase: Between the two</text>');
  });
  test('.json has the facts and the values of both versions', async () => {
    const { files } = JSON.parse((await written('a.json')).text) as { readonly files: readonly { readonly file: string; readonly subjects: readonly { readonly values: object; readonly facts: readonly { readonly sentence: string }[] }[] }[] };
    expect(files.map(({ file, subjects }) => [file, subjects.length, subjects[0]!.facts[0]!.sentence])).toEqual([['b.drill', 2, `${wall}.`]]);
    expect(files[0]!.subjects[0]!.values).toMatchObject({ before: { 'station Wall/across': 10 }, after: { 'station Wall/across': 11 } });
  });
  test.each(['.svg', '.md', '.html', '.json'])('%s of the same is written as well', async (ending) => {
    const same = sound + sound.replace('"Two"', '"Other"');
    expect((await written(`a${ending}`, [], same)).text).toMatch(ending === '.json' ? /"files": \[\]/ : /Nothing/);
  });
  test('mark-up in a name stays a name', async () => {
    const hostile = wider.replace('"Two"', '"<img src=x onerror=alert(1)> [x](http://x) @all | `"');
    expect((await written('out.html', [], hostile)).text).not.toMatch(/<img|onerror=alert\(1\)>/);
    const { text } = await written('out.md', [], hostile);
    expect(text).toContain('\\<img src=x onerror=alert(1)\\> \\[x\\](http://x) @\u200ball \\| \\`');
  });
});

describe('two folders', () => {
  test('are matched by path, then by the names of drills', async () => {
    const cwd = folder({ 'old/a.drill': sound, 'old/same.drill': sound, 'old/b.drill': other, 'new/a.drill': wider, 'new/same.drill': sound, 'new/deep/c.drill': other.replace('8 right', '7 right') });
    const { out } = await halfturn(cwd, ['compare', 'old', 'new']);
    expect(out.split('\n').filter((line) => /^\S/.test(line))).toEqual(['a.drill', 'b.drill → deep/c.drill']);
  });
  test('an empty folder is the state before the first drill', async () => {
    const cwd = folder({ 'old/readme.txt': '', 'new/a.drill': sound });
    expect((await halfturn(cwd, ['compare', 'old', 'new'])).out).toBe('a.drill\n  Two\n    + The drill “Two” is new.\n');
  });
});

describe('refusals', () => {
  const cwd = () => folder({ 'a.drill': sound, 'b.drill': sound, 'f/a.drill': sound });
  test.each([
    ['one file', ['a.drill'], 'Write it as: halfturn compare OLD NEW, or halfturn compare --git BASE..HEAD [PATH…]'],
    ['a file and a folder', ['a.drill', 'f'], 'Compare two files or two folders: f is a folder, a.drill is not.'],
    ['nothing there', ['a.drill', 'x.drill'], 'x.drill cannot be read: there is no such file or folder.'],
    ['another ending', ['a.drill', 'b.drill', '-o', 'x.pdf'], 'x.pdf must end in .html, .md, .svg or .json.'],
    ['a drill that is not there', ['a.drill', 'b.drill', '--drill', 'Tow'], 'There is no “Tow” in what is compared; did you mean “Two”?'],
    ['a driver without its words', ['--driver', 'a', 'b'], '--driver takes what git gives an external diff: PATH OLD-FILE OLD-HEX OLD-MODE NEW-FILE NEW-HEX NEW-MODE'],
  ])('%s', async (_, words, err) => {
    expect(await halfturn(cwd(), ['compare', ...words])).toEqual(refusal(err));
  });
});

// ---------------------------------------------------------------- git

const root = fileURLToPath(new URL('../..', import.meta.url));
const own = `'${process.execPath}' '${join(root, 'server/cli.ts')}'`;

/** A repository with a branch `main` and a branch `change` on top of it. */
function repository(main: Readonly<Record<string, string>>, change: Readonly<Record<string, string | null>>): { readonly cwd: string; readonly git: (...words: readonly string[]) => string } {
  const cwd = folder(main);
  const env = { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1', GIT_PAGER: 'cat' };
  const git = (...words: readonly string[]) => execFileSync('git', ['-c', 'user.name=Coach', '-c', 'user.email=coach@example.org', ...words], { cwd, encoding: 'utf8', env });
  git('init', '-q', '-b', 'main');
  git('add', '-A');
  git('commit', '-qm', 'Begin');
  git('switch', '-qc', 'change');
  for (const [name, text] of Object.entries(change)) {
    if (text === null) rmSync(join(cwd, name));
    else writeFileSync(join(cwd, name), text);
  }
  git('add', '-A');
  git('commit', '-qm', 'Change');
  return { cwd, git };
}

describe('git', () => {
  const lets = (wide: number) => `let wide = ${wide}\n`;
  const leaning = `import "lets.drill"\n${sound.replace('8 right of Base', 'wide right of Base')}`;

  test.each([['main..change'], ['main...change'], ['main..'], ['main']])('%s gives the page of the changed drill', async (range) => {
    const { cwd } = repository({ 'drills/a.drill': sound, 'drills/b.drill': other }, { 'drills/a.drill': wider });
    expect(await halfturn(join(cwd, 'drills'), ['compare', '--git', range, '-o', 'out.html'])).toEqual(said(''));
    const page = readFileSync(join(cwd, 'drills/out.html'), 'utf8');
    expect(page).toContain(`${wall}.`);
    expect(page).toContain(`Before: main. Now: ${range === 'main' ? 'the working tree' : range === 'main..' ? 'HEAD' : 'change'}.`);
    expect(page).not.toContain('Other');
  });
  test('what is not committed is compared with the last commit', async () => {
    const { cwd } = repository({ 'a.drill': sound }, { 'b.drill': other });
    writeFileSync(join(cwd, 'a.drill'), wider);
    writeFileSync(join(cwd, 'new.drill'), sound.replace('"Two"', '"New"'));
    const { out } = await halfturn(cwd, ['compare', '--git', 'HEAD']);
    expect(out.split('\n').filter((line) => /^\S|is new|stands/.test(line))).toEqual(['a.drill', `    > ${wall}.`, 'new.drill', '    + The drill “New” is new.']);
  });
  test('imports are those of their revision, also where only they changed', async () => {
    const { cwd } = repository({ 'a.drill': leaning, 'lets.drill': lets(8) }, { 'lets.drill': lets(9) });
    const { out } = await halfturn(cwd, ['compare', '--git', 'main..change', 'a.drill']);
    expect(out).toContain('Wall stands at (11, 6), was at (10, 6): 1 m to the right.');
    expect(out).not.toContain('problem');
  });
  test('a file that was renamed or removed', async () => {
    const { cwd } = repository({ 'a.drill': sound, 'b.drill': other }, { 'a.drill': null, 'c.drill': wider, 'b.drill': null });
    const { out } = await halfturn(cwd, ['compare', '--git', 'main..change']);
    expect(out.split('\n').filter((line) => /^\S/.test(line))).toEqual(['a.drill → c.drill', 'b.drill']);
  });
  test.each([
    ['a revision nobody knows', ['nope..change'], 'git knows no revision nope.'],
    ['a revision that looks like an option', ['--output=x..change'], 'git knows no revision --output=x.'],
    ['a path without drills', ['main..change', 'f'], 'There is no .drill file at f, neither in main nor in change.'],
  ])('%s', async (_, [range, ...paths], err) => {
    const { cwd } = repository({ 'a.drill': sound }, { 'a.drill': wider });
    expect(await halfturn(cwd, ['compare', `--git=${range}`, ...paths])).toEqual(refusal(err));
  });
  test('no repository', async () => {
    const cwd = folder({ 'a.drill': sound });
    expect(await halfturn(cwd, ['compare', '--git', 'main'])).toEqual(refusal(`This is not inside a git repository: ${cwd}`));
  });

  test('git diff shows the readable form through the driver', () => {
    const { git } = repository({ 'a.drill': leaning, 'lets.drill': lets(8), '.gitattributes': '*.drill diff=halfturn\n' }, { 'a.drill': leaning.replace('Base passes to Wall', 'Base passes to Wall, firm') });
    git('config', 'diff.halfturn.textconv', `${own} compare --textconv`);
    const changed = git('diff', 'main..change').split('\n').filter((line) => /^[-+] /.test(line));
    expect(changed.slice(0, 3)).toEqual(['-    Base passes to Wall', '+    Base passes to Wall, firm', expect.stringMatching(/^- {2}ball from Base to Wall, length 8 m,/)]);
    expect(changed.join()).not.toContain('missing-import');
  });
  test('git diff shows the facts through the external diff', () => {
    const { git } = repository({ 'a.drill': sound, '.gitattributes': '*.drill diff=halfturn\n' }, { 'a.drill': wider, 'b.drill': other });
    git('config', 'diff.halfturn.command', `${own} compare --driver`);
    const shown = git('diff', 'main..change').split('\n').filter((line) => /^\S|stands|is new/.test(line));
    expect(shown).toEqual(['a.drill', `    > ${wall}.`, 'b.drill', '    + The drill “Other” is new.']);
  });
});

test('one file as lines: what cannot be read says so, what is not there is refused', async () => {
  const cwd = folder({ 'a.drill': sound, 'b.drill': new Uint8Array([0xff, 0xfe]) });
  expect((await halfturn(cwd, ['compare', '--textconv', 'a.drill'])).out).toMatch(/^drill “Two”\n {2}age U13, players 2,[^]*\n {4}Base passes to Wall\n[^]*\n {2}balls to carry out: 1\n/);
  expect(await halfturn(cwd, ['compare', '--textconv', 'b.drill'])).toEqual(said('b.drill cannot be read: it is not text in UTF-8.\n'));
  expect(await halfturn(cwd, ['compare', '--textconv', 'c.drill'])).toEqual(refusal('c.drill cannot be read: there is no such file or folder.'));
});

test('the pictures that the comment names lie beside it wherever it is written', async () => {
  const cwd = folder({ 'a.drill': sound, 'b.drill': wider, 'out/keep.txt': '' });
  await halfturn(cwd, ['compare', 'a.drill', 'b.drill', '-o', 'out/c.md']);
  const path = join(cwd, 'out/c.md');
  const link = /\]\(([^)]*\.svg)\)/.exec(readFileSync(path, 'utf8'))?.[1] ?? '';
  expect(existsSync(resolve(dirname(path), link))).toBe(true);
});
