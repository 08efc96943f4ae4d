import { bold, medium } from '../font/embedded.ts';
import { cssWeight, fontFamily } from '../font/text.ts';

/** The Latin part of the shipped font as a style sheet without anything remote. */
export const fontCss = [[medium, cssWeight.medium] as const, [bold, cssWeight.bold] as const]
  .map(([data, weight]) => `@font-face{font-family:'${fontFamily}';font-weight:${weight};src:url(data:font/woff2;base64,${data}) format('woff2')}`)
  .join('');
