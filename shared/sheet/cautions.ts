/** Cautions that stand on every sheet they concern, with where they come from. They clear nothing: local rules and the people on the spot decide. */
import type { SessionAnalysis } from '../session/analysis.ts';
import { heading, headingFor } from '../session/guidance.ts';

export interface Caution {
  readonly text: string;
  readonly source: string;
}

export function cautionsFor({ kit, session }: SessionAnalysis): Caution[] {
  const goals = kit.some(({ kind, needed }) => needed > 0 && (kind === 'goal' || kind === 'minigoal'));
  const outdoors = session.ground.value !== 'indoor';
  const headers = session.age.span && headingFor(session.age.value);
  return [
    ...(goals ? [goalCaution] : []), ...(outdoors ? [lightning, heat] : []), apart,
    ...(headers ? [{ text: `Heading at this age: ${headers}.`, source: heading.source }] : []),
  ];
}

const goalCaution: Caution = {
  text: 'Anchor or weight every goal of any size, in use and in storage. Nobody climbs or swings on it.',
  source: 'The FA with DCMS, HSE and BSI',
};

const lightning: Caution = {
  text: 'Thunder or lightning: stop at once. No restart until 30 minutes after the last.',
  source: 'pages of several associations, seen in copies',
};

const heat: Caution = {
  text: 'Heat: more pauses to drink the hotter it is. At a WBGT above 33.4 °C nobody trains outdoors, and in cooler regions the limit is lower.',
  source: 'U.S. Soccer, Recognize to Recover, hottest region category, seen in copies',
};

/** Of pitches; for training areas no published distance was found. */
const apart: Caution = {
  text: 'Keep the ground around every area free: 2.7 m (3 yd) about a pitch, 5.5 m (6 yd) between pitches.',
  source: 'pitch dimensions of The FA; for training areas nothing is published',
};
