import { mkdirSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { nearest } from '../../grammar/spelling.ts';
import { fileNameFor } from '../../shared/file-names.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { toPage } from '../../shared/review/page.ts';
import type { PictureOptions } from '../../shared/review/picture.ts';
import { changedFiles, comparedFiles, phaseNote, pictured, type ComparedFile, type PicturedSubject, toMarkdown, toText, withSubjects } from '../../shared/review/report.ts';
import { conventions } from '../../shared/scene/lines.ts';
import { themes } from '../../shared/scene/palette.ts';
import { command } from '../command.ts';
import { driverPairs, readableFile } from '../driver.ts';
import { complain, fine, reasonOf, Refusal, refused, type Io } from '../io.ts';
import { gitPairs, pairsOf, type Pairs } from '../pairs.ts';
import { harmless } from '../text/cells.ts';
import { counted } from '../text/report.ts';
import { writeWhole } from '../write.ts';

const kinds = ['.html', '.md', '.svg', '.json'] as const;
const usage = 'Write it as: halfturn compare OLD NEW, or halfturn compare --git BASE..HEAD [PATH…]';

export const compare = command({
  name: 'compare',
  operands: 'OLD NEW',
  summary: 'what changed, as facts a coach cares about and as a picture',
  more: [
    'OLD and NEW are two files or two folders. Without -o the facts are printed; .html plays both versions in step, .md is a comment',
    'for a pull request with its pictures in a folder beside it, .svg is one picture, .json has everything.',
    '--git BASE..HEAD compares two revisions, BASE...HEAD what happened since HEAD left BASE, BASE alone the working tree; PATH… narrows it.',
    'The exit status is 0 whether or not something changed.',
  ],
  takes: [0, Infinity],
  options: {
    out: { kind: 'text', value: 'OUT', short: 'o', help: 'the file to write; its ending says which kind' },
    git: { kind: 'text', value: 'BASE..HEAD', help: 'compare revisions of a git repository' },
    drill: { kind: 'text', value: 'NAME', help: 'only this drill, session or variation' },
    phase: { kind: 'text', value: 'NAME', help: 'which phase of a game the pictures show (the first that changed)' },
    beside: { kind: 'flag', help: 'pictures side by side instead of one over the other; .svg and .md' },
    theme: { kind: 'choice', choices: themes, help: 'colours of pictures (light)' },
    convention: { kind: 'choice', choices: ['solid-pass', 'dashed-pass'], help: 'which line is solid and which dashed (solid-pass)' },
    textconv: { kind: 'flag', help: 'for git: prints one FILE as lines that git diff can compare' },
    driver: { kind: 'flag', help: 'for git: compares the two files that an external diff is given' },
  },
  run: async ({ options, operands }, io) => {
    if (options.textconv) {
      if (operands.length !== 1) throw new Refusal('Write it as: halfturn compare --textconv FILE');
      io.out(harmlessLines(await readableFile(operands[0]!, io)));
      return fine;
    }
    const pairs = options.driver ? await driverPairs(operands, io) : await asked(options.git, operands, io);
    const all = named(comparedFiles(pairs.files), options.drill);
    const files = changedFiles(all);
    if (options.out === null) {
      const text = toText(files);
      io.out(text === '' ? (options.driver ? '' : 'Nothing changed.\n') : harmlessLines(text));
      return told(pairs, io);
    }
    const out = options.out;
    const kind = kinds.find((each) => each === extname(out).toLowerCase());
    if (!kind) throw new Refusal(`${out} must end in .html, .md, .svg or .json.`);
    const staging: PictureOptions = {
      theme: options.theme ?? 'light', convention: conventions.find((each) => each.replace(' ', '-') === options.convention) ?? conventions[0],
      ...(options.phase === null ? {} : { phase: options.phase }), bare: kind === '.html',
    };
    const changed = pictured(files, staging);
    const title = `${pairs.before} → ${pairs.after}`;
    const picture = ({ pictures }: PicturedSubject): string | null => pictures && toSvg(options.beside ? pictures.beside : pictures.over, { embedFont: true });
    const path = resolve(io.cwd, out);
    switch (kind) {
      case '.html':
        writeWhole(path, toPage(changed, { title: 'What changed', before: pairs.before, after: pairs.after }), out);
        break;
      case '.json':
        writeWhole(path, `${JSON.stringify({ before: pairs.before, after: pairs.after, files: files.map(({ name, comparison }) => ({ file: name, ...comparison })) }, null, 2)}\n`, out);
        break;
      case '.svg': {
        const [first, ...more] = [...changed, ...(changed.length === 0 ? pictured(all, staging).slice(0, 1) : [])].filter(({ pictures }) => pictures !== null);
        if (!first) throw new Refusal(changed.length === 0 ? 'There is nothing to draw: neither version has a drill that could have changed.' : 'What changed cannot be drawn; write .md or .html.');
        writeWhole(path, picture(first)!, out);
        complain(io, [
          ...(more.length > 0 ? [`${out} shows “${harmless(first.title)}”; ${counted(more.length, 'more drill')} changed: name one with --drill, or write .html.`] : []),
          ...(first.otherPhases.length > 0 ? [`${out} shows ${harmless(phaseNote(first))}: name one with --phase, or write .html.`] : []),
        ]);
        break;
      }
      case '.md':
        writeWhole(path, toMarkdown(`What changed: ${title}`, changed, writePictures(path, changed, picture)), out);
        break;
    }
    return told(pairs, io);
  },
});

function asked(git: string | null, operands: readonly string[], io: Io): Promise<Pairs> {
  if (git !== null) return gitPairs(git, operands, io);
  if (operands.length !== 2) throw new Refusal(usage);
  return pairsOf(operands[0]!, operands[1]!, io);
}

/** The exit status, which does not depend on what changed. */
function told({ unread }: Pairs, io: Io): number {
  complain(io, unread);
  return unread.length > 0 ? refused : fine;
}

/** Those of one name, in either version. */
function named(files: readonly ComparedFile[], name: string | null): readonly ComparedFile[] {
  if (name === null) return files;
  const found = withSubjects(files, ({ before, after }) => before?.name === name || after?.name === name);
  if (found.length > 0) return found;
  const names = [...new Set(files.flatMap(({ comparison }) => comparison.subjects.flatMap(({ before, after }) => [after, before].flatMap((version) => version?.name ?? []))))];
  const guess = nearest(name, names);
  throw new Refusal(`There is no “${name}” in what is compared${guess === null ? '.' : `; did you mean “${guess}”?`}`);
}

/** Into a folder beside the text and named after it; gives where each picture is, as a link. */
function writePictures(path: string, changed: readonly PicturedSubject[], picture: (one: PicturedSubject) => string | null): ReadonlyMap<PicturedSubject, string> {
  const folder = basename(path, extname(path));
  const links = new Map<PicturedSubject, string>();
  const taken = new Map<string, number>();
  for (const one of changed) {
    const svg = picture(one);
    if (svg === null) continue;
    const base = fileNameFor(one.title, 'drill');
    const times = (taken.get(base) ?? 0) + 1;
    taken.set(base, times);
    const name = `${base}${times === 1 ? '' : `-${times}`}.svg`;
    if (links.size === 0) makeFolder(join(dirname(path), folder), folder);
    writeWhole(join(dirname(path), folder, name), svg, `${folder}/${name}`);
    links.set(one, `${encodeURIComponent(folder).replace(/[()]/g, (sign) => (sign === '(' ? '%28' : '%29'))}/${encodeURIComponent(name)}`);
  }
  return links;
}

function makeFolder(path: string, shown: string): void {
  try {
    mkdirSync(path, { recursive: true });
  } catch (error) {
    throw new Refusal(`The folder ${shown} cannot be made: ${reasonOf(error)}.`);
  }
}

function harmlessLines(text: string): string {
  return text.split('\n').map(harmless).join('\n');
}
