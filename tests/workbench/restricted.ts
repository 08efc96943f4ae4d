import { demoFolder } from './folder.ts';
import { stepsOn } from './steps.ts';
import { openWorkbench } from './workbench.ts';

/** A folder that the reader does not trust. */
export async function restricted(extension: string): Promise<void> {
  const editor = await openWorkbench({ name: 'restricted', host: 'node', extension, folder: demoFolder(), restricted: true, settings: { 'security.workspace.trust.startupPrompt': 'never' } });
  const step = stepsOn('restricted', editor.page);
  try {
    await step('checks and draws all the same', async () => {
      await editor.page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
      await editor.open('in-a-hurry.drill');
      await editor.page.locator('.squiggly-error').first().waitFor({ timeout: 60_000 });
      await editor.command('Halfturn: Open the Pitch to the Side');
      await editor.pitch.locator('#pitch [data-mark="person-Base"]').waitFor();
    });
  } finally {
    await editor.close();
  }
}
