import * as z from 'zod';
import { access, commonKeys, date, duration, grade, list, number, ref, refOrWords, text } from '../fields.ts';

const years = (what: string) => number().optional().describe(`${what} either side of a date with ~ or %`);

/** The settings of a workspace; exactly one entry. */
export const workspace = z.strictObject({
  ...commonKeys,
  type: z.literal('workspace'),
  format: number().optional().describe('format of the workspace, which the program writes; see kerfmark upgrade'),
  institution: text().describe('whose research this is'),
  'base-url': z.url().optional().describe('where the site will stand'),
  'access-default': access().optional().describe('access of entries that say nothing; internal where it is missing'),
  circa: z
    .strictObject({
      year: years('years'),
      decade: years('years, for a decade,'),
      century: years('years, for a century,'),
      month: years('months'),
      day: years('days'),
    })
    .optional()
    .describe('how wide "about" is; an unstated width is an error'),
  'sunset-days': number().optional().describe('days either side for calendars whose day begins at sunset; 1'),
  'paperwork-lag': duration().optional().describe('how late papers may follow a passage; P0D'),
  'printed-grade': grade().optional().describe('the grade printed where only one fits; probable'),
  'grade-words': z
    .partialRecord(z.enum(['established', 'probable', 'possible', 'conjectural']), text())
    .optional()
    .describe('what the institution means by each grade'),
  languages: list(text()).optional().describe('languages, the first one shown first'),
  'reference-dates': list(z.union([text(), z.strictObject({ id: text(), declined: text() })]))
    .optional()
    .describe('rows of the built-in table that matter here; or declined, with the reason'),
  contact: text().optional().describe('who answers letters'),
  'how-to-respond': text().optional().describe('how a reader can answer'),
  'signed-off': z
    .array(z.strictObject({ entry: ref(), by: refOrWords('party'), on: date().optional(), why: text() }))
    .optional()
    .describe('entries of which a public build says otherwise than an internal one, looked at before publishing'),
  'line-marks': z
    .enum(['aam', 'exchanged'])
    .optional()
    .describe('marks of provenance lines: a semicolon is direct (aam), or a period is (exchanged)'),
  'line-order': z.enum(['earliest first', 'latest first']).optional().describe('order of provenance lines'),
  'unshown-note': z.strictObject({ off: z.literal(true), ground: text() }).optional(),
  object: list(ref('object')).optional(),
});
