/**
 * The set-ups for other editors that README.md shows, tried in the editors themselves: each opens a faulty drill without a
 * window, starts the language server by the words of the set-up, and says which problems it got. Run: npm run test:editors
 */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const faulty = 'drill "Two" {\n  area 12 x 12\n  station Base at (2, 6)\n  station Wall at 8 right of Bsae\n}\n';
/** Line and column from 0, whatever the editor writes between, and the words. */
const wanted = /^3:29 .*There is no place called `Bsae`\. Did you mean `Base`\?$/m;

interface Editor {
  readonly name: string;
  /** Language of the set-up's block in README.md, and the file it belongs into, below the home folder. */
  readonly block: string;
  readonly file: string;
  readonly words: readonly string[];
}

const editors: readonly Editor[] = [
  {
    name: 'nvim',
    block: 'lua',
    file: '.config/nvim/init.lua',
    words: ['--headless', 'faulty.drill', '-c', `lua ${[
      'vim.wait(30000, function() return #vim.diagnostic.get(0) > 0 end)',
      'for _, each in ipairs(vim.diagnostic.get(0)) do io.stdout:write(("%d:%d %s\\n"):format(each.lnum, each.col, each.message)) end',
    ].join('; ')}`, '-c', 'qa!'],
  },
  {
    name: 'emacs',
    block: 'elisp',
    file: '.emacs.d/init.el',
    // Without a window nobody types: what a person's first key would do is done here.
    words: ['--batch', '--eval', '(package-initialize)', '--load', '.emacs.d/init.el', 'faulty.drill', '--eval', `(progn
      (set-buffer "faulty.drill")
      (apply #'eglot (eglot--guess-contact))
      (let ((tries 300))
        (while (and (> tries 0) (null (flymake-diagnostics)))
          (setq tries (1- tries))
          (flymake-start)
          (accept-process-output nil 0.1)))
      (dolist (each (flymake-diagnostics))
        (goto-char (flymake-diagnostic-beg each))
        (princ (format "%d:%d %s\\n" (1- (line-number-at-pos)) (current-column) (flymake-diagnostic-text each))))
      (eglot-shutdown (eglot-current-server)))`],
  },
];

const readme = readFileSync(join(root, 'README.md'), 'utf8');
const results = editors.map(tried);
process.exitCode = results.every(Boolean) ? 0 : 1;

function tried({ name, block, file, words }: Editor): boolean {
  const setup = new RegExp(`^\`\`\`${block}\\n([^]*?)^\`\`\``, 'm').exec(readme)?.[1];
  if (setup === undefined) throw new Error(`README.md has no set-up in ${block} for ${name}.`);
  const home = mkdtempSync(join(tmpdir(), 'halfturn-'));
  try {
    mkdirSync(join(home, dirname(file)), { recursive: true });
    writeFileSync(join(home, file), setup);
    writeFileSync(join(home, 'faulty.drill'), faulty);
    mkdirSync(join(home, 'bin'));
    writeFileSync(join(home, 'bin/halfturn'), `#!/bin/sh\nexec '${process.execPath}' '${join(root, 'dist/halfturn.js')}' "$@"\n`);
    chmodSync(join(home, 'bin/halfturn'), 0o755);
    const { error, stdout, stderr } = spawnSync(name, words, {
      cwd: home, encoding: 'utf8', timeout: 120_000,
      env: { ...process.env, HOME: home, XDG_CONFIG_HOME: join(home, '.config'), PATH: `${join(home, 'bin')}${delimiter}${process.env['PATH']}` },
    });
    if (error) throw new Error(`${name} could not be run: ${error.message}. It comes with apt-get install neovim emacs-nox elpa-eglot.`);
    const good = wanted.test(stdout);
    console.log(good ? `${name} shows the problem at its place.` : `${name} does not show the problem. It said:\n${stdout}\n${stderr}`);
    return good;
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}
