import * as z from 'zod';
import { ENTRY_SCHEMAS } from './entry.ts';
import type { EntryType } from './entry-type-names.ts';
import { fieldNotes } from './fields.ts';

/**
 * JSON Schema (draft 2020-12) of a type's front matter, printed from the one definition, for
 * editors. Text fields also accept numbers, since a year or a folio may be written unquoted.
 */
export function jsonSchemaOf(type: EntryType): Record<string, unknown> {
  const schema = z.toJSONSchema(ENTRY_SCHEMAS[type], {
    io: 'input',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      const note = fieldNotes.get(zodSchema as unknown as z.ZodType);
      if (note?.holds === 'date')
        Object.assign(jsonSchema, { type: ['string', 'integer'], description: jsonSchema.description ?? 'EDTF date' });
      else if (jsonSchema.type === 'array' && isList(zodSchema as unknown as z.ZodType)) {
        // One value counts as a list of one.
        const { description, ...array } = { ...jsonSchema };
        for (const key of Object.keys(jsonSchema)) delete jsonSchema[key];
        Object.assign(jsonSchema, { anyOf: [array.items, array], ...(description ? { description } : {}) });
      } else if (note?.holds === 'text') Object.assign(jsonSchema, { type: ['string', 'number'] });
    },
  });
  return { $id: `kerfmark-${type}.schema.json`, title: `Kerfmark entry: ${type}`, ...schema };
}

/** True for what `list()` makes: a single value is put into a list before it is looked at. */
function isList(schema: z.ZodType): boolean {
  const { type, out } = schema.def as { readonly type: string; readonly out?: z.ZodType };
  return type === 'pipe' && out?.def.type === 'array';
}
