import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileNameFor, legalFileName } from '../../shared/file-names.ts';
import { folder, halfturn, sound } from './halfturn.ts';

test.each([
  ['Fünf gegen zwei: rondo', 'fünf-gegen-zwei-rondo'],
  ['Fu\u0308nf', 'fünf'],
  ['Ångström', 'ångström'],
  ['4 v 2 (8 × 8 m)', '4-v-2-8-8-m'],
  ['Ромашка', 'ромашка'],
  ['パス＆ゴー', 'パス-ゴー'],
  ['تمرير', 'تمرير'],
  ['हिन्दी', 'हिन्दी'],
  ['CON', 'con_'],
  ['com1', 'com1_'],
  ['Console', 'console'],
  ['??? 🙂', 'drill'],
  ['../../etc', 'etc'],
])('a file for %j is called %j', (title, name) => expect(fileNameFor(title, 'drill')).toBe(name));

test.each([
  ['Tuesday, 4 v 2', 'Tuesday, 4 v 2'],
  ['4:2 or 5/3?', '4-2 or 5-3-'],
  ['Fu\u0308nf', 'Fünf'],
  ['Nul', 'Nul_'],
  ['aux.v2', 'aux_.v2'],
  ['End. ', 'End'],
])('a file like %j is called %j', (name, legal) => expect(legalFileName(name)).toBe(legal));

/** Microsoft, Naming Files, Paths, and Namespaces; POSIX forbids `/` and NUL; 255 is the longest name of NTFS, APFS and ext4. */
const isLegal = (name: string): boolean => !/[<>:"/\\|?*\p{Cc}]|[. ]$/u.test(name) && !/^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/i.test(name)
  && name !== '' && Buffer.byteLength(name) <= 200 && name === name.normalize('NFC');

test('any title gives a legal name, and the same one again', () => {
  const devices = fc.constantFrom('con', 'NUL', 'Lpt9', 'aux.', 'COM¹', 'prn.txt');
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'grapheme', maxLength: 300 }), fc.string({ unit: 'binary', maxLength: 300 }), devices), (title) => {
    for (const name of [fileNameFor(title, 'drill'), legalFileName(title)]) expect([name, isLegal(name)]).toEqual([name, true]);
    expect(legalFileName(legalFileName(title))).toBe(legalFileName(title));
    expect(fileNameFor(title.normalize('NFD'), 'drill')).toBe(fileNameFor(title.normalize('NFC'), 'drill'));
  }));
});

describe('pictures', () => {
  test('of a comparison are called like their drills, whatever else changed', async () => {
    const named = (name: string, text = sound) => text.replace('"Two"', `"${name}"`);
    const wider = sound.replace('8 right', '9 right');
    const cwd = folder({
      'a.drill': named('Fünf') + named('Con') + named('Wall'), 'b.drill': named('Fünf', wider) + named('Con', wider) + named('Wall'),
      'c.drill': named('Fünf') + named('Con', wider) + named('Wall'),
    });
    await halfturn(cwd, ['compare', 'a.drill', 'b.drill', '-o', 'b.md']);
    await halfturn(cwd, ['compare', 'a.drill', 'c.drill', '-o', 'c.md']);
    expect(readdirSync(join(cwd, 'b')).sort()).toEqual(['con_.svg', 'fünf.svg']);
    expect(readdirSync(join(cwd, 'c'))).toEqual(['con_.svg']);
    for (const [, link] of readFileSync(join(cwd, 'b.md'), 'utf8').matchAll(/!\[[^\]]*\]\(([^)]*)\)/g)) expect(existsSync(join(cwd, decodeURIComponent(link!)))).toBe(true);
  });
  test('of a folder are called like their files, where these are legal everywhere', async () => {
    const cwd = folder({ 'drills/Fu\u0308nf gegen 2.drill': sound, 'drills/U9: first/4?2.drill': sound });
    await halfturn(cwd, ['draw', 'drills', '-o', 'out/']);
    expect(readdirSync(join(cwd, 'out'), { recursive: true }).map(String).sort()).toEqual(['Fünf gegen 2.svg', 'U9- first', join('U9- first', '4-2.svg')]);
  });
});
