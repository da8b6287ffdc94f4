import type { JSX } from 'preact';
import type { Diagnostic } from '../../src/base/diagnostic.ts';
import { groupBy } from '../../src/base/group-by.ts';
import { oncePer } from '../../src/base/once.ts';
import { capital } from '../../src/base/said.ts';
import { ID_SHAPE } from '../../src/model/fields.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { said, say, term, words } from '../say.ts';
import { Scroll } from './parts.tsx';

/** Lines shown above and below the one that a problem is on. */
const AROUND = 2;

/** The problems of one entry with the lines of its file and the mend; in a preview, for who writes. */
export function ProblemsOfEntry({ page, id }: { readonly page: PageContext; readonly id: string }): JSX.Element | null {
  const excerpts = page.excerpts;
  const problems = excerpts === null ? [] : (byEntry(page.problems).get(id) ?? []);
  if (problems.length === 0) return null;
  return (
    <aside class="banner" aria-label={words('Problems in this entry')}>
      <p>
        {say(
          '{0} The page is built again as soon as you save the file.',
          <strong>{say('To mend in this entry.')}</strong>,
        )}
      </p>
      {problems.map((one, i) => (
        <OneProblem page={page} problem={one} number={i + 1} />
      ))}
    </aside>
  );
}

const byEntry = oncePer((problems: readonly Diagnostic[]) => groupBy(problems, entryOf));

/** The entry of a problem; by the name of its file where the entry could not be read. */
function entryOf({ entry, place }: Diagnostic): string | undefined {
  return entry ?? /([^/]+)\.md$/.exec(place.file)?.[1];
}

/** To the page that shows the lines of the file beside the mend; in previews. */
export function LinkToLines({
  page,
  problem,
}: {
  readonly page: PageContext;
  readonly problem: Diagnostic;
}): JSX.Element | null {
  const id = entryOf(problem);
  if (page.excerpts === null || id === undefined) return null;
  const hasPage = (page.leftOut.includes(id) && ID_SHAPE.test(id)) || page.file.catalogue.get(id) !== undefined;
  return hasPage ? <a href={page.href(entryPath(id))}>{say('Show the lines')}</a> : null;
}

function OneProblem({
  page,
  problem,
  number,
}: {
  readonly page: PageContext;
  readonly problem: Diagnostic;
  readonly number: number;
}): JSX.Element {
  const { file, line, column } = problem.place;
  const lines = page.excerpts?.get(file) ?? [];
  const first = Math.max(1, line - AROUND);
  const words = problem.message;
  return (
    <div class="problem">
      <p>
        <span class="severity">{term(problem.severity)}</span>{' '}
        <code>
          {file}:{line}:{column}
        </code>{' '}
        {said(capital(words))}.
      </p>
      {lines.length === 0 ? null : (
        <Scroll label={`${number}. ${file}:${line}`}>
          <ol class="excerpt" start={first}>
            {lines.slice(first - 1, line + AROUND).map((text, i) => (
              <li class={first + i === line ? 'here' : undefined}>
                <code>{text === '' ? ' ' : text}</code>
              </li>
            ))}
          </ol>
        </Scroll>
      )}
      <p>
        <em>{say('Mend:')}</em> {said(problem.mend)}.{' '}
        <span class="aside">{say('More: “kerfmark explain {0}”.', problem.code)}</span>
      </p>
    </div>
  );
}
