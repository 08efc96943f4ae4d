/** Checks and draws files again whenever they change on the disk, until the user ends it. */
import { realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { watch as watchPaths } from 'chokidar';
import { parse } from '../grammar/parse.ts';
import { analyse, type Analysis } from '../shared/analyse.ts';
import { resolve as resolveNames } from '../shared/model/resolve.ts';
import { atLevels } from '../shared/service/levels.ts';
import { settingsFile, type FolderSettings } from '../shared/settings/settings.ts';
import { noWishes, type Kind } from './commands/draw.ts';
import { settingsReader, type Found } from './folder-settings.ts';
import { complain, countsOf, fine, reasonOf, Refusal, type Io } from './io.ts';
import { drawingsOf } from './many/draw.ts';
import { isHidden, listSources, readFile, type Source } from './sources.ts';
import { counted, foundText, reportText } from './text/report.ts';
import { workspaceOf } from './workspace.ts';
import { makeFolder, writeWhole } from './write.ts';

/** Where pictures go: one file, or a folder. */
export interface Target {
  readonly out: string;
  readonly single: boolean;
  readonly kind: Kind;
}

/** Milliseconds in which changes are gathered: editors save in several steps. */
const quiet = 40;

/** `asked` is a file or a folder. Comes back when the user ends it. */
export async function watching(asked: string, folder: boolean, target: Target | null, io: Io): Promise<number> {
  if (!folder) readFile(asked, io.cwd);
  // What is imported is known by its real path, so the rest is too.
  const top = realpathSync(resolve(io.cwd, asked));
  const root = folder ? top : dirname(top);
  const inside = (path: string): boolean => folder && path.startsWith(join(top, sep));
  const named = (path: string): string => (folder ? join(asked, relative(top, path)) : asked);
  /** Of every drill: what it imports, there or not. */
  const imports = new Map<string, ReadonlySet<string>>();
  const changed = new Set<string>();
  let timer: NodeJS.Timeout | undefined;

  const files = (): readonly string[] => (folder ? listSources([top], io.cwd).names : [top]);
  const watcher = watchPaths([], {
    ignoreInitial: true,
    ignored: (path, stats) => inside(path) && (isHidden(relative(top, path)) || (stats?.isFile() === true && !matters(path))),
  });
  const matters = (path: string): boolean =>
    path.endsWith('.drill') || basename(path) === settingsFile || [...imports.values()].some((each) => each.has(path));

  watcher.on('all', (event, path) => {
    if (event === 'addDir' || event === 'unlinkDir' || (path !== top && !matters(path))) return;
    changed.add(path);
    clearTimeout(timer);
    timer = setTimeout(() => lookAtChanged(), quiet);
  });
  watcher.on('error', (error) => complain(io, [`what changes cannot be seen: ${reasonOf(error)}.`]));
  // Once they are watched, nothing that changes is missed; so what is read is read after that.
  watcher.add([top, ...settingsAbove(root), ...files().flatMap(importsOf)]);
  await new Promise<void>((ready) => void watcher.once('ready', ready));

  look(files());
  const interrupted = new Promise<void>((end) => void io.onInterrupt(end));
  io.out(`Watching ${asked}; Ctrl-C ends it.\n`);
  await interrupted;
  clearTimeout(timer);
  await watcher.close();
  io.out('No longer watching.\n');
  return fine;

  function lookAtChanged(): void {
    const paths = [...changed];
    changed.clear();
    const all = paths.some((path) => basename(path) === settingsFile);
    const own = paths.filter((path) => path === top || (inside(path) && path.endsWith('.drill')));
    const dependants = [...imports].filter(([, imported]) => all || paths.some((path) => imported.has(path))).map(([path]) => path);
    look([...new Set([...own, ...dependants])].sort());
  }

  function look(paths: readonly string[]): void {
    const settingsFor = settingsReader(io.cwd);
    const complaints = new Set<string>();
    for (const path of paths) {
      try {
        for (const each of lookAt(path, settingsFor(path))) complaints.add(each);
      } catch (error) {
        if (!statSync(path, { throwIfNoEntry: false })) {
          imports.delete(path);
          io.out(`${named(path)} is gone.\n`);
        } else {
          complain(io, [error instanceof Refusal ? error.message : `${named(path)} is left out; this should not happen: ${reasonOf(error)}.`]);
        }
      }
    }
    complain(io, [...complaints]);
  }

  /** Gives what is wrong with the settings. */
  function lookAt(path: string, { settings, complaints }: Found): readonly string[] {
    const began = performance.now();
    const source = { ...readFile(path, io.cwd), name: named(path) };
    const seen = new Set<string>();
    const analysis = analyse(source.text, workspaceOf(path, (each) => seen.add(each)));
    const problems = atLevels(analysis.problems, settings.levels);
    imports.set(path, seen);
    watcher.add([...seen]);
    const found = `${foundText(countsOf(problems))} in ${source.name}, checked in ${since(began)}`;
    const drawn = target === null ? '' : draw(target, analysis, source, settings);
    io.out(`${reportText({ file: source.name, text: source.text, problems }, io.colour)}${found}${drawn}.\n`);
    return complaints;
  }

  /** Says what was drawn, or why not. */
  function draw({ out, single, kind }: Target, analysis: Analysis, source: Source, settings: FolderSettings): string {
    const began = performance.now();
    const drills = single ? analysis.drills.slice(0, 1) : analysis.drills;
    const pictures = drawingsOf({ ...analysis, drills }, source, { kind, wishes: noWishes, out: single ? '' : out, root, cwd: io.cwd }, settings);
    try {
      for (const { path, content } of pictures) {
        const shown = single ? out : path;
        makeFolder(dirname(resolve(io.cwd, shown)), dirname(shown));
        writeWhole(resolve(io.cwd, shown), content, shown);
      }
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return `; ${error.message.replace(/\.$/, '')}`;
    }
    const what = single ? out : `${counted(pictures.length, 'drawing')} in ${out}`;
    return pictures.length === 0 ? '; there is nothing to draw' : `; ${what} drawn in ${since(began)}`;
  }
}

/** Every file that a file imports, also by way of another, there or not. */
function importsOf(path: string): readonly string[] {
  const seen = new Set<string>();
  try {
    resolveNames(parse(readFile(path, '').text).file, workspaceOf(path, (each) => seen.add(each)));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
  }
  return [...seen];
}

function settingsAbove(folder: string): string[] {
  const here = join(folder, settingsFile);
  return dirname(folder) === folder ? [here] : [here, ...settingsAbove(dirname(folder))];
}

function since(began: number): string {
  return `${Math.max(1, Math.round(performance.now() - began))} ms`;
}
