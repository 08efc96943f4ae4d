/** The page of the pitch: puts its parts together, and speaks with the extension. */
import { isShown } from '../../shared/scene/frame.ts';
import type { SceneBeat } from '../../shared/scene/scene.ts';
import { gripOn } from './grip.ts';
import { keyGrip } from './handles.ts';
import { hintOn } from './hint.ts';
import { followTheme } from './inks.ts';
import { isGround, onPitch } from './layers.ts';
import { beatList, problemList } from './lists.ts';
import type { PageSettings, Picture, ToHost, ToPage } from './messages.ts';
import { byId, hide, setAttribute, setText } from './nodes.ts';
import { pictureIn, type Thing } from './picture.ts';
import { beatsAt, playerOf } from './player.ts';
import { goingRound, once, type Play } from './rounds.ts';
import { sheetAfter, sheetFrom, sheetsBeside, showChoices } from './sheets.ts';
import { stripIn } from './strip.ts';
import { viewOf, type ViewState } from './view.ts';

interface Editor {
  readonly postMessage: (message: ToHost) => void;
  readonly getState: () => unknown;
  readonly setState: (state: PageState) => void;
}

declare function acquireVsCodeApi(): Editor;

/** What a closed and opened page takes up again. */
interface PageState {
  /** The document, for the editor's next start. */
  readonly uri: string | null;
  /** Which of its drills and phases. */
  readonly drill: number;
  readonly view: ViewState;
  readonly time: number;
  readonly speed: string;
  readonly loop: boolean;
  readonly rounds: boolean;
  readonly on: boolean;
  readonly hidden: readonly string[];
}

start(acquireVsCodeApi());

