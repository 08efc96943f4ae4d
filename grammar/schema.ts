import { API } from 'typescript/unstable/sync';
import type { Checker, Type } from 'typescript/unstable/sync';

/**
 * JSON Schema 2020-12 of the syntax tree, taken from the types in `tree.ts`.
 * Needs Node: it asks the TypeScript compiler.
 */
export function treeSchema(madeBy: string): string {
  const folder = new URL('.', import.meta.url).pathname;
  const api = new API({ cwd: folder });
  try {
    const project = `${folder}tsconfig.json`;
    const { program, checker } = api.updateSnapshot({ openProject: project }).getProject(project)!;
    const root = program.getSourceFile(`${folder}tree.ts`)!;
    const file = checker.getSymbolAtPosition(root.fileName, root.text.indexOf('File {'))!;
    const definitions: Definitions = new Map();
    const schema = schemaOf(checker.getDeclaredTypeOfSymbol(file), checker, definitions);
    const whole = {
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      $comment: madeBy,
      title: 'Syntax tree of a .drill file',
      ...schema,
      $defs: Object.fromEntries([...definitions].sort(([a], [b]) => (a < b ? -1 : 1))),
    };
    return `${JSON.stringify(whole, null, 2)}\n`;
  } finally {
    api.close();
  }
}

type Schema = Record<string, unknown>;
type Definitions = Map<string, Schema>;

/** A type with a name becomes a definition of its own, so that recursion ends. */
function schemaOf(type: Type, checker: Checker, definitions: Definitions): Schema {
  const alias = type.getAliasSymbol();
  const symbol = type.isClassOrInterface() ? type.getSymbol() : undefined;
  const name = alias !== undefined && type.getAliasTypeArguments().length === 0 ? alias.name : symbol?.name;
  if (name === undefined) return inlineSchema(type, checker, definitions);
  if (!definitions.has(name)) {
    definitions.set(name, {});
    definitions.set(name, inlineSchema(type, checker, definitions));
  }
  return { $ref: `#/$defs/${name}` };
}

function inlineSchema(type: Type, checker: Checker, definitions: Definitions): Schema {
  if (type.isLiteralType()) return { const: type.value };
  if (type.isUnionType()) {
    const members = type.getTypes();
    if (members.every((member) => member.isLiteralType())) return { enum: members.map((member) => member.value).sort() };
    const present = checker.getNonNullableType(type)!;
    if (present !== type) return { anyOf: [{ type: 'null' }, schemaOf(present, checker, definitions)] };
    // The compiler's own order is no promise.
    return { anyOf: members.map((member) => schemaOf(member, checker, definitions)).sort(byText) };
  }
  if (type.isIntrinsicType()) return { type: type.intrinsicName };
  if (checker.isArrayLikeType(type)) {
    const [item] = checker.getTypeArguments(type as never);
    return { type: 'array', items: schemaOf(item!, checker, definitions) };
  }
  const properties = checker.getPropertiesOfType(type);
  return {
    type: 'object',
    properties: Object.fromEntries(
      properties.map((property) => [property.name, schemaOf(checker.getTypeOfSymbol(property)!, checker, definitions)]),
    ),
    required: properties.map((property) => property.name),
    additionalProperties: false,
  };
}

function byText(a: Schema, b: Schema): number {
  return JSON.stringify(a) < JSON.stringify(b) ? -1 : 1;
}
