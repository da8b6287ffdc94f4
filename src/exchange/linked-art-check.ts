import { CONTEXT, type Json, type LinkedArtRecord } from './linked-art-parts.ts';

/**
 * Three rules of the standard's documentation that its schemas do not enforce (linked.art, API 1.0): the context is the
 * standard's own and stands last; a provenance activity has parts; a time span has a bound or a name. Returns what breaks
 * them, in words; nothing is written while anything does.
 */
export function checkLinkedArt(records: readonly LinkedArtRecord[]): readonly string[] {
  return records.flatMap((record) => {
    const context = record['@context'] as unknown;
    const last = Array.isArray(context) ? context.at(-1) : context;
    const classes = (record.classified_as ?? []) as readonly { readonly id?: string }[];
    const isProvenance = classes.some((one) => one.id?.endsWith('300055863'));
    const parts = (record.part ?? []) as readonly unknown[];
    return [
      ...(last === CONTEXT ? [] : [`${record.id}: the context of the standard does not stand last`]),
      ...(isProvenance && parts.length === 0 ? [`${record.id}: a provenance activity without parts`] : []),
      ...emptySpans(record).map((where) => `${record.id}: a time span without bounds or name at ${where}`),
    ];
  });
}

const BOUNDS = ['identified_by', 'begin_of_the_begin', 'end_of_the_end'];

function emptySpans(value: unknown, where = ''): readonly string[] {
  if (Array.isArray(value)) return value.flatMap((one, i) => emptySpans(one, `${where}/${i}`));
  if (value === null || typeof value !== 'object') return [];
  const json = value as Json;
  const own = json.type === 'TimeSpan' && !BOUNDS.some((key) => key in json) ? [where || '/'] : [];
  return [...own, ...Object.entries(json).flatMap(([key, one]) => emptySpans(one, `${where}/${key}`))];
}
