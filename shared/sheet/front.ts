/** What the front page says: the evening at a glance, who is where, what to carry, what to set out and to change, what to mind. */
import type { Problem } from '../problem.ts';
import { figure as number } from '../scene/units.ts';
import type { Changeover, PartFigures, PartSlot, SessionAnalysis } from '../session/analysis.ts';
import { kitWords, minutes as duration, standIns } from '../session/words.ts';
import { bullets, minor, prose, titled, type Block, type Heading, type Item, type Table } from './blocks.ts';
import { cautionsFor } from './cautions.ts';
import type { Stretch } from './flow.ts';
import { timeStrip } from './strip.ts';
import { counted, listed, minutes, partsOf, people, tally, toMend, type Names, type NumberedPart } from './words.ts';

export interface FrontPage {
  readonly title: Heading;
  readonly stretches: readonly Stretch[];
}

/** `pages`: where each part of the timetable is drawn, by its index. */
export function frontPage(analysis: SessionAnalysis, names: Names, pages: ReadonlyMap<number, number>, problems: readonly Problem[]): FrontPage {
  const { session } = analysis;
  const end = Math.max(0, ...analysis.timetable.map((slot) => slot.end));
  const title: Heading = { kind: 'heading', rank: 'title', number: null, text: session.name, aside: `${minutes(end)} min` };
  const strip = timeStrip(analysis);
  return {
    title,
    stretches: [
      { kind: 'full', blocks: [
        title, prose(factsOf(analysis), 'lead'), ...(strip ? [strip] : []), ...(analysis.timetable.length > 0 ? [timetable(analysis, pages)] : []),
        ...toMend(session.span, problems),
      ] },
      { kind: 'two', blocks: [
        ...titled('Groups', groups(analysis, names)),
        ...kit(analysis),
        ...titled('Setting out and changing over', changeovers(analysis)),
      ] },
      { kind: 'full', blocks: titled('What it asks of a player', figures(analysis)) },
      { kind: 'two', blocks: [
        ...titled('Coaching points by corner', corners(analysis)),
        ...titled('Questions', bullets(session.questions)),
        ...titled('Notes', bullets(session.notes)),
        ...titled('Cautions', [...bullets(session.safety), ...bullets(cautionsFor(analysis).map(({ text, source }) => `${text} Source: ${source}.`))]),
        { kind: 'blank', label: 'Rules of this ground and association', lines: 2 },
        { kind: 'blank', label: 'In an emergency: number, address of the ground, nearest first aid and defibrillator', lines: 2 },
      ] },
    ],
  };
}

function factsOf({ session, register, figures: { minutes: spent } }: SessionAnalysis): string {
  const share = (what: string, value: number) => (value > 0 ? [`${number(Math.round(value))} min ${what}`] : []);
  const count = register.length > 0 ? register.length : session.players?.value ?? null;
  return [
    ...(session.theme === null ? [] : [session.theme]),
    ...(session.ageLabel === null ? [] : [session.ageLabel]),
    ...(count === null ? [] : [counted(count, 'player')]),
    session.ground.value,
    ...(session.pitch ? [`pitch ${number(session.pitch.width)} × ${number(session.pitch.length)} m`] : []),
    ...share('practice', spent.practice), ...share('game', spent.game), ...share('pause', spent.pause), ...share('other', spent.other),
  ].join(' · ');
}

// ---------------------------------------------------------------- timetable

function timetable(analysis: SessionAnalysis, pages: ReadonlyMap<number, number>): Table {
  const numbers = new Map(partsOf(analysis).map(({ index, number: at }) => [index, at]));
  return {
    kind: 'table',
    columns: [
      { title: 'Minute', share: 0.12, right: false }, { title: 'Min', share: 0.06, right: true }, { title: 'Part', share: 0.34, right: false },
      { title: 'Drill', share: 0.3, right: false }, { title: 'Groups', share: 0.1, right: false }, { title: 'Page', share: 0.08, right: true },
    ],
    rows: analysis.timetable.map((slot, index) => {
      const when = [`${minutes(slot.start)}–${minutes(slot.end)}`, minutes(slot.end - slot.start)];
      if (slot.kind === 'pause') return [...when, slot.pause.name === null ? 'Pause' : `Pause: ${slot.pause.name}`, '', '', ''];
      const { name } = slot.part;
      const sizes = slot.groups.map(({ members }) => members.length).filter((size) => size > 0);
      return [...when, `${numbers.get(index)}  ${name}`, drillWords(slot), sizes.length > 0 ? sizes.join(' + ') : `${slot.groups.length || ''}`, `${pages.get(index) ?? ''}`];
    }),
  };
}

function drillWords({ part, drill }: PartSlot): string {
  const name = drill?.drill.name ?? part.drill ?? '';
  return part.change === null ? name : `${name}: ${part.change.name}`;
}

// ---------------------------------------------------------------- who

/** Parts whose groups are the same are told once. */
function groups(analysis: SessionAnalysis, names: Names): Block[] {
  const same = new Map<string, NumberedPart[]>();
  for (const part of partsOf(analysis)) {
    const { groups: all, resting, aside, away } = part.slot;
    if (all.every(({ members }) => members.length === 0)) continue;
    const key = JSON.stringify([all.map(({ members, keepers }) => [members, keepers]), resting, aside, away]);
    same.set(key, [...(same.get(key) ?? []), part]);
  }
  return [...same.values()].flatMap((parts): Block[] => {
    const { slot } = parts[0] as NumberedPart;
    return [minor(`${parts.length === 1 ? 'Part' : 'Parts'} ${listed(parts.map(({ number: at, slot: { part } }) => `${at} ${part.name}`))}`), ...groupItems(slot, analysis, names)];
  });
}

