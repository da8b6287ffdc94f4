import * as z from 'zod';
import { commonKeys, date, list, localText, measure, name, number, ref, text } from '../fields.ts';

const millimetres = (what: string) => number().optional().describe(`${what} in mm`);

const section = z.strictObject({
  id: text(),
  label: text().optional(),
  'key-number': text().optional().describe('number painted or cut on it'),
  crate: text().optional(),
  'stated-size': measure().optional(),
  'stated-weight': measure().optional(),
  at: text().optional().describe('where in the panel, in words'),
  point: z
    .array(number())
    .length(2)
    .optional()
    .describe('a place inside it, [x, y] in mm from the lower left corner; only so is it known which piece is meant'),
  weighed: measure().optional().describe('by a scale; overrides what is calculated'),
});

const panel = z.strictObject({
  id: text(),
  label: text().optional(),
  width: millimetres('width'),
  height: millimetres('height'),
  thickness: millimetres('thickness'),
  outline: z.strictObject({ ring: z.array(z.array(number())) }).optional(),
  weighed: measure().optional().describe('by a scale; overrides what is calculated'),
  sections: z.array(section).optional(),
});

/** A museum object, a group of panels, or a sister fragment elsewhere. Object ID's categories. */
export const object = z.strictObject({
  ...commonKeys,
  type: z.literal('object'),
  names: z.array(name()).optional(),
  'object-type': text().optional(),
  materials: text().optional().describe('materials and techniques'),
  measurements: z
    .array(
      z.strictObject({
        what: text().optional(),
        'as-written': text(),
        mm: z.array(number()).optional(),
        source: ref('source').optional(),
      }),
    )
    .optional()
    .describe('as written, and in mm'),
  inscriptions: text().optional().describe('inscriptions and markings'),
  'distinguishing-features': text().optional(),
  subject: text().optional(),
  period: text().optional().describe('date or period, in words'),
  made: date().optional(),
  maker: text().optional().describe('maker or culture'),
  description: localText().optional(),
  'accession-numbers': list(text()).optional(),
  holder: ref('party').optional().describe('who has it now'),
  of: ref('place').optional().describe('the building or wall it was part of'),
  'part-of': ref('object').optional(),
  'made-from': list(ref('object', 'place')).optional(),
  'made-into': list(ref('object')).optional(),
  panels: z.array(panel).optional(),
  numbers: z
    .array(
      z.strictObject({
        number: text(),
        kind: text(),
        'given-by': ref('party').optional(),
        source: ref('source').optional(),
        on: ref('evidence').optional(),
        given: date().optional().describe('when it was given; else the beginning of the holding of who gave it counts'),
      }),
    )
    .optional()
    .describe('dealer, crate, lot and photograph numbers, for the concordance'),
  'key-events': list(ref('event')).optional(),
  jurisdictions: list(text()).optional(),
  care: list(
    z.enum(['human remains', 'sacred', 'funerary', 'restricted viewing', 'none known', 'not yet asked']),
  ).optional(),
  'former-identifications': z
    .array(
      z.strictObject({
        text: text(),
        by: text().optional(),
        until: date().optional(),
        source: ref('source').optional(),
      }),
    )
    .optional(),
  'credit-line': text().optional(),
});
