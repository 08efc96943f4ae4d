import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { fontsFor, missingWords } from '../../server/fonts.ts';
import { toPdf } from '../../server/pdf.ts';
import { measureWith } from '../../server/writing.ts';
import { drillSheet } from '../../shared/sheet/sheet.ts';
import { poppler } from '../support/poppler.ts';
import { folder, halfturn, inProcess, misspelt, sound } from './halfturn.ts';

const example = (name: string): string => readFileSync(new URL(`../../shared/examples/${name}.drill`, import.meta.url), 'utf8');
const evening = { 'evening.drill': example('tuesday-evening'), 'rondo.drill': example('rondo'), 'diamond.drill': example('diamond') };
const fontFile = (name: string): string => fileURLToPath(new URL(`../../node_modules/@fontsource/${name}`, import.meta.url));
const fonts = {
  hebrew: fontFile('noto-sans-hebrew/files/noto-sans-hebrew-hebrew-400-normal.woff'),
  arabic: fontFile('noto-sans-arabic/files/noto-sans-arabic-arabic-400-normal.woff'),
  chinese: fontFile('noto-sans-sc/files/noto-sans-sc-chinese-simplified-400-normal.woff'),
} as const;

const fifteen = ['Amir', 'Beatriz', 'Chen', 'Dara', 'Emil', 'Finn', 'Gita', 'Hugo', 'Ivo', 'Jon', 'Kim', 'Leo', 'Mia', 'Noor', 'Ole'];

interface Printed {
  readonly path: string;
  readonly err: string;
}

/** The evening's sheet, or that of the text given, in a file of its own. */
async function printed(words: readonly string[] = [], more: { readonly text?: string; readonly names?: readonly string[]; readonly out?: string } = {}): Promise<Printed> {
  const cwd = folder({ ...evening, ...(more.text === undefined ? {} : { 'evening.drill': more.text }), 'names.txt': (more.names ?? []).join('\n') });
  const out = more.out ?? 'sheet.pdf';
  const told = await halfturn(cwd, ['sheet', 'evening.drill', '-o', out, ...(more.names ? ['--names', 'names.txt'] : []), ...words]);
  expect(told.status).toBeLessThan(2);
  return { path: join(cwd, out), err: told.err };
}

/** In the order of the file, which is that of reading. */
const textOf = (path: string): string => poppler('pdftotext', ['-raw', path, '-']).toString('utf8').replaceAll(/\s+/g, ' ');

/** Texts found one behind the other; gives the first that is not. */
function firstMissing(whole: string, texts: readonly string[]): string | null {
  let at = 0;
  for (const text of texts) {
    const found = whole.indexOf(text, at);
    if (found < 0) return text;
    at = found + text.length;
  }
  return null;
}

interface Word {
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly text: string;
}

/** In millimetres. */
function wordsOf(path: string): Word[] {
  const html = poppler('pdftotext', ['-bbox', path, '-']).toString('utf8');
  return html.split('<page ').slice(1).flatMap((page, number) => [...page.matchAll(/xMin="([^"]*)" yMin="([^"]*)" xMax="([^"]*)" yMax="([^"]*)">([^<]*)</g)].map(([, left, top, right, bottom, text]): Word => {
    const mm = (value: string | undefined) => (Number(value) / 72) * 25.4;
    return { page: number + 1, left: mm(left), top: mm(top), right: mm(right), bottom: mm(bottom), text: text ?? '' };
  }));
}

/** Whether a page has ink so many millimetres from its edges, at 50 dots an inch. */
function inkAtEdges(path: string, within: number): boolean[] {
  const dots = Math.floor((within / 25.4) * 50);
  const pages: boolean[] = [];
  let rest = poppler('pdftoppm', ['-r', '50', '-gray', path]);
  while (rest.length > 0) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(rest.subarray(0, 40).toString('latin1')) as RegExpExecArray;
    const [width, height] = [Number(head[1]), Number(head[2])];
    const pixels = rest.subarray(head[0].length, head[0].length + width * height);
    pages.push(pixels.some((grey, index) => {
      const [x, y] = [index % width, Math.floor(index / width)];
      return grey < 250 && (x < dots || y < dots || x >= width - dots || y >= height - dots);
    }));
    rest = rest.subarray(head[0].length + width * height);
  }
  return pages;
}