function groupItems(slot: PartSlot, { register }: SessionAnalysis, names: Names): Item[] {
  const item = (marker: string, text: string): Item => ({ kind: 'item', list: 'numbers', marker, text, plays: null });
  const reasons = [...new Set(slot.aside.map((member) => register[member - 1]?.aside?.reason ?? ''))].filter((reason) => reason !== '');
  return [
    ...slot.groups.map(({ number: at, members, keepers }) => item(slot.groups.length === 1 ? '–' : `${at}`,
      `${slot.groups.length === 1 && slot.resting.length + slot.aside.length + slot.away.length === 0 ? 'Everyone' : counted(members.length, 'player')}: ${people(members, names)}${keepers.length > 0 ? `; in goal ${people(keepers, names)}` : ''}`)),
    ...(slot.resting.length > 0 ? [item('–', `Resting, in turn: ${people(slot.resting, names)}`)] : []),
    ...(slot.aside.length > 0 ? [item('–', `Not taking part${reasons.length > 0 ? ` (${reasons.join(', ')})` : ''}: ${people(slot.aside, names)}`)] : []),
    ...(slot.away.length > 0 ? [item('–', `Not here yet: ${people(slot.away, names)}`)] : []),
  ];
}

// ---------------------------------------------------------------- kit

function kit({ kit: lines }: SessionAnalysis): Block[] {
  const table: Table = {
    kind: 'table',
    columns: [{ title: 'Carry', share: 0.27, right: false }, { title: 'Need', share: 0.12, right: true }, { title: 'Have', share: 0.22, right: true }, { title: 'Short', share: 0.11, right: true }, { title: 'Most in', share: 0.28, right: false }],
    rows: lines.map(({ kind, colour, needed, has, short, mostIn }) => [
      `${colour === null ? '' : `${colour} `}${kitWords[kind][1]}`, `${needed}`, has === null ? '–' : `${has}${standIns({ kind, needed, has, short })}`, short > 0 ? `${short}` : '–', mostIn,
    ]),
  };
  return titled('Kit', lines.length === 0 ? [] : [table]);
}

// ---------------------------------------------------------------- changeovers

function changeovers(analysis: SessionAnalysis): Block[] {
  const numbers = new Map(partsOf(analysis).map(({ index, number: at, slot }) => [index, `${at} ${slot.part.name}`]));
  return bullets(analysis.changeovers.map((change) => changeWords(change, numbers)));
}

function changeWords(change: Changeover, names: ReadonlyMap<number, string>): string {
  const { from, to, stays, moves, comesUp, goesDown, hands, seconds, walk, available } = change;
  const name = (index: number) => names.get(index) ?? '';
  const when = from === null ? `Before ${to === null ? 'the session' : name(to)}` : to === null ? `After ${name(from)}` : `${name(from)} to ${name(to)}`;
  const what = [
    ...(stays.length > 0 ? [`${tally(stays)} ${stays.length === 1 ? 'stays' : 'stay'}`] : []),
    ...(moves.length > 0 ? [`move ${tally(moves)}`] : []),
    ...(comesUp.length > 0 ? [`pick up ${tally(comesUp)}`] : []),
    ...(goesDown.length > 0 ? [`put down ${tally(goesDown)}`] : []),
  ].join('; ') || 'nothing to change';
  if (moves.length + comesUp.length + goesDown.length === 0) return `${when}: ${what}.`;
  const late = available !== null && seconds > available ? `, ${duration(seconds - available)} more than the pause has` : available === null ? '' : ` of the ${duration(available)} there are`;
  return `${when}: ${what}. ${duration(seconds)}${late}, ${hands === 1 ? 'one pair' : counted(hands, 'pair')} of hands, ${Math.round(walk)} m to walk.`;
}

// ---------------------------------------------------------------- figures

function figures(analysis: SessionAnalysis): Block[] {
  const { perPart } = analysis.figures;
  if (perPart.length === 0) return [];
  const numbers = new Map(partsOf(analysis).map(({ index, number: at }) => [index, at]));
  const table: Table = {
    kind: 'table',
    columns: [
      { title: 'Part', share: 0.3, right: false },
      ...['Work, min', 'Rest, min', 'Touches', 'Metres', 'On the ball', 'm² a player'].map((title) => ({ title, share: 0.1, right: true })), { title: 'Tempo', share: 0.1, right: false },
    ],
    rows: perPart.map((part) => [`${numbers.get(part.slot) ?? ''}  ${part.part}`, ...cells(part)]),
  };
  const like = perPart.flatMap(({ slot, like: near }) => (near === null ? [] : [`${numbers.get(slot)}: like ${near.text} (${near.source})`]));
  return [table, ...bullets(like)];
}

function cells({ work, rest, touches, metres, withBall, space, tempo }: PartFigures): string[] {
  const whole = (value: number | null) => (value === null ? '–' : number(Math.round(value)));
  return [work === null ? '–' : minutes(work), rest === null ? '–' : minutes(rest), whole(touches), whole(metres), withBall === null ? '–' : `${whole(withBall)} s`, whole(space), tempo];
}

function corners({ figures: { corners: counts } }: SessionAnalysis): Block[] {
  const total = Object.values(counts).reduce((sum, count) => sum + count, 0);
  if (total === 0) return [];
  const rows = (['technical', 'psychological', 'physical', 'social'] as const).map((corner) => [
    `${corner[0]?.toUpperCase()}${corner.slice(1)}`, `${counts[corner]}`, `${Math.round((100 * counts[corner]) / total)} %`,
  ]);
  return [{ kind: 'table', columns: [{ title: 'Corner', share: 0.5, right: false }, { title: 'Points', share: 0.25, right: true }, { title: 'Share', share: 0.25, right: true }], rows }];
}
