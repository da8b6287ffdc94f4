import path from 'node:path';
import * as z from 'zod';
import { named, phrase } from '../base/said.ts';
import { findRingFault } from '../geometry/ring.ts';
import { formatShape, LEAST_SHAPE_POINTS } from '../geometry/shape-text.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { EVIDENCE_KINDS } from '../model/types/evidence.ts';
import { addShape } from '../reading/add-shape.ts';
import { readWorkspace } from '../reading/reading.ts';
import { entryText, freeId, writeNew } from './entry-files.ts';
import { Fault } from './fault.ts';
import { loadWorkspace } from './load-workspace.ts';
import { replaceText } from './replace-text.ts';

/** What the tracing page sends: a shape in pixels of a figure, for a trace that is there or for a new one. */
const message = z.strictObject({
  figure: z.string(),
  kind: z.enum(['point', 'line', 'area', 'arc']),
  points: z
    .array(z.tuple([z.number(), z.number()]))
    .min(1)
    .max(5000),
  error: z.number().positive().max(1000),
  into: z.union([
    z.strictObject({ entry: z.string() }),
    z.strictObject({ title: z.string().trim().min(1).max(200), is: z.enum(EVIDENCE_KINDS) }),
  ]),
});

/** Pixels beyond which no photograph reaches. */
const FARTHEST = 200_000;

/** Where a trace was saved. */
export interface SavedTrace {
  readonly entry: string;
  readonly file: string;
  readonly isNew: boolean;
}

/**
 * Saves a shape: into a new entry, or as one line more in an entry that has no shape yet. Nothing that stands in a file is ever changed;
 * fails with a Fault in words where that cannot be done.
 */
export async function saveTrace(folder: string, sent: unknown): Promise<SavedTrace> {
  const read = message.safeParse(sent);
  if (!read.success) throw new Fault(phrase('The page sent what is no trace. Load the page again, and draw anew.'));
  const { figure: figureId, kind, points, error, into } = read.data;
  const files = await loadWorkspace(folder);
  const { catalogue, leftOut } = readWorkspace(files);
  const figure = catalogue.get(figureId);
  if (!figure || !isOfType(figure, 'figure'))
    throw new Fault(phrase('There is no figure "{0}" in the file now.', figureId));
  const shape = formatShape(kind, points, figureId, error);
  if (shape === '')
    throw new Fault(
      phrase('This kind of shape ({0}) needs {1} points or more.', named(kind), LEAST_SHAPE_POINTS[kind]),
    );
  if (points.some(([x, y]) => Math.abs(x) > FARTHEST || Math.abs(y) > FARTHEST))
    throw new Fault(phrase('A point lies far outside of the photograph. Draw it anew.'));
  if (kind === 'area' && findRingFault(points)?.kind === 'crossing')
    throw new Fault(
      phrase(
        'The sides of this area cross, so it cannot be measured. Take points away until they do not, and save again.',
      ),
    );
  if ('entry' in into) {
    const trace = catalogue.get(into.entry);
    if (!trace || !isOfType(trace, 'evidence'))
      throw new Fault(phrase('There is no trace "{0}" in the file now.', into.entry));
    if (trace.keys.object !== figure.keys.object || trace.keys.panel !== figure.keys.panel)
      throw new Fault(phrase('{0} is a trace of another panel than the one in this photograph.', trace.id));
    if (trace.keys.shape !== undefined)
      throw new Fault(
        phrase(
          '{0} has a shape already, in its entry or in a drawing, and is left as it is. Take that out first, or make a new trace.',
          trace.id,
        ),
      );
    return addToEntry(folder, trace, files.entries.find((one) => one.file === trace.file)?.text, shape);
  }
  const taken = new Set([...catalogue.entries.map((entry) => entry.id), ...leftOut].map((id) => id.toLowerCase()));
  const id = freeId('evidence', into.title, taken);
  const values = keysFrom(figure, into.title, into.is);
  const file = await writeNew(folder, 'evidence', id, withShape(entryText('evidence', id, values, null), shape));
  return { entry: id, file: path.relative(folder, file), isNew: true };
}

async function addToEntry(
  folder: string,
  trace: Entry<'evidence'>,
  text: string | undefined,
  shape: string,
): Promise<SavedTrace> {
  if (text === undefined)
    throw new Fault(
      phrase('{0} stands in the table {1}. Copy the line into its column "shape" yourself.', trace.id, trace.file),
    );
  const longer = addShape({ file: trace.file, text }, shape);
  if (longer === null)
    throw new Fault(
      phrase(
        '{0} has a shape already, and it is left as it is. Take it out of {1} first, or make a new trace.',
        trace.id,
        trace.file,
      ),
    );
  if (!(await replaceText(path.join(folder, trace.file), text, longer)))
    throw new Fault(phrase('{0} was changed meanwhile, and is left as it is. Try again.', trace.file));
  return { entry: trace.id, file: trace.file, isNew: false };
}

function keysFrom(figure: Entry<'figure'>, title: string, kind: string): Record<string, string> {
  const { object, panel, face, technique } = figure.keys;
  return {
    title,
    kind,
    ...(object ? { object } : {}),
    ...(panel ? { panel } : {}),
    face: face ?? 'front',
    ...(technique && technique !== 'drawing' ? { 'seen-under': technique } : {}),
  };
}

/** The shape in the place of its commented line. */
function withShape(text: string, shape: string): string {
  return text.replace(/^# shape:.*$/m, () => shape);
}
