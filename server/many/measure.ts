import { analyse } from '../../shared/analyse.ts';
import { phaseMeasures } from '../../shared/measure/phases.ts';
import { atLevels } from '../../shared/service/levels.ts';
import { settingsReader } from '../folder-settings.ts';
import { countsOf } from '../io.ts';
import { csvRows, jsonOf, textOf, type MeasureFormat } from '../text/measures.ts';
import { partMeasures, sessionJson, sessionText } from '../text/session.ts';
import { workspaceOf } from '../workspace.ts';
import { answer, type Work } from './answer.ts';

export interface MeasureOptions {
  readonly format: MeasureFormat;
  readonly cwd: string;
}

/** The numbers of every drill and session in a file. */
export function measuring({ format, cwd }: MeasureOptions): Work {
  const settingsFor = settingsReader(cwd);
  return ({ name, path, text }) => {
    const { settings, complaints: undone } = settingsFor(path);
    const { drills, sessions, problems } = analyse(text, workspaceOf(path));
    const counts = countsOf(atLevels(problems, settings.levels));
    const remarks = counts.error === 0 ? [] : [`${name} has errors, so its numbers may mislead; halfturn check ${name} shows them.`];
    const measured = drills.map(({ drill, measures, phases }) => ({ ...measures, phases: phaseMeasures(drill, phases) }));
    switch (format) {
      case 'text':
        return answer({ out: [...measured.map((drill) => textOf(name, drill)), ...sessions.map((session) => sessionText(name, session))].join('\n'), counts, remarks, undone });
      case 'csv':
        return answer({ out: csvRows(name, [...measured, ...sessions.flatMap(partMeasures)]), counts, remarks, undone });
      case 'json':
        return answer({ data: [{ file: name, drills: measured.map(jsonOf), sessions: sessions.map(sessionJson) }], counts, remarks, undone });
    }
  };
}
