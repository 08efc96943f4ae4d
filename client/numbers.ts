/** The numbers of a drill as Markdown, laid out so that it is readable as plain text too. */
import type { Measures } from '../shared/measure/measure.ts';

export function numbersText(measures: Measures): string {
  const { name, players, area, spacePerPlayer: space, duration, interval, rotation, perMinute, kit, passes, perPlayer } = measures;
  const facts = [
    ['Players', `${players}`],
    ...(area ? [['Area', `${short(area.width)} × ${short(area.length)} m, ${short(area.m2)} m²`]] : []),
    ...(space ? [['Space a player', `${short(space.all)} m²${space.outfield === space.all ? '' : `, ${short(space.outfield)} m² without goalkeepers`}`]] : []),
    ['One repetition', `${tenths(duration)} s`],
    ...(interval ? [['A start every', `${tenths(interval.seconds)} s: ${interval.because}`]] : []),
    ...(rotation ? [['Rotation', rotationWords(rotation)]] : []),
    ...(perMinute ? [['A minute of work', `${tenths(perMinute.touches)} touches and ${short(perMinute.metres)} m a player`]] : []),
    ...(kit.length > 0 ? [['Kit', kit.map(({ what, count }) => `${count} ${count === 1 ? what.replace(/s\b/, '') : what}`).join(', ')]] : []),
  ] as const;
  return [
    `# ${name}`,
    '',
    ...facts.map(([what, much]) => `- **${what}**: ${much}`),
    ...section('Passes', ['at s', 'from', 'to', 'metres', 'under way s', 'launch m/s', 'in hand s'], passes.map((pass) => [
      tenths(pass.at), pass.from, pass.to ?? '', tenths(pass.length), tenths(pass.flight), tenths(pass.speed), pass.slack === null ? '' : signed(pass.slack),
    ])),
    ...section('What one repetition asks of everyone', ['player', 'touches', 'metres', 'working s', 'waiting s'], perPlayer.map((player) => [
      player.actor, `${player.touches}`, tenths(player.distance), tenths(player.working), tenths(player.waiting),
    ])),
    '',
  ].join('\n');
}

function section(title: string, head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  return rows.length === 0 ? [] : ['', `## ${title}`, '', ...table(head, rows)];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const cells = [head, ...rows].map((row) => row.map((cell) => cell.replaceAll('|', '\\|')));
  const widths = head.map((_, column) => Math.max(3, ...cells.map((row) => (row[column] ?? '').length)));
  const line = (row: readonly string[]): string => `| ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join(' | ')} |`;
  return [line(cells[0] ?? []), line(widths.map((width) => '-'.repeat(width))), ...cells.slice(1).map(line)];
}

function rotationWords({ closed, cycles, order }: NonNullable<Measures['rotation']>): string {
  if (!closed) return 'open: after one repetition some place is empty or has two';
  return `everyone is home after ${order ?? 1} ${order === 1 ? 'repetition' : 'repetitions'}: ${cycles.map((cycle) => cycle.join(' → ')).join('; ')}`;
}

function tenths(value: number): string {
  return value.toFixed(1);
}

function signed(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return `${rounded < 0 ? '−' : '+'}${Math.abs(rounded).toFixed(1)}`;
}

function short(value: number): string {
  return String(Math.round(value * 10) / 10);
}
