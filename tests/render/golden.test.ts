import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { toSvg, type SvgOptions } from '../../shared/render/svg.ts';
import { stage, type StageOptions } from '../../shared/scene/scene.ts';
import { analysed, drills } from '../scene/drills.ts';

/** Pictures as they were when somebody last looked at them. After a wanted change: UPDATE_GOLDEN=1, then look at what changed. */
const pictures: Readonly<Record<string, [drill: string, StageOptions, SvgOptions]>> = {
  'two-balls-light': ['two-balls', { theme: 'light', convention: 'solid pass' }, {}],
  'in-a-hurry-print': ['in-a-hurry', { theme: 'print', convention: 'dashed pass' }, { at: 3 }],
  'crowded-game-light': ['crowded-game', { theme: 'light', convention: 'solid pass', control: true }, { at: 4 }],
  'game-dark': ['game', { theme: 'dark', convention: 'solid pass', scale: 500 }, { animated: true }],
};

describe('golden pictures', () => {
  it.each(Object.keys(pictures))('%s is as it was', (name) => {
    const [drill, staging, options] = pictures[name] as [string, StageOptions, SvgOptions];
    const path = new URL(`golden/${name}.svg`, import.meta.url);
    const svg = toSvg(stage(analysed(drills[drill] as string), staging), options);
    if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(path, svg);
    const lines = (text: string) => text.split('\n');
    expect(lines(svg).filter((line, index) => line !== lines(readFileSync(path, 'utf8'))[index]).map((line) => line.slice(0, 200))).toEqual([]);
  });
});
