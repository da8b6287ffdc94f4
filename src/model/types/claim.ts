import * as z from 'zod';
import { SENSES } from '../../dates/sense.ts';
import { BASES, calendar, commonKeys, date, grade, localText, momentRef, ref, text } from '../fields.ts';

/** What a source says about something. */
export const claim = z.strictObject({
  ...commonKeys,
  type: z.literal('claim'),
  about: momentRef().describe('an event, an edge of a holding (HO-3.begins), a trace, a reading or anything else'),
  says: z.strictObject({
    date: date().optional(),
    sense: z.enum(SENSES).optional(),
    calendar: calendar().optional(),
    'as-written': text().optional(),
    holder: ref('party').optional().describe('who had the piece, as the source says; about is the piece then'),
    text: localText().optional().describe('what is said, where it is no date'),
  }),
  source: ref('source', 'evidence', 'figure'),
  locator: text().optional(),
  quote: localText().optional(),
  'quote-language': text().optional(),
  translation: localText().optional(),
  basis: z.enum(BASES).optional(),
  narrator: text().optional(),
  grade: grade(),
  why: text().optional(),
  standing: z.enum(['open', 'supported', 'doubtful', 'rejected', 'withdrawn']).optional(),
});
