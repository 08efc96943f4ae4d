import type { Scene } from '../shared/scene/scene.ts';
import type { Measure } from '../shared/sheet/lay.ts';
import type { Sheet } from '../shared/sheet/sheet.ts';

/** What the language server needs of the world around it; Node and the browser each give their own. */
export interface Runtime {
  /** A file's text; `outside` when it leaves the folder by a link; null when there is none. `folder` and `uri` are URIs. */
  readonly read: (folder: string, uri: string) => Promise<{ readonly text: string } | 'outside' | null>;
  /** The `.drill` files in a folder, however deep, as URIs. */
  readonly list: (folder: string) => Promise<readonly string[]>;
  /** Calls back when a file changes, for clients that do not tell; the answer ends it. */
  readonly watch: (uri: string, changed: () => void) => () => void;
  /** A file in base 64; null where pictures of pixels cannot be made. */
  readonly picture: (scene: Scene, format: 'png' | 'gif') => string | null;
  /** The sheet that is laid out in the fonts at hand, as PDF; null where none can be made. */
  readonly pdf: (make: (measure: Measure) => Sheet) => Promise<{ readonly bytes: Uint8Array; readonly missing: string | null } | null>;
  /** Milliseconds from any beginning. */
  readonly now: () => number;
  /** Calls back after so many milliseconds; the answer prevents it. */
  readonly after: (milliseconds: number, then: () => void) => () => void;
  /** Comes back when whatever has arrived meanwhile has been read. */
  readonly turn: () => Promise<void>;
}
