/**
 * Bout designs of published small-sided games, to put beside one's own: what was done with the players of a study, who were mostly youths of 16
 * and more and men, not what should be done.
 */
export interface BoutDesign {
  /** Null where the source was read without it. */
  readonly count: number | null;
  /** Seconds; `rest` between two bouts, null where the source was read without it. */
  readonly work: number;
  readonly rest: number | null;
  readonly resting: 'active' | 'passive' | null;
  readonly source: string;
  /** READ in the abstract; COMPUTED: the rest follows from the work to rest ratio read there. */
  readonly flag: 'READ' | 'COMPUTED';
}

export const boutDesigns: readonly BoutDesign[] = [
  design(4, 240, 120, 'active', 'Kelly and Drust 2009, J Sci Med Sport'),
  design(4, 240, 180, 'passive', 'Selmi et al. 2020, OAJSM 11:77-84'),
  design(3, 480, 300, 'passive', 'Casamichana and Castellano 2010, J Sports Sci 28(14):1615-1623'),
  design(4, 240, 60, 'passive', 'Casamichana, Castellano and Dellal 2013, JSCR 27(3):690-697 (work to rest 4:1)', 'COMPUTED'),
  design(2, 480, 120, 'passive', 'Casamichana, Castellano and Dellal 2013, JSCR 27(3):690-697 (work to rest 4:1)', 'COMPUTED'),
  design(4, 360, 120, null, 'J Hum Kinet 2021, 78:187-196'),
  design(6, 120, 30, null, 'McLean et al. 2016, PLoS ONE 0150201'),
  design(6, 120, 120, null, 'McLean et al. 2016, PLoS ONE 0150201'),
  design(null, 120, 120, null, 'PMC6006548 (2 min, or to a goal)'),
  design(3, 480, null, 'passive', 'Castillo-Rodriguez et al. 2023, Sensors 23(3):1299'),
];

function design(
  count: number | null,
  work: number,
  rest: number | null,
  resting: BoutDesign['resting'],
  source: string,
  flag: BoutDesign['flag'] = 'READ',
): BoutDesign {
  return { count, work, rest, resting, source, flag };
}

/** How far a bout, a rest and a number of bouts may be from the published one to be put beside it. CHOSEN. */
const near = { work: 0.25, rest: 0.5, count: 1 };

/** The published design nearest to bouts of so many seconds; null where none is near. */
export function designLike({ count, length, rest }: { readonly count: number; readonly length: number; readonly rest: number }): BoutDesign | null {
  const fitting = boutDesigns.filter((each) =>
    Math.abs(each.work - length) <= near.work * each.work
    && (each.rest === null || Math.abs(each.rest - rest) <= near.rest * each.rest)
    && Math.abs((each.count ?? count) - count) <= near.count);
  const off = (each: BoutDesign): number => Math.abs(each.work - length) + Math.abs((each.rest ?? rest) - rest) + Math.abs((each.count ?? count) - count);
  return fitting.reduce<BoutDesign | null>((best, each) => (best === null || off(each) < off(best) ? each : best), null);
}
