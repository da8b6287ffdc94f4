import * as z from 'zod';
import { access, commonKeys, date, list, localText, ref, refOrWords, text } from '../fields.ts';

/** A question put to the museum. */
export const inquiry = z.strictObject({
  ...commonKeys,
  type: z.literal('inquiry'),
  received: date(),
  from: refOrWords('party').optional(),
  authority: text().optional(),
  language: text().optional(),
  objects: list(ref('object')),
  'answered-from': access()
    .optional()
    .describe('entries that the answer may be made from; public where nothing is said'),
  questions: z
    .array(
      z.union([
        text(),
        z.strictObject({
          text: text(),
          answer: text().optional(),
          grade: text().optional(),
          'rests-on': list(ref()).optional(),
        }),
      ]),
    )
    .optional(),
  state: z.enum(['received', 'acknowledged', 'in research', 'in review', 'approved', 'sent', 'reopened', 'closed']),
  'answered-by': refOrWords('party').optional(),
  'reviewed-by': refOrWords('party').optional(),
  'approved-by': refOrWords('party').optional(),
  'approved-on': date().optional(),
  'sent-on': date().optional(),
  'sent-file': z.strictObject({ file: text(), sha256: text(), 'values-sha256': text().optional() }).optional(),
  cites: list(text()).optional().describe('statements that the document that was sent cites by their ref'),
  withheld: z.array(z.strictObject({ class: text(), ground: text() })).optional(),
  due: date().optional(),
  'signed-off': z
    .array(z.strictObject({ code: text(), by: text(), on: date(), why: text() }))
    .optional()
    .describe('doubts about the answer that somebody has looked at and answers for'),
});

/** A demand for the object; restricted where nothing else is said. */
export const requestForReturn = z.strictObject({
  ...commonKeys,
  type: z.literal('request-for-return'),
  from: refOrWords('party'),
  'on-behalf-of': refOrWords('party').optional(),
  received: date(),
  objects: list(ref('object')),
  grounds: text().optional(),
  state: text(),
  outcome: text().optional(),
  'public-text': localText().optional(),
});

/** What a reader or a community answered. */
export const response = z.strictObject({
  ...commonKeys,
  type: z.literal('response'),
  from: refOrWords('party'),
  on: date().optional(),
  about: list(ref()),
  text: localText().optional(),
  reply: localText().optional(),
});

/** A law's, treaty's or policy's date beyond the built-in table; the columns of that table. */
export const referenceDate = z.strictObject({
  ...commonKeys,
  type: z.literal('reference-date'),
  jurisdiction: text(),
  territory: text().optional(),
  made: date().optional(),
  'in-force-from': date().optional(),
  'in-force-to': date().optional(),
  'date-as-given': text().optional(),
  calendar: text().optional(),
  kind: text().optional(),
  tests: text().optional(),
  retroactive: text().optional(),
  effect: text().optional(),
  source: refOrWords('source').optional(),
  standing: z.enum(['looked-up', 'partly looked-up', 'memory']),
  'how-sure': z.enum(['high', 'medium', 'doubtful']),
});
