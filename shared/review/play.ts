/** What happens in a drill, as written, and what comes of it: passes, the repetition, the rotation, what each role does. */
import type { Verb } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { distance } from '../geometry/point.ts';
import type { Action, Drill, Part, Sequence } from '../model/drill.ts';
import { ballAt } from '../physics/ball.ts';
import type { Pass, Timeline } from '../timeline/timeline.ts';
import { beatLabels } from '../scene/words.ts';
import { tokens } from './ground.ts';
import { count, inUnit, metres, present, secondsOf, thing, type Thing, type Valued, words, wordsIn } from './thing.ts';

/** Sequences, their beats, and the movements in them. */
export function playOf({ drill, timeline }: DrillAnalysis, text: string): Thing[] {
  const labels = labelsOf(drill, timeline);
  return drill.sequences.flatMap((sequence) => [
    thing({
      kind: 'sequence', id: sequence.id, title: titleOf(sequence), span: sequence.nameSpan, traits: sequence.beats.flatMap(({ span }) => tokens(wordsIn(text, span))),
      parts: deedsOf(sequence),
      values: present({
        name: words(sequence.name ?? ''), kind: words(sequence.kind), beats: count(sequence.beats.length),
        mirrors: sequence.mirrorOf === null ? null : words(sequence.mirrorOf), after: sequence.after === null ? null : words(sequence.after),
      }),
    }),
    ...(sequence.mirrorOf === null ? sequence.beats.flatMap((beat) => {
      const title = `beat ${labels(sequence, beat.index)}`;
      const id = beatId(sequence.id, beat.index);
      const said = wordsIn(text, beat.span);
      return [
        thing({
          kind: 'beat', id, title, span: beat.span, words: said, traits: tokens(said), parent: sequence.id,
          parts: [beat.lead, ...beat.meanwhile].map(({ span }) => wordsIn(text, span)),
          values: { text: words(said), number: count(beat.index + 1), sequence: words(sequence.id) },
        }),
        ...[beat.lead, ...beat.meanwhile].flatMap((part) => actionsOf(part, id, title, text)),
      ];
    }) : []),
  ]);
}

/** `5 passes`, `2 runs`: all that is done in it. */
function deedsOf({ beats }: Sequence): string[] {
  const done = beats.flatMap(({ lead, meanwhile }) => [lead, ...meanwhile].flatMap(({ chain }) => chain.map(({ verb }) => verb)));
  return deeds.flatMap(({ one, many, verbs }) => {
    const times = done.filter((verb) => verbs.includes(verb)).length;
    return times === 0 ? [] : [`${times} ${times === 1 ? one : many}`];
  });
}

const deeds: readonly { readonly one: string; readonly many: string; readonly verbs: readonly Verb[] }[] = [
  { one: 'pass', many: 'passes', verbs: ['passes to', 'passes into', 'sets to', 'sets into'] },
  { one: 'cross', many: 'crosses', verbs: ['crosses to'] },
  { one: 'shot', many: 'shots', verbs: ['shoots at'] },
  { one: 'dribble', many: 'dribbles', verbs: ['dribbles to'] },
  { one: 'run', many: 'runs', verbs: ['runs to', 'shows to', 'drops to', 'spins around', 'follows', 'overlaps', 'underlaps'] },
  { one: 'press', many: 'presses', verbs: ['presses'] },
  { one: 'ball won', many: 'balls won', verbs: ['wins the ball from'] },
];

/** How the beats are called on the drawing: over the whole repetition, or within a phase. */
function labelsOf(drill: Drill, timeline: Timeline): (sequence: Sequence, index: number) => string {
  const labels = beatLabels(drill, timeline);
  const known = new Map(timeline.beats.map(({ sequence, index, number }) => [beatId(sequence, index), labels.get(number) ?? `${number}`]));
  return (sequence, index) => known.get(beatId(sequence.id, index)) ?? `${index + 1}${sequence.name === null ? '' : ` of “${sequence.name}”`}`;
}

function titleOf({ kind, name }: Sequence): string {
  return name === null ? 'the sequence' : `the ${kind} “${name}”`;
}

function beatId(sequence: string, index: number): string {
  return `${sequence} ${index + 1}`;
}

/** The numbers of each movement; its words are those of the beat. */
function actionsOf({ actor, chain }: Part, beat: string, title: string, text: string): Thing[] {
  return chain.map((action: Action, index) => thing({
    kind: 'action', id: `${beat} ${actor} ${index + 1}`, title: `${actor} in ${title}`, span: action.span, words: wordsIn(text, action.span), parent: beat, at: action.at,
    traits: [actor, action.verb, `${index + 1}`],
    values: present({
      across: action.at && metres(action.at.x), up: action.at && metres(action.at.y),
      lasts: action.length === null ? null : secondsOf(action.length), waits: action.after === 0 ? null : secondsOf(action.after),
    }),
  }));
}

