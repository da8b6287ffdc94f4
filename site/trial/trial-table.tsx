import type { JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import { sayRange } from '../../src/findings/printed-range.ts';
import type { TrialFile, TrialResult, TrialRow } from '../../src/findings/run-trial.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import { Still } from '../drawings/still.ts';

interface Props {
  readonly file: TrialFile;
  readonly standing: TrialResult;
  readonly result: TrialResult;
}

/** The trial as a table: events always, holdings and traces only where they change; what a cell was beside what it is. */
export function TrialTable({ file, standing, result }: Props): JSX.Element {
  const rows = result.rows.map((row, i) => ({ row, before: standing.rows[i] as TrialRow, entry: file.entries[i] }));
  const [events, others] = [
    rows.filter(({ entry }) => entry?.type === 'event'),
    rows.filter(({ row, before, entry }) => entry?.type !== 'event' && row !== before),
  ];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scroll" tabIndex={0} aria-label="The trial as a table">
      <table class="stacking">
        <caption>
          The same as a table: from the earliest beginning to the latest end; holdings and traces only where they change
        </caption>
        <thead>
          <tr>
            <th scope="col">Event</th>
            {GRADES.map((grade) => (
              <th scope="col">{grade}</th>
            ))}
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

class TableRow extends Still<{ readonly row: TrialRow; readonly before: TrialRow }> {
  override render({ row, before }: { readonly row: TrialRow; readonly before: TrialRow }): JSX.Element {
    return (
      <tr>
        <th scope="row">
          <a href={reasonPath(row.id)}>{row.title}</a>
        </th>
        {GRADES.map((grade, rank) => (
          <td>
            <span class="cell-label">{grade} </span>
            {rangeAt(row, rank)}
            {isConsistentAt(row, rank) ? null : <span class="disputed"> disputed</span>}
            {rangeAt(row, rank) === rangeAt(before, rank) ? null : (
              <span class="was"> it was {rangeAt(before, rank)}</span>
            )}
          </td>
        ))}
      </tr>
    );
  }
}

function rangeAt(row: TrialRow, rank: number): string {
  return sayRange({ earliest: row.starts[rank]?.earliest ?? null, latest: row.ends[rank]?.latest ?? null });
}

function isConsistentAt(row: TrialRow, rank: number): boolean {
  return (row.starts[rank]?.consistent && row.ends[rank]?.consistent) ?? true;
}
