// How fast the page of the pitch is in Chromium. Run: npm run bench:webview
import { globSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { launch, openPitchPage, pictureOf, type PitchPage, root } from '../workbench/pitch-page.ts';

/** Milliseconds. */
const budget = { time: 2, scene: 8, frame: 1000 / 60 } as const;

const browser = await launch();
const pitch = await openPitchPage(browser, { width: 900, height: 1100 });
for (const [name, text] of [['a game', game()], ['a crowd', crowd(0)]] as const) {
  const picture = pictureOf(text);
  console.log(`${name}: ${picture.scene.marks.length} marks and ${picture.scene.movers.length} movers`);
  await pitch.tell({ kind: 'picture', picture });
  await timesOf(pitch, 60);
  report('  a new time, all movers moving', await timesOf(pitch, 120), budget.time);
}
report('  Chromium alone moving 23 circles', await alone(23), budget.time);
report('  a new scene, one cone moved', await scenesOf(pitch, (index) => crowd(0, index % 2)), budget.scene);
report('  a new scene, every mark moved', await scenesOf(pitch, (index) => crowd((index % 2) / 2)), budget.scene);
report('  a drag, from frame to frame', await dragged(pitch), budget.frame);
await browser.close();

for (const file of globSync('dist/{client,server,webview}/*', { cwd: root }).sort()) console.log(`${`${Math.round(statSync(join(root, file)).size / 1024)}`.padStart(7)} kB  ${file}`);

/** What a frame costs, in milliseconds: in scripts, and with style, layout and paint. */
interface Cost {
  readonly script: number;
  readonly whole: number;
}

function report(what: string, costs: readonly Cost[], most: number): void {
  const of = (part: keyof Cost, share: number): string => ([...costs].map((cost) => cost[part]).sort((a, b) => a - b)[Math.floor((costs.length - 1) * share)] ?? 0).toFixed(2);
  console.log(`${what.padEnd(34)} script ${of('script', 0.5)} ms (95 %: ${of('script', 0.95)}), with style, layout and paint ${of('whole', 0.5)} ms (95 %: ${of('whole', 0.95)}); budget ${most.toFixed(1)} ms`);
}

async function timesOf({ page }: PitchPage, count: number): Promise<Cost[]> {
  return framesOf(page, count, () => (index, times) => {
    const bar = document.getElementById('time') as HTMLInputElement;
    bar.value = `${(Number(bar.max) * index) / times}`;
    bar.dispatchEvent(new Event('input'));
  });
}

/** So many circles in a page with nothing else: what no page can be faster than. */
async function alone(circles: number): Promise<Cost[]> {
  const page = await browser.newPage({ viewport: { width: 900, height: 1100 } });
  await page.setContent(`<svg viewBox="0 0 100 100">${'<circle r="1.5"/>'.repeat(circles)}</svg>`);
  const costs = await framesOf(page, 120, () => (index) => {
    for (const [at, circle] of [...document.querySelectorAll('circle')].entries()) circle.setAttribute('transform', `translate(${(index + at * 4) % 100} ${at * 4})`);
  });
  await page.close();
  return costs;
}

/** `making` gives, in the page, what is done once a frame. */
async function framesOf(page: Page, count: number, making: () => (index: number, count: number) => void): Promise<Cost[]> {
  return page.evaluate(async ({ times, act }) => {
    const costs: Cost[] = [];
    for (let index = 0; index < times; index += 1) {
      costs.push(await new Promise<Cost>((done) => requestAnimationFrame(() => {
        const start = performance.now();
        act(index, times);
        const script = performance.now() - start;
        // The next task comes after the frame is painted.
        const channel = new MessageChannel();
        channel.port1.addEventListener('message', () => done({ script, whole: performance.now() - start }));
        channel.port1.start();
        channel.port2.postMessage(null);
      })));
    }
    return costs;
  }, { times: count, act: await page.evaluateHandle(making) });
}

async function scenesOf({ page }: PitchPage, text: (index: number) => string): Promise<Cost[]> {
  const pictures = [0, 1].map((index) => ({ kind: 'picture', picture: pictureOf(text(index)) }));
  return page.evaluate(async (messages) => {
    const costs: Cost[] = [];
    for (let index = 0; index < 120; index += 1) {
      const data = structuredClone(messages[index % 2]!);
      costs.push(await new Promise<Cost>((done) => {
        let start = 0;
        requestAnimationFrame(() => { start = performance.now(); });
        dispatchEvent(new MessageEvent('message', { data }));
        requestAnimationFrame(() => {
          const script = performance.now() - start;
          const channel = new MessageChannel();
          channel.port1.addEventListener('message', () => done({ script, whole: performance.now() - start }));
          channel.port1.start();
          channel.port2.postMessage(null);
        });
      }));
    }
    return costs;
  }, pictures);
}

/** A station goes in circles while new scenes come in, as they do while other files are checked. */
async function dragged({ page, tell }: PitchPage): Promise<Cost[]> {
  const person = await page.locator('[data-mark="person-S1"]').boundingBox();
  if (!person) throw new Error('nobody to drag');
  const [x, y] = [person.x + person.width / 2, person.y + person.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 20, y + 20);
  const frames = page.evaluate(async () => {
    const costs: Cost[] = [];
    let before = await new Promise<number>(requestAnimationFrame);
    while (costs.length < 120) {
      const now = await new Promise<number>(requestAnimationFrame);
      costs.push({ script: now - before, whole: now - before });
      before = now;
    }
    return costs;
  });
  for (let index = 0; index < 60; index += 1) {
    await page.mouse.move(x + 60 + 40 * Math.cos(index / 5), y + 40 * Math.sin(index / 5));
    if (index % 10 === 0) await tell({ kind: 'picture', picture: pictureOf(crowd(0, index % 20), index) });
  }
  const costs = await frames;
  await page.mouse.up();
  return costs;
}

/** 22 players and a ball that all move, among cones. */
function game(): string {
  const stations = Array.from({ length: 22 }, (_, index) => `  station S${index + 1} at (${4 + (index % 6) * 12}, ${6 + Math.floor(index / 6) * 18})`);
  const cones = Array.from({ length: 236 }, (_, index) => `  cone at (${2 + (index % 20) * 3.4}, ${3 + Math.floor(index / 20) * 6})`);
  const runs = Array.from({ length: 20 }, (_, index) => `S${index + 3} runs to 3 above S${index + 3}`).join(', ');
  return `drill "Game" {\n  age U13\n  players 22\n  area 70 x 76\n${[...stations, ...cones].join('\n')}\n  ball at S1\n  sequence {\n    S1 passes to S2 while ${runs}\n    S2 passes to S1\n  }\n}\n`;
}

/** A drill that draws about 300 marks, 120 of them people who run; all of it, or one cone, so many metres further right. */
function crowd(all: number, one = 0): string {
  const stations = Array.from({ length: 60 }, (_, index) => `  station S${index + 1} at (${4 + (index % 10) * 6 + all}, ${4 + Math.floor(index / 10) * 12}) holds 2`);
  const cones = Array.from({ length: 160 }, (_, index) => `  cone at (${2 + (index % 20) * 3 + all + (index === 0 ? one : 0)}, ${9 + Math.floor(index / 20) * 9})`);
  const runs = Array.from({ length: 59 }, (_, index) => `S${index + 2} runs to 2 above S${index + 2}`).join(', ');
  return `drill "Crowd" {\n  age U13\n  players 120\n  area 70 x 76\n${[...stations, ...cones].join('\n')}\n  ball at S1\n  sequence {\n    S1 passes to S2 while ${runs}\n    S2 passes to S1\n  }\n}\n`;
}
