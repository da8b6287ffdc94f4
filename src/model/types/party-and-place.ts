import * as z from 'zod';
import { commonKeys, date, grade, list, localText, name, number, ref, text } from '../fields.ts';

/** A date of a life or of a firm; with its source and how sure it is, or bare, which counts as probable. */
const lifeDate = () =>
  z
    .union([
      date(),
      z.strictObject({
        date: date(),
        grade: grade().optional(),
        source: ref('source', 'evidence', 'figure').optional(),
        locator: text().optional(),
        why: text().optional(),
      }),
    ])
    .optional();

const authorities = z.array(z.strictObject({ scheme: text(), id: text() }));

/** A person, firm, institution or community. */
export const party = z.strictObject({
  ...commonKeys,
  type: z.literal('party'),
  names: z.array(name()).optional(),
  'public-name': text().optional().describe('what the public reads instead of the name'),
  role: text().optional(),
  is: z.enum(['person', 'firm', 'institution', 'community']),
  born: lifeDate().describe('nobody holds a piece before it; statement ENTRY#first'),
  died: lifeDate().describe('nobody holds a piece after it; statement ENTRY#last'),
  founded: lifeDate().describe('the same for a firm or an institution; statement ENTRY#first'),
  closed: lifeDate().describe('the same for a firm or an institution; statement ENTRY#last'),
  addresses: z
    .array(
      z.strictObject({
        text: text(),
        from: date().optional(),
        to: date().optional(),
        source: ref('source').optional(),
      }),
    )
    .optional(),
  living: z.enum(['yes', 'no', 'not known']).optional(),
  'authority-ids': authorities.optional(),
  description: localText().optional(),
});

/** A building, wall, town or country. */
export const place = z.strictObject({
  ...commonKeys,
  type: z.literal('place'),
  names: z.array(name()).optional(),
  kind: z.enum(['wall', 'building', 'town', 'district', 'island', 'country', 'port', 'store', 'other']).optional(),
  coordinates: z.strictObject({ latitude: number(-90, 90), longitude: number(-180, 180) }).optional(),
  show: z.enum(['exact', 'district', 'country', 'none']).optional(),
  within: ref('place').optional(),
  rule: z
    .array(
      z.strictObject({
        power: text(),
        from: date().optional(),
        to: date().optional(),
        kind: z.enum(['sovereign', 'colonial', 'protectorate', 'mandate', 'occupation', 'disputed']),
        jurisdiction: text().optional().describe('name of the territory in the table of reference dates'),
      }),
    )
    .optional(),
  'authority-ids': authorities.optional(),
  'present-store': z.boolean().optional(),
  was: list(text()).optional(),
});
