import * as z from 'zod';
import { commonKeys, date, list, localText, number, ref, text } from '../fields.ts';
import { SEEN_UNDER } from './evidence.ts';

const pair = z.array(number()).length(2);

/** An image or drawing. */
export const figure = z.strictObject({
  ...commonKeys,
  type: z.literal('figure'),
  file: text().describe('path of the image, from this entry'),
  alternative: localText().describe('what is to be seen, for somebody who cannot see it'),
  technique: z.enum(SEEN_UNDER).or(z.literal('drawing')).optional(),
  object: ref('object').optional(),
  panel: text().optional(),
  face: z.enum(['front', 'back', 'top', 'right', 'bottom', 'left', 'within']).optional(),
  taken: date().optional().describe('when the picture was taken'),
  printed: date().optional().describe('when this print was made'),
  capture: text().optional(),
  credit: text().optional(),
  rights: text().optional(),
  'rights-end': date().optional(),
  'may-be-shown': z.enum(['yes', 'no', 'not yet asked']).optional(),
  'agreed-with': text().optional(),
  registration: z
    .enum(['similarity', 'affine', 'projective'])
    .optional()
    .describe('how the figure is brought into the frame; by the number of control points where it is missing'),
  'control-points': z.array(z.strictObject({ pixel: pair, mm: pair })).optional(),
  shapes: text().optional().describe('an SVG whose element ids are evidence ids'),
  shows: list(ref()).optional(),
  source: ref('source').optional(),
});
