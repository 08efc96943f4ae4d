import type { Convention } from '../shared/scene/lines.ts';
import { levelsFrom, type Levels } from '../shared/service/levels.ts';
import type { FolderSettings } from '../shared/settings/settings.ts';

export interface Preferences {
  readonly levels: Levels;
  readonly inlayHints: boolean;
  /** With `{code}` where the code goes; null: no links. */
  readonly guide: string | null;
  readonly convention: Convention | null;
}

export const usual: Preferences = { levels: {}, inlayHints: true, guide: null, convention: null };

/** From the section `halfturn` of the client's settings; what cannot be understood is as usual. */
export function preferencesFrom(section: unknown): Preferences {
  if (typeof section !== 'object' || section === null) return usual;
  const { severity, inlayHints, guide } = section as Readonly<Record<string, unknown>>;
  return {
    ...usual,
    levels: levelsFrom(severity),
    inlayHints: inlayHints !== false,
    guide: typeof guide === 'string' && guide !== '' ? guide : null,
  };
}

/** The reader's own settings go before those of the folder. */
export function over(folder: FolderSettings, own: Preferences): Preferences {
  return { ...own, levels: { ...folder.levels, ...own.levels }, guide: own.guide ?? folder.guide, convention: own.convention ?? folder.convention };
}
