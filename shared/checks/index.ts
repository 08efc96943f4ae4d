import type { Check } from './check.ts';
import { check as ballDies } from './ball-dies.ts';
import { check as ballNotBack } from './ball-not-back.ts';
import { check as ballThroughRunner } from './ball-through-runner.ts';
import { check as bibsAlike } from './bibs-alike.ts';
import { check as blockedLane } from './blocked-lane.ts';
import { check as circularImport } from './circular-import.ts';
import { check as circularValue } from './circular-value.ts';
import { check as collisionCourse } from './collision-course.ts';
import { check as doesNotFit } from './does-not-fit.ts';
import { check as duplicateName } from './duplicate-name.ts';
import { check as goalSize } from './goal-size.ts';
import { check as headingGuidance } from './heading-guidance.ts';
import { check as impossibleValue } from './impossible-value.ts';
import { check as intercepted } from './intercepted.ts';
import { check as kitShort } from './kit-short.ts';
import { check as lateReceiver } from './late-receiver.ts';
import { check as leftOut } from './left-out.ts';
import { check as longSession } from './long-session.ts';
import { check as longWait } from './long-wait.ts';
import { check as missingImport } from './missing-import.ts';
import { check as movableGoal } from './movable-goal.ts';
import { check as nextNotReady } from './next-not-ready.ts';
import { check as noBall } from './no-ball.ts';
import { check as noOpenLane } from './no-open-lane.ts';
import { check as nobodyThere } from './nobody-there.ts';
import { check as outsideArea } from './outside-area.ts';
import { check as outsideWorkspace } from './outside-workspace.ts';
import { check as overloadMismatch } from './overload-mismatch.ts';
import { check as passLength } from './pass-length.ts';
import { check as passToSelf } from './pass-to-self.ts';
import { check as pitchSize } from './pitch-size.ts';
import { check as playerCount } from './player-count.ts';
import { check as queueLength } from './queue-length.ts';
import { check as roleNeverPlayed } from './role-never-played.ts';
import { check as rotationMismatch } from './rotation-mismatch.ts';
import { check as rotationOpen } from './rotation-open.ts';
import { check as sameSpot } from './same-spot.ts';
import { check as scoreImpossible } from './score-impossible.ts';
import { check as slowChangeover } from './slow-changeover.ts';
import { check as spacePerPlayer } from './space-per-player.ts';
import { check as splitMismatch } from './split-mismatch.ts';
import { check as stillRunning } from './still-running.ts';
import { check as strandedPlayer } from './stranded-player.ts';
import { check as syntax } from './syntax.ts';
import { check as tightClearance } from './tight-clearance.ts';
import { check as timeMismatch } from './time-mismatch.ts';
import { check as tooFewPlayers } from './too-few-players.ts';
import { check as touchLimit } from './touch-limit.ts';
import { check as unknownName } from './unknown-name.ts';
import { check as unknownUnit } from './unknown-unit.ts';
import { check as unusedName } from './unused-name.ts';
import { check as wrongKind } from './wrong-kind.ts';
import { check as zoneClosed } from './zone-closed.ts';
import { check as zoneFull } from './zone-full.ts';
import { check as zoneOutsideArea } from './zone-outside-area.ts';
import { check as zoneShort } from './zone-short.ts';
import { check as zonesOverlap } from './zones-overlap.ts';

/** Every check, in the order of the guide: by group, then as a coach would meet them. */
export const checks: readonly Check[] = [
  syntax, unknownName, duplicateName, wrongKind, unusedName, unknownUnit, impossibleValue, circularValue, circularImport, missingImport, outsideWorkspace,
  outsideArea, zonesOverlap, zoneOutsideArea, splitMismatch, sameSpot, tightClearance, goalSize, pitchSize, spacePerPlayer,
  noBall, passToSelf, nobodyThere, blockedLane, passLength, ballDies, touchLimit, ballNotBack,
  lateReceiver, stillRunning, collisionCourse, ballThroughRunner, longWait,
  rotationOpen, rotationMismatch, strandedPlayer, nextNotReady, roleNeverPlayed, queueLength,
  playerCount, zoneClosed, zoneFull, zoneShort, overloadMismatch, intercepted, noOpenLane, bibsAlike, scoreImpossible,
  timeMismatch, leftOut, tooFewPlayers, kitShort, doesNotFit, slowChangeover,
  headingGuidance, movableGoal, longSession,
];
