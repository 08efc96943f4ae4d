// The extension as it is packaged, in the real editor. Run: npm run test:workbench [-- onThePage|onTheSheet|inTheEditor|comingBack|inTheBrowser|restricted]
import { globSync, mkdtempSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { comingBack } from './coming-back.ts';
import { inTheBrowser } from './in-the-browser.ts';
import { inTheEditor } from './in-the-editor.ts';
import { onThePage } from './on-the-page.ts';
import { onTheSheet } from './on-the-sheet.ts';
import { root } from './pitch-page.ts';
import { restricted } from './restricted.ts';
import { failure, finish } from './steps.ts';
import { unzip } from './unzip.ts';
import { missing } from './workbench.ts';

const lacking = missing();
if (lacking.length === 0) {
  const extension = unpacked();
  const only = process.argv[2];
  for (const run of [onThePage, onTheSheet, inTheEditor, comingBack, inTheBrowser, restricted]) if (!only || run.name === only) await run(extension).catch((error: unknown) => failure(`${run.name}: ${error}`));
} else if (process.env['CI']) for (const part of lacking) failure(`cannot be had: ${part}`);
else console.log(`Nothing is tested: there is no ${lacking.join(', no ')}.`);
finish();

/** The folder that an installed extension has. */
function unpacked(): string {
  const made = spawnSync(process.execPath, [join(root, 'client/package.mjs')], { cwd: root, encoding: 'utf8' });
  if (made.status !== 0) throw new Error(`${made.stdout}${made.stderr}`);
  const [file] = globSync('out/*.vsix', { cwd: root });
  const folder = mkdtempSync(join(tmpdir(), 'halfturn-extension-'));
  unzip(join(root, file ?? ''), folder);
  return join(folder, 'extension');
}
