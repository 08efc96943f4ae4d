// Made by npm run generate: do not edit.
import type { Length, Spot, Who } from '../values.ts';

/** What a player does: the verbs of the language. */
export abstract class Verbs<Result> {
  protected abstract does(action: Readonly<Record<string, unknown>>): Result;
  /** Plays the ball to a player or a place. `Base passes to Left` */
  passesTo(target: Spot): Result {
    return this.does({ verb: 'passes to', target });
  }
  /** Plays the ball into space for someone to run on to. `Left passes into 3 left of Far for Screen` */
  passesInto(target: Spot, receiver: Who): Result {
    return this.does({ verb: 'passes into', target, receiver });
  }
  /** Lays the ball off with one touch. `Screen sets to Base` */
  setsTo(target: Spot): Result {
    return this.does({ verb: 'sets to', target });
  }
  /** Lays the ball off with one touch, into space for someone to run on to. `Screen sets into 3 above Near for Left` */
  setsInto(target: Spot, receiver: Who): Result {
    return this.does({ verb: 'sets into', target, receiver });
  }
  /** Takes a touch out of the feet. `Base touches to 1.5 above Base` */
  touchesTo(target: Spot): Result {
    return this.does({ verb: 'touches to', target });
  }
  /** Runs with the ball. `Left dribbles to (6, 14)` */
  dribblesTo(target: Spot): Result {
    return this.does({ verb: 'dribbles to', target });
  }
  /** Plays the ball in from the side. `Wing crosses to (9, 22)` */
  crossesTo(target: Spot): Result {
    return this.does({ verb: 'crosses to', target });
  }
  /** Shoots at a goal. `Top shoots at North` */
  shootsAt(target: Spot): Result {
    return this.does({ verb: 'shoots at', target });
  }
  /** Turns with the ball. `Screen turns` */
  turns(): Result {
    return this.does({ verb: 'turns' });
  }
  /** Runs without the ball. `Screen runs to 2 left of Near` */
  runsTo(target: Spot): Result {
    return this.does({ verb: 'runs to', target });
  }
  /** Comes towards the ball to be played to. `Left shows to 2 right of Left` */
  showsTo(target: Spot): Result {
    return this.does({ verb: 'shows to', target });
  }
  /** Moves away from the opponents' goal to get free. `Top drops to (9, 16)` */
  dropsTo(target: Spot): Result {
    return this.does({ verb: 'drops to', target });
  }
  /** Turns round a pole, a mannequin or a player and bursts away. `Screen spins around Near to 2 right of Far` */
  spinsAround(about: Who, target: Spot): Result {
    return this.does({ verb: 'spins around', about, target });
  }
  /** Runs to the station of the player just played to. `Base follows` */
  follows(): Result {
    return this.does({ verb: 'follows' });
  }
  /** Runs round the outside of a team-mate. `Back overlaps Wing to (16, 20)` */
  overlaps(about: Who, target: Spot): Result {
    return this.does({ verb: 'overlaps', about, target });
  }
  /** Runs round the inside of a team-mate. `Back underlaps Wing to (12, 20)` */
  underlaps(about: Who, target: Spot): Result {
    return this.does({ verb: 'underlaps', about, target });
  }
  /** Runs at the player on the ball. `Blues1 presses Reds1` */
  presses(about: Who): Result {
    return this.does({ verb: 'presses', about });
  }
  /** Stays close to an opponent. `Blues2 marks Reds3` */
  marks(about: Who): Result {
    return this.does({ verb: 'marks', about });
  }
  /** Takes the ball off an opponent. `Blues1 wins the ball from Reds1` */
  winsTheBallFrom(about: Who): Result {
    return this.does({ verb: 'wins the ball from', about });
  }
  /** Stays in place; at a station `holds 2` says how many wait there. `Top holds` */
  holds(): Result {
    return this.does({ verb: 'holds' });
  }
  /** Stands still for a while. `Top waits 1 s` */
  waits(wait: Length): Result {
    return this.does({ verb: 'waits', wait });
  }
}

/** How it is done: the modifiers of the language, each for the action before it. */
export abstract class Modifiers<Result> {
  protected abstract how(modifier: Readonly<Record<string, unknown>>): Result;
  /** The player who passes does so with their first touch. `Screen passes to Top first time` */
  firstTime(): Result {
    return this.how({ kind: 'first time' });
  }
  /** A ball that arrives slowly. `Base passes to Left, soft` */
  soft(): Result {
    return this.how({ kind: 'soft' });
  }
  /** A ball that arrives with pace. `Base passes to Left, firm` */
  firm(): Result {
    return this.how({ kind: 'firm' });
  }
  /** A hard, low ball. `Wing crosses to Top, driven` */
  driven(): Result {
    return this.how({ kind: 'driven' });
  }
  /** A ball through the air. `Top passes to next Base, lofted` */
  lofted(): Result {
    return this.how({ kind: 'lofted' });
  }
  /** `in 2 touches`: the player who passes controls the ball first, and the pass is their second touch. `in stride`: the player who is passed to takes the ball without breaking stride. `Left passes to Top, in stride` */
  inStride(): Result {
    return this.how({ kind: 'in stride' });
  }
  /** `in 2 touches`: the player who passes controls the ball first, and the pass is their second touch. `in stride`: the player who is passed to takes the ball without breaking stride. `Left passes to Top, in 2 touches` */
  touches(count: Length): Result {
    return this.how({ kind: 'touches', count });
  }
  /** A run or a dribble goes by way of a place; several in a row are passed in order. A ball that is passed goes straight. `Top runs to Base via (2, 2)` */
  via(at: Spot): Result {
    return this.how({ kind: 'via', at });
  }
  /** A run or a dribble goes round a pole, a mannequin or a player. `Top runs to Base around Near` */
  around(about: Who): Result {
    return this.how({ kind: 'around', about });
  }
  /** How fast: `walk`, `jog`, `run` or `sprint`. `Top runs to Base at sprint` */
  gait(gait: 'walk' | 'jog' | 'run' | 'sprint'): Result {
    return this.how({ kind: 'gait', gait });
  }
  /** Starts so much later. `Top runs to Base after 0.5 s` */
  after(delay: Length): Result {
    return this.how({ kind: 'after', delay });
  }
}
