import { differenceEuclidean, filterDeficiencyDeuter, filterDeficiencyProt, filterDeficiencyTrit, parse } from 'culori';
import { describe, expect, it } from 'vitest';
import { hex as contrast } from 'wcag-contrast';
import { bibColour, type Ink, palettes, textOn, themes } from '../../shared/scene/palette.ts';

const lettering: readonly Ink[] = ['ink', 'note', 'ball', 'run', 'late', 'zone0', 'zone1', 'zone2', 'zone3', 'lane'];
const graphics: readonly Ink[] = [...lettering, 'later', 'marker', 'wait', 'team0', 'team1', 'team2', 'team3'];
const bibs = ['red', 'blue', 'green', 'yellow', 'orange', 'white', 'black', 'purple', 'pink', 'grey', 'brown', 'turquoise', 'navy', '#777777'];

describe.each(themes)('%s', (theme) => {
  const palette = palettes[theme];
  // WCAG 2.2, success criterion 1.4.3.
  it.each(lettering)('letters in %s read on paper and on the tint of zones', (ink) => {
    expect(contrast(palette[ink], palette.paper)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(palette[ink], palette.tint)).toBeGreaterThanOrEqual(4.5);
  });
  it.each(['ink', 'ball', 'run', 'late', 'team0', 'team1', 'team2', 'team3'] as const)('letters in paper read on %s', (ink) => {
    expect(contrast(palette.paper, palette[ink])).toBeGreaterThanOrEqual(4.5);
  });
  // WCAG 2.2, success criterion 1.4.11.
  it.each(graphics)('lines in %s are seen on paper and on the tint of zones', (ink) => {
    expect(contrast(palette[ink], palette.paper)).toBeGreaterThanOrEqual(3);
    expect(contrast(palette[ink], palette.tint)).toBeGreaterThanOrEqual(3);
  });
});

describe('bibs', () => {
  it.each(bibs)('letters read on %s', (bib) => {
    const colour = bibColour(bib) as string;
    expect(contrast(textOn(colour), colour)).toBeGreaterThanOrEqual(4.5);
  });
  it('of a colour nobody knows have none', () => {
    expect(bibColour('mauve-ish')).toBeNull();
  });
});

/** Distance in CIELAB (CIE76) below which colours are hard to tell apart at the size of a line. */
const apart = 10;
const eyes = { 'any eye': (colour: unknown) => colour, protanopia: filterDeficiencyProt(1), deuteranopia: filterDeficiencyDeuter(1), tritanopia: filterDeficiencyTrit(1) };

describe.each(['light', 'dark'] as const)('in %s, with', (theme) => {
  it.each(Object.keys(eyes) as (keyof typeof eyes)[])('%s, inks that mean different things are told apart', (eye) => {
    const palette = palettes[theme];
    const pairs: readonly (readonly [Ink, Ink])[] = [['ball', 'run'], ['ball', 'late'], ['ball', 'ink'], ['run', 'ink'], ['late', 'ink'], ['team0', 'team1'], ['team0', 'team2'], ['team1', 'ink']];
    const close = pairs.filter(([a, b]) => differenceEuclidean('lab65')(eyes[eye](parse(palette[a])), eyes[eye](parse(palette[b]))) < apart);
    expect(close).toEqual([]);
  });
});
