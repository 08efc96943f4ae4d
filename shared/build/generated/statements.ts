// Made by npm run generate: do not edit.
import { beats, block, Lines } from '../lines.ts';
import { Player } from '../play.ts';
import type { Beat, Doing } from '../play.ts';
import { extra } from '../values.ts';
import type { Length, Spot, Who } from '../values.ts';

/** The lines of a file. */
export class FileLines extends Lines {
  /** A drill: its ground, its people and what they do, between braces. `drill "Kite"` */
  drill(name: string, body: (lines: DrillLines) => void): void {
    this.add({ kind: 'drill', name, body: block(new DrillLines('drill'), body) });
  }
  /** A session: the drills of one training and how long each takes, between braces. `session "Tuesday"` */
  session(name: string, body: (lines: SessionLines) => void): void {
    this.add({ kind: 'session', name, body: block(new SessionLines('session'), body) });
  }
  /** Makes the drills of another file known here. `import "kite.drill"` */
  import(path: string): void {
    this.add({ kind: 'import', path });
  }
  /** Gives a value a name, so that one change moves everything that uses it. `let wide = 7` */
  let(name: string, value: Length): string {
    this.add({ kind: 'let', name, value });
    return name;
  }
}

/** The lines of a drill. */
export class DrillLines extends Lines {
  /** Gives a value a name, so that one change moves everything that uses it. `let wide = 7` */
  let(name: string, value: Length): string {
    this.add({ kind: 'let', name, value });
    return name;
  }
  /** The age group, such as `U9`, or `adult`: speeds and guidance follow from it. `age U13` */
  age(value: string): void {
    this.add({ kind: 'age', value });
  }
  /** How many players take part. `players 7` */
  players(count: Length): void {
    this.add({ kind: 'players', count });
  }
  /** The unit of bare numbers: `m`, `yd`, `ft` or `cm`. `units m` */
  units(value: string): void {
    this.add({ kind: 'units', value });
  }
  /** How fast it is played: `walk`, `steady` or `match`. `tempo steady` */
  tempo(value: string): void {
    this.add({ kind: 'tempo', value });
  }
  /** Sets the speed a pass arrives with, or the top speed of a run, in place of the one for age and tempo. `pace pass 5 m/s` */
  pace(of: 'pass' | 'run', speed: Length): void {
    this.add({ kind: 'pace', of, speed });
  }
  /** What the players are to learn. `theme "Find the free player"` */
  theme(text: string): void {
    this.add({ kind: 'theme', text });
  }
  /** How long the drill is meant to run. `time 15 min` */
  time(length: Length): void {
    this.add({ kind: 'time', length });
  }
  /** What is played on: `grass`, `turf` or `indoor`; `roll` sets how far the ball of the roll test goes on it. `ground grass roll 6` */
  ground(value: string, more: { readonly roll?: Length } = {}): void {
    this.add({ kind: 'ground', value, ...extra(more) });
  }
  /** Who the drill suits, in your own words. `level "After a first season"` */
  level(text: string): void {
    this.add({ kind: 'level', text });
  }
  /** Words to find the drill by. `tags passing, "third player"` */
  tags(...tags: readonly string[]): void {
    this.add({ kind: 'tags', tags });
  }
  /** A remark that is printed on the sheet. `note "Use size 4 balls"` */
  note(text: string): void {
    this.add({ kind: 'note', text });
  }
  /** The ground of the drill, wide by long: (0, 0) is its bottom left corner. `marked every` puts cones along its sides. `area 18 x 24 marked every 6` */
  area(width: Length, length: Length, more: { readonly marked?: Length } = {}): void {
    this.add({ kind: 'area', size: { width, length }, ...extra(more) });
  }
  /** A part of the ground with a name: a box round its centre, a box in a corner, from corner to corner, a circle or a polygon. */
  zoneBox(name: string, width: Length, length: Length, at: Spot): string {
    this.add({ kind: 'zone', name, shape: { kind: 'box', size: { width, length }, at } });
    return name;
  }
  /** A part of the ground with a name: a box round its centre, a box in a corner, from corner to corner, a circle or a polygon. `zone Back 18 x 8 in area.bottomLeft` */
  zoneTucked(name: string, width: Length, length: Length, of: Who, anchor: string): string {
    this.add({ kind: 'zone', name, shape: { kind: 'tucked', size: { width, length }, of, anchor } });
    return name;
  }
  /** A part of the ground with a name: a box round its centre, a box in a corner, from corner to corner, a circle or a polygon. */
  zoneCorners(name: string, a: Spot, b: Spot): string {
    this.add({ kind: 'zone', name, shape: { kind: 'corners', a, b } });
    return name;
  }
  /** A part of the ground with a name: a box round its centre, a box in a corner, from corner to corner, a circle or a polygon. `zone Middle circle 5 at area.centre` */
  zoneCircle(name: string, radius: Length, at: Spot): string {
    this.add({ kind: 'zone', name, shape: { kind: 'circle', radius, at } });
    return name;
  }
  /** A part of the ground with a name: a box round its centre, a box in a corner, from corner to corner, a circle or a polygon. `zone Wedge polygon (0, 0) (6, 0) (3, 8)` */
  zonePolygon(name: string, ...points: readonly Spot[]): string {
    this.add({ kind: 'zone', name, shape: { kind: 'polygon', points } });
    return name;
  }
  /** Cuts the area or a zone into strips, each of them a zone. `split area by length into Back 12, Mid 8` */
  split(of: Who, by: 'width' | 'length', ...into: readonly ({ readonly name: string; readonly size: Length })[]): void {
    this.add({ kind: 'split', of, by, into });
  }
  /** Puts a zone into each corner: `Box` makes `BoxTopLeft`, `BoxTopRight`, `BoxBottomLeft` and `BoxBottomRight`. `zones Box 4 x 4 in corners of area` */
  zones(name: string, width: Length, length: Length, of: Who): string {
    this.add({ kind: 'zones', name, size: { width, length }, of });
    return name;
  }
  /** A cone. `cone at (0, 0)` */
  cone<Name extends string | null>(name: Name, at: Spot): Name {
    this.add({ kind: 'cone', name: name ?? undefined, at });
    return name;
  }
  /** A flat disc. `disc at area.centre` */
  disc<Name extends string | null>(name: Name, at: Spot): Name {
    this.add({ kind: 'disc', name: name ?? undefined, at });
    return name;
  }
  /** A pole to run round. `pole Near at 6 above area.bottom` */
  pole<Name extends string | null>(name: Name, at: Spot): Name {
    this.add({ kind: 'pole', name: name ?? undefined, at });
    return name;
  }
  /** A mannequin that stands in the way of ball and player. `mannequin Wall at (9, 12)` */
  mannequin<Name extends string | null>(name: Name, at: Spot): Name {
    this.add({ kind: 'mannequin', name: name ?? undefined, at });
    return name;
  }
  /** Two cones to go between. `gate Exit at (9, 20) width 2 facing up` */
  gate<Name extends string | null>(name: Name, at: Spot, width: Length, more: { readonly facing?: Spot } = {}): Name {
    this.add({ kind: 'gate', name: name ?? undefined, at, width, ...extra(more) });
    return name;
  }
  /** A goal, wide by high. `goal North 5 x 2 at area.top facing down` */
  goal<Name extends string | null>(name: Name, width: Length, length: Length, at: Spot, more: { readonly facing?: Spot } = {}): Name {
    this.add({ kind: 'goal', name: name ?? undefined, size: { width, length }, at, ...extra(more) });
    return name;
  }
  /** A small goal. `minigoal A at area.topLeft facing down` */
  minigoal<Name extends string | null>(name: Name, at: Spot, more: { readonly facing?: Spot } = {}): Name {
    this.add({ kind: 'minigoal', name: name ?? undefined, at, ...extra(more) });
    return name;
  }
  /** A hurdle to jump. `hurdle at (4, 6) facing up` */
  hurdle<Name extends string | null>(name: Name, at: Spot, more: { readonly facing?: Spot } = {}): Name {
    this.add({ kind: 'hurdle', name: name ?? undefined, at, ...extra(more) });
    return name;
  }
  /** An agility ladder. `ladder at (2, 4) length 4 facing up` */
  ladder<Name extends string | null>(name: Name, at: Spot, more: { readonly length?: Length; readonly facing?: Spot } = {}): Name {
    this.add({ kind: 'ladder', name: name ?? undefined, at, ...extra(more) });
    return name;
  }
  /** The ball the drill starts with. `ball at Base` */
  ball(at: Spot): void {
    this.add({ kind: 'ball', at });
  }
  /** A supply of spare balls. `balls 6 at area.bottomLeft` */
  balls(count: Length, at: Spot): void {
    this.add({ kind: 'balls', count, at });
  }
  /** Where the coach stands; `coach` may also play and be played to. `coach at 2 left of area.left` */
  coach(at: Spot): void {
    this.add({ kind: 'coach', at });
  }
  /** A place with a queue: `holds` says how many stand there, who plays counted: one if nothing is said. `station Base at (9, 1) holds 2` */
  station(name: string, at: Spot, more: { readonly holds?: Length; readonly of?: Who } = {}): Player {
    this.add({ kind: 'station', name, at, ...extra(more) });
    return new Player(name);
  }
  /** A team: `team Reds of 4` has the players `Reds1` to `Reds4`. Its goalkeeper is one of so many, unless so many others are placed. `team Reds bib red of 4` */
  team(name: string, more: { readonly bib?: string; readonly of?: Length } = {}): string {
    this.add({ kind: 'team', name, ...extra(more) });
    return name;
  }
  /** Players who play for whichever side has the ball. `floaters Jokers bib yellow of 2` */
  floaters(name: string, more: { readonly bib?: string; readonly of?: Length } = {}): string {
    this.add({ kind: 'floaters', name, ...extra(more) });
    return name;
  }
  /** One player of a team and where they stand. `player Reds1 of Reds at (4, 6)` */
  player(name: string, of: Who, at: Spot): Player {
    this.add({ kind: 'player', name, of, at });
    return new Player(name);
  }
  /** A goalkeeper. `keeper Kim of Reds at 1 below North` */
  keeper(name: string, of: Who, at: Spot): Player {
    this.add({ kind: 'keeper', name, of, at });
    return new Player(name);
  }
  /** Spreads the next players of a team out in a zone. `place 3 Reds in Back` */
  place(count: Length, of: Who, zone: Who): void {
    this.add({ kind: 'place', count, of, zone });
  }
  /** What is played, beat by beat, between braces; or the mirror image of another sequence. `sequence "Right" mirrors "Left" across length` */
  mirrored(name: string, of: string, across: 'width' | 'length'): void {
    this.add({ kind: 'mirrored', name, of, across });
  }
  /** What is played, beat by beat, between braces; or the mirror image of another sequence. `sequence "Left side"` */
  sequence(body: readonly (Doing | Beat)[], more: { readonly name?: string } = {}): void {
    this.add({ kind: 'sequence', body: beats(body), ...extra(more) });
  }
  /** A passage of play that shows what a game is about. It starts as the game does, or with `after` where another passage ends. `phase "Out of the back"` */
  phase(name: string, body: readonly (Doing | Beat)[], more: { readonly after?: string } = {}): void {
    this.add({ kind: 'phase', name, body: beats(body), ...extra(more) });
  }
  /** Which sequences are played: one after the other with commas, at the same time with `and`, each with its own ball. `order "Left side", "Right side"` */
  order(...steps: readonly (readonly string[])[]): void {
    this.add({ kind: 'order', steps });
  }
  /** Where everyone goes after a repetition: from place to place, or `follow` when everyone follows their pass. `rotate follow` */
  rotateFollow(): void {
    this.add({ kind: 'rotate', follow: true });
  }
  /** Where everyone goes after a repetition: from place to place, or `follow` when everyone follows their pass. `rotate A -> B -> A, C -> D -> C` */
  rotate(...chains: readonly (readonly Who[])[]): void {
    this.add({ kind: 'rotate', chains });
  }
  /** A rule of the game: touches allowed, who may be in a zone, or anything in your own words. Who stands on the line of a zone is in it; goalkeepers are counted only where a rule names them. */
  ruleText(text: string): void {
    this.add({ kind: 'rule', rule: 'text', text });
  }
  /** A rule of the game: touches allowed, who may be in a zone, or anything in your own words. Who stands on the line of a zone is in it; goalkeepers are counted only where a rule names them. `rule touches 2 for Reds` */
  ruleTouches(count: Length, more: { readonly who?: Who; readonly zone?: Who } = {}): void {
    this.add({ kind: 'rule', rule: 'touches', count, ...extra(more) });
  }
  /** A rule of the game: touches allowed, who may be in a zone, or anything in your own words. Who stands on the line of a zone is in it; goalkeepers are counted only where a rule names them. `rule Back at most 2 defenders` */
  ruleAtMost(zone: Who, count: Length, who: Who): void {
    this.add({ kind: 'rule', rule: 'at most', zone, count, who });
  }
  /** A rule of the game: touches allowed, who may be in a zone, or anything in your own words. Who stands on the line of a zone is in it; goalkeepers are counted only where a rule names them. `rule Back at least 1 defenders` */
  ruleAtLeast(zone: Who, count: Length, who: Who): void {
    this.add({ kind: 'rule', rule: 'at least', zone, count, who });
  }
  /** A rule of the game: touches allowed, who may be in a zone, or anything in your own words. Who stands on the line of a zone is in it; goalkeepers are counted only where a rule names them. `rule Back exactly 1 defenders` */
  ruleExactly(zone: Who, count: Length, who: Who): void {
    this.add({ kind: 'rule', rule: 'exactly', zone, count, who });
  }
  /** A rule of the game: touches allowed, who may be in a zone, or anything in your own words. Who stands on the line of a zone is in it; goalkeepers are counted only where a rule names them. `rule Back no defenders` */
  ruleNo(zone: Who, who: Who): void {
    this.add({ kind: 'rule', rule: 'no', zone, who });
  }
  /** The numbers you expect in a zone: the side with the ball and the floaters against the other side, goalkeepers left out; who stands on the line is in. They must stand there as the game is set out, or at some moment of every phase that plays in the zone. `expect 4 v 2 in Back` */
  expect(ours: Length, theirs: Length, zone: Who): void {
    this.add({ kind: 'expect', ours, theirs, zone });
  }
  /** What earns points; with a team at the end, only for that team. `score 1 for pass into End` */
  scorePass(points: Length, { by, ...more }: { readonly from?: Who; readonly into?: Who; readonly by?: Who; readonly through?: Who } = {}): void {
    this.add({ kind: 'score', points, by, for: { kind: 'pass', ...extra(more) } });
  }
  /** What earns points; with a team at the end, only for that team. `score 1 for dribble into End` */
  scoreDribble(points: Length, { by, ...more }: { readonly from?: Who; readonly into?: Who; readonly by?: Who; readonly through?: Who } = {}): void {
    this.add({ kind: 'score', points, by, for: { kind: 'dribble', ...extra(more) } });
  }
  /** What earns points; with a team at the end, only for that team. `score 1 for winning the ball in Back` */
  scoreWin(points: Length, { by, ...more }: { readonly zone?: Who; readonly by?: Who } = {}): void {
    this.add({ kind: 'score', points, by, for: { kind: 'win', ...extra(more) } });
  }
  /** What earns points; with a team at the end, only for that team. `score 2 for goal in North` */
  scoreGoal(points: Length, goal: Who, { by, ...more }: { readonly by?: Who } = {}): void {
    this.add({ kind: 'score', points, by, for: { kind: 'goal', goal, ...extra(more) } });
  }
  /** What earns points; with a team at the end, only for that team. `score 1 for 8 passes` */
  scorePasses(points: Length, count: Length, { by, ...more }: { readonly by?: Who } = {}): void {
    this.add({ kind: 'score', points, by, for: { kind: 'passes', count, ...extra(more) } });
  }
  /** How often, how long, and the rest between. `bouts 4 x 3 min rest 1 min` */
  bouts(count: Length, length: Length, more: { readonly rest?: Length } = {}): void {
    this.add({ kind: 'bouts', count, length, ...extra(more) });
  }
  /** A coaching point in one of the four corners. `point technical "Open your hips"` */
  point(corner: 'technical' | 'psychological' | 'physical' | 'social', text: string): void {
    this.add({ kind: 'point', corner, text });
  }
  /** A question to put to the players. `question "Where is the free player?"` */
  question(text: string): void {
    this.add({ kind: 'question', text });
  }
  /** Something to look out for. `safety "Pin the goals down"` */
  safety(text: string): void {
    this.add({ kind: 'safety', text });
  }
  /** A harder version: its block holds the statements that change. Of a team that is smaller there the last ones written leave; `of 0` leaves it out. `progress space "Another width"` */
  progress(lever: 'space' | 'task' | 'equipment' | 'people', name: string, body: (lines: DrillLines) => void): void {
    this.add({ kind: 'progress', lever, name, body: block(new DrillLines('drill'), body) });
  }
  /** An easier version: its block holds the statements that change. Of a team that is smaller there the last ones written leave; `of 0` leaves it out. `regress space "Another width"` */
  regress(lever: 'space' | 'task' | 'equipment' | 'people', name: string, body: (lines: DrillLines) => void): void {
    this.add({ kind: 'regress', lever, name, body: block(new DrillLines('drill'), body) });
  }
}

