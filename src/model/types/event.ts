import * as z from 'zod';
import {
  commonKeys,
  date,
  gap,
  grade,
  list,
  momentRef,
  ref,
  span,
  statedDate,
  statementName,
  text,
} from '../fields.ts';

/** What can happen to a piece of a wall. */
export const EVENT_KINDS = [
  'making',
  'uncovering',
  'whitewashing',
  'alteration',
  'recorded in place',
  'listing',
  'excavation',
  'damage',
  'facing',
  'removal',
  'facing taken off',
  'sectioning',
  'transport',
  'reassembly',
  'backing',
  'theft or looting',
  'sale',
  'offered unsold',
  'gift',
  'bequest',
  'inheritance',
  'exchange',
  'consignment',
  'deposit',
  'pledge',
  'division of finds',
  'permit',
  'nationalisation',
  'confiscation',
  'forced sale',
  'export',
  'import',
  'loan',
  'exhibition',
  'photograph',
  'publication',
  'examination',
  'sampling',
  'treatment',
  'mounting',
  'deaccession',
  'return',
] as const;

/** Kinds of event that take a day, so that "lasted from a to b" is easily a slip. */
export const DAY_KINDS: readonly string[] = [
  'sale',
  'gift',
  'confiscation',
  'theft or looting',
  'photograph',
  'recorded in place',
  'bequest',
  'exchange',
];

/** Relations between two events (Allen 1983; ours allow the same day). */
export const RELATIONS = [
  'after',
  'before',
  'during',
  'contains',
  'meets',
  'met-by',
  'same-as',
  'overlaps',
  'overlapped-by',
  'starts',
  'started-by',
  'finishes',
  'finished-by',
  'bonded-with',
] as const;

/** Name of a relation between two events. */
export type RelationName = (typeof RELATIONS)[number];

const targets = Object.fromEntries(
  RELATIONS.map((relation) => [relation, momentRef('event', 'evidence', 'holding').optional()]),
) as Record<RelationName, z.ZodOptional<ReturnType<typeof momentRef>>>;

const relation = z.strictObject({
  ref: statementName().optional(),
  ...targets,
  gap: gap().optional().describe('least and greatest distance; for after and before only'),
  strict: z.boolean().optional().describe('true: at least one day apart'),
  grade: grade(),
  why: text().optional(),
  source: ref('source', 'evidence', 'figure').optional(),
  locator: text().optional(),
  by: ref('party').optional(),
});

const money = z.strictObject({ amount: text(), currency: text().optional(), source: ref('source').optional() });

/** A party of an event, in a role: `gives`, `gets`, `through`, `house`, or a word of your own for what else it did. */
const partyOfEvent = z.strictObject({
  party: ref('party'),
  role: text().describe('gives, gets, through, house bind who has it; any other word tells what the party did'),
  objects: list(ref('object')).optional().describe('the pieces that the party gave or got; an exchange needs them'),
  'on-behalf-of': ref('party').optional().describe('for whom the party acted'),
  holding: ref('holding').optional().describe('which of its holdings is meant, where it has several'),
});

/** Something that happened. */
export const event = z.strictObject({
  ...commonKeys,
  type: z.literal('event'),
  kind: z.enum(EVENT_KINDS),
  objects: list(ref('object')).optional(),
  place: ref('place').optional(),
  to: ref('place').optional().describe('where a transport, export or import ended'),
  parties: z.array(z.union([ref('party'), partyOfEvent])).optional(),
  passage: z
    .strictObject({ grade: grade().optional(), why: text().optional() })
    .optional()
    .describe('how sure it is that the piece passed from who gives to who gets; probable where nothing is said'),
  technique: z.enum(['stacco', 'strappo', 'stacco a massello', 'sawn', 'prised', 'unknown']).optional(),
  circumstance: z
    .strictObject({
      is: z.enum(['free', 'under occupation', 'under duress', 'under permit', 'without permit', 'not known']),
      why: text(),
      grade: grade().optional(),
    })
    .optional(),
  'authorised-by': ref('source').optional(),
  'under-law': list(text())
    .optional()
    .describe('laws cited: rows of the table of reference dates, or entries of that type'),
  applies: z
    .array(z.strictObject({ law: text(), why: text(), by: ref('party') }))
    .optional()
    .describe('that a law or period applies to the act, though the rule over its place does not settle it'),
  stated: z.array(statedDate()).optional().describe('dated statements: ENTRY#1, #2, ...'),
  relations: z.array(relation).optional().describe('order to other events; numbered on after stated'),
  lasts: span().optional().describe('how long it took; statement ENTRY#lasts'),
  lot: text().optional(),
  price: money.optional(),
  contract: date().optional(),
  payment: date().optional(),
  delivery: z
    .union([date(), statedDate()])
    .optional()
    .describe('when it was handed over, where that was not the day of the act; statement ENTRY#delivery'),
  catalogue: ref('source').optional(),
});
