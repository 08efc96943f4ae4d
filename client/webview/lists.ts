/** The order of play and what is to be mended, as lists of buttons. */
import type { SceneBeat } from '../../shared/scene/scene.ts';
import type { Cures, PageProblem } from './messages.ts';

export function beatList(list: HTMLOListElement, chosen: (beat: SceneBeat) => void): { readonly show: (beats: readonly SceneBeat[]) => void; readonly light: (beats: readonly SceneBeat[]) => void } {
  let shown: readonly SceneBeat[] = [];
  list.addEventListener('click', ({ target }) => {
    const item = target instanceof Element ? target.closest('li') : null;
    const beat = item && shown[[...list.children].indexOf(item)];
    if (beat) chosen(beat);
  });
  return {
    show: (beats) => {
      while (list.children.length > beats.length) list.lastElementChild?.remove();
      for (const [index, { label, text }] of beats.entries()) {
        const item = list.children[index] ?? list.appendChild(beatItem());
        const words = `${label}  ${text}`;
        const button = item.firstElementChild as HTMLElement;
        if (button.textContent !== words) button.replaceChildren(made('span', 'number', label), `  ${text}`);
      }
      shown = beats;
    },
    light: (now) => {
      for (const [index, item] of [...list.children].entries()) {
        const button = item.firstElementChild;
        if (now.some((beat) => beat === shown[index])) button?.setAttribute('aria-current', 'step');
        else button?.removeAttribute('aria-current');
      }
    },
  };
}

export interface ProblemListOptions {
  readonly reveal: (problem: PageProblem) => void;
  readonly cure: (problem: number, title: string) => void;
}

export interface ProblemList {
  /** Quick fixes stay with a problem that is still there, until newer ones are known. */
  readonly show: (problems: readonly PageProblem[]) => void;
  readonly offer: (cures: Cures) => void;
}

export function problemList(list: HTMLUListElement, { reveal, cure }: ProblemListOptions): ProblemList {
  let shown: readonly PageProblem[] = [];
  let offered = new Map<string, readonly string[]>();
  let drawn = '';
  const draw = (): void => {
    const fixes = shown.map((problem) => offered.get(keyOf(problem)) ?? []);
    const next = JSON.stringify([shown, fixes]);
    if (next === drawn) return;
    drawn = next;
    const focus = [...list.querySelectorAll('button')].findIndex((node) => node === document.activeElement);
    list.replaceChildren(...shown.map((problem, index) => problemItem(problem, fixes[index] ?? [], index)));
    // The reader keeps their place in the list.
    const buttons = list.querySelectorAll('button');
    if (focus >= 0) buttons[Math.min(focus, buttons.length - 1)]?.focus();
  };
  const problemItem = (problem: PageProblem, titles: readonly string[], index: number): HTMLLIElement => {
    const item = document.createElement('li');
    item.className = problem.severity;
    const words = button(problem.message, () => reveal(problem));
    words.prepend(made('span', 'sign', `${index + 1}`), made('span', 'only-heard', `${severityWords[problem.severity]}: `));
    item.append(words, ...titles.map((title) => {
      const node = button(title, () => cure(index, title));
      node.className = 'fix';
      return node;
    }));
    return item;
  };
  return {
    show: (problems) => {
      shown = problems;
      draw();
    },
    offer: (cures) => {
      offered = new Map(shown.map((problem, index) => [keyOf(problem), cures[index] ?? []]));
      draw();
    },
  };
}

function keyOf({ code, message }: PageProblem): string {
  return `${code} ${message}`;
}

const severityWords = { error: 'Error', warning: 'Warning', info: 'Note', hint: 'Hint' } as const;

function beatItem(): HTMLLIElement {
  const item = document.createElement('li');
  const words = document.createElement('button');
  words.type = 'button';
  item.append(words);
  return item;
}

function button(words: string, pressed: () => void): HTMLButtonElement {
  const node = document.createElement('button');
  node.type = 'button';
  node.append(...marked(words));
  node.addEventListener('click', pressed);
  return node;
}

/** Names between backquotes are set apart. */
function marked(words: string): Node[] {
  return words.split('`').map((part, index) => (index % 2 === 1 ? made('b', '', part) : document.createTextNode(part)));
}

function made(name: 'span' | 'b', className: string, words: string): HTMLElement {
  const node = document.createElement(name);
  if (className !== '') node.className = className;
  node.textContent = words;
  return node;
}
