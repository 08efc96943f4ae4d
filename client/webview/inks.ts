/** The drawing's colours in the theme of the editor, as variables of the page. */
import { type Palette, palettes } from '../../shared/scene/palette.ts';

/** Follows the classes that the editor sets on the body. */
export function followTheme(): void {
  const paint = (): void => {
    const classes = document.body.classList;
    const inks = classes.contains('vscode-high-contrast-light') ? strongLight
      : classes.contains('vscode-high-contrast') ? strongDark
        : classes.contains('vscode-dark') ? palettes.dark : palettes.light;
    for (const [ink, colour] of Object.entries(inks)) document.documentElement.style.setProperty(`--${ink}`, colour);
  };
  new MutationObserver(paint).observe(document.body, { attributes: true, attributeFilter: ['class'] });
  paint();
}

/** At least 7:1 on the paper for all that is read (WCAG 2.2, 1.4.6). */
export const strongDark: Palette = {
  ...palettes.dark,
  paper: '#000000', ink: '#ffffff', note: '#e0e0e0', gridMinor: '#1f1f1f', gridMajor: '#4a4a4a', tint: '#0d0d0d',
  ball: '#8fd0ff', run: '#ffb870', later: '#d0d0d0', marker: '#ffd76a', late: '#ff9ec4', wait: '#b0b0b0',
};

export const strongLight: Palette = {
  ...palettes.light,
  paper: '#ffffff', ink: '#000000', note: '#2b2b2b', gridMinor: '#e4e4e4', gridMajor: '#b5b5b5', tint: '#f4f4f4',
  ball: '#003a70', run: '#6b2d00', later: '#3a3a3a', marker: '#523600', late: '#80003f', wait: '#4d4d4d',
};
