import type { JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import { formatRange } from '../../src/dates/wording.ts';
import { eventsInOrder } from '../../src/findings/event-order.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import { drawChronology } from '../../src/publish/chronology-drawing.ts';
import { entryPath, reasonPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { ChronologyFigure } from '../drawings/chronology-figure.tsx';
import { Layout } from './layout.tsx';
import { Scroll } from './parts.tsx';
import { isRepeated } from './repeated.ts';

/** The chronology: one drawing, and the same as a table. */
export function ChronologyPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { file } = page;
  const events = eventsInOrder(file);
  return (
    <Layout page={page} title="Chronology" standing="All events of the file in their computed order.">
      <h1>Chronology</h1>
      <p class="lead">
        Each event has a range at each of four grades. A range says no more than the statements of that grade or better
        allow: it is a stretch in which the event lies, not its length. Every range opens its reason.
      </p>
      <figure class="wide drawing">
        <ChronologyFigure drawing={drawChronology(file)} page={page} />
        <figcaption>
          From the outside in: <i>established</i>, an open bar; <i>probable</i>, a tint; <i>possible</i>, a dashed
          outline; <i>conjectural</i>, dots. Arrows: not bounded. A filled bar: certainly under way. Facing brackets:
          bounds that cross, since statements cannot all be right. The years at the right are those on{' '}
          {file.settings.printedGrade} statements, or on the last grade at which nothing is in dispute. Reference dates
          mark the order of dates only; they do not say that an act was lawful or unlawful.
        </figcaption>
      </figure>
      <Scroll label="Chronology as a table">
        <table class="chronology-table">
          <caption>The same as a table: from the earliest beginning to the latest end</caption>
          <thead>
            <tr>
              <th scope="col">Event</th>
              {GRADES.map((grade) => (
                <th scope="col">{grade}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {events.map((event) => (
              <tr>
                <th scope="row">
                  <a href={page.href(entryPath(event.id))}>{titleOf(event, file.settings.languages)}</a>
                </th>
                {GRADES.map((grade, rank) => {
                  const start = file.statements.moments.momentOf(event.id, 'start');
                  const end = file.statements.moments.momentOf(event.id, 'end');
                  const from = start ? file.rangesOf(start)[rank] : undefined;
                  const to = end ? file.rangesOf(end)[rank] : undefined;
                  return (
                    <td class={isRepeated(page, event, rank) ? 'same' : undefined}>
                      <span class="cell-label">{grade} </span>
                      <a href={page.href(`${reasonPath(event.id)}#start-${grade}`)}>
                        {formatRange(from?.earliest ?? null, to?.latest ?? null)}
                      </a>
                      {from?.consistent && to?.consistent ? null : <span class="disputed"> disputed</span>}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p>
        <a href={page.href('data/dates.json')}>The same for machines</a> (kerfmark-dates/1).
      </p>
    </Layout>
  );
}
