/** The settings of a folder of drills, in its `halfturn.json`. Their schema, and what an editor says of them, is made from this list. */
import { nearest } from '../../grammar/spelling.ts';
import { checks } from '../checks/index.ts';
import { severities, type Severity } from '../problem.ts';
import { conventions, type Convention } from '../scene/lines.ts';
import { themes, type Theme } from '../scene/palette.ts';
import type { Levels } from '../service/levels.ts';
import { readJson, type Json, type Misfit } from './json.ts';

export const settingsFile = 'halfturn.json';

export interface FolderSettings {
  readonly levels: Levels;
  /** Null where the file says nothing. */
  readonly convention: Convention | null;
  readonly theme: Theme | null;
  readonly guide: string | null;
}

export const noSettings: FolderSettings = { levels: {}, convention: null, theme: null, guide: null };

type Kind = { readonly kind: 'levels' } | { readonly kind: 'text' } | { readonly kind: 'choice'; readonly choices: readonly string[] };

const settings = {
  severity: { kind: 'levels', about: 'How serious problems are, by code, such as { "long-wait": "off" }.' },
  convention: { kind: 'choice', choices: conventions, about: 'Which lines are solid and which are dashed; handbooks disagree.' },
  theme: { kind: 'choice', choices: themes, about: 'The colours that halfturn draw takes when it is not told.' },
  guide: { kind: 'text', about: 'Where the guide to problems can be read in a browser; {code} stands for the problem’s code.' },
} as const satisfies Readonly<Record<string, Kind & { readonly about: string }>>;

const levels: readonly string[] = [...severities, 'off'];

/** What of a settings file can be understood, and what cannot, in the order of the text. Total. */
export function readSettings(text: string): { readonly settings: FolderSettings; readonly misfits: readonly Misfit[] } {
  const json = readJson(text);
  if ('message' in json) return { settings: noSettings, misfits: [json] };
  const misfits: Misfit[] = [];
  const found = new Map<string, unknown>();
  for (const { name, nameSpan, value } of membersOf(json, 'The settings', misfits)) {
    if (name === '$schema') continue;
    const setting: Kind | undefined = Object.hasOwn(settings, name) ? settings[name as keyof typeof settings] : undefined;
    if (setting) found.set(name, valueOf(name, setting, value, misfits));
    else misfits.push({ span: nameSpan, message: `There is no setting \`${name}\`${instead(name, Object.keys(settings))}` });
  }
  return {
    settings: {
      levels: (found.get('severity') ?? {}) as Levels,
      convention: (found.get('convention') ?? null) as Convention | null,
      theme: (found.get('theme') ?? null) as Theme | null,
      guide: (found.get('guide') ?? null) as string | null,
    },
    misfits,
  };
}

/** JSON Schema, draft 7: what editors know. */
export function settingsSchema(): object {
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'Halfturn: settings of a folder of drills',
    type: 'object',
    properties: {
      $schema: { type: 'string' },
      ...Object.fromEntries(Object.entries(settings).map(([name, setting]) => [name, { description: setting.about, ...schemaOf(setting) }])),
    },
    additionalProperties: false,
  };
}

function schemaOf(setting: Kind): object {
  switch (setting.kind) {
    case 'levels':
      return {
        type: 'object',
        properties: Object.fromEntries(checks.map(({ code, title, severity }) => [code, { description: `${title}. Usually: ${severity}.`, enum: levels }])),
        additionalProperties: false,
      };
    case 'text':
      return { type: 'string' };
    case 'choice':
      return { enum: setting.choices };
  }
}

/** Undefined for what does not fit. */
function valueOf(name: string, setting: Kind, value: Json, misfits: Misfit[]): unknown {
  switch (setting.kind) {
    case 'levels':
      return levelsOf(membersOf(value, `\`${name}\``, misfits), misfits);
    case 'text':
      if (value.kind === 'value' && typeof value.value === 'string') return value.value === '' ? null : value.value;
      misfits.push({ span: value.span, message: `\`${name}\` takes a text in double quotes.` });
      return undefined;
    case 'choice':
      return chosen(name, value, setting.choices, misfits);
  }
}

function levelsOf(members: ReturnType<typeof membersOf>, misfits: Misfit[]): Levels {
  const codes = checks.map(({ code }) => code);
  const found: Record<string, Severity | 'off'> = {};
  for (const { name, nameSpan, value } of members) {
    const level = chosen(name, value, levels, misfits);
    if (!codes.includes(name)) misfits.push({ span: nameSpan, message: `There is no problem with the code \`${name}\`${instead(name, codes)}` });
    else if (level !== undefined) found[name] = level as Severity | 'off';
  }
  return found;
}

function chosen(name: string, { kind, span, ...rest }: Json, choices: readonly string[], misfits: Misfit[]): string | undefined {
  const value = kind === 'value' && 'value' in rest ? rest.value : undefined;
  if (typeof value === 'string' && choices.includes(value)) return value;
  const guess = typeof value === 'string' ? nearest(value, choices) : null;
  const wanted = choices.map((choice) => `"${choice}"`).join(', ').replace(/, ([^,]*)$/, ' or $1');
  misfits.push({ span, message: `\`${name}\` takes ${wanted}.${guess === null ? '' : ` Did you mean "${guess}"?`}` });
  return undefined;
}

function membersOf(json: Json, what: string, misfits: Misfit[]): Extract<Json, { kind: 'object' }>['members'] {
  if (json.kind === 'object') return json.members;
  misfits.push({ span: json.span, message: `${what} should stand in braces: { "name": "value" }.` });
  return [];
}

function instead(written: string, known: readonly string[]): string {
  const guess = nearest(written, known);
  return guess === null ? '.' : `; did you mean \`${guess}\`?`;
}
