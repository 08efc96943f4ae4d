/** The page of a sheet in a browser: read, played, printed. */
import { readFileSync, writeFileSync, mkdtempSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { analyse } from '../../shared/analyse.ts';
import { sheetHtml } from '../../shared/render/sheet-html.ts';
import type { SessionAnalysis } from '../../shared/session/analysis.ts';
import { sessionSheet } from '../../shared/sheet/sheet.ts';
import { workspaceOf } from '../../server/workspace.ts';
import { launch, root } from './pitch-page.ts';
import { equal, stepsOn } from './steps.ts';

export async function onTheSheet(): Promise<void> {
  const path = join(root, 'shared/examples/tuesday-evening.drill');
  const session = analyse(readFileSync(path, 'utf8'), workspaceOf(path)).sessions[0] as SessionAnalysis;
  const sheet = sessionSheet(session, { theme: 'light', convention: 'solid pass', perPage: 1, names: ['Ann', 'דוד כהן', '王小明'], problems: [] });
  const file = join(mkdtempSync(join(tmpdir(), 'halfturn-sheet-')), 'sheet.html');
  writeFileSync(file, sheetHtml(sheet));
  const browser = await launch();
  try {
    for (const [name, width, colorScheme] of [['light', 1200, 'light'], ['dark', 1200, 'dark'], ['phone', 360, 'light']] as const) {
      const page = await browser.newPage({ viewport: { width, height: 800 }, colorScheme });
      const step = stepsOn(`sheet-${name}`, page);
      await page.goto(`file://${file}`);
      await step('nothing sticks out to the side', async () => equal(await page.evaluate(() => document.documentElement.scrollWidth), width));
      await step('axe finds nothing', async () => {
        await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
        const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe.run());
        equal(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`), []);
      });
      await step('a beat is played where it is told', async () => {
        const item = page.locator('li[data-scene="3"][data-beat="4"]');
        await item.click();
        equal(await item.getAttribute('aria-current'), 'step');
        equal(await page.locator('li[aria-current][data-scene="0"]').getAttribute('data-beat'), '0');
      });
      await step('it prints the pages that were laid out', async () => {
        const printed = await page.pdf({ preferCSSPageSize: true });
        equal(printed.toString('latin1').match(/\/Type \/Page\b(?!s)/g)?.length, sheet.pages.length);
      });
      await page.close();
    }
  } finally {
    await browser.close();
  }
}