/** The lines of a session. */
export class SessionLines extends Lines {
  /** Gives a value a name, so that one change moves everything that uses it. `let wide = 7` */
  let(name: string, value: Length): string {
    this.add({ kind: 'let', name, value });
    return name;
  }
  /** The age group, such as `U9`, or `adult`: speeds and guidance follow from it. `age U13` */
  age(value: string): void {
    this.add({ kind: 'age', value });
  }
  /** How many players take part. `players 7` */
  players(count: Length): void {
    this.add({ kind: 'players', count });
  }
  /** The unit of bare numbers: `m`, `yd`, `ft` or `cm`. `units m` */
  units(value: string): void {
    this.add({ kind: 'units', value });
  }
  /** What the players are to learn. `theme "Find the free player"` */
  theme(text: string): void {
    this.add({ kind: 'theme', text });
  }
  /** What is played on: `grass`, `turf` or `indoor`; `roll` sets how far the ball of the roll test goes on it. `ground grass roll 6` */
  ground(value: string, more: { readonly roll?: Length } = {}): void {
    this.add({ kind: 'ground', value, ...extra(more) });
  }
  /** A remark that is printed on the sheet. `note "Use size 4 balls"` */
  note(text: string): void {
    this.add({ kind: 'note', text });
  }
  /** How long the whole session takes; with a ladder, how long that is. `length 60 min` */
  length(length: Length): void {
    this.add({ kind: 'length', length });
  }
  /** The ground there is for the whole session, wide by long. `pitch 60 x 40` */
  pitch(width: Length, length: Length): void {
    this.add({ kind: 'pitch', size: { width, length } });
  }
  /** The equipment that is there: cones, discs, poles, mannequins, goals, minigoals, hurdles, ladders, balls, bibs. Cones and discs stand in for each other. `kit 20 cones, 4 poles, 7 bibs red` */
  kit(...items: readonly ({ readonly count: Length; readonly what: string; readonly colour?: string })[]): void {
    this.add({ kind: 'kit', items });
  }
  /** How many set out and carry, the coach included: one if nothing is said. `hands 2` */
  hands(count: Length): void {
    this.add({ kind: 'hands', count });
  }
  /** A question to put to the players. `question "Where is the free player?"` */
  question(text: string): void {
    this.add({ kind: 'question', text });
  }
  /** Something to look out for. `safety "Pin the goals down"` */
  safety(text: string): void {
    this.add({ kind: 'safety', text });
  }
  /** One part of a session: its drill, how long, in how many groups (`groups 2`, of sizes that are worked out) or in groups of which sizes (`groups 8, 7`), `with` which progression of the drill, how many in all are `resting` and take turns, and where the bottom left corner of each group lies. `part "Kite" 15 min groups 2 of "Kite, bounce and spin" at (2, 2), (24, 2)` */
  part(name: string, length: Length, more: { readonly groups?: readonly Length[]; readonly of?: string; readonly change?: string; readonly resting?: Length; readonly at?: readonly Spot[] } = {}): void {
    this.add({ kind: 'part', name, length, ...extra(more) });
  }
  /** A break between two parts. `pause 2 min "drinks"` */
  pause(length: Length, more: { readonly name?: string } = {}): void {
    this.add({ kind: 'pause', length, ...extra(more) });
  }
  /** Of the `players`, those who are there and cannot take part, and why; with `for`, only in those parts. On the register they come after those who take part fully. `without 1 "sore ankle: keeps the score" for "Game"` */
  without(count: Length, reason: string, more: { readonly parts?: readonly string[] } = {}): void {
    this.add({ kind: 'without', count, reason, ...extra(more) });
  }
  /** Players, or goalkeepers, who come later: with which part they join. They count among the `players` and are the last on the register. */
  joinsKeeper(count: Length, part: string): void {
    this.add({ kind: 'joins', keeper: true, count, part });
  }
  /** Players, or goalkeepers, who come later: with which part they join. They count among the `players` and are the last on the register. `joins 1 keeper for "Game"` */
  joins(count: Length, part: string): void {
    this.add({ kind: 'joins', count, part });
  }
}
