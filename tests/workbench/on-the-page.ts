import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import type { ToHost } from '../../client/webview/messages.ts';
import { giveAndGo } from './folder.ts';
import { example, launch, openPitchPage, pictureOf, type PitchPage, type Theme } from './pitch-page.ts';
import { equal, matches, stepsOn } from './steps.ts';

/** The page of the pitch by itself: accessibility in every theme, every control by keyboard, what is kept and what is said. */
export async function onThePage(): Promise<void> {
  const browser = await launch();
  try {
    for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const) await axe(await openPitchPage(browser, { theme }), theme);
    await byKeyboard(await openPitchPage(browser));
    for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const) await games(await openPitchPage(browser, { theme }), theme);
    await goingRound(await openPitchPage(browser, { width: 640, height: 1000 }));
    await calm(await openPitchPage(browser, { calm: true }));
    await narrow(await openPitchPage(browser, { width: 320, height: 640 }));
  } finally {
    await browser.close();
  }
}

async function axe(pitch: PitchPage, theme: Theme): Promise<void> {
  const step = stepsOn(`page-${theme}`, pitch.page);
  await step('axe finds nothing', async () => {
    await pitch.tell({ kind: 'picture', picture: pictureOf(example('in-a-hurry')) });
    await pitch.tell({ kind: 'cures', version: 1, cures: [['Move it to (14, 13)'], [], [], []] });
    await pitch.page.locator('#layers summary').click();
    await nothingFound(pitch.page);
  });
}

