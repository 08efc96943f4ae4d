/** What the extension and the page of the pitch tell each other. */
import type { Span } from '../../grammar/tree.ts';
import type { Point } from '../../shared/geometry/point.ts';
import type { Severity } from '../../shared/problem.ts';
import type { Sheet } from '../../shared/protocol.ts';
import type { Rotation } from '../../shared/rotation/rotation.ts';
import type { Scene } from '../../shared/scene/scene.ts';
import type { Handle } from '../../shared/service/drag.ts';

export type Sync = 'both' | 'toText' | 'toPitch' | 'off';

/** A drawing with what the page shows around it. */
export interface Picture {
  readonly uri: string;
  readonly version: number;
  readonly scene: Scene;
  readonly turn: Turn | null;
  /** All drills of the file, and all phases of its games. */
  readonly drills: readonly Sheet[];
  /** Index in `drills` of the one that is shown. */
  readonly drill: number;
  readonly problems: readonly PageProblem[];
  /** Where the cursor is in this version of the text, in UTF-16 units; null when that is not known. */
  readonly cursor: number | null;
  /** What keeps the text from being read whole: the last good picture then stays, dimmed, with this said over it. */
  readonly broken: PageProblem | null;
}

/** Who takes whose place after a repetition, and how often one can start. */
export interface Turn extends Pick<Rotation, 'places' | 'image' | 'order'> {
  /** Seconds between two starts; null when unknown. */
  readonly interval: number | null;
}

export interface PageProblem {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly span: Span;
}

/** Titles of the quick fixes of each problem, in the order of the problems. They take longer to find than a picture. */
export type Cures = readonly (readonly string[])[];

export type ToPage =
  | { readonly kind: 'picture'; readonly picture: Picture }
  /** The text holds no drill. */
  | { readonly kind: 'nothing'; readonly uri: string; readonly message: string }
  | { readonly kind: 'cures'; readonly version: number; readonly cures: Cures }
  /** Where the cursor is in the text, in UTF-16 units. */
  | { readonly kind: 'cursor'; readonly version: number; readonly offset: number }
  | { readonly kind: 'settings'; readonly settings: PageSettings }
  /** Asked for by a command of the editor. */
  | { readonly kind: 'player'; readonly action: PlayerAction };

export type PlayerAction = 'play' | 'next' | 'back' | 'fit';

export interface PageSettings {
  readonly sync: Sync;
  /** How a page begins that has no choices of its reader's to take up: 1 is real time. */
  readonly speed: number;
  readonly loop: boolean;
}

export type ToHost =
  | { readonly kind: 'ready' }
  /** The last picture is on the page: another may come. */
  | { readonly kind: 'drawn' }
  /** Whether the page shows whose the ground is. */
  | { readonly kind: 'control'; readonly shown: boolean }
  | { readonly kind: 'reveal'; readonly span: Span }
  | { readonly kind: 'drill'; readonly index: number }
  | { readonly kind: 'drag'; readonly version: number; readonly handle: Handle; readonly to: Point }
  | { readonly kind: 'fix'; readonly problem: number; readonly title: string; readonly version: number };
