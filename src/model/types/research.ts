import * as z from 'zod';
import { commonKeys, date, list, ref, refOrWords, text } from '../fields.ts';

/** One look in an archive, nothing found included. */
export const search = z.strictObject({
  ...commonKeys,
  type: z.literal('search'),
  repository: text(),
  for: text().describe('what was looked for'),
  scope: z
    .strictObject({
      series: text().optional(),
      from: date().optional(),
      to: date().optional(),
      words: list(text()).optional(),
      missing: text().optional().describe('what of it could not be seen: lost volumes, closed boxes'),
    })
    .optional(),
  searcher: list(ref('party')).optional(),
  when: date().optional(),
  outcome: z.enum(['found', 'partly', 'not found in what was searched', 'no access']),
  found: list(ref('source', 'figure')).optional(),
  about: list(ref()).optional(),
});

/** An open question. */
export const question = z.strictObject({
  ...commonKeys,
  type: z.literal('question'),
  about: list(ref()).optional(),
  'why-it-matters': text().optional(),
  state: z.enum(['open', 'in research', 'answered', 'set aside']),
  'would-settle-it': text().optional(),
});

/** A candidate origin or explanation, with what the entries say for and against it. */
export const reading = z.strictObject({
  ...commonKeys,
  type: z.literal('reading'),
  proposition: text(),
  about: list(ref()).optional(),
  'put-forward-by': list(refOrWords('party')).optional(),
  'accepted-by': list(refOrWords('party')).optional(),
  weighs: z
    .array(
      z.strictObject({
        entry: ref(),
        is: z.enum(['requires', 'compatible', 'contradicts', 'not diagnostic']),
        why: text(),
      }),
    )
    .optional(),
});