async function nothingFound(page: Page): Promise<void> {
  // The page's policy lets no script in from outside but this: it comes from the test, not from the page.
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe.run());
  equal(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`), []);
}

/** A game: its phases, the lanes and the numbers of the time that is shown, and whose the ground is. */
async function games({ page, tell, heard }: PitchPage, theme: Theme): Promise<void> {
  const step = stepsOn(`page-game-${theme}`, page);
  const text = example('switch-to-the-corners');
  const asked = async (): Promise<ToHost[]> => (await heard()).filter(({ kind }) => kind === 'drill' || kind === 'control');
  const lanes = (): Promise<(string | null)[]> => page.locator('#pitch [data-layer=lanes] > g').evaluateAll((nodes) => nodes.filter((node) => node.getClientRects().length > 0 && getComputedStyle(node).visibility === 'visible').map((node) => node.getAttribute('aria-label')));
  await tell({ kind: 'picture', picture: pictureOf(text, 1, { sheet: 1 }) });

  await step('lanes of the moment, and what closes them', async () => {
    await tell({ kind: 'picture', picture: pictureOf(example('crowded-game')) });
    equal((await lanes()).includes('Red1 to Red3: closed by Green1 by 0.8 s'), true);
    await tell({ kind: 'picture', picture: pictureOf(text, 1, { sheet: 1 }) });
    const first = await lanes();
    equal(first.includes('Amber2 to Amber1: open'), true);
    await page.locator('#next').click();
    const second = await lanes();
    equal(second.includes('Amber3 to Amber1: open through the air'), true);
    equal(first.filter((label) => second.includes(label)), []);
    await page.locator('#back').click();
  });
  await step('a lane says what it is to the pointer and to the keyboard', async () => {
    const lane = page.locator('#pitch [data-mark="lane-1-Joker1"]');
    const box = await lane.boundingBox();
    if (!box) throw new Error('no lane');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.locator('#hint', { hasText: 'Amber2 to Joker1: open' }).waitFor();
    await page.keyboard.press('Escape');
    await page.locator('#hint').waitFor({ state: 'hidden' });
    await page.locator('#pitch').focus();
    await page.keyboard.press('Tab');
    for (let left = 60; left > 0 && !(await page.locator('#hint').isVisible()); left -= 1) await page.keyboard.press('ArrowRight');
    matches(await page.locator('#hint').innerText(), /^Amber2 to /);
    equal(await page.evaluate(() => document.activeElement?.getAttribute('aria-label')), await page.locator('#hint').innerText());
  });
  await step('the ground when it is asked for', async () => {
    equal(await page.locator('#ground').isVisible(), false);
    await page.locator('#layers summary').click();
    await page.locator('[data-toggles=control]').focus();
    await page.keyboard.press('Space');
    equal((await asked()).at(-1), { kind: 'control', shown: true });
    await tell({ kind: 'picture', picture: pictureOf(text, 1, { sheet: 1, control: true }) });
    matches(await page.locator('#ground').innerText(), /^Ground controlled: Amber \d+ %, Navy \d+ %$/);
    await nothingFound(page);
  });
  await step('layers come and go', async () => {
    await page.locator('[data-toggles=lanes]').uncheck();
    equal(await lanes(), []);
    await page.locator('[data-toggles=numbers]').uncheck();
    equal(await page.locator('#pitch [data-mark^=tally-]').evaluateAll((nodes) => nodes.filter((node) => node.getClientRects().length > 0).length), 0);
    await page.locator('[data-toggles=control]').uncheck();
    equal((await asked()).at(-1), { kind: 'control', shown: false });
    await page.keyboard.press('Escape');
  });
  await step('phases are chosen, by keyboard too', async () => {
    equal(await page.locator('#phase option').allInnerTexts(), ['Out and over', 'Through the line', 'Won and out again']);
    await page.locator('#phase').selectOption('Out and over');
    equal((await asked()).at(-1), { kind: 'drill', index: 0 });
    await page.locator('#pitch').focus();
    await page.keyboard.press('PageDown');
    equal((await asked()).at(-1), { kind: 'drill', index: 2 });
  });
  await step('plays on with the phase that follows, and from the last one begins again', async () => {
    await page.locator('#on').check();
    await page.locator('#speed').selectOption('4');
    await page.locator('#play').click();
    await page.waitForFunction(() => (globalThis as unknown as { sent: { kind: string }[] }).sent.filter(({ kind }) => kind === 'drill').length === 3);
    equal((await asked()).at(-1), { kind: 'drill', index: 2 });
    await tell({ kind: 'picture', picture: pictureOf(text, 1, { sheet: 2 }) });
    await page.locator('#play[aria-label=Pause]').waitFor();
    await page.waitForFunction(() => (globalThis as unknown as { sent: { kind: string }[] }).sent.filter(({ kind }) => kind === 'drill').length === 4);
    equal((await asked()).at(-1), { kind: 'drill', index: 1 });
  });
}

async function byKeyboard({ page, tell, heard }: PitchPage): Promise<void> {
  const step = stepsOn('page-keyboard', page);
  const last = async (kind: ToHost['kind']): Promise<ToHost | undefined> => (await heard()).findLast((message) => message.kind === kind);
  await tell({ kind: 'picture', picture: pictureOf(example('in-a-hurry')) });
  await tell({ kind: 'cures', version: 1, cures: [['Move it to (14, 13)'], [], [], []] });

  await step('every control is reached by Tab', async () => {
    const reached = new Set<string>();
    await page.locator('body').focus();
    for (let left = 60; left > 0; left -= 1) {
      await page.keyboard.press('Tab');
      reached.add(await page.evaluate(() => {
        const node = document.activeElement as HTMLElement;
        return node.id || node.dataset['mark'] || node.className || node.closest('section')?.id || node.tagName;
      }));
    }
    const wanted = ['pitch', 'larger', 'smaller', 'fit', 'back', 'play', 'next', 'time', 'speed', 'loop', 'rounds', 'mend', 'fix', 'order'];
    equal(wanted.filter((name) => !reached.has(name)), []);
  });
  await step('arrows go from mark to mark, Enter to the text', async () => {
    await page.locator('#pitch').focus();
    await page.keyboard.press('Tab');
    const first = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    await page.keyboard.press('ArrowRight');
    const second = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    if (!first || !second || first === second) throw new Error(`${first}, then ${second}`);
    await page.keyboard.press('Enter');
    equal((await last('reveal'))?.kind, 'reveal');
  });
  await step('Alt and an arrow move a station', async () => {
    await page.locator('[data-mark="person-Left"]').focus();
    await page.keyboard.press('Alt+ArrowRight');
    const drag = await last('drag');
    if (drag?.kind !== 'drag') throw new Error('nothing was dragged');
    equal([drag.handle.kind, drag.to], ['thing', { x: 2.5, y: 13 }]);
  });
  await step('keys zoom and pan, and a new picture leaves the view alone', async () => {
    // To a millimetre of the sheet: text is measured a little differently at every size.
    const box = async (): Promise<number[]> => (await page.locator('#pitch').getAttribute('viewBox') ?? '').split(' ').map((part) => Math.round(Number(part) / 2));
    await page.locator('#pitch').focus();
    const whole = await box();
    await page.keyboard.press('+');
    await page.keyboard.press('ArrowLeft');
    const near = await box();
    if (JSON.stringify(near) === JSON.stringify(whole)) throw new Error('the view has not changed');
    await tell({ kind: 'picture', picture: pictureOf(example('in-a-hurry').replace('at (4.5, 8)', 'at (5, 8)'), 2) });
    equal(await box(), near);
    await page.keyboard.press('0');
    equal(await box(), whole);
  });
  await step('beats, speed, layers', async () => {
    await page.locator('#next').focus();
    await page.keyboard.press('Enter');
    matches(await page.locator('#said').innerText(), /^Beat 2: /);
    await page.keyboard.press('Enter');
    matches(await page.locator('#said').innerText(), /^Beat 3: /);
    await page.locator('#layers summary').focus();
    await page.keyboard.press('Enter');
    await page.locator('[data-toggles=dimensions]').focus();
    await page.keyboard.press('Space');
    await page.locator('#pitch [data-layer=dimensions]').waitFor({ state: 'hidden' });
    await page.keyboard.press('Escape');
    await page.locator('#layers fieldset').waitFor({ state: 'hidden' });
  });
  await step('a program never answers itself', async () => {
    const before = (await heard()).filter(({ kind }) => kind === 'reveal').length;
    await tell({ kind: 'cursor', version: 2, offset: 380 });
    await page.locator('#beats li:first-child button[aria-current]').waitFor();
    equal((await heard()).filter(({ kind }) => kind === 'reveal').length, before);
  });
}

async function goingRound({ page, tell }: PitchPage): Promise<void> {
  const step = stepsOn('page-round', page);
  await step('people move on to their next places', async () => {
    await tell({ kind: 'picture', picture: pictureOf(giveAndGo.replace('import "lengths.drill"\n', '').replace('lane above', '8 above')) });
    await page.locator('#rounds').check();
    const at = async (name: string): Promise<number[]> => (await page.locator(`[data-mark="person-${name}"]`).getAttribute('transform') ?? '').match(/[\d.-]+/g)!.map(Number);
    const [base, next] = [await at('Base'), await at('next Base')];
    // To the beginning of the second repetition: whoever waited has stepped up.
    await page.locator('#next').click();
    await page.locator('#next').click();
    matches(await page.locator('#clock').innerText(), /^2\/5/);
    equal(await at('next Base'), base);
    if (JSON.stringify(await at('Base')) === JSON.stringify(base)) throw new Error(`the first is where they were, ${base}; the next was at ${next}`);
  });
}

async function calm({ page, tell }: PitchPage): Promise<void> {
  const step = stepsOn('page-calm', page);
  await step('where less motion is asked for it moves from beat to beat', async () => {
    await tell({ kind: 'picture', picture: pictureOf(example('diamond')) });
    await page.locator('#speed').selectOption('4');
    await page.locator('#play').click();
    const seen = await page.evaluate(async () => {
      const found = new Set<string>();
      for (let frames = 90; frames > 0; frames -= 1) {
        await new Promise((done) => requestAnimationFrame(done));
        found.add(document.querySelector('[data-mark="person-Pivot"]')?.getAttribute('transform') ?? '');
      }
      return found.size;
    });
    if (seen > 4) throw new Error(`${seen} places in 1.5 s`);
  });
}

async function narrow({ page, tell }: PitchPage): Promise<void> {
  const step = stepsOn('page-narrow', page);
  await step('nothing is cut off in a narrow panel', async () => {
    await tell({ kind: 'picture', picture: pictureOf(example('in-a-hurry')) });
    equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true);
  });
}