describe('the text of a session', () => {
  test('is all there, in order', async () => {
    const text = textOf((await printed([], { names: fifteen })).path);
    expect(firstMissing(text, [
      'Tuesday: away, show and use it', 'Make the space, then use it', '15 players', 'Minute', '0–12', '1 Four against two', 'Pause: drinks', '72–80', '5 Talk and clear away',
      'Groups', 'Amir', 'Beatriz', 'Resting, in turn', 'Parts 2 Diamond and 3 Diamond, one touch', 'sore ankle: keeps the score', 'in goal Ole',
      'Kit', 'discs', 'mannequins', 'orange bibs', 'Setting out and changing over', 'Before 1 Four against two: put down', 'After 4 Game: pick up',
      'What it asks of a player', 'Coaching points by corner', 'When was the space there, and who made it?', 'Anchor the goals, also when they are put away', 'Rules of this ground and association',
      '1 Four against two', 'How it starts', 'Amber: 4 players, bibs orange.', 'Amber1 passes to Amber2, firm while Navy1 presses Amber2', 'Rules and scoring', '6 bouts of 1 min 30 s', 'Body open to both sides',
      'Phase: Between the two', 'Phase: Won',
      '2 Diamond', 'Base: 3 players; 9 m across, 2 m up.', 'Base waits for 3 s while Pivot runs to (7, 10)', 'Base to Pivot to Wing to Top to Base', 'Look over the shoulder before the ball is played',
      'Make it harder', 'One touch in the middle (task)', 'New rule for Pivot: at most 1 touch', 'Make it easier', 'Wing stands at (16, 13), was at (15, 13): 1 m to the right.', '1. area: width 18.00 19.7 18', '3. area: diagonal 30.00 32.8 30',
      '4 Game', 'Kit keeps goal for Amber.', 'The goalkeeper talks the back three through it',
    ])).toBeNull();
  });
  test('fills the groups by number without names, and says when there are too many', async () => {
    expect(textOf((await printed()).path)).toContain('6 players: players 1–6');
    const more = await printed([], { names: [...fifteen, 'Pia'] });
    expect(more.err).toMatch(/16 names .*15 players/);
  });
  test('keeps a rule that speaks of bouts, and names the progression that is played', async () => {
    const rule = 'Three bouts of four passes each';
    expect(textOf((await printed([], { text: sound.replace('  sequence', `  rule "${rule}"\n  bouts 2 x 60 s\n  sequence`) })).path)).toContain(rule);
    // In the timetable, and on the page of the part.
    expect(textOf((await printed()).path).split('Diamond, away and show: One touch in the middle')).toHaveLength(3);
  });
  test('is on no more paper with two parts to a page', async () => {
    const pages = async (words: readonly string[]) => Number(/Pages:\s+(\d+)/.exec(poppler('pdfinfo', [(await printed(words)).path]).toString())?.[1]);
    expect(await pages(['--per-page', '2'])).toBeLessThanOrEqual(await pages([]));
  });
});

