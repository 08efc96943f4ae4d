import type { Changeover, PartSlot, SessionAnalysis } from '../session/analysis.ts';
import { extentOf } from '../session/ground.ts';
import { shorter } from '../session/proposal.ts';
import { minutes } from '../session/words.ts';
import { plus } from '../geometry/point.ts';
import { problem, type Check, type Cure } from './check.ts';
import { lineBefore, placeEdits } from './sessions.ts';

/** Seconds that a changeover may take longer than its pause, and without a pause. CHOSEN, as the times of carrying are. */
const margin = 15;
const withoutPause = 120;

export const check: Check = {
  code: 'slow-changeover',
  group: 'session',
  severity: 'info',
  title: 'Setting up takes longer than the pause',
  why: 'While the coach carries cones, nobody is coached. Markers of a kind are alike, so each place is served from the nearest that lies there already; what is missing comes from the bottom left corner of the pitch and what is left over goes there. Walking, picking up and putting down are added up and shared among the `hands`.',
  source: 'No published figure was found: 1.4 m a second and a few seconds a thing are choices (shared/session/carrying.ts).',
  bad: [
    `drill "Left" {
  players 3
  area 12 x 12 marked every 3
  station Base at (3, 6) holds 2
  station Wall at (9, 6)
}

session "Tuesday" {
  pitch 60 x 40
  part "Here" 20 min of "Left" at (0, 0)
  pause 1 min
  part ⟦"There"⟧ 20 min of "Left" at (48, 28)
}
`,
  ],
  good: [
    `drill "Left" {
  players 3
  area 12 x 12 marked every 3
  station Base at (3, 6) holds 2
  station Wall at (9, 6)
}

session "Tuesday" {
  pitch 60 x 40
  part "Here" 20 min of "Left" at (0, 0)
  pause 1 min
  part "There" 20 min of "Left" at (12, 0)
  hands 2
}
`,
  ],
  find: null,
  findInSession: (analysis) => analysis.changeovers.flatMap((changeover) => {
    const to = slotAt(analysis, changeover.to);
    if (!to || changeover.from === null || changeover.seconds <= limitOf(changeover)) return [];
    const { moves, comesUp, goesDown, stays, hands, seconds, available } = changeover;
    const counts = [[moves.length, 'moved'], [comesUp.length, 'taken up'], [goesDown.length, 'put down'], [stays.length, 'left']] as const;
    const work = counts.filter(([count]) => count > 0).map(([count, done]) => `${count} ${done}`).join(', ');
    const pause = available === null ? 'there is no pause for it' : `the pause is ${minutes(available)}`;
    const message = `Setting up "${to.part.name}" takes about ${minutes(seconds)} with ${hands === 1 ? 'one pair' : `${hands} pairs`} of hands (${work}); ${pause}.`;
    return problem(check, to.part.nameSpan, message, { help: 'Lay it out beforehand, put it where markers lie already, or let more hands help (hands 2).' });
  }),
  curesInSession: (found, analysis, text) => {
    const changeover = analysis.changeovers.find((each) => slotAt(analysis, each.to)?.part.nameSpan.from === found.span.from);
    const [from, to] = [slotAt(analysis, changeover?.from ?? null), slotAt(analysis, changeover?.to ?? null)];
    return changeover && from && to ? [...nearer(from, to, analysis), ...moreHands(changeover, analysis, text)] : [];
  },
};

function slotAt({ timetable }: SessionAnalysis, index: number | null): PartSlot | null {
  const slot = index === null ? undefined : timetable[index];
  return slot?.kind === 'part' ? slot : null;
}

function limitOf({ available }: Changeover): number {
  return available === null ? withoutPause : available + margin;
}

/** The part where the changeover before it is shortest. */
function nearer(from: PartSlot, to: PartSlot, { session }: SessionAnalysis): Cure[] {
  const laid = [from, to].map(({ groups, drill, setUp }) => ({ at: groups.flatMap(({ at }) => at ?? []), extent: extentOf(drill!.drill), things: setUp.things }));
  const found = shorter(laid, session.pitch, session.units, session.hands.value);
  const shift = found?.shifts[1];
  if (!found || !shift) return [];
  const places = laid[1]!.at.map((at) => plus(at, shift.x, shift.y));
  return [{ title: `Move "${to.part.name}" to where it is set up in ${minutes(found.proposed)}`, about: 'place', edits: placeEdits(to.part, places, session) }];
}

function moreHands(changeover: Changeover, { session }: SessionAnalysis, text: string): Cure[] {
  const hands = Math.ceil((changeover.seconds * changeover.hands) / limitOf(changeover));
  const [first] = session.parts;
  const { span } = session.hands;
  if (hands > 6 || first?.kind !== 'part') return [];
  const edit = span ? { span, text: String(hands) } : lineBefore(first, `hands ${hands}`, text);
  return [{ title: `Let ${hands} carry (hands ${hands})`, about: 'hands', edits: [edit] }];
}
