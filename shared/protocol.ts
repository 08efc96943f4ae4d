/**
 * What the language server and the extension say to each other beyond the language server protocol.
 * Offsets count UTF-16 units in the text of the version named; places on the pitch are in metres.
 */
import type { Span } from '../grammar/tree.ts';
import type { Point } from './geometry/point.ts';
import type { Measures } from './measure/measure.ts';
import type { Problem } from './problem.ts';
import type { Rotation } from './rotation/rotation.ts';
import type { Convention } from './scene/lines.ts';
import type { Theme } from './scene/palette.ts';
import type { Scene } from './scene/scene.ts';
import type { Handle } from './service/drag.ts';

/** Under `capabilities.experimental` of a client that knows the messages and commands below. */
export const ability = 'halfturn';

/** Server to client: a version has been analysed; its scene can be asked for. */
export const analysedNotification = 'halfturn/analysed';
export interface Analysed {
  readonly uri: string;
  readonly version: number;
}

/** Client to server: the picture of one drill of the current version. Null when the text holds no drill. */
export const sceneRequest = 'halfturn/scene';
export interface SceneParams {
  readonly uri: string;
  /**
   * By its place in `SceneAnswer.drills`; or the drill or the phase of a game at an offset, or the one before it. Where the offset lies in
   * no play of its drill, the sheet `shown` until now stays, if it is of that drill.
   */
  readonly drill: { readonly offset: number; readonly shown?: number } | { readonly index: number };
  readonly theme: Theme;
  /** Null: as the folder of the drill has it. */
  readonly convention: Convention | null;
  /** Also whose the ground is, for a phase of a game: worked out only when it is asked for. */
  readonly control?: boolean;
}
export interface SceneAnswer {
  readonly version: number;
  /** Of what is shown, in `drills`: every drill, and every phase of a game. */
  readonly index: number;
  readonly drills: readonly Sheet[];
  readonly scene: Scene;
  /** Those of the drill shown; flagged in the scene in this order. */
  readonly problems: readonly Problem[];
  /** The first thing that keeps the drill from being read whole: the scene then shows only what could be. */
  readonly broken: Problem | null;
  /** Who takes whose place after a repetition: for playing several in a row. */
  readonly rotation: Rotation | null;
  readonly measures: Measures;
}

/** What can be shown by itself. */
export interface Sheet {
  /** Of the drill, and of its phase where it is one. */
  readonly name: string;
  /** Of the drill in the file, from 0. */
  readonly drill: number;
  /** Null for the play of the drill. */
  readonly phase: string | null;
  /** In `SceneAnswer.drills`: the phase that this one goes on from. */
  readonly after: number | null;
  /** Errors and warnings in its play. */
  readonly faults: number;
}

/** Client to server: the same picture as a file, in base 64. Null without a drill, and where pictures of pixels cannot be made. */
export const pictureRequest = 'halfturn/picture';
export interface PictureParams extends SceneParams {
  readonly format: 'png' | 'gif';
}

/** Client to server: the sheet for the touchline. Null without a session and a drill, and as PDF where the server does not run on Node. */
export const sheetRequest = 'halfturn/sheet';
export interface SheetParams {
  readonly uri: string;
  /** The session there, or the one before it. */
  readonly offset: number;
  readonly format: 'html' | 'pdf';
  /** A plain list, one name a line; null where the groups are told by numbers. */
  readonly names: string | null;
  /** For a page whose host allows only what carries it. */
  readonly nonce?: string;
}
export interface SheetAnswer {
  readonly title: string;
  /** The page, or the PDF in base 64. */
  readonly content: string;
  /** Sentences about names, and about signs that no font has. */
  readonly faults: readonly string[];
}

/** Client to server: the edits of a drag. Null when the version is not the current one, or the thing cannot be moved. */
export const editRequest = 'halfturn/edit';
export interface EditParams {
  readonly uri: string;
  readonly version: number;
  readonly handle: Handle;
  readonly to: Point;
}
export interface EditAnswer {
  readonly version: number;
  readonly edits: readonly { readonly span: Span; readonly text: string }[];
}

/** Client to server: the page that shows what changed from an older text of a file. */
export const compareRequest = 'halfturn/compare';
export interface CompareParams {
  readonly uri: string;
  /** The older text, and what it is called. */
  readonly before: string;
  readonly beforeName: string;
  readonly theme: 'light' | 'dark';
  /** Null: as the folder of the drill has it. */
  readonly convention: Convention | null;
  /** By which the page's policy knows its script and style. */
  readonly nonce: string;
}
export interface CompareAnswer {
  readonly html: string;
}

/** Server to client, where the server cannot read files itself: the text of a file; null when there is none. */
export const readRequest = 'halfturn/read';
export interface ReadParams {
  readonly uri: string;
}

/** Server to client, likewise: the `.drill` files in a folder, as URIs. */
export const filesRequest = 'halfturn/files';
export interface FilesParams {
  readonly folder: string;
}

/** Commands of the extension that the server's answers name. */
export const playCommand = 'halfturn.play';
export type PlayArguments = readonly [uri: string, offset: number];
export const explainCommand = 'halfturn.explain';
export type ExplainArguments = readonly [code: string];

/** The settings that the server reads, live. */
export interface Settings {
  /** Level or `off` by problem code. */
  readonly severity?: Readonly<Record<string, string>>;
  readonly inlayHints?: boolean;
  /** Where the guide to problems can be read; `{code}` stands for the problem's code. Empty: no links. */
  readonly guide?: string;
}
