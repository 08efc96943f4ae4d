import type { StatementForm } from '../form.ts';
import { coaching } from './coaching.ts';
import { files } from './files.ts';
import { furniture } from './furniture.ts';
import { header } from './header.ts';
import { people } from './people.ts';
import { play } from './play.ts';
import { rules } from './rules.ts';
import { session } from './session.ts';
import { space } from './space.ts';

/** Every statement of the language, in the order of the reference. */
export const statementForms: readonly StatementForm[] = [
  ...files, ...header, ...space, ...furniture, ...people, ...play, ...rules, ...coaching, ...session,
];
