/** What of a file can be shown: its drills, and of a game its phases. */
import type { Sheet } from '../../shared/protocol.ts';
import type { Picture } from './messages.ts';
import { byId, hide } from './nodes.ts';

export function showChoices(next: Picture): void {
  const sheet = next.drills[next.drill];
  const drills = next.drills.flatMap(({ drill, name, phase }, index) => (next.drills.findIndex((each) => each.drill === drill) === index ? [{ index, words: phase === null ? name : name.slice(0, -`: ${phase}`.length) }] : []));
  const phases = sheetsBeside(next).map(({ index, phase, faults }) => ({ index, words: `${phase ?? 'The drill itself'}${faults > 0 ? `: ${faults} to mend` : ''}` }));
  choose('drill', drills, drills.findLast(({ index }) => index <= next.drill)?.index ?? 0);
  choose('phase', phases, next.drill);
  const phase = sheet !== undefined && sheet.phase !== null;
  hide(byId('game-layers'), !phase);
  hide(byId('rounds-choice'), phase);
  hide(byId('on-choice'), !phase || sheetsBeside(next).every(({ after }) => after === null));
}

/** Nothing to choose from is not shown. */
function choose(name: 'drill' | 'phase', choices: readonly { readonly index: number; readonly words: string }[], chosen: number): void {
  const select = byId<HTMLSelectElement>(name);
  hide(byId(`${name}-choice`), choices.length < 2);
  const same = select.options.length === choices.length && choices.every(({ index, words }, at) => select.options[at]?.text === words && select.options[at]?.value === `${index}`);
  if (!same) select.replaceChildren(...choices.map(({ index, words }) => new Option(words, `${index}`)));
  select.value = `${chosen}`;
}

/** Of the drill that is shown, with their places among all. */
export function sheetsBeside({ drills, drill }: Picture): readonly (Sheet & { readonly index: number })[] {
  return drills.map((sheet, index) => ({ ...sheet, index })).filter((sheet) => sheet.drill === drills[drill]?.drill);
}

/** The phase or the play so many further on in its drill; null where there is none. */
export function sheetFrom(picture: Picture, by: 1 | -1): number | null {
  const sheets = sheetsBeside(picture);
  return sheets[sheets.findIndex(({ index }) => index === picture.drill) + by]?.index ?? null;
}

/** The phase that goes on from the one shown; from the last one, to where its passage begins when it is to begin again. */
export function sheetAfter({ drills, drill }: Picture, again: boolean): number | null {
  const next = drills.findIndex(({ after }) => after === drill);
  if (next >= 0) return next;
  let first = drill;
  for (let before = drills[first]?.after ?? null; before !== null && before < first; before = drills[first]?.after ?? null) first = before;
  return again && first !== drill ? first : null;
}
