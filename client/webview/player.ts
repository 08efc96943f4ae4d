/** The clock of the picture: it runs, rests, steps from beat to beat, and tells what time it is. */
import type { SceneBeat } from '../../shared/scene/scene.ts';
import type { Play } from './rounds.ts';

export interface Player {
  /** Keeps the time within the new play. */
  readonly load: (play: Play, beats: readonly SceneBeat[]) => void;
  /** Seconds from the start of the first repetition. */
  readonly seek: (time: number) => void;
  readonly time: () => number;
  readonly playing: () => boolean;
  readonly toggle: () => void;
  readonly rest: () => void;
  /** To the start of the beat before or after, through all repetitions. */
  readonly step: (by: 1 | -1) => void;
}

export interface PlayerOptions {
  readonly speed: () => number;
  readonly loop: () => boolean;
  /** Where less motion is asked for, the picture changes from beat to beat. */
  readonly calm: () => boolean;
  /** `drawn` is the time that the picture shows. */
  readonly show: (time: number, drawn: number) => void;
  readonly changed: () => void;
  /** It has played to its end; true when something else is played from there, and it need not begin again. */
  readonly ended: () => boolean;
}

export function playerOf({ speed, loop, calm, show, changed, ended }: PlayerOptions): Player {
  let length = 0;
  /** Starts of all beats in all repetitions, rising. */
  let stops: readonly number[] = [];
  let time = 0;
  /** Moment of the last frame in milliseconds; null while it rests. */
  let last: number | null = null;

  const draw = (): void => show(time, calm() && last !== null ? lastBefore(time) : time);
  const lastBefore = (moment: number): number => stops.findLast((stop) => stop <= moment + 1e-6) ?? 0;

  const seek = (to: number): void => {
    time = Math.min(Math.max(to, 0), length);
    draw();
  };

  const rest = (): void => {
    if (last === null) return;
    last = null;
    seek(time);
    changed();
  };

  const frame = (now: number): void => {
    if (last === null) return;
    time += (Math.max(0, now - last) / 1000) * speed();
    last = now;
    if (time >= length) {
      if (ended() || !loop()) {
        time = length;
        return rest();
      }
      time = 0;
    }
    draw();
    requestAnimationFrame(frame);
  };

  return {
    load: (play, beats) => {
      length = play.length;
      stops = Array.from({ length: play.count }, (_, round) => beats.map((beat) => round * play.period + beat.start)).flat();
      seek(time);
    },
    seek,
    time: () => time,
    playing: () => last !== null,
    toggle: () => {
      if (last !== null) return rest();
      if (length === 0) return;
      if (time >= length) time = 0;
      last = performance.now();
      changed();
      requestAnimationFrame(frame);
    },
    rest,
    step: (by) => {
      rest();
      // Back from within a beat goes to its own start first.
      const to = by > 0 ? stops.find((stop) => stop > time + 0.01) : stops.findLast((stop) => stop < time - 0.01);
      seek(to ?? (by > 0 ? length : 0));
    },
  };
}

/** The beats that are being played at this moment of a repetition; between beats, those that began last. */
export function beatsAt(beats: readonly SceneBeat[], time: number): readonly SceneBeat[] {
  const begun = beats.filter((beat) => beat.start <= time + 1e-6);
  const running = begun.filter((beat) => time < beat.end - 1e-6);
  const last = begun[begun.length - 1];
  return running.length > 0 || !last ? running : begun.filter((beat) => Math.abs(beat.start - last.start) < 1e-6);
}
