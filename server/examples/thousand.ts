// A thousand different drills without a problem, each in a file of its own. Run: node server/examples/thousand.ts OUT
import { mkdirSync, writeFileSync } from 'node:fs';
import { check, drill, moved, print } from '../../shared/library.ts';

const out = process.argv[2] ?? 'out/thousand';
const trees = ['Ash', 'Beech', 'Cedar', 'Elm', 'Fir'];

/** Stations in a ring; the ball goes `stride` stations on, and everyone follows their pass. */
function ring(age: string, corners: number, stride: number, radius: number, touches: number) {
  return drill(`Ring of ${corners}, ${radius} m round, stride ${stride}, touches ${touches}, ${age}`, (d) => {
    d.age(age);
    d.players(corners + 2);
    d.area(2 * radius + 4, 2 * radius + 4);
    const reach = d.let('reach', radius);
    const part = (share: number) => (Math.abs(share) < 0.01 ? 0 : `${reach} * ${share.toFixed(2)}`);
    const stations = trees.slice(0, corners).map((name, corner) => {
      const turn = (2 * Math.PI * corner) / corners;
      return d.station(name, moved('area.centre', part(Math.sin(turn)), part(Math.cos(turn))), corner === 0 ? { holds: 3 } : {});
    });
    const round = stations.map((_, step) => stations[(step * stride) % corners]!);
    d.ball(round[0]!);
    d.sequence(round.map((from, step) => from.passesTo(round[step + 1] ?? round[0]!.next).touches(touches).while(from.follows())));
    d.rotate([...round, round[0]!]);
    d.regress('space', 'Closer together', (easier) => easier.let('reach', radius - 0.5));
  });
}

const radii = Array.from({ length: 11 }, (_, step) => 5 + step / 2);
const shapes = [[3, 1], [3, 2], [4, 1], [4, 3], [5, 1], [5, 2], [5, 3], [5, 4]] as const;
const rings = radii.flatMap((radius) => [1, 2, 3].flatMap((touches) => shapes.flatMap(([corners, stride]) =>
  ['U11', 'U12', 'U13', 'U14', 'U15', 'U16'].map((age) => [age, corners, stride, radius, touches] as const))));
const sound = rings.map((each) => ring(...each)).filter((each) => check(each).every(({ severity }) => severity !== 'error' && severity !== 'warning'));

mkdirSync(out, { recursive: true });
sound.slice(0, 1000).forEach((each, index) => writeFileSync(`${out}/ring-${String(index + 1).padStart(4, '0')}.drill`, print(each)));
console.log(`${Math.min(sound.length, 1000)} drills are in ${out}.`);
