import type { JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import type { DayRange } from '../../src/dates/day.ts';
import { civilOf } from '../../src/dates/day.ts';
import { citedFor, declinedReferences } from '../../src/findings/reference-dates.ts';
import {
  type EventAtReference,
  type HoldingAtReference,
  type ReferenceTest,
  testReferences,
} from '../../src/findings/reference-tests.ts';
import { sayApplied, sayHeld, sayOrder, tellAnswers } from '../../src/findings/reference-words.ts';
import { sayDays } from '../../src/language/date-words.ts';
import cautions from '../../src/reference/cautions.json' with { type: 'json' };
import type { PageContext } from '../context.ts';
import { GradeHeads } from '../drawings/grade-heads.tsx';
import { colon, said, say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { OfferedPart } from './offered-part.tsx';
import { EntryLink, Joined, Scroll, StatementLink } from './parts.tsx';

/** How events and holdings lie to the reference dates that were chosen; the order of dates only. */
export function ReferencesPage({ page }: { readonly page: PageContext }): JSX.Element {
  const tests = testReferences(page.file);
  const declined = declinedReferences(page.file.catalogue);
  return (
    <Layout
      page={page}
      title={words('Reference dates')}
      standing={words('Laws, treaties and periods chosen for this file, and how its events lie to them.')}
    >
      <h1>{say('Reference dates')}</h1>
      <p class="lead">
        {say(
          'The order of dates only; it does not say that an act was lawful or unlawful. Each date is tested on the acts that it speaks of. The {0} gives the source of each.',
          <a href={page.href('method.html#references')}>{say('method')}</a>,
        )}
      </p>
      <p class="caution">{term(cautions.find((one) => one.subject === 'legal')?.text ?? '')}</p>
      {tests.length === 0 ? <p>{say('None were chosen for this file.')}</p> : null}
      {tests.filter(isTested).map((test) => (
        <TestSection page={page} test={test} />
      ))}
      <OfferedPart page={page} />
      {declined.length > 0 ? (
        <section>
          <h2>{say('Looked at and declined')}</h2>
          <ul>
            {declined.map(({ title, why }) => (
              <li>
                {title}
                {colon()}
                {why}.
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </Layout>
  );
}

/** False for a date that speaks of no place where anything of its kind was done: the method page names it. */
function isTested({ events, holdings, outside }: ReferenceTest): boolean {
  return events.length + holdings.length > 0 || outside.length === 0;
}

function TestSection({ page, test }: { readonly page: PageContext; readonly test: ReferenceTest }): JSX.Element {
  const { reference, events, holdings } = test;
  const { from, to, row } = reference;
  const facts = [
    from ? `${reference.madeOnly ? 'made' : words('in force from')} ${sayDayIn(from)}` : '',
    to ? words('to {0}', sayDayIn(to)) : '',
    row.territory,
    words('tested on: {0}', row.tests.replaceAll(';', ', ')),
    words('source: {0}', citedFor(reference)),
  ].filter((part) => part !== '');
  return (
    <section id={`r-${reference.id}`}>
      <h2>{reference.entry ? <EntryLink page={page} id={reference.entry} /> : said(reference.title)}</h2>
      <p class="facts-line">{facts.join(' · ')}</p>
      {row.effect === '' ? null : <p>{row.effect}.</p>}
      {events.length === 0 ? <p>{say('No event of the file is an act that it speaks of.')}</p> : null}
      {events.length > 0 ? (
        <dl class="statement-list">
          {events.map((one) => (
            <EventPart page={page} one={one} />
          ))}
        </dl>
      ) : null}
      {holdings.length > 0 ? (
        <Holders page={page} holdings={holdings} title={said(reference.title)} period={row.kind === 'period'} />
      ) : null}
    </section>
  );
}

/** One day; where it is not known to the day, `some day in 1928`. */
function sayDayIn(days: DayRange): string {
  if (days.first === days.last) return said(sayDays(days, 'day'));
  const [first, last] = [civilOf(days.first), civilOf(days.last)];
  return first.year !== last.year
    ? words('some day {0}', sayDays(days, 'day'))
    : words('some day in {0}', sayDays(days, days.last - days.first > 31 ? 'year' : 'month'));
}

function EventPart({ page, one }: { readonly page: PageContext; readonly one: EventAtReference }): JSX.Element {
  return (
    <>
      <dt>
        <EntryLink page={page} id={one.event.id} />
      </dt>
      <dd>
        <ul class="plain">
          {one.applied ? <li>{said(sayApplied(page.file, one.applied))}.</li> : null}
          {tellAnswers(one.answers).map(({ grades, answer }) => (
            <li>
              <strong>{said(sayOrder(answer.order))}</strong>{' '}
              {grades.length === GRADES.length
                ? words('at every grade')
                : words('on {0} statements', grades.map(term).join(', '))}
              {answer.decides === null ? '' : words('; to be found out: {0}', said(answer.decides))}
              {answer.because.length > 0 ? (
                <>
                  {say(
                    '; rests on {0}',
                    <Joined items={answer.because.map((s) => <StatementLink page={page} statement={s} />)} />,
                  )}
                </>
              ) : null}
              {page.file.inDetail &&
              answer.order === 'undetermined' &&
              answer.decides === null &&
              answer.decidedBy.length === 0
                ? words('; none of the statements that its dates rest on, or that are set aside, would decide it alone')
                : ''}
              {answer.decidedBy.map(({ order, statements }) => (
                <>
                  {say(
                    '; {0}, were {1}{2} established',
                    said(sayOrder(order)),
                    statements.length > 1 ? words('any one of ') : '',
                    <Joined
                      items={statements.map((s) => <StatementLink page={page} statement={s} />)}
                      last={statements.length > 1 ? ' or ' : ' and '}
                    />,
                  )}
                </>
              ))}
              .
            </li>
          ))}
        </ul>
      </dd>
    </>
  );
}

/** Who had it then: throughout or possibly, at each grade. Those who certainly did not are left out. */
function Holders({
  page,
  holdings,
  title,
  period,
}: {
  readonly page: PageContext;
  readonly holdings: readonly HoldingAtReference[];
  readonly title: string;
  readonly period: boolean;
}): JSX.Element {
  const printed = GRADES.indexOf(page.file.settings.printedGrade);
  const shown = holdings.filter(({ answers }) => answers[printed] !== 'not' && answers[printed] !== 'outside');
  return (
    <>
      <h3>{say('In whose hands {0}', period ? words('in that time') : words('on that day'))}</h3>
      {shown.length === 0 ? (
        <p>{say('No record known to this museum.')}</p>
      ) : (
        <Scroll label={words('Holdings at: {0}', title)}>
          <table class="stacking">
            <thead>
              <tr>
                <th scope="col">{say('Holding')}</th>
                <th scope="col">{say('Capacity')}</th>
                <GradeHeads />
              </tr>
            </thead>
            <tbody>
              {shown.map(({ holding, answers }) => (
                <tr>
                  <th scope="row">
                    <EntryLink page={page} id={holding.id} />
                  </th>
                  <td>
                    {term(holding.keys.capacity)}
                    {holding.keys['not-disclosed'] ? words('; known, not disclosed') : ''}
                  </td>
                  {answers.map((held, rank) => (
                    <td class={held === answers[rank - 1] ? 'same' : undefined}>
                      <span class="cell-label">{term(GRADES[rank] ?? '')} </span>
                      {said(sayHeld(held))}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </>
  );
}
