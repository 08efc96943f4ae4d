/** The numbers of a session, as text for a coach and as data for programs. */
import type { SessionAnalysis, Slot } from '../../shared/session/analysis.ts';
import { kitText, minutes, standIns } from '../../shared/session/words.ts';
import { harmless } from './cells.ts';
import { columns } from './columns.ts';
import type { DrillMeasures } from './measures.ts';
import { counted } from './report.ts';

export function sessionText(file: string, analysis: SessionAnalysis): string {
  const { session, register, timetable, changeovers, kit, figures, proposal } = analysis;
  const length = timetable.reduce((end, slot) => Math.max(end, slot.end), 0);
  const played = Object.entries(figures.minutes).filter(([, min]) => min > 0).map(([what, min]) => `${short(min)} ${what}`).join(', ');
  const corners = Object.entries(figures.corners).map(([corner, count]) => `${count} ${corner}`).join(', ');
  const between = changeovers.filter(({ from, to }) => from !== null && to !== null);
  return [
    `${harmless(session.name)} (${harmless(file)})`,
    `  ${[minutes(length), ...(register.length > 0 ? [counted(register.length, 'player')] : [])].join(', ')}`,
    `  minutes         ${played === '' ? 'none' : played}`,
    ...(kit.length > 0 ? [`  kit             ${kit.map((line) => `${kitText(line.kind, line.needed, line.colour)}${line.has === null ? '' : ` of ${line.has}${standIns(line)}`}`).map(harmless).join(', ')}`] : []),
    `  coaching points ${corners}`,
    ...(between.length > 0 ? [`  changeovers     ${minutes(sum(between.map(({ seconds }) => seconds)))} in all with ${counted(session.hands.value, 'pair')} of hands${proposal ? `; ${minutes(proposal.proposed)} with other places` : ''}`] : []),
    ...table(['from min', 'part', 'groups', 'work', 'rest', 'touches', 'metres', 'on the ball', 'm² each', 'set up'], timetable.map((slot, index) => row(slot, index, analysis))),
    '',
  ].join('\n');
}

function row(slot: Slot, index: number, { figures, changeovers }: SessionAnalysis): readonly string[] {
  const from = short(slot.start / 60);
  if (slot.kind === 'pause') return [from, slot.pause.name ?? 'pause', '', '', '', '', '', '', '', ''];
  const numbers = figures.perPart.find((each) => each.slot === index);
  const setUp = changeovers.find(({ to }) => to === index);
  const time = (seconds: number | null | undefined): string => (seconds === null || seconds === undefined ? '' : minutes(seconds));
  const number = (value: number | null | undefined): string => (value === null || value === undefined ? '' : short(value));
  return [
    from, slot.part.name, slot.groups.map(({ members }) => members.length).join(' + '), time(numbers?.work), time(numbers?.rest),
    number(numbers?.touches), number(numbers?.metres), time(numbers?.withBall), number(numbers?.space), time(setUp?.seconds),
  ];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  return rows.length === 0 ? [] : ['', ...columns(head, rows).map((each) => `  ${each}`)];
}

/** Without the drills, which are measured in their own files. */
export function sessionJson({ session, register, timetable, changeovers, kit, figures, proposal }: SessionAnalysis): object {
  return {
    name: session.name,
    players: register.length,
    timetable: timetable.map((slot) => (slot.kind === 'pause'
      ? { pause: slot.pause.name, start: slot.start, end: slot.end }
      : {
        part: slot.part.name, start: slot.start, end: slot.end, drill: slot.part.drill, change: slot.part.change?.name ?? null, file: slot.file,
        groups: slot.groups, resting: slot.resting, aside: slot.aside, away: slot.away, setUp: slot.setUp,
      })),
    changeovers, kit, figures, proposal,
  };
}

/** The drills as the parts play them, named after session and part: one group, of the size it has that evening. */
export function partMeasures({ session, timetable }: SessionAnalysis): readonly DrillMeasures[] {
  return timetable.flatMap((slot) => {
    if (slot.kind !== 'part' || !slot.drill) return [];
    const { measures, drill } = slot.drill;
    const players = Math.max(...slot.groups.map(({ members }) => members.length));
    const keepers = drill.actors.filter(({ kind }) => kind === 'keeper').length;
    const space = measures.area && players > 0 ? { all: measures.area.m2 / players, outfield: measures.area.m2 / Math.max(1, players - keepers) } : null;
    const share = players > 0 ? measures.players / players : 0;
    const perMinute = measures.perMinute && { touches: measures.perMinute.touches * share, metres: measures.perMinute.metres * share };
    return [{ ...measures, phases: [], name: `${session.name}: ${slot.part.name}`, players, spacePerPlayer: space, perMinute }];
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function short(value: number): string {
  return String(Math.round(value * 10) / 10);
}
