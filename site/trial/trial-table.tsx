import type { JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import { fromTo, sayRange } from '../../src/findings/printed-range.ts';
import { type EntryRanges, rangeChanges } from '../../src/findings/range-changes.ts';
import type { TrialFile, TrialResult } from '../../src/findings/run-trial.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import { GradeHeads } from '../drawings/grade-heads.tsx';
import { Still } from '../drawings/still.ts';
import { said, say, semicolon, term, words } from '../say.ts';

interface Props {
  readonly file: TrialFile;
  readonly standing: TrialResult;
  readonly result: TrialResult;
}

/** The trial as a table: events always, holdings and traces only where they change; what a cell was beside what it is. */
export function TrialTable({ file, standing, result }: Props): JSX.Element {
  const rows = result.rows.map((row, i) => ({ row, before: standing.rows[i] as EntryRanges, entry: file.entries[i] }));
  const [events, others] = [
    rows.filter(({ entry }) => entry?.type === 'event'),
    rows.filter(({ row, before, entry }) => entry?.type !== 'event' && row !== before),
  ];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scroll" tabIndex={0} aria-label={words('The trial as a table')}>
      <table class="stacking">
        <caption>
          {say(
            'The same as a table: from the earliest beginning to the latest end; holdings and traces only where they change',
          )}
        </caption>
        <thead>
          <tr>
            <th scope="col">{say('Event')}</th>
            <GradeHeads />
          </tr>
        </thead>
        <tbody>
          {[...events, ...others].map(({ row, before }) => (
            <TableRow key={row.id} row={row} before={before} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface RowProps {
  readonly row: EntryRanges;
  readonly before: EntryRanges;
}

/** A row says what it was by the same comparison as the list of changes. */
class TableRow extends Still<RowProps> {
  override render({ row, before }: RowProps): JSX.Element {
    const changes = row === before ? [] : rangeChanges(before, row);
    return (
      <tr>
        <th scope="row">
          <a href={reasonPath(row.id)}>{row.title}</a>
        </th>
        {GRADES.map((grade, rank) => (
          <td>
            <span class="cell-label">{term(grade)} </span>
            {said(sayRange(fromTo(row.starts[rank], row.ends[rank])))}
            {isConsistentAt(row, rank) ? null : <span class="disputed"> {say('statements disagree')}</span>}
            {changes
              .filter((one) => one.grades.includes(grade))
              .map((one) => (
                <span class="was">
                  {' '}
                  {say(
                    '{0}it was {1}',
                    one.of === 'whole' ? '' : `${one.of} ${said(one.is)}${semicolon()}`,
                    said(one.was),
                  )}
                </span>
              ))}
          </td>
        ))}
      </tr>
    );
  }
}

function isConsistentAt(row: EntryRanges, rank: number): boolean {
  return (row.starts[rank]?.consistent && row.ends[rank]?.consistent) ?? true;
}
