import type { Access } from '../base/access.ts';
import { nearest } from '../base/nearest.ts';
import { phrase } from '../base/said.ts';
import { restingOnAlone } from '../findings/independence.ts';
import type { Language } from '../language/language.ts';
import { type Computed, compute } from '../pipeline.ts';
import type { WorkspaceFiles } from '../reading/reading.ts';
import type { Options } from './commands.ts';
import { Fault } from './fault.ts';
import { Session } from './session.ts';

/**
 * Computes a workspace without what is named after --without: statements, or sources, which stand
 * for every statement that goes back to them alone. Computed anew from the start.
 */
export function computeTrial(files: WorkspaceFiles, audience: Access, options: Options, spoken: Language): Computed {
  const taken = namesAfter(options.flags.without);
  const session = new Session();
  const standing = compute(files, audience, { session, spoken });
  if (taken.length === 0) return standing;
  const { file } = standing;
  const withdrawn = taken.flatMap((id) => {
    if (file.catalogue.get(id)?.type !== 'source') return [id];
    const resting = restingOnAlone(file.catalogue, file.statements.used, id).map((one) => one.id);
    if (resting.length === 0)
      throw new Fault(phrase('No statement in the computation rests on {0}, so nothing would change.', id));
    return resting;
  });
  const known = file.statements.used.map((one) => one.id);
  const unknown = withdrawn.filter((id) => !known.includes(id));
  if (unknown.length > 0) {
    const near = [...new Set(unknown.flatMap((id) => nearest(id, known)))];
    throw new Fault(
      phrase(
        'There is no statement {0} for this audience.{1} "kerfmark dates --json" lists the statements.',
        unknown.join(', '),
        near.length > 0 ? phrase(' Did you mean {0}?', near.join(', ')) : '',
      ),
    );
  }
  return compute(files, audience, { withdrawn, session, spoken });
}

function namesAfter(flag: string | boolean | undefined): readonly string[] {
  if (typeof flag !== 'string') return [];
  return flag
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
}
