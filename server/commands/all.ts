import type { Command } from '../command.ts';
import { check } from './check.ts';
import { draw } from './draw.ts';
import { explain } from './explain.ts';
import { format } from './format.ts';
import { measure } from './measure.ts';
import { newDrill } from './new.ts';
import { serve } from './serve.ts';
import { sheet } from './sheet.ts';

/** In the order of the help page. */
export const commands: readonly Command[] = [
  check,
  draw,
  sheet,
  format,
  measure,
  explain,
  newDrill,
  serve,
];
