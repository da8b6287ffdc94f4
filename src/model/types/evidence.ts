import * as z from 'zod';
import { commonKeys, date, grade, list, measure, number, ref, refOrWords, statementName, text } from '../fields.ts';

/** What is seen; what it is taken for stands under `inferred`. */
export const EVIDENCE_KINDS = [
  'cut-edge',
  'tool-mark',
  'line-or-joint',
  'plaster-layer',
  'paint-layer',
  'coating-or-residue',
  'backing',
  'armature',
  'fixing',
  'label-or-mark',
  'inscription',
  'fill',
  'addition',
  'retouching',
  'loss',
  'crack',
  'delamination',
  'deposit',
  'deformation',
  'sample',
  'unidentified',
] as const;

/** Kinds of trace that consist of a material, so that a dated material can bound them. */
export const CONSISTING_KINDS: readonly string[] = [
  'plaster-layer',
  'paint-layer',
  'coating-or-residue',
  'backing',
  'armature',
  'fixing',
  'label-or-mark',
  'inscription',
  'fill',
  'addition',
  'retouching',
  'deposit',
];

/** How finely a material was identified, finest first. */
export const IDENTIFICATION_LEVELS = ['crystal form', 'compound', 'element', 'class', 'look'] as const;

export const SEEN_UNDER = [
  'visible',
  'raking',
  'ultraviolet',
  'infrared',
  'x-radiograph',
  'transmitted',
  'microscope',
  'analysis',
  'touch',
] as const;

const other = z.union([
  ref('evidence'),
  z.strictObject({
    id: ref('evidence'),
    grade: grade().optional(),
    why: text().optional(),
    ref: statementName().optional(),
  }),
]);

const point = z.array(number()).length(2);

const shape = z.strictObject({
  point: point.optional(),
  line: z.array(point).optional(),
  area: z.strictObject({ ring: z.array(point), holes: z.array(z.array(point)).optional() }).optional(),
  arc: z.array(point).optional(),
  in: ref('figure').optional().describe('in pixels of this figure; in mm of the panel where it is missing'),
  error: number().optional().describe('tracing error in mm; 2 where it is missing'),
});

const material = z.strictObject({
  ref: statementName().optional(),
  name: text().describe('as the table of dated materials names it'),
  'identified-as': z.enum(IDENTIFICATION_LEVELS),
  method: text().optional(),
  sample: refOrWords('evidence').optional(),
  analyst: refOrWords('party').optional(),
  report: ref('source').optional(),
  belongs: z.enum(['made with the layer', 'later intrusion', 'contamination', 'not settled']),
  grade: grade(),
  why: text().optional(),
  'natural-form-excluded': text().optional().describe('why the natural or ancient form is excluded'),
});

const leftBy = z.union([
  ref('event'),
  z.strictObject({ event: ref('event'), grade: grade(), why: text().optional(), ref: statementName().optional() }),
]);

/** One physical trace. */
export const evidence = z.strictObject({
  ...commonKeys,
  type: z.literal('evidence'),
  kind: z.enum(EVIDENCE_KINDS),
  object: ref('object'),
  panel: text().optional(),
  face: z.enum(['front', 'back', 'top', 'right', 'bottom', 'left', 'within']).optional(),
  where: text().optional().describe('in words; enough for ever'),
  shape: list(shape).optional().describe('one shape, or a list where the trace has several parts'),
  depth: z.array(number()).length(2).optional().describe('from and to, in mm from the painted surface'),
  seen: z.enum(['seen', 'looked for, not seen', 'not accessible']).optional(),
  'seen-under': list(z.enum(SEEN_UNDER)).optional(),
  examination: ref('examination').optional(),
  observed: z.strictObject({ text: text(), grade: grade(), by: ref('party').optional() }).optional(),
  inferred: z
    .array(
      z.strictObject({
        as: text(),
        by: refOrWords('party').optional(),
        date: date().optional(),
        grade: grade(),
        why: text().optional(),
      }),
    )
    .optional()
    .describe('what it is taken for; colleagues may differ and both stay'),
  formed: z.enum(['at once', 'over time']).optional(),
  over: list(other).optional(),
  cuts: list(other).optional(),
  fills: list(other).optional(),
  'same-as': list(other).optional(),
  'bonded-with': list(other).optional(),
  'left-by': list(leftBy).optional(),
  materials: z.array(material).optional(),
  original: z
    .boolean()
    .optional()
    .describe('true: examined and taken for original; its area counts as original surface'),
  thickness: measure().optional(),
  density: text().optional().describe('a row of the table of densities, or kg/m3: 1200-1800 kg/m3'),
  pieces: z
    .strictObject({ count: number(), length: measure(), section: measure() })
    .optional()
    .describe('bars, battens, nails: how many, how long, width x depth'),
  measured: z.array(z.strictObject({ what: text(), value: measure() })).optional(),
  reads: text().optional().describe('what a label, mark or inscription says'),
  'firm-at-address': z.strictObject({ party: ref('party'), address: text() }).optional(),
  colour: text().optional(),
  glow: z
    .strictObject({
      colour: text(),
      strength: z.enum(['none', 'weak', 'medium', 'strong']),
      lamp: text().optional(),
      filter: text().optional(),
      examination: ref('examination').optional(),
      grade: grade(),
    })
    .optional()
    .describe(
      'how it looks under ultraviolet: an observation; lamp and filter from the examination where they are missing',
    ),
});
