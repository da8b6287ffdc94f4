/** The types of entries, in the order in which the documentation tells them. */
export const ENTRY_TYPES = [
  'workspace',
  'object',
  'evidence',
  'examination',
  'survey',
  'event',
  'claim',
  'holding',
  'title',
  'source',
  'party',
  'place',
  'figure',
  'search',
  'question',
  'reading',
  'inquiry',
  'request-for-return',
  'response',
  'reference-date',
] as const;

/** A type of entry. */
export type EntryType = (typeof ENTRY_TYPES)[number];
