import { analyse } from '../../shared/analyse.ts';
import { atLevels } from '../../shared/service/levels.ts';
import { measuredOf, told, type MeasureFormat } from '../commands/measure.ts';
import { settingsReader } from '../folder-settings.ts';
import { countsOf } from '../io.ts';
import { workspaceOf } from '../workspace.ts';
import { answer, type Work } from './answer.ts';

export interface MeasureOptions {
  readonly format: MeasureFormat;
  readonly cwd: string;
}

/** The numbers of every drill in a file. */
export function measuring({ format, cwd }: MeasureOptions): Work {
  const settingsFor = settingsReader(cwd);
  return ({ name, path, text }) => {
    const { settings, complaints: undone } = settingsFor(path);
    const analysis = analyse(text, workspaceOf(path));
    const counts = countsOf(atLevels(analysis.problems, settings.levels));
    const remarks = counts.error === 0 ? [] : [`${name} has errors, so its numbers may mislead; halfturn check ${name} shows them.`];
    return answer({ ...told(measuredOf(name, analysis), format), counts, remarks, undone });
  };
}