/** All that is worked out: passes, the repetition, the rotation, the roles, the kit. */
export function numbersOf(analysis: DrillAnalysis): Thing[] {
  const { drill, timeline, measures, phases, rotation } = analysis;
  const labels = labelsOf(drill, timeline);
  const { interval, perMinute, spacePerPlayer } = measures;
  const played = timeline.beats.length > 0;
  return [
    ...passesOf(drill, timeline, labels, () => ({})),
    ...phases.flatMap((phase) => [
      ...passesOf(drill, phase.timeline, labels, (pass): Record<string, Valued | null> => {
        const lane = phase.lanes.find((each) => each.pass === pass.index);
        return {
          rival: lane?.race ? words(lane.race.by) : null, margin: lane?.race ? secondsOf(lane.race.margin) : null,
          openLanes: lane ? count(lane.lanes.filter(({ open }) => open !== null).length) : null,
        };
      }),
      thing({ kind: 'repetition', id: phase.phase.id, title: titleOf(phase.phase), span: phase.phase.nameSpan, values: { duration: secondsOf(phase.timeline.duration) }, parent: phase.phase.id }),
    ]),
    thing({
      kind: 'repetition', id: '', title: 'a repetition', span: null,
      values: present({
        duration: played ? secondsOf(measures.duration) : null, interval: interval && secondsOf(interval.seconds), because: interval && words(interval.because),
        players: count(measures.players), spaceEach: spacePerPlayer && inUnit(spacePerPlayer.all, 'm²'), spaceOutfield: spacePerPlayer && inUnit(spacePerPlayer.outfield, 'm²'),
        touchesEach: perMinute && inUnit(perMinute.touches, ''), metresEach: perMinute && metres(perMinute.metres),
      }),
    }),
    ...(rotation && measures.rotation ? [thing({
      kind: 'rotation', id: '', title: 'the rotation', span: drill.rotation.kind === 'read' ? null : drill.rotation.span,
      values: present({
        written: words(drill.rotation.kind), closes: words(rotation.closed ? 'yes' : 'no'), order: rotation.order === null ? null : count(rotation.order),
        ways: words(rotation.moves.map(({ actor, from, to }) => `${actor === from ? '' : `${actor}: `}${from} → ${to ?? 'nowhere'}`).join(', ')),
        cycles: measures.rotation.cycles.length === 0 ? null : words(measures.rotation.cycles.map((cycle) => cycle.join(' → ')).join('; ')),
      }),
    })] : []),
    ...measures.perPlayer.map(({ actor, touches, distance: way, working, waiting }) => thing({
      kind: 'role', id: actor, title: actor, span: drill.actors.find(({ id }) => id === actor)?.span ?? null,
      values: { touches: count(touches), distance: metres(way), working: secondsOf(working), waiting: secondsOf(waiting) },
    })),
    ...measures.kit.map(({ what, count: many }) => thing({ kind: 'kit', id: what, title: what, span: null, values: { count: count(many) } })),
  ];
}

type Labels = ReturnType<typeof labelsOf>;

/** Called by the number of their beat, as on the drawing. */
function passesOf(drill: Drill, timeline: Timeline, labels: Labels, more: (pass: Pass) => Readonly<Record<string, Valued | null>>): Thing[] {
  const sequences = new Map(drill.sequences.map((sequence) => [sequence.id, sequence]));
  const places = new Map(timeline.beats.map(({ number, sequence, index }) => [number, { sequence, index }]));
  const told = new Map<string, number>();
  return timeline.passes.map((pass) => {
    const place = places.get(pass.beat) ?? { sequence: pass.sequence, index: 0 };
    const sequence = sequences.get(place.sequence);
    const beat = beatId(place.sequence, place.index);
    const nth = (told.get(beat) ?? 0) + 1;
    told.set(beat, nth);
    const length = distance(pass.fromAt, pass.toAt);
    const to = pass.to ?? (pass.kind === 'shot' ? 'the goal' : 'nobody');
    return thing({
      kind: 'pass', id: `${beat}${nth === 1 ? '' : ` ${nth}`}`, title: `${pass.kind === 'shot' ? 'shot' : 'pass'} ${sequence ? labels(sequence, place.index) : place.index + 1}, ${pass.from} to ${to}`,
      span: pass.action.span, parent: beatId(originalOf(place.sequence, sequences), place.index), traits: [place.sequence, `${nth}`], at: pass.fromAt,
      values: present({
        from: words(pass.from), to: words(to), length: metres(length), flight: secondsOf(pass.flight.time), launch: inUnit(pass.flight.launch, 'm/s'),
        arrival: inUnit(ballAt(pass.flight, pass.flight.time).speed, 'm/s'), slack: pass.slack === null ? null : secondsOf(pass.slack), start: secondsOf(pass.start), ...more(pass),
      }),
    });
  });
}

/** Whose beats a mirrored sequence plays; its own for one that is written out. */
function originalOf(id: string, sequences: ReadonlyMap<string, Sequence>): string {
  let at = sequences.get(id);
  for (let steps = 0; at && at.mirrorOf !== null && steps < sequences.size; steps += 1) at = sequences.get(at.mirrorOf);
  return at?.id ?? id;
}
