import type { JSX } from 'preact';
import { eventsInOrder } from '../../src/findings/event-order.ts';
import { layOutRuling } from '../../src/publish/chronology-drawing.ts';
import { drawnEvents, drawnReferences } from '../../src/publish/chronology-rows.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { ChronologyFigure } from '../drawings/chronology-figure.tsx';
import { EventTable } from './event-table.tsx';
import { Layout } from './layout.tsx';

/** The chronology: one drawing, and the same as a table. */
export function ChronologyPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { file } = page;
  const events = eventsInOrder(file);
  const drawn = drawnEvents(file);
  return (
    <Layout page={page} title="Chronology" standing="All events of the file in their computed order.">
      <h1>Chronology</h1>
      <p class="lead">
        Each event has a range at each of four grades. A range says no more than the statements of that grade or better
        allow: it is a stretch in which the event lies, not its length. Every range opens its reason. What would change
        without some statement can be tried under <a href={page.href('trial.html')}>Withdraw and see</a>.
      </p>
      <figure class="wide drawing">
        <ChronologyFigure
          events={drawn}
          ruling={layOutRuling(drawn, drawnReferences(file))}
          printedGrade={file.settings.printedGrade}
          hrefOf={(id) => page.href(reasonPath(id))}
        />
        <figcaption>
          From the outside in: <i>established</i>, an open bar; <i>probable</i>, a tint; <i>possible</i>, a dashed
          outline; <i>conjectural</i>, dots. Arrows: not bounded. A filled bar: certainly under way. Facing brackets:
          bounds that cross, since statements cannot all be right. The years at the right are those on{' '}
          {file.settings.printedGrade} statements, or on the last grade at which nothing is in dispute. Reference dates
          mark the order of dates only; they do not say that an act was lawful or unlawful.
        </figcaption>
      </figure>
      <EventTable
        page={page}
        events={events}
        label="Chronology as a table"
        caption="The same as a table: from the earliest beginning to the latest end"
      />
      <p>
        <a href={page.href('data/dates.json')}>The same for machines</a> (kerfmark-dates/1).
      </p>
    </Layout>
  );
}
