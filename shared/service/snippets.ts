import type { Context } from '../../grammar/form.ts';

export interface Snippet {
  readonly label: string;
  readonly stands: Context;
  readonly doc: string;
  /** With `${1:name}` where the cursor stops, as editors read it. */
  readonly body: string;
}

/** Whole statements to begin with; each is sound as it stands. */
export const snippets: readonly Snippet[] = [
  {
    label: 'drill …', stands: 'file', doc: 'A drill with two stations and one pass each way.',
    body: `drill "\${1:Give and go}" {
  age     \${2:U13}
  players \${3:4}
  tempo   \${4:steady}

  area \${5:10} x \${6:12}

  station \${7:Base} at 2 above area.bottom holds 2
  station \${8:Wall} at 2 below area.top holds 2

  ball at \${7:Base}

  sequence {
    \${7:Base} passes to \${8:Wall}
    \${8:Wall} passes to next \${7:Base} while \${7:Base} follows, \${8:Wall} follows
  }
}`,
  },
  {
    label: 'session …', stands: 'file', doc: 'A session of an hour in two parts.',
    body: `session "\${1:Tuesday}" {
  length  \${2:60} min
  players \${3:14}

  part "\${4:Warm up}" \${5:20} min
  pause \${6:5} min "drinks"
  part "\${7:Game}" \${8:35} min
}`,
  },
  {
    label: 'sequence { … }', stands: 'drill', doc: 'What is played, beat by beat.',
    body: 'sequence {\n  ${1:Base} passes to ${2:Left}\n}',
  },
  {
    label: 'station … at …', stands: 'drill', doc: 'A place with a queue.',
    body: 'station ${1:Name} at ${2:area.centre} holds ${3:2}',
  },
  {
    label: 'zone … at …', stands: 'drill', doc: 'A part of the ground, wide by long, round its centre.',
    body: 'zone ${1:Name} ${2:8} x ${3:6} at ${4:area.centre}',
  },
  {
    label: 'passes to … while …', stands: 'beats', doc: 'A pass, and a run that starts with it.',
    body: '${1:Base} passes to ${2:Left} while ${3:Top} shows to ${4:(6, 14)}',
  },
];
