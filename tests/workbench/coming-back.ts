import { spawnSync } from 'node:child_process';
import { demoFolder } from './folder.ts';
import { matches, stepsOn } from './steps.ts';
import { openWorkbench } from './workbench.ts';

/** What is still there when the language server has fallen over, and when the window has been loaded again; and what changed since the last commit. */
export async function comingBack(extension: string): Promise<void> {
  const editor = await openWorkbench({ name: 'back', host: 'node', extension, folder: demoFolder() });
  const { page, pitch } = editor;
  const step = stepsOn('back', page);
  try {
    await step('the server killed: the reader is told, it is started again, and the pitch follows', async () => {
      await editor.open('give-and-go.drill');
      await editor.command('Halfturn: Open the Pitch to the Side');
      await pitch.locator('#title', { hasText: 'Give and go' }).waitFor({ timeout: 60_000 });
      killServer(extension);
      await editor.command('Notifications: Show Notifications');
      await page.locator('.notifications-center', { hasText: 'was started again' }).waitFor();
      await page.keyboard.press('Escape');
      await editor.goTo(3, 19);
      await page.keyboard.type(' and go');
      await pitch.locator('#title', { hasText: 'Give and go and go' }).waitFor();
    });

    await step('the window loaded again: the pitch is there with its drill, its phase and its zoom, and plays', async () => {
      await editor.open('switch-to-the-corners.drill');
      await pitch.locator('#phase').selectOption({ index: 1 });
      const chosen = await pitch.locator('#phase option:checked').innerText();
      await pitch.locator('#title', { hasText: chosen }).waitFor();
      await pitch.locator('#larger').click();
      await pitch.locator('#larger').click();
      const before = await pitch.locator('#pitch').getAttribute('viewBox');
      await editor.command('Developer: Reload Window');
      await pitch.locator('#pitch').waitFor({ state: 'detached' });
      await page.locator('.monaco-workbench').waitFor({ timeout: 60_000 });
      await pitch.locator('#title', { hasText: chosen }).waitFor({ timeout: 60_000 });
      await pitch.locator(`#pitch[viewBox="${before}"]`).waitFor();
      await pitch.locator('#play').click();
      await pitch.locator('#play[aria-label=Pause]').waitFor();
      matches(await pitch.locator('#phase option:checked').innerText(), new RegExp(chosen));
      await editor.open('give-and-go.drill');
      await pitch.locator('#title', { hasText: 'Give and go' }).waitFor();
    });

    await step('what changed since the last commit, in a panel that plays', async () => {
      await editor.goTo(5, 1);
      await page.keyboard.press('End');
      await page.keyboard.press('Shift+Home');
      await page.keyboard.type('players 6');
      await editor.command('Halfturn: Compare with the Last Commit');
      await page.locator('.quick-input-list [role="option"]', { hasText: 'HEAD' }).first().click();
      await page.locator('.tab', { hasText: 'What changed: give-and-go.drill' }).waitFor();
      const changes = page.locator('iframe.webview').last().contentFrame().frameLocator('iframe#active-frame');
      await changes.locator('.versions', { hasText: 'Before: the last commit' }).waitFor();
      await changes.locator('.facts li', { hasText: '6 players are written, and 5 stand on the pitch' }).first().waitFor();
      await changes.locator('.play').first().click();
      await changes.locator('.play', { hasText: 'Pause' }).first().waitFor();
    });
  } finally {
    await editor.close();
  }
}

/** Kills the process of the language server that runs from this folder. */
function killServer(extension: string): void {
  const { stdout } = spawnSync('ps', ['-eo', 'pid,args'], { encoding: 'utf8' });
  const line = stdout.split('\n').find((each) => each.includes(`${extension}/dist/server/node.js`));
  if (line === undefined) throw new Error('there is no server');
  process.kill(Number.parseInt(line, 10), 'SIGKILL');
}
