import type { JSX } from 'preact';
import { eventsInOrder } from '../../src/findings/event-order.ts';
import { layOutRuling } from '../../src/publish/chronology-drawing.ts';
import { drawnEvents, drawnReferences } from '../../src/publish/chronology-rows.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { ChronologyFigure } from '../drawings/chronology-figure.tsx';
import { say, term, words } from '../say.ts';
import { EventTable } from './event-table.tsx';
import { Layout } from './layout.tsx';

/** The chronology: one drawing, and the same as a table. */
export function ChronologyPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { file } = page;
  const events = eventsInOrder(file);
  const drawn = drawnEvents(file);
  return (
    <Layout page={page} title={words('Chronology')} standing={words('All events of the file in their computed order.')}>
      <h1>{say('Chronology')}</h1>
      <p class="lead">
        {say(
          'Each event has a range at each of four grades. A range says no more than the statements of that grade or better allow: it is a stretch in which the event lies, not its length. Every range opens its reason. What would change without some statement can be tried under {0}.',
          <a href={page.href('trial.html')}>{say('Withdraw and see')}</a>,
        )}
      </p>
      <figure class="wide drawing">
        <ChronologyFigure
          events={drawn}
          ruling={layOutRuling(drawn, drawnReferences(file))}
          printedGrade={file.settings.printedGrade}
          hrefOf={(id) => page.href(reasonPath(id))}
        />
        <figcaption>
          {say(
            'From the outside in: {0}, an open bar; {1}, a tint; {2}, a dashed outline; {3}, dots. Arrows: no limit known. A filled bar: it had begun and had not ended, on statements of that grade. Facing brackets: bounds that cross, since statements cannot all be right. The years at the right are those on {4} statements, or on the last grade at which nothing is in dispute. Reference dates mark the order of dates only; they do not say that an act was lawful or unlawful.',
            <i>{say('established')}</i>,
            <i>{say('probable')}</i>,
            <i>{say('possible')}</i>,
            <i>{say('conjectural')}</i>,
            term(file.settings.printedGrade),
          )}
        </figcaption>
      </figure>
      <EventTable
        page={page}
        events={events}
        label={words('Chronology as a table')}
        caption={words('The same as a table: from the earliest beginning to the latest end')}
      />
      <p>{say('{0} (kerfmark-dates/1).', <a href={page.href('data/dates.json')}>{say('Download the data')}</a>)}</p>
    </Layout>
  );
}
