import { demoFolder } from './folder.ts';
import { equal, stepsOn } from './steps.ts';
import { openWorkbench } from './workbench.ts';

/** The same extension in a worker of the page: no Node, no disk. */
export async function inTheBrowser(extension: string): Promise<void> {
  const editor = await openWorkbench({ name: 'browser', host: 'web', extension, folder: demoFolder() });
  const step = stepsOn('browser', editor.page);
  try {
    await step('squiggles', async () => {
      await editor.open('in-a-hurry.drill');
      await editor.page.locator('.squiggly-error').first().waitFor({ timeout: 60_000 });
    });
    await step('the pitch with an imported length', async () => {
      await editor.open('give-and-go.drill');
      await editor.command('Halfturn: Open the Pitch to the Side');
      await editor.pitch.locator('#pitch [data-mark="person-Wall"]').waitFor();
      equal(await editor.page.locator('.squiggly-error').count(), 0);
    });
  } finally {
    await editor.close();
  }
}
