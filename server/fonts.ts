/** Which font draws which sign: the shipped one, then those the user gives, then those of the machine. */
import { globSync, readFileSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { create, type Font, type Glyph } from 'fontkit';
import type { Weight } from '../shared/font/text.ts';
import { reasonOf, Refusal } from './io.ts';

/** A font under a key of its own. */
export interface Face {
  readonly key: string;
  readonly font: Font;
}

export interface Fonts {
  /** For one sign as a reader counts them, which may be several code points; null where no font has it, which is remembered. */
  readonly faceOf: (sign: string, weight: Weight) => Face | null;
  /** Signs that no font has. */
  readonly missing: ReadonlySet<string>;
}

/** `given` are paths relative to `cwd`; a Refusal where one is not a font. The machine is searched when the first sign needs it. */
export function fontsFor(given: readonly string[], cwd: string, machine: () => Iterable<string> = fontFiles): Fonts {
  const shipped = { medium: face('medium', shippedFont('medium')), bold: face('bold', shippedFont('bold')) } as const;
  const asked = given.flatMap((name, index) => facesAt(resolve(cwd, name), `given-${index}`, name));
  const missing = new Set<string>();
  const known = new Map<string, Face | null>();
  const opened: Face[] = [];
  let rest: Iterator<string> | null = null;

  const onMachine = (codes: readonly number[]): Face | null => {
    const found = opened.find(({ font }) => hasAll(font, codes));
    if (found) return found;
    rest ??= machine()[Symbol.iterator]();
    for (let next = rest.next(); !next.done; next = rest.next()) {
      const faces = facesOrNone(next.value, `machine-${opened.length}`);
      opened.push(...faces);
      const covering = faces.find(({ font }) => hasAll(font, codes));
      if (covering) return covering;
    }
    return null;
  };

  return {
    missing,
    faceOf: (sign, weight) => {
      const codes = [...sign].map((char) => char.codePointAt(0) as number).filter((code) => !isInvisible(code));
      if (hasAll(shipped[weight].font, codes)) return shipped[weight];
      const before = known.get(sign);
      if (before !== undefined) return before;
      const found = asked.find(({ font }) => hasAll(font, codes)) ?? onMachine(codes);
      known.set(sign, found);
      if (found === null) missing.add(sign);
      return found;
    },
  };
}

/** A sentence about the signs that are drawn as a question mark; null where there are none. */
export function missingWords({ missing }: Fonts): string | null {
  if (missing.size === 0) return null;
  const shown = [...missing].slice(0, 12).join(' ');
  return `No font here has ${shown}${missing.size > 12 ? ` and ${missing.size - 12} more signs` : ''}: each is a ? on the sheet. Give a font that has ${missing.size === 1 ? 'it' : 'them'}: --font FILE`;
}

/** Joiners, marks of direction and variation: they shape their neighbours and have no picture. */
export function isInvisible(code: number): boolean {
  return /\p{Default_Ignorable_Code_Point}/u.test(String.fromCodePoint(code));
}

function hasAll(font: Font, codes: readonly number[]): boolean {
  return codes.every((code) => font.hasGlyphForCodePoint(code));
}

/**
 * With glyphs that know their own letters: the library keeps one glyph for every shape, with the letters of its first use,
 * but letters share shapes (in Arabic, those that differ by their dots).
 */
function face(key: string, font: Font): Face {
  const shape = font.getGlyph.bind(font);
  font.getGlyph = (id, codePoints = []) => Object.create(shape(id, codePoints), { codePoints: { value: codePoints } }) as Glyph;
  return { key, font };
}

/** Beside the room of the source, or of a bundle; beside a bundle that stands alone. */
function shippedFont(weight: Weight): Font {
  const name = `shared/font/barlow-semi-condensed-${weight}.ttf`;
  for (const room of ['../', './']) {
    const [font] = fontsAt(fileURLToPath(new URL(`${room}${name}`, import.meta.url)));
    if (font) return font;
  }
  throw new Refusal(`The font ${name} is missing: install Halfturn again.`);
}

function facesAt(path: string, key: string, shown: string): Face[] {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw new Refusal(`${shown} cannot be read: ${reasonOf(error)}.`);
  }
  const faces = opened(bytes).map((font, index) => face(`${key}-${index}`, font));
  if (faces.length === 0) throw new Refusal(`${shown} is not a font in TrueType, OpenType or WOFF.`);
  return faces;
}

function facesOrNone(path: string, key: string): Face[] {
  return fontsAt(path).map((font, index) => face(`${key}-${index}`, font));
}

function fontsAt(path: string): readonly Font[] {
  try {
    return opened(readFileSync(path));
  } catch {
    return [];
  }
}

/** None for WOFF2, whose outlines the library loses when it takes a part of the font. */
function opened(bytes: Uint8Array): readonly Font[] {
  if (new TextDecoder('latin1').decode(bytes.subarray(0, 4)) === 'wOF2') return [];
  try {
    const font = create(bytes);
    return 'fonts' in font ? font.fonts : [font];
  } catch {
    return [];
  }
}

// ---------------------------------------------------------------- the machine

/** Font files in the usual folders, upright ones for running text first. */
export function fontFiles(): readonly string[] {
  const found = folders().flatMap((folder) => {
    try {
      return globSync('**/*.{ttf,otf,ttc,otc,woff}', { cwd: folder }).map((name) => join(folder, name));
    } catch {
      return [];
    }
  });
  const rank = (path: string) => (/regular|medium|book/i.test(basename(path)) ? 0 : /bold|italic|oblique|thin|light|black|condensed/i.test(basename(path)) ? 2 : 1);
  return found.filter(isModest).sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
}

/** Larger ones are pictures of emoji or worse: bytes. */
const largest = 60_000_000;

function isModest(path: string): boolean {
  const stats = statSync(path, { throwIfNoEntry: false });
  return stats?.isFile() === true && stats.size <= largest;
}

function folders(): readonly string[] {
  const home = homedir();
  switch (process.platform) {
    case 'win32':
      return [join(process.env['WINDIR'] ?? 'C:\\Windows', 'Fonts'), join(process.env['LOCALAPPDATA'] ?? home, 'Microsoft\\Windows\\Fonts')];
    case 'darwin':
      return ['/System/Library/Fonts', '/Library/Fonts', join(home, 'Library/Fonts')];
    default:
      return ['/usr/share/fonts', '/usr/local/share/fonts', join(home, '.local/share/fonts'), join(home, '.fonts')];
  }
}
