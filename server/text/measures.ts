/** The numbers of a drill as text, as JSON and as a row of CSV. */
import { itemText } from '../../shared/measure/kit.ts';
import type { Measures } from '../../shared/measure/measure.ts';
import type { PhaseMeasures } from '../../shared/measure/phases.ts';
import { harmless } from './cells.ts';
import { columns, csvRow } from './columns.ts';
import { counted } from './report.ts';

export type MeasureFormat = 'text' | 'json' | 'csv';

/** Of one drill, and in a game of its phases. */
export interface DrillMeasures extends Measures {
  readonly phases: readonly PhaseMeasures[];
}

/** Each drill a row, and each of its phases one. */
export function csvRows(file: string, drills: readonly DrillMeasures[]): string {
  return drills.flatMap((drill) => [null, ...drill.phases].map((phase) => csvRow(mainNumbers.map(([, value]) => rounded('', value(drill, phase, file)))))).join('');
}

export function csvHead(): string {
  return csvRow(mainNumbers.map(([name]) => name));
}

export function measuresDocument(files: readonly unknown[]): string {
  return `${JSON.stringify({ files }, rounded, 2)}\n`;
}

export function jsonOf(measures: DrillMeasures): object {
  return { ...measures, interval: measures.interval?.seconds ?? null, intervalBecause: measures.interval?.because ?? null };
}

/** Keeps a micrometre and a microsecond: enough to calculate with, without the noise of binary fractions. */
function rounded<T>(_key: string, value: T): T | number {
  return typeof value === 'number' && Number.isFinite(value) ? Math.round(value * 1e6) / 1e6 : value;
}

type MainNumber = (drill: DrillMeasures, phase: PhaseMeasures | null, file: string) => string | number | boolean | null;

/** Of a drill, or where one is given of its phase. */
const mainNumbers: readonly (readonly [string, MainNumber])[] = [
  ['file', (_, __, file) => file],
  ['name', (drill) => drill.name],
  ['phase', (_, phase) => phase && phase.name],
  ['players', (drill) => drill.players],
  ['width', (drill) => drill.area?.width ?? null],
  ['length', (drill) => drill.area?.length ?? null],
  ['m2', (drill) => drill.area?.m2 ?? null],
  ['spaceOutfield', (drill) => drill.spacePerPlayer?.outfield ?? null],
  ['spaceAll', (drill) => drill.spacePerPlayer?.all ?? null],
  ['passes', (drill, phase) => (phase ?? drill).passes.length],
  ['leastSlack', (drill, phase) => leastOf((phase ?? drill).passes.flatMap((pass) => pass.slack ?? []))],
  ['leastMargin', (_, phase) => phase && leastOf(phase.passes.flatMap((pass) => pass.margin ?? []))],
  ['duration', (drill, phase) => (phase ?? drill).duration],
  ['changesOfSide', (_, phase) => phase && Math.max(0, phase.possession.length - 1)],
  ['interval', (drill, phase) => (phase ? null : (drill.interval?.seconds ?? null))],
  ['closed', (drill, phase) => (phase ? null : (drill.rotation?.closed ?? null))],
  ['order', (drill, phase) => (phase ? null : (drill.rotation?.order ?? null))],
  ['touchesPerMinute', (drill, phase) => (phase ? null : (drill.perMinute?.touches ?? null))],
  ['metresPerMinute', (drill, phase) => (phase ? null : (drill.perMinute?.metres ?? null))],
];

function leastOf(values: readonly number[]): number | null {
  return values.length === 0 ? null : Math.min(...values);
}

export function textOf(file: string, drill: DrillMeasures): string {
  const ground = drill.area && ` on ${short(drill.area.width)} x ${short(drill.area.length)} m`;
  const space = drill.spacePerPlayer && `, ${short(drill.spacePerPlayer.all)} m² a player`;
  return [
    `${harmless(drill.name)} (${harmless(file)})`,
    `  ${counted(drill.players, 'player')}${ground ?? ''}${space ?? ''}`,
    // A game has phases, and nothing that is repeated.
    ...(drill.duration > 0 ? [`  one repetition  ${fixed(drill.duration)} s`] : []),
    ...(drill.interval ? [`  a start every   ${fixed(drill.interval.seconds)} s: ${harmless(drill.interval.because)}`] : []),
    ...(drill.rotation ? [`  rotation        ${harmless(rotationText(drill.rotation))}`] : []),
    ...(drill.perMinute ? [`  a minute        ${fixed(drill.perMinute.touches)} touches and ${short(drill.perMinute.metres)} m a player`] : []),
    ...(drill.kit.length > 0 ? [`  kit             ${drill.kit.map(itemText).join(', ')}`] : []),
    ...table(['at s', 'pass', 'to', 'metres', 'under way s', 'launch m/s', 'spare s'], drill.passes.map((pass) => [
      fixed(pass.at), pass.from, pass.to ?? '', fixed(pass.length), fixed(pass.flight), fixed(pass.speed), pass.slack === null ? '' : signed(pass.slack),
    ])),
    ...table(['player', 'touches', 'metres', 'working s', 'waiting s'], drill.perPlayer.map((player) => [
      player.actor, player.touches, fixed(player.distance), fixed(player.working), fixed(player.waiting),
    ])),
    ...drill.phases.flatMap(phaseText),
    '',
  ].join('\n');
}

function phaseText({ name, duration, possession, passes, numbers, control }: PhaseMeasures): readonly string[] {
  const sides = possession.map(({ team, from }) => `${team} from ${fixed(from)} s`);
  const shares = control.map(({ team, mean }) => `${team} ${Math.round(mean * 100)} %`);
  const zones = [...new Set(numbers.map(({ zone }) => zone))];
  const counted = zones.map((zone) => `${zone} ${numbers.filter((each) => each.zone === zone).map((each) => `${each.with} v ${each.against}`).join(', ')}`);
  return [
    '',
    `  phase “${harmless(name ?? '')}”, ${fixed(duration)} s`,
    ...(sides.length > 0 ? [`    the ball      ${harmless(sides.join(', '))}`] : []),
    ...(shares.length > 0 ? [`    ground        ${harmless(shares.join(', '))} on average`] : []),
    ...(counted.length > 0 ? [`    in zones      ${harmless(counted.join('; '))} (with the ball v without, goalkeepers left out)`] : []),
    ...table(['at s', 'from', 'to', 'metres', 'spare s', 'nearest', 'late s', 'open'], passes.map((pass) => [
      fixed(pass.at), pass.from, pass.to ?? '', fixed(pass.length), pass.slack === null ? '' : signed(pass.slack),
      pass.nearest ?? '', pass.margin === null ? '' : signed(pass.margin), pass.openLanes,
    ])),
  ];
}

function table(head: readonly string[], rows: readonly (readonly (string | number)[])[]): readonly string[] {
  return rows.length === 0 ? [] : ['', ...columns(head, rows).map((row) => `  ${row}`)];
}

function rotationText(rotation: NonNullable<Measures['rotation']>): string {
  if (!rotation.closed) return 'open: some place is left empty or gets two after one repetition';
  const cycles = rotation.cycles.map((cycle) => cycle.join(' → ')).join('; ');
  return `everyone is home after ${counted(rotation.order ?? 1, 'repetition')}: ${cycles}`;
}

function fixed(value: number): string {
  return value.toFixed(1);
}

function signed(value: number): string {
  const tenths = Math.round(value * 10) / 10;
  return `${tenths < 0 ? '-' : '+'}${fixed(Math.abs(tenths))}`;
}

function short(value: number): string {
  return String(Math.round(value * 10) / 10);
}
