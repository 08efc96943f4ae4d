import { problemGuide } from './checks/guide.ts';
import { checks } from './checks/index.ts';
import { constantsTable } from './physics/table.ts';
import { settingsSchema } from './settings/settings.ts';

/** The files of `shared/generated`, by name: written by `npm run generate`, and held against these texts by a test. */
export function generated(): Readonly<Record<string, string>> {
  const command = '<!-- Made by npm run generate -->\n\n';
  return {
    'problems.md': command + problemGuide(checks),
    'constants.md': command + constantsTable(),
    'halfturn.schema.json': `${JSON.stringify(settingsSchema(), null, 2)}\n`,
  };
}
