import { readNode } from '../../grammar/json/from-json.ts';
import { readLeaf, shown } from '../../grammar/json/leaf.ts';
import { actionShapes, modifierShapes } from '../../grammar/json/shapes.ts';
import { Modifiers, Verbs } from './generated/verbs.ts';
import { CannotBeWritten, plain, refuseNegative } from './values.ts';

type Json = Readonly<Record<string, unknown>>;

/** Someone who can do something: whoever plays at a station, a player of a team, the coach. */
export class Player extends Verbs<Doing> {
  readonly name: string;

  /** `who('coach')` makes one of any name. */
  constructor(name: string) {
    super();
    const leaf = readLeaf(name, 'subject');
    if ('fault' in leaf) throw new CannotBeWritten(`This must be ${leaf.fault}.`);
    this.name = name;
  }

  /** The player now waiting at this station: `next Base`. */
  get next(): Player {
    return new Player(`next ${this.name}`);
  }

  /** So that the player can stand in a text between backquotes. */
  override toString(): string {
    return this.name;
  }

  /** As it stands in the JSON form. */
  toJSON(): string {
    return this.name;
  }

  protected override does(action: Json): Doing {
    return new Doing(this.name, [checked(action)]);
  }
}

/** Anyone by name: `who('Reds1')`, `who('coach')`. */
export function who(name: string): Player {
  return new Player(name);
}

/** What one player does, one action after the other. A value: every method gives a new one. */
export class Doing extends Modifiers<Doing> {
  readonly #subject: string;
  readonly #chain: readonly Json[];

  constructor(subject: string, chain: readonly Json[]) {
    super();
    this.#subject = subject;
    this.#chain = chain;
  }

  /** What the same player does next: `left.runsTo(at(2, 8)).then.showsTo(at(4, 8))`. */
  // oxlint-disable-next-line unicorn/no-thenable -- It is no function, so nothing can wait for it, and it is the word of the language.
  get then(): Verbs<Doing> {
    return new Then((action) => new Doing(this.#subject, [...this.#chain, checked(action)]));
  }

  /** What others do at the same time. */
  while(...others: readonly Doing[]): Beat {
    for (const other of others) if (!(other instanceof Doing)) throw new CannotBeWritten(`\`while\`: this must be what somebody does, such as \`left.runsTo(top)\`, not ${shown(other)}.`);
    return new Beat({ kind: 'beat', lead: this.part, ...(others.length === 0 ? {} : { meanwhile: others.map(({ part }) => part) }) });
  }

  /** A comment line above this beat. */
  comment(text: string): Beat {
    return this.while().comment(text);
  }

  /** A comment at the end of this beat. */
  remark(text: string): Beat {
    return this.while().remark(text);
  }

  /** As it stands in the JSON form. */
  get part(): Json {
    return { subject: this.#subject, chain: this.#chain };
  }

  protected override how(modifier: Json): Doing {
    const said = checkedBy(modifier, modifierShapes);
    const last = this.#chain.at(-1)!;
    const modifiers = [...(last['modifiers'] as readonly unknown[] | undefined ?? []), said];
    return new Doing(this.#subject, [...this.#chain.slice(0, -1), { ...last, modifiers }]);
  }
}

/** One line of a sequence or a phase. */
export class Beat {
  readonly #line: Json;

  constructor(line: Json) {
    this.#line = line;
  }

  /** A comment line above this beat. */
  comment(text: string): Beat {
    return this.#with({ above: [...(this.#margin['above'] as readonly string[] | undefined ?? []), text] });
  }

  /** A comment at the end of this beat. */
  remark(text: string): Beat {
    return this.#with({ beside: text });
  }

  /** As it stands in the JSON form. */
  get line(): Json {
    return this.#line;
  }

  get #margin(): Json {
    return this.#line['margin'] as Json | undefined ?? {};
  }

  #with(margin: Json): Beat {
    return new Beat({ ...this.#line, margin: { ...this.#margin, ...margin } });
  }
}

class Then extends Verbs<Doing> {
  readonly #next: (action: Json) => Doing;

  constructor(next: (action: Json) => Doing) {
    super();
    this.#next = next;
  }

  protected override does(action: Json): Doing {
    return this.#next(action);
  }
}

function checked(action: Json): Json {
  return checkedBy(action, actionShapes);
}

function checkedBy(said: Json, shapes: typeof actionShapes): Json {
  const json = plain(said) as Json;
  refuseNegative(json, String(json['verb'] ?? json['kind']));
  const [fault] = readNode(json, shapes).faults;
  if (fault === undefined) return json;
  throw new CannotBeWritten(`\`${String(json['verb'] ?? json['kind'])}\`: ${fault.path.slice(1)} ${fault.message}`);
}
