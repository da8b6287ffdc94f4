import type { JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import { fromTo, type MomentRange, sayRange } from '../../src/findings/printed-range.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath, reasonPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { GradeHeads } from '../drawings/grade-heads.tsx';
import { said, say, term } from '../say.ts';
import { Scroll } from './parts.tsx';

interface EventTableProps {
  readonly page: PageContext;
  readonly events: readonly Entry<'event'>[];
  readonly label: string;
  readonly caption: string;
}

/** Events in rows, grades in columns: from the earliest beginning to the latest end; each opens its reason. */
export function EventTable({ page, events, label, caption }: EventTableProps): JSX.Element {
  return (
    <Scroll label={label}>
      <table class="stacking">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{say('Event')}</th>
            <GradeHeads />
          </tr>
        </thead>
        <tbody>
          {events.map((event) => (
            <tr>
              <th scope="row">
                <a href={page.href(entryPath(event.id))}>{titleOf(event, page.file.settings.languages)}</a>
              </th>
              {GRADES.map((_, rank) => (
                <EventCell page={page} event={event} rank={rank} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function EventCell({
  page,
  event,
  rank,
}: {
  readonly page: PageContext;
  readonly event: Entry<'event'>;
  readonly rank: number;
}): JSX.Element {
  const [starts = [], ends = []] = eventRanges(page, event);
  const [start, end] = [starts[rank], ends[rank]];
  const isRepeated = rank > 0 && saysTheSame(start, starts[rank - 1]) && saysTheSame(end, ends[rank - 1]);
  return (
    <td class={isRepeated ? 'same' : undefined}>
      <span class="cell-label">{term(GRADES[rank] ?? '')} </span>
      <a href={page.href(`${reasonPath(event.id)}#start-${GRADES[rank]}`)}>{said(sayRange(fromTo(start, end)))}</a>
      {start?.consistent && end?.consistent ? null : <span class="disputed"> {say('statements disagree')}</span>}
    </td>
  );
}

/** Ranges of an event's beginning and of its end, at the four grades. */
export function eventRanges(page: PageContext, event: Entry<'event'>): readonly (readonly MomentRange[])[] {
  return (['start', 'end'] as const).map((edge) => {
    const moment = page.file.statements.moments.momentOf(event.id, edge);
    return moment ? page.file.rangesOf(moment) : [];
  });
}

/** True where a range says nothing that the better grade did not say. */
function saysTheSame(here: MomentRange | undefined, better: MomentRange | undefined): boolean {
  return (
    here?.earliest?.day === better?.earliest?.day &&
    here?.latest?.day === better?.latest?.day &&
    here?.consistent === better?.consistent
  );
}