function start({ postMessage: send, getState, setState }: Editor): void {
  const saved = (getState() ?? null) as PageState | null;
  const page = byId('page');
  const svg = byId('pitch') as unknown as SVGSVGElement;
  const bar = byId<HTMLInputElement>('time');
  const clock = byId<HTMLOutputElement>('clock');
  const play = byId<HTMLButtonElement>('play');
  const speed = byId<HTMLSelectElement>('speed');
  const loop = byId<HTMLInputElement>('loop');
  const rounds = byId<HTMLInputElement>('rounds');
  const on = byId<HTMLInputElement>('on');
  const control = document.querySelector<HTMLInputElement>('[data-toggles=control]')!;
  const toggles = [...document.querySelectorAll<HTMLInputElement>('[data-toggles]')];
  const calm = matchMedia('(prefers-reduced-motion: reduce)');

  let shown: Picture | null = null;
  let settings: PageSettings = { sync: 'both', speed: 1, loop: true };
  /** Version of the text that the newest answer is about, also when an older picture is kept. */
  let latest = 0;
  let playing: Play | null = null;
  /** Null when the nodes have changed since. */
  let lit: readonly SceneBeat[] | null = null;
  /** Where the cursor of the text is. */
  let cursor: number | null = null;
  /** The sheet that has been asked for to play on with. */
  let playsOn: number | null = null;

  const save = (): void => setState({
    uri: shown?.uri ?? saved?.uri ?? null, drill: shown?.drill ?? saved?.drill ?? 0, view: view.state(), time: player.time(), speed: speed.value, loop: loop.checked, rounds: rounds.checked, on: on.checked,
    hidden: toggles.filter((toggle) => !toggle.checked).map((toggle) => toggle.dataset['toggles'] ?? ''),
  });
  const saveSoon = settled(save, 300);

  const picture = pictureIn(svg, onPitch);
  const view = viewOf(svg, saved?.view ?? null, saveSoon);
  const hint = hintOn(svg, byId('hint'), picture.thingAt);

  const player = playerOf({
    speed: () => Number(speed.value),
    loop: () => loop.checked,
    calm: () => calm.matches,
    show: (time, drawn) => {
      if (!shown || !playing) return;
      const moment = playing.momentAt(drawn);
      picture.place(playing.spotsAt(moment), moment.time);
      svg.classList.toggle('under-way', drawn > 0);
      strip.move(moment.time);
      hint.follow(moment.time);
      showGround(moment.time);
      bar.value = `${time}`;
      const now = drawn > 0 || player.playing() ? beatsAt(shown.scene.beats, moment.time) : [beatUnderCursor() ?? []].flat();
      const round = playing.count > 1 ? `Repetition ${moment.round + 1} of ${playing.count}, ` : '';
      setText(clock, `${playing.count > 1 ? `${moment.round + 1}/${playing.count} · ` : ''}${moment.time.toFixed(1)} / ${playing.period.toFixed(1)} s`);
      setAttribute(bar, 'aria-valuetext', `${round}${moment.time.toFixed(1)} seconds${now.map(({ label }) => `, beat ${label}`).join('')}`);
      light(now);
      if (player.playing()) return;
      rove(null);
      saveSoon();
    },
    ended: () => {
      playsOn = shown && on.checked ? sheetAfter(shown, loop.checked) : null;
      goTo(playsOn);
      return playsOn !== null;
    },
    changed: () => {
      page.classList.toggle('playing', player.playing());
      const label = player.playing() ? 'Pause' : 'Play';
      play.setAttribute('aria-label', label);
      play.title = label;
    },
  });

  const goTo = (sheet: number | null): void => {
    if (sheet !== null) send({ kind: 'drill', index: sheet });
  };

  /** Within the repetition that is shown. */
  const seekInRound = (time: number): void => player.seek(playing ? playing.momentAt(player.time()).round * playing.period + time : time);

  const strip = stripIn(byId('strip') as unknown as SVGSVGElement, {
    seized: player.rest,
    seek: seekInRound,
  });

  /** A program's move of the time answers the text and is not answered back: only the reader's own acts reveal. */
  const reveal = ({ span }: Pick<Thing, 'span'>): void => {
    if (span && (settings.sync === 'both' || settings.sync === 'toText')) send({ kind: 'reveal', span });
  };

  const beats = beatList(byId('beats') as HTMLOListElement, (beat) => {
    player.rest();
    seekInRound(beat.start);
    reveal(beat);
  });
  const problems = problemList(byId('problems') as HTMLUListElement, {
    reveal: (problem) => send({ kind: 'reveal', span: problem.span }),
    cure: (problem, title) => send({ kind: 'fix', problem, title, version: latest }),
  });

  const showGround = (time: number): void => {
    const mark = control.checked ? shown?.scene.marks.find((each) => isGround(each) && isShown(each, time)) : undefined;
    const words = byId('ground');
    setText(words, mark?.label ?? '');
    hide(words, mark === undefined);
  };

  const light = (now: readonly SceneBeat[]): void => {
    if (now.length === lit?.length && now.every((beat, index) => beat === lit?.[index])) return;
    lit = now;
    // Beats of a mirrored sequence share a text: it does not tell whose marks are whose.
    const alone = now.filter(({ span, number }) => !shown?.scene.beats.some((other) => other.number !== number && other.span.from === span.from));
    svg.classList.toggle('some-lit', now.length > 0 && alone.length === now.length);
    for (const { id, span } of picture.things()) {
      const within = span !== null && alone.some((beat) => beat.span.from <= span.from && span.to <= beat.span.to);
      picture.nodeOf(id)?.classList.toggle('lit', within);
    }
    strip.light(now);
    beats.light(now);
    setText(byId('said'), now.map(({ label, text }) => `Beat ${label}: ${text}`).join('. '));
  };

  const beatUnderCursor = (): SceneBeat | null => {
    const at = cursor;
    if (at === null || settings.sync === 'off' || settings.sync === 'toText') return null;
    return shown?.scene.beats.find(({ span }) => span.from <= at && at <= span.to) ?? null;
  };

  /** Number of the beat that the cursor was in last. */
  let cursorBeat: number | null = null;

  /** Jumps to the beat at the cursor: when the cursor has moved, or a change of the text has put it into another beat. */
  const followCursor = (moved: boolean, other = false): void => {
    const at = settings.sync === 'off' || settings.sync === 'toText' ? null : cursor;
    for (const thing of picture.things()) {
      const here = at !== null && thing.span !== null && thing.span.from <= at && thing.span.to >= at && 'track' in thing;
      picture.nodeOf(thing.id)?.classList.toggle('at-cursor', here);
    }
    const beat = beatUnderCursor();
    const jumps = !other && (moved || beat?.number !== cursorBeat);
    cursorBeat = beat?.number ?? null;
    if (beat && jumps && !player.playing()) seekInRound(beat.start + Math.min(0.01, (beat.end - beat.start) / 2));
  };

  const load = (): void => {
    if (!shown) return;
    playing = rounds.checked && shown.drills[shown.drill]?.phase === null ? goingRound(shown.scene, shown.turn) : once(shown.scene);
    setAttribute(bar, 'max', playing.length.toFixed(2));
    player.load(playing, shown.scene.beats);
  };

  const take = (next: Picture): void => {
    latest = next.version;
    const same = shown?.uri === next.uri && shown.drill === next.drill;
    if (!next.broken || !same) return showPicture(next);
    keepDimmed(next.broken.message, next.broken);
    showProblems(next.problems);
  };

  const showPicture = (next: Picture): void => {
    const other = shown?.uri !== next.uri || shown.drill !== next.drill;
    const otherDrill = shown?.uri !== next.uri || shown.drills[shown.drill]?.drill !== next.drills[next.drill]?.drill;
    const first = shown === null;
    shown = next;
    if (other || next.cursor !== null) cursor = next.cursor;
    const { scene } = next;
    page.classList.remove('broken', 'nothing');
    if (next.broken) notice(next.broken.message, next.broken.span);
    else hide(byId('notice-words'), true);
    setText(byId('title'), scene.title);
    setText(byId('pitch-words'), `${scene.description} Tab goes to the marks and arrows from one to the next; Enter goes to the text, Alt and an arrow move what can be moved.${sheetsBeside(next).length > 1 ? ' Page Down and Page Up go from phase to phase.' : ''}`);
    setAttribute(svg, 'aria-label', `${scene.title}, drawn to scale`);
    picture.show(scene);
    strip.show(scene, next.problems);
    view.follow(scene);
    if (otherDrill && !first) view.fit();
    showChoices(next);
    showProblems(next.problems);
    beats.show(scene.beats);
    hide(byId('order'), scene.beats.length === 0);
    hide(byId('player'), scene.end <= 0);
    lit = null;
    if (other) player.seek(first ? (saved?.time ?? 0) : 0);
    load();
    if (first && saved) player.seek(saved.time);
    followCursor(false, other);
    rove(null);
    if (next.drill === playsOn) player.toggle();
    playsOn = null;
    saveSoon();
  };

  const showProblems = (list: Picture['problems']): void => {
    hide(byId('mend'), list.length === 0);
    problems.show(list);
  };

  /** The last good picture stays, dimmed. */
  const keepDimmed = (message: string, { span }: Pick<Thing, 'span'>): void => {
    player.rest();
    page.classList.add('broken');
    notice(message, span);
  };

  const notice = (message: string, span: Thing['span']): void => {
    const words = byId('notice-words');
    const go = document.createElement('button');
    go.type = 'button';
    go.textContent = 'Go to the line';
    go.addEventListener('click', () => span && send({ kind: 'reveal', span }));
    const text = document.createElement('span');
    text.textContent = message.replaceAll('`', '');
    words.replaceChildren(text, ...(span ? [go] : []));
    hide(words, false);
  };

  // ---------------------------------------------------------------- by keyboard

  let roved: SVGGElement | null = null;

  /** One mark at a time can be tabbed to, as long as it is there; the arrows go on from it. */
  const rove = (to: SVGGElement | null): void => {
    const stays = roved?.isConnected && roved.getAttribute('visibility') !== 'hidden';
    const current = to ?? (stays ? roved : svg.querySelector<SVGGElement>('[data-mark][tabindex]:not([visibility=hidden])'));
    if (current !== roved) {
      roved?.setAttribute('tabindex', '-1');
      current?.setAttribute('tabindex', '0');
      roved = current;
    }
    to?.focus();
  };

  svg.addEventListener('keydown', (event) => {
    const thing = picture.thingAt(event.target);
    const arrows: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
    const arrow = arrows[event.key];
    if (event.key === '+' || event.key === '=') view.zoom(1.25);
    else if (event.key === '-') view.zoom(0.8);
    else if (event.key === '0') view.fit();
    else if (event.key === ' ') player.toggle();
    else if (event.key === 'PageDown' || event.key === 'PageUp') goTo(shown && sheetFrom(shown, event.key === 'PageDown' ? 1 : -1));
    else if (event.key === 'Enter' && thing) reveal(thing);
    else if (arrow && thing && event.altKey) nudge(thing, arrow[0], -arrow[1]);
    else if (arrow && thing) {
      const nodes = [...svg.querySelectorAll<SVGGElement>('[data-mark][tabindex]:not([visibility=hidden])')].filter((node) => node.getClientRects().length > 0);
      const here = nodes.indexOf((event.target as Element).closest('[data-mark]') as SVGGElement);
      rove(nodes[(here + nodes.length + (arrow[0] + arrow[1] > 0 ? 1 : -1)) % nodes.length] ?? null);
    } else if (arrow) view.pan(arrow[0] * 0.1, arrow[1] * 0.1);
    else return;
    event.preventDefault();
    event.stopPropagation();
  });

  /** As a drag of half a metre. */
  const nudge = (thing: Thing, right: number, up: number): void => {
    if (!shown) return;
    const grip = keyGrip(shown.scene, thing);
    if (grip) send({ kind: 'drag', version: shown.version, handle: grip.handle, to: { x: grip.at.x + right / 2, y: grip.at.y + up / 2 } });
  };

  document.addEventListener('keydown', (event) => {
    if ((event.target as Element).closest('button, input, select, summary, svg')) return;
    if (event.key === ' ') player.toggle();
    else if (event.key === 'ArrowLeft') player.step(-1);
    else if (event.key === 'ArrowRight') player.step(1);
    else return;
    event.preventDefault();
  });

  // ---------------------------------------------------------------- by hand

  gripOn({
    svg, picture, view, reveal,
    scene: () => shown?.scene ?? null,
    lifted: () => {
      player.rest();
      player.seek(0);
    },
    dropped: (handle, to) => shown && send({ kind: 'drag', version: shown.version, handle, to }),
  });
  svg.addEventListener('wheel', (event) => {
    event.preventDefault();
    view.zoom(Math.exp(-event.deltaY / (event.ctrlKey ? 100 : 400)), view.spotAt(event.clientX, event.clientY));
  }, { passive: false });
  byId('larger').addEventListener('click', () => view.zoom(1.25));
  byId('smaller').addEventListener('click', () => view.zoom(0.8));
  byId('fit').addEventListener('click', view.fit);
  play.addEventListener('click', player.toggle);
  byId('back').addEventListener('click', () => player.step(-1));
  byId('next').addEventListener('click', () => player.step(1));
  bar.addEventListener('input', () => {
    player.rest();
    player.seek(Number(bar.value));
  });
  rounds.addEventListener('change', load);
  for (const choice of [speed, loop, rounds, on]) choice.addEventListener('change', save);
  for (const name of ['drill', 'phase']) byId(name).addEventListener('change', ({ target }) => goTo(Number((target as HTMLSelectElement).value)));
  for (const toggle of toggles) {
    if (saved) toggle.checked = !saved.hidden.includes(toggle.dataset['toggles'] ?? '');
    const apply = (): void => void page.classList.toggle(`without-${toggle.dataset['toggles']}`, !toggle.checked);
    toggle.addEventListener('change', () => {
      apply();
      save();
    });
    apply();
  }
  control.addEventListener('change', () => {
    send({ kind: 'control', shown: control.checked });
    showGround(playing?.momentAt(player.time()).time ?? 0);
  });
  const choices = byId<HTMLDetailsElement>('layers');
  choices.addEventListener('keydown', ({ key }) => {
    if (key !== 'Escape') return;
    choices.open = false;
    choices.querySelector('summary')?.focus();
  });
  document.addEventListener('pointerdown', ({ target }) => {
    if (!choices.contains(target as Node)) choices.open = false;
  });

  // ---------------------------------------------------------------- from the extension

  let started = false;
  addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
    switch (data.kind) {
      case 'picture':
        return newest(() => {
          take(data.picture);
          send({ kind: 'drawn' });
        });
      case 'nothing':
        return newest(() => {
          if (shown?.uri === data.uri) keepDimmed(data.message, { span: null });
          else page.classList.add('nothing');
          send({ kind: 'drawn' });
        });
      case 'cures':
        if (data.version === latest) problems.offer(data.cures);
        return;
      case 'cursor':
        // A kept or older picture has other places for its words: the next one brings its own cursor.
        if (data.version !== shown?.version) return;
        cursor = data.offset;
        followCursor(true);
        return;
      case 'settings':
        settings = data.settings;
        if (!started) {
          speed.value = saved?.speed ?? `${settings.speed}`;
          loop.checked = saved?.loop ?? settings.loop;
          rounds.checked = saved?.rounds ?? false;
          on.checked = saved?.on ?? false;
        }
        started = true;
        return;
      case 'player':
        if (data.action === 'play') player.toggle();
        else if (data.action === 'fit') view.fit();
        else player.step(data.action === 'next' ? 1 : -1);
    }
  });

  followTheme();
  page.classList.add('nothing');
  if (control.checked) send({ kind: 'control', shown: true });
  send({ kind: 'ready' });
}

/** Of several pictures within a frame only the last is drawn. */
const newest = (() => {
  let waiting: (() => void) | null = null;
  return (draw: () => void): void => {
    if (waiting === null) {
      requestAnimationFrame(() => {
        const last = waiting;
        waiting = null;
        last?.();
      });
    }
    waiting = draw;
  };
})();

/** Once nothing has called for this many milliseconds. */
function settled(act: () => void, milliseconds: number): () => void {
  let timer = 0;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(act, milliseconds) as unknown as number;
  };
}
