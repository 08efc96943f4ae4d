import { headcount } from '../measure/measures.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'player-count',
  group: 'games',
  severity: 'error',
  title: 'The players do not add up',
  why: 'The number at the top is what the coach counts on the evening, and what space, touches and waiting are worked out for. It must be the number who stand in the queues and the teams.',
  source: null,
  bad: [
    `drill "Two" {
  players ⟦4⟧
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}
`,
  ],
  good: [
    `drill "Two" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}
`,
  ],
  find: ({ drill }) => {
    const placed = headcount(drill);
    if (!drill.players?.span || placed === 0 || drill.players.value === placed) return [];
    return [
      problem(check, drill.players.span, `${drill.players.value} players are written, and ${placed} stand on the pitch.`, {
        help: 'Correct the number, or let the stations hold more or fewer (holds 2).',
        fixes: [{ title: `Write players ${placed}`, edits: [{ span: drill.players.span, text: String(placed) }] }],
      }),
    ];
  },
};
