import { ENTRY_TYPES, type EntryType } from './entry-type-names.ts';
import { jsonSchemaOf } from './json-schema.ts';

interface Property {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly items?: Property;
  readonly anyOf?: readonly Property[];
  readonly properties?: Readonly<Record<string, Property>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: unknown;
}

/** The page docs/format.md: every type and key, printed from the schemas. */
export function formatDocument(): string {
  const head = [
    '# The format of entries',
    '',
    'Printed from the schemas by `kerfmark schema --markdown`; do not edit by hand.',
    '',
    'An entry is a Markdown file: keys between two lines of three hyphens, then the argument. Keys in **bold** must be there.',
    'A list may be written as a single value where it holds one. Dates are EDTF in quotation marks; ids are those of other entries.',
    '',
  ];
  return `${[...head, ...ENTRY_TYPES.flatMap((type) => section(type))].join('\n').trimEnd()}\n`;
}

function section(type: EntryType): readonly string[] {
  const schema = jsonSchemaOf(type) as Property;
  const rows = Object.entries(schema.properties ?? {}).map(([key, property]) => {
    const name = schema.required?.includes(key) ? `**${key}**` : key;
    return `| ${name} | ${inCell(holds(property))} | ${inCell(property.description ?? '')} |`;
  });
  return [`## ${type}`, '', '| key | holds | meaning |', '| --- | --- | --- |', ...rows, ''];
}

function holds(property: Property, depth = 0): string {
  if (property.const !== undefined) return `\`${String(property.const)}\``;
  if (property.enum) return property.enum.map(String).join(', ');
  // A list that may be written as a single value.
  const lists = property.anyOf?.filter((one) => one.type === 'array') ?? [];
  if (lists[0] && property.anyOf?.length === 2) return holds(lists[0], depth);
  if (property.anyOf) return [...new Set(property.anyOf.map((one) => holds(one, depth)))].join(' or ');
  if (property.type === 'array') return `list of ${holds(property.items ?? {}, depth)}`;
  if (property.type === 'object') {
    if (!property.properties) return 'one text a language';
    if (depth > 1) return 'keys';
    const keys = Object.entries(property.properties).map(([key, inner]) => {
      const name = property.required?.includes(key) ? `**${key}**` : key;
      const simple =
        inner.type === 'object' || inner.type === 'array' || inner.enum ? `: ${holds(inner, depth + 1)}` : '';
      return `${name}${simple}`;
    });
    return `{ ${keys.join('; ')} }`;
  }
  if (Array.isArray(property.type)) return property.type.includes('integer') ? 'date' : 'text';
  if (property.type === 'string') return 'id or text';
  return property.type === 'number' ? 'number' : property.type === 'boolean' ? 'true or false' : 'text';
}

function inCell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}
