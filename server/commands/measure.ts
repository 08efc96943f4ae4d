import { analyse } from '../../shared/analyse.ts';
import type { Measures } from '../../shared/measure/measure.ts';
import type { SessionAnalysis } from '../../shared/session/analysis.ts';
import { command } from '../command.ts';
import { complain, statusOf } from '../io.ts';
import { progressOn } from '../progress.ts';
import { readSources } from '../sources.ts';
import { harmless } from '../text/cells.ts';
import { columns, csvRow } from '../text/columns.ts';
import { counted } from '../text/report.ts';
import { partMeasures, sessionJson, sessionText } from '../text/session.ts';
import { workspaceOf } from '../workspace.ts';

interface Measured {
  readonly file: string;
  readonly drills: readonly Measures[];
  readonly sessions: readonly SessionAnalysis[];
}

export const measure = command({
  name: 'measure',
  operands: 'PATH…',
  summary: 'every computed number',
  more: [
    'PATH is a file, a folder (every .drill file in it), a glob in quotes, or - for standard input.',
    'Lengths are in metres, times in seconds. CSV has one row a drill with the main numbers, and one a part of a session; JSON has them all.',
  ],
  takes: [1, Infinity],
  options: {
    format: { kind: 'choice', choices: ['text', 'json', 'csv'], help: 'how the numbers are written (text)' },
  },
  run: async ({ options, operands }, io) => {
    const { sources, unread } = await readSources(operands, io);
    const progress = progressOn(io);
    const analyses = sources.map((source, index) => {
      progress.step(index, sources.length, 'files measured');
      return analyse(source.text, workspaceOf(source.path));
    });
    progress.clear();
    const measured = analyses.map((analysis, index): Measured => ({
      file: sources[index]!.name,
      drills: analysis.drills.map((drill) => drill.measures),
      sessions: analysis.sessions,
    }));
    io.out(written(measured, options.format ?? 'text'));
    const faulty = sources.filter((_, index) => analyses[index]!.problems.some((problem) => problem.severity === 'error'));
    complain(io, [...unread, ...faulty.map((source) => `${source.name} has errors, so its numbers may mislead; halfturn check ${source.name} shows them.`)]);
    return statusOf(unread, analyses.flatMap((analysis) => analysis.problems));
  },
});

function written(measured: readonly Measured[], format: 'text' | 'json' | 'csv'): string {
  switch (format) {
    case 'text':
      return measured.flatMap(({ file, drills, sessions }) => [
        ...drills.map((drill) => textOf(file, drill)),
        ...sessions.map((session) => sessionText(file, session)),
      ]).join('\n');
    case 'json':
      return `${JSON.stringify({ files: measured.map(({ file, drills, sessions }) => ({
        file, drills: drills.map(jsonOf), sessions: sessions.map(sessionJson),
      })) }, rounded, 2)}\n`;
    case 'csv':
      return [csvRow(mainNumbers.map(([name]) => name)), ...measured.flatMap(({ file, drills, sessions }) =>
        [...drills, ...sessions.flatMap(partMeasures)].map((drill) => csvRow(mainNumbers.map(([, value]) => rounded('', value(drill, file))))))].join('');
  }
}

function jsonOf(measures: Measures): object {
  return { ...measures, interval: measures.interval?.seconds ?? null, intervalBecause: measures.interval?.because ?? null };
}

/** Keeps a micrometre and a microsecond: enough to calculate with, without the noise of binary fractions. */
function rounded<T>(_key: string, value: T): T | number {
  return typeof value === 'number' && Number.isFinite(value) ? Math.round(value * 1e6) / 1e6 : value;
}

const mainNumbers: readonly (readonly [string, (drill: Measures, file: string) => string | number | boolean | null])[] = [
  ['file', (_, file) => file],
  ['name', (drill) => drill.name],
  ['players', (drill) => drill.players],
  ['width', (drill) => drill.area?.width ?? null],
  ['length', (drill) => drill.area?.length ?? null],
  ['m2', (drill) => drill.area?.m2 ?? null],
  ['spaceOutfield', (drill) => drill.spacePerPlayer?.outfield ?? null],
  ['spaceAll', (drill) => drill.spacePerPlayer?.all ?? null],
  ['passes', (drill) => drill.passes.length],
  ['leastSlack', (drill) => leastOf(drill.passes.flatMap((pass) => pass.slack ?? []))],
  ['duration', (drill) => drill.duration],
  ['interval', (drill) => drill.interval?.seconds ?? null],
  ['closed', (drill) => drill.rotation?.closed ?? null],
  ['order', (drill) => drill.rotation?.order ?? null],
  ['touchesPerMinute', (drill) => drill.perMinute?.touches ?? null],
  ['metresPerMinute', (drill) => drill.perMinute?.metres ?? null],
];

function leastOf(values: readonly number[]): number | null {
  return values.length === 0 ? null : Math.min(...values);
}

function textOf(file: string, drill: Measures): string {
  const ground = drill.area && ` on ${short(drill.area.width)} x ${short(drill.area.length)} m`;
  const space = drill.spacePerPlayer && `, ${short(drill.spacePerPlayer.all)} m² a player`;
  return [
    `${harmless(drill.name)} (${harmless(file)})`,
    `  ${counted(drill.players, 'player')}${ground ?? ''}${space ?? ''}`,
    `  one repetition  ${fixed(drill.duration)} s`,
    ...(drill.interval ? [`  a start every   ${fixed(drill.interval.seconds)} s: ${harmless(drill.interval.because)}`] : []),
    ...(drill.rotation ? [`  rotation        ${harmless(rotationText(drill.rotation))}`] : []),
    ...(drill.perMinute ? [`  a minute        ${fixed(drill.perMinute.touches)} touches and ${short(drill.perMinute.metres)} m a player`] : []),
    ...(drill.kit.length > 0 ? [`  kit             ${drill.kit.map(({ what, count }) => `${count} ${count === 1 ? what.replace(/s\b/, '') : what}`).join(', ')}`] : []),
    ...table(['at s', 'pass', 'to', 'metres', 'under way s', 'launch m/s', 'spare s'], drill.passes.map((pass) => [
      fixed(pass.at), pass.from, pass.to ?? '', fixed(pass.length), fixed(pass.flight), fixed(pass.speed), pass.slack === null ? '' : signed(pass.slack),
    ])),
    ...table(['player', 'touches', 'metres', 'working s', 'waiting s'], drill.perPlayer.map((player) => [
      player.actor, player.touches, fixed(player.distance), fixed(player.working), fixed(player.waiting),
    ])),
    '',
  ].join('\n');
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
