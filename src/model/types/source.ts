import * as z from 'zod';
import { calendar, commonKeys, date, list, localText, ref, refOrWords, text } from '../fields.ts';

/** A document, photograph, publication, interview, report or tradition. */
export const source = z.strictObject({
  ...commonKeys,
  type: z.literal('source'),
  kind: z.enum([
    'letter',
    'ledger',
    'invoice',
    'inventory',
    'list',
    'card',
    'photograph',
    'catalogue',
    'book',
    'article',
    'newspaper',
    'law',
    'permit',
    'customs paper',
    'report',
    'interview',
    'tradition',
    'map',
    'label',
    'contract',
    'other',
  ]),
  author: list(refOrWords('party')).optional(),
  recipient: text().optional(),
  'container-title': text().optional(),
  publisher: text().optional(),
  'publisher-place': text().optional(),
  volume: text().optional(),
  page: text().optional(),
  url: z.url().optional(),
  language: text().optional(),
  'place-written': text().optional(),
  lot: text().optional().describe('lot of an auction catalogue'),
  object: ref('object').optional().describe('what a label or mark is on'),
  repository: text().optional().describe('archive, library or collection, with town'),
  'repository-place': text().optional().describe('town, where the repository does not name it'),
  collection: text().optional().describe('papers, fonds or collection within the repository'),
  series: text().optional(),
  box: text().optional(),
  folder: text().optional(),
  item: text().optional().describe('number or leaf within box and folder'),
  'reference-code': text().optional().describe('code of the archive, in place of series, box and folder'),
  'form-seen': z.enum(['original', 'scan', 'film', 'transcript', 'told']).optional(),
  'derives-from': z
    .union([z.literal('unknown'), list(ref('source'))])
    .optional()
    .describe('the source it copies; unknown where parentage is not known'),
  authenticity: z
    .union([
      z.enum(['accepted', 'not examined']),
      z.strictObject({
        is: z.enum(['accepted', 'not examined', 'questioned', 'shown false']),
        by: refOrWords('party'),
        why: text(),
      }),
    ])
    .optional(),
  authorises: z
    .strictObject({
      act: text(),
      quantity: text().optional(),
      from: date().optional(),
      to: date().optional(),
      covers: z.enum(['named', 'by number', 'by description', 'cannot be shown']),
    })
    .optional(),
  'under-law': list(text())
    .optional()
    .describe('laws cited: rows of the table of reference dates, or entries of that type'),
  'custody-of-paper': text().optional(),
  quoting: text().optional().describe('permission to quote'),
  'date-on-it': date().optional(),
  calendar: calendar().optional(),
  'date-read': date().optional(),
  describes: localText().optional(),
});
