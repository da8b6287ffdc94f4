import * as z from 'zod';
import { commonKeys, date, grade, list, ref, refOrWords, statedDate, text } from '../fields.ts';

/** In what capacity a party has an object. */
export const CAPACITIES = [
  'possessor',
  'custodian',
  'consignee',
  'agent or dealer',
  'borrower',
  'depositary',
  'pledgee',
  'trustee or executor',
  'occupying or confiscating authority',
  'unknown',
] as const;

/** How one holding followed another. */
export const PASSAGES = ['direct', 'not direct', 'unknown'] as const;

/** One party having the object in its hands for a time. */
export const holding = z.strictObject({
  ...commonKeys,
  type: z.literal('holding'),
  holder: ref('party').optional(),
  capacity: z.enum(CAPACITIES),
  objects: list(ref('object')),
  place: ref('place').optional(),
  'acquired-by': text().optional(),
  'shared-with': list(ref('party')).optional(),
  from: ref('holding').optional(),
  passage: z
    .union([
      z.enum(PASSAGES),
      z.strictObject({
        is: z.enum(PASSAGES),
        grade: grade().optional(),
        why: text().optional(),
        source: ref('source').optional(),
      }),
    ])
    .optional(),
  begins: z.array(statedDate()).optional(),
  ends: z.array(statedDate()).optional(),
  held: z.array(statedDate()).optional().describe('had it at that time'),
  'not-disclosed': z.strictObject({ ground: text() }).optional(),
});

/** An assertion of title: a legal position, not a fact of custody. Never computed with. */
export const title = z.strictObject({
  ...commonKeys,
  type: z.literal('title'),
  objects: list(ref('object')),
  'asserted-by': ref('party'),
  interest: z.enum([
    'ownership',
    'shared',
    'life interest',
    'pledge',
    'trust',
    'state property by law',
    'community right',
  ]),
  ground: z.enum([
    'purchase',
    'gift',
    'bequest',
    'inheritance',
    'exchange',
    'division of finds',
    'law',
    'licence',
    'conquest or seizure',
    'long possession',
    'none stated',
  ]),
  'under-law': list(text())
    .optional()
    .describe('laws cited: rows of the table of reference dates, or entries of that type'),
  'recognised-by': list(refOrWords('party')).optional(),
  'contested-by': list(refOrWords('party')).optional(),
  begins: date().optional(),
  ends: date().optional(),
  standing: text().optional(),
  source: ref('source').optional(),
  why: text().optional(),
});
