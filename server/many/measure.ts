import { analyse } from '../../shared/analyse.ts';
import { countsOf } from '../io.ts';
import { csvRows, jsonOf, textOf, type MeasureFormat } from '../text/measures.ts';
import { workspaceOf } from '../workspace.ts';
import { answer, type Work } from './answer.ts';

export interface MeasureOptions {
  readonly format: MeasureFormat;
}

/** The numbers of every drill in a file. */
export function measuring({ format }: MeasureOptions): Work {
  return ({ name, path, text }) => {
    const { drills, problems } = analyse(text, workspaceOf(path));
    const counts = countsOf(problems);
    const remarks = counts.error === 0 ? [] : [`${name} has errors, so its numbers may mislead; halfturn check ${name} shows them.`];
    const measures = drills.map((drill) => drill.measures);
    switch (format) {
      case 'text':
        return answer({ out: measures.map((drill) => textOf(name, drill)).join('\n'), counts, remarks });
      case 'csv':
        return answer({ out: csvRows(name, measures), counts, remarks });
      case 'json':
        return answer({ data: [{ file: name, drills: measures.map(jsonOf) }], counts, remarks });
    }
  };
}
