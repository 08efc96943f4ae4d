import type { NameKind } from '../model/names.ts';

/** What a name stands for, in a word or two. */
export const kindWords: Readonly<Record<NameKind, string>> = {
  let: 'value', area: 'the ground', zone: 'zone', zones: 'four zones',
  cone: 'cone', disc: 'disc', pole: 'pole', mannequin: 'mannequin', gate: 'gate', goal: 'goal', minigoal: 'small goal',
  hurdle: 'hurdle', ladder: 'ladder', coach: 'coach',
  station: 'station', team: 'team', floaters: 'floaters', player: 'player', keeper: 'goalkeeper',
  sequence: 'sequence', phase: 'phase', change: 'progression or regression', drill: 'drill', session: 'session',
};
