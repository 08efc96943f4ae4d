import { levelsFrom, type Levels } from '../shared/service/levels.ts';

export interface Preferences {
  readonly levels: Levels;
  readonly inlayHints: boolean;
  /** With `{code}` where the code goes; null: no links. */
  readonly guide: string | null;
}

export const usual: Preferences = { levels: {}, inlayHints: true, guide: null };

/** From the section `halfturn` of the client's settings; what cannot be understood is as usual. */
export function preferencesFrom(section: unknown): Preferences {
  if (typeof section !== 'object' || section === null) return usual;
  const { severity, inlayHints, guide } = section as Readonly<Record<string, unknown>>;
  return {
    levels: levelsFrom(severity),
    inlayHints: inlayHints !== false,
    guide: typeof guide === 'string' && guide !== '' ? guide : null,
  };
}
