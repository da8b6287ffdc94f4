import * as z from 'zod';
import { commonKeys, date, list, ref, text } from '../fields.ts';
import { SEEN_UNDER } from './evidence.ts';

/** One look at the object. */
export const examination = z.strictObject({
  ...commonKeys,
  type: z.literal('examination'),
  objects: list(ref('object')),
  covered: z
    .array(
      z.strictObject({
        object: ref('object').optional().describe('needed where the examination was of several objects'),
        panel: text(),
        faces: list(z.enum(['front', 'back', 'top', 'right', 'bottom', 'left'])).optional(),
        where: text().optional(),
      }),
    )
    .optional(),
  technique: list(z.enum(SEEN_UNDER)),
  lamp: text().optional(),
  filter: text().optional(),
  camera: text().optional(),
  conditions: text().optional(),
  examiner: list(ref('party')).optional(),
  when: date().optional(),
  report: ref('source').optional(),
  saw: list(ref('evidence')).optional(),
  'looked-for-not-seen': list(text()).optional(),
  'not-accessible': list(text()).optional(),
  event: ref('event').optional(),
});

/** A table of traces of one panel: a CSV beside the entry, one row a trace. */
export const survey = z.strictObject({
  ...commonKeys,
  type: z.literal('survey'),
  table: z
    .string()
    .regex(/\.csv$/i)
    .describe('the CSV file beside this entry; columns are keys of evidence'),
  object: ref('object'),
  panel: text().optional(),
  examination: ref('examination').optional(),
});
