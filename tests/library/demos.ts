/** Two of the demo drills, made with the builder. */
import type { File } from '../../grammar/tree.ts';
import { file } from '../../shared/build/build.ts';
import { above, at, below, leftOf, moved } from '../../shared/build/values.ts';

export function diamond(): File {
  return file((f) => {
    f.comment('A rotating pattern: the pivot goes away, shows and sets; the ball goes wide, inside, up and home.');
    f.drill('Diamond, away and show', (d) => {
      d.age('U14');
      d.players(7);
      d.tempo('steady');
      d.theme('Make the space, then use it');
      d.area(18, 24);
      const wide = d.let('wide', 6);
      const screen = d.mannequin('Screen', above(10, 'area.bottom'));
      const base = d.station('Base', above(2, 'area.bottom'), { holds: 3 });
      const pivot = d.station('Pivot', below(2, screen));
      const wing = d.station('Wing', moved('area.centre', wide, 1));
      const top = d.station('Top', below(2, 'area.top'), { holds: 2 });
      d.ball(base);
      d.sequence([
        base.waits('3 s').while(pivot.runsTo(leftOf(2, screen)).then.showsTo(below(3, screen))),
        base.passesTo(pivot).while(wing.runsTo(above(2, wing)).then.showsTo(leftOf(1, wing))),
        pivot.setsTo(base),
        base.passesTo(wing).while(pivot.spinsAround(screen, below(5, top))),
        wing.passesTo(pivot).while(base.runsTo(pivot)),
        pivot.passesTo(top).firstTime().while(wing.runsTo(top)),
        top.passesTo(base.next).lofted().while(top.follows(), pivot.runsTo(wing)),
      ]);
      d.rotate([base, pivot, wing, top, base]);
      d.point('technical', 'Set with the foot that faces the passer');
      d.point('psychological', 'Look over the shoulder before the ball is played');
      d.point('physical', 'Slow away, quick to the ball');
      d.point('social', 'The player behind calls what the receiver cannot see');
      d.progress('task', 'One touch in the middle', (change) => change.ruleTouches(1, { who: pivot }));
      d.regress('space', 'Wing farther out: more time', (change) => change.let('wide', 7));
    });
  });
}

export function threeZones(): File {
  return file((f) => {
    f.comment('Three against three at both ends; who steps in from the middle makes it four.');
    f.drill('Three zones to goal', (d) => {
      d.age('U17');
      d.players(16);
      d.units('yd');
      d.tempo('match');
      d.theme('Make and use the extra player');
      d.time('24 min');
      d.tags('attacking', 'overload');
      d.area(25, 40);
      d.split('area', 'length', { name: 'Back', size: 15 }, { name: 'Middle', size: 10 }, { name: 'Front', size: 15 });
      const south = d.goal('South', 8, 2.67, 'area.bottom', { facing: 'up' });
      const north = d.goal('North', 8, 2.67, 'area.top', { facing: 'down' });
      const amber = d.team('Amber', { bib: 'orange', of: 6 });
      const navy = d.team('Navy', { bib: 'blue', of: 6 });
      const joker = d.floaters('Joker', { bib: 'white', of: 2 });
      const kit = d.keeper('Kit', amber, above(1, south));
      d.keeper('Kai', navy, below(1, north));
      const amber1 = d.player('Amber1', amber, at(4, 8));
      const amber2 = d.player('Amber2', amber, at(12.5, 6));
      d.player('Amber3', amber, at(21, 8));
      const navy4 = d.player('Navy4', navy, at(7, 12));
      const navy5 = d.player('Navy5', navy, at(13, 12));
      const navy6 = d.player('Navy6', navy, at(18, 12));
      const joker1 = d.player('Joker1', joker, at(8, 20));
      d.player('Joker2', joker, at(18, 20));
      const amber4 = d.player('Amber4', amber, at(5, 29));
      const amber5 = d.player('Amber5', amber, at(12.5, 28));
      d.player('Amber6', amber, at(20, 29));
      const navy1 = d.player('Navy1', navy, at(7, 33));
      const navy2 = d.player('Navy2', navy, at(13.5, 32));
      d.player('Navy3', navy, at(18, 33));
      d.ball(kit);
      d.ruleAtMost('Front', 4, 'attackers');
      d.ruleAtMost('Front', 3, 'defenders');
      d.ruleAtLeast('Back', 3, amber);
      d.ruleAtLeast('Middle', 1, 'floaters');
      d.ruleTouches(3, { who: 'floaters' });
      d.ruleText('Only the joker who played the ball forward may step in behind it');
      d.expect(3, 3, 'Front');
      d.expect(4, 3, 'Front');
      d.scoreGoal(1, north);
      d.scoreGoal(1, south);
      d.bouts(4, '5 min', { rest: '1 min' });
      d.phase('Through the middle', [
        kit.passesTo(amber1).while(navy5.presses(kit)),
        amber1.passesTo(joker1).while(navy4.presses(amber1)),
        joker1.passesTo(amber4).while(navy1.presses(amber4)),
        amber4.passesTo(amber5).while(joker1.runsTo(at(7, 27))),
      ]);
      d.phase('The extra player', [
        amber5.passesTo(joker1).while(navy2.presses(amber5)),
        joker1.dribblesTo(at(10, 29)),
        joker1.shootsAt(north),
      ], { after: 'Through the middle' });
      d.phase('Lost and forward', [
        kit.passesTo(amber2),
        navy5.winsTheBallFrom(amber2),
        navy5.passesTo(navy6),
        navy6.shootsAt(south),
      ]);
      d.point('technical', 'Play to the foot away from the defender');
      d.point('psychological', 'See the joker before the ball is there');
      d.point('physical', 'Step in at speed');
      d.point('social', 'Who steps in, who stays: say it');
    });
  });
}