describe('the file', () => {
  test('has every font embedded, as a subset, with its letters', async () => {
    const [, , ...rows] = poppler('pdffonts', [(await printed(['--font', fonts.hebrew, '--font', fonts.arabic], { names: ['דוד כהן', 'محمد', 'Zoë'], text: crowd(3) })).path]).toString().trim().split('\n');
    expect(rows.length).toBe(4);
    for (const row of rows) expect(row).toMatch(/^[A-Z]{6}\+\S.* yes yes yes /);
  });
  test('is tagged, with a language, a title and bookmarks', async () => {
    const { path } = await printed();
    const info = poppler('pdfinfo', [path]).toString();
    expect(info).toMatch(/Title:\s+Tuesday: away, show and use it/);
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(info).toMatch(/Page size:\s+595\.276 x 841\.89 pts \(A4\)/);
    const structure = poppler('pdfinfo', ['-struct-text', path]).toString();
    expect(structure).toMatch(/^Document/m);
    for (const tag of ['H1', 'H2', 'H3', 'P', 'L', 'LI', 'LBody', 'Table', 'TR', 'TH', 'TD', 'Figure']) expect(structure).toMatch(new RegExp(`^\\s*${tag}\\b`, 'm'));
    expect(structure).toMatch(/H1[^]*?"2 ?Diamond/);
    const bytes = readFileSync(path).toString('latin1');
    expect(bytes).toContain('/Lang (en-GB)');
    for (const name of ['1 Four against two', '2 Diamond', '4 Game']) expect(bytes).toContain(`/Title (${name})`);
    expect(bytes).toMatch(/\/Alt \((?:Four against two|\\376\\377|þÿ)/);
  });
  test('is the same bytes every time', async () => {
    const [a, b] = [await printed([], { names: fifteen }), await printed([], { names: fifteen })].map(({ path }) => readFileSync(path));
    expect(a?.equals(b as Buffer)).toBe(true);
  });
});

const long = 'Donaudampfschifffahrtsgesellschaft'.repeat(6);
const talk = 'Say it before the ball comes and then say it again to whoever stands behind you. '.repeat(30).trim();

/** A session of so many players who do the same, with as long texts as anybody writes. */
function crowd(players: number, words = 'Short'): string {
  return `drill "${words}" {
  age U12
  players ${players}
  area 20 x 20
  station A at (4, 4) holds ${Math.max(1, players - 2)}
  station B at (16, 10)
  station C at (4, 16)
  ball at A
  sequence {
    A passes to B while A follows
    B passes to C while B follows
    C passes to next A while C follows
  }
  point technical "${words}"
  question "${words}"
  note "${words}"
  safety "${words}"
}

session "${words}" {
  players ${players}
  length 30 min
  part "${words}" 30 min of "${words}"
  question "${words}"
}
`;
}

describe('nothing runs off a page', () => {
  test.each<[string, string | undefined, readonly string[], readonly string[]]>([
    ['a whole evening', undefined, fifteen, []],
    ['two parts to a page', undefined, fifteen, ['--per-page', '2']],
    ['three players', crowd(3), ['Ann', 'Bo', 'Cy'], []],
    ['thirty players with long names', crowd(30), Array.from({ length: 30 }, (_, index) => `${long}${index}`), []],
    ['long names of everything', crowd(5, long), [], []],
    ['long texts', crowd(5, talk), [], []],
    ['long texts, two parts to a page', crowd(5, talk), [], ['--per-page', '2']],
  ])('%s', async (_, text, names, words) => {
    const { path } = await printed(words, { ...(text === undefined ? {} : { text }), names });
    const out = wordsOf(path).filter(({ left, top, right, bottom }) => left < 11 || right > 199.5 || top < 11 || bottom > 286);
    expect(out).toEqual([]);
    expect(inkAtEdges(path, 10).filter((ink) => ink)).toEqual([]);
  });
  test('and nothing is cut', async () => {
    const whole = textOf((await printed([], { text: crowd(5, talk) })).path).replaceAll(' ', '');
    const times = whole.split(talk.replaceAll(' ', '')).length - 1;
    // The session's and the part's titles are parted by a repeated head on each page; its question, the drill's point, question, note and safety are whole.
    expect(times).toBeGreaterThanOrEqual(5);
  });
});

describe('other scripts', () => {
  const names = ['דוד כהן', 'نور الدين', '王小明', 'Zoë'];
  const given = ['--font', fonts.hebrew, '--font', fonts.arabic, '--font', fonts.chinese];
  test('are drawn in the fonts given, in the order of reading', async () => {
    const { path, err } = await printed(given, { text: crowd(4), names });
    expect(err).toBe('');
    const used = poppler('pdffonts', [path]).toString();
    for (const name of ['NotoSansHebrew', 'NotoSansArabic', 'NotoSansSC']) expect(used).toContain(name);
    const laid = poppler('pdftotext', ['-layout', path, '-']).toString('utf8').replaceAll(/[\u200e\u200f\u202a-\u202e]/g, '');
    expect(firstMissing(laid, names)).toBeNull();
  });
  test('from right to left', async () => {
    const words = wordsOf((await printed(['--font', fonts.hebrew, '--font', fonts.arabic], { text: crowd(3), names: ['דוד כהן', 'نور الدين', 'Zoë'] })).path);
    const letters = (text: string) => [...text.replaceAll(/[^\p{L}]/gu, '')].sort().join('');
    const at = (text: string) => words.find((word) => letters(word.text) === letters(text))?.left ?? NaN;
    expect(at('דוד')).toBeGreaterThan(at('כהן'));
    // The list itself runs from left to right.
    expect(at('الدين')).toBeGreaterThan(at('דוד'));
    expect(at('Zoë')).toBeGreaterThan(at('الدين'));
  });
  test('that no font has are said, and the rest is printed', async () => {
    const none = fontsFor([], '.', () => []);
    const sheet = drillSheet(analyse(sound.replace('"Two"', '"Two 王 ab"')).drills, 'x', { theme: 'print', convention: 'solid pass', perPage: 1, names: [], problems: [], measure: measureWith(none) });
    const path = join(folder({}), 'a.pdf');
    writeFileSync(path, await toPdf(sheet, none));
    expect(missingWords(none)).toBe('No font here has 王: each is a ? on the sheet. Give a font that has it: --font FILE');
    expect(poppler('pdffonts', [path]).toString().trim().split('\n')).toHaveLength(4);
    expect(wordsOf(path).map(({ text }) => text)).toContain('ab');
  });
});

describe('what it says', () => {
  test('without a session: a sheet of each drill', async () => {
    const { path } = await printed([], { text: `${sound}${sound.replace('"Two"', '"Other"')}` });
    expect(firstMissing(textOf(path), ['1 Two', 'Base passes to Wall', '1 of 2', '2 Other', 'Wall passes to Base', '2 of 2'])).toBeNull();
  });
  test('as a page', async () => {
    const html = readFileSync((await printed([], { out: 'sheet.html', names: fifteen })).path, 'utf8');
    expect(html).toMatch(/^<!doctype html>[^]*<\/html>\n$/);
    expect(html.match(/<article class="page/g)?.length).toBeGreaterThan(4);
    expect(html).toContain('Beatriz');
  });
  test.each<[string, readonly string[], string]>([
    ['a session by its name', ['sheet', 'evening.drill', '-o', 'a.pdf', '--session', 'Tuesday: away, show and use i'], 'halfturn: There is no session “Tuesday: away, show and use i” in evening.drill; did you mean “Tuesday: away, show and use it”?\n'],
    ['where it goes', ['sheet', 'evening.drill'], 'halfturn: Say where the sheet goes: halfturn sheet FILE -o OUT\n'],
    ['which kind', ['sheet', 'evening.drill', '-o', 'a.doc'], 'halfturn: a.doc must end in .pdf or .html.\n'],
    ['names for nobody', ['sheet', 'drill.drill', '-o', 'a.pdf', '--names', 'evening.drill'], 'halfturn: There is no session in drill.drill whose groups the names could fill.\n'],
    ['a font that is none', ['sheet', 'evening.drill', '-o', 'a.pdf', '--font', 'rondo.drill'], 'halfturn: rondo.drill is not a font in TrueType, OpenType or WOFF.\n'],
    ['a font that is not there', ['sheet', 'evening.drill', '-o', 'a.pdf', '--font', 'x.ttf'], 'halfturn: x.ttf cannot be read: there is no such file or folder.\n'],
    ['nothing to print', ['sheet', 'empty.drill', '-o', 'a.pdf'], 'halfturn: There is no session and no drill in empty.drill.\n'],
  ])('%s', async (_, words, err) => {
    const cwd = folder({ ...evening, 'drill.drill': sound, 'empty.drill': '' });
    expect(await halfturn(cwd, words)).toEqual({ status: 2, out: '', err });
    expect(readdirSync(cwd)).not.toContain('a.pdf');
  });
  test('a drill with an error is printed, and said', async () => {
    const told = await halfturn(folder({ 'a.drill': misspelt }), ['sheet', 'a.drill', '-o', 'a.pdf']);
    expect(told).toEqual({ status: 1, out: '', err: 'halfturn: a.pdf is written, with 1 error in it; halfturn check a.drill shows more.\n' });
  });
  test('says that a file it plays from has errors: nobody sees them in this one', async () => {
    const cwd = folder({ 'far.drill': sound.replace('ball at', 'ball at Nowhere\n  ball at'), 'a.drill': 'import "far.drill"\nsession "S" {\n  part "Far" 10 min of "Two"\n}\n' });
    const told = await halfturn(cwd, ['sheet', 'a.drill', '-o', 'a.html']);
    expect(told).toEqual({ status: 1, out: '', err: 'halfturn: a.html plays from far.drill, which has 1 error; halfturn check far.drill shows it.\n' });
  });
  test('as a process of its own', () => {
    expect(inProcess(folder({ 'a.drill': sound }), ['sheet', 'a.drill', '-o', 'a.pdf'])).toEqual({ status: 0, out: '', err: '' });
  });
});
