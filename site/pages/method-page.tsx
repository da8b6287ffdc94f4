import type { JSX } from 'preact';
import { GRADES, type Grade } from '../../src/base/grade.ts';
import { chosenReferences } from '../../src/findings/reference-dates.ts';
import cautions from '../../src/reference/cautions.json' with { type: 'json' };
import densities from '../../src/reference/densities.json' with { type: 'json' };
import { DATED_MATERIALS } from '../../src/statements/dated-material.ts';
import type { PageContext } from '../context.ts';
import { say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { GradeMark, Scroll } from './parts.tsx';

const USUAL_WORDS: Readonly<Record<Grade, string>> = {
  established:
    'no reasonable doubt remains: a dated first-hand document of accepted authenticity, or what the layers show beyond dispute',
  probable: 'good evidence speaks for it and nothing known speaks against it',
  possible: 'some evidence speaks for it; another explanation would do as well',
  conjectural: 'put forward as an idea to be tested',
};

/** What the words, marks and numbers of this site mean. */
export function MethodPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { file } = page;
  const keys = file.catalogue.workspace?.keys;
  const circa = keys?.circa ?? {};
  const references = chosenReferences(file.catalogue).filter((one) => !one.adoption);
  const declined = (keys?.['reference-dates'] ?? []).filter((one) => typeof one !== 'string');
  return (
    <Layout
      page={page}
      title={words('Method')}
      standing={words('What the words, marks and numbers of this site mean.')}
    >
      <h1>{say('Method')}</h1>
      <h2 id="grades">{say('Grades')}</h2>
      <p>
        {say(
          'A grade is set by a person, with a reason. Grades are an order only; they are never averaged, multiplied or turned into per cent.',
        )}
      </p>
      <dl class="facts">
        {GRADES.map((grade) => (
          <>
            <dt>
              {term(grade)} <GradeMark grade={grade} />
            </dt>
            <dd>{keys?.['grade-words']?.[grade] ?? USUAL_WORDS[grade]}</dd>
          </>
        ))}
      </dl>
      <p>
        {say(
          'A question mark in a date lowers its statement by one grade. A source of questioned authenticity lets nothing count as better than possible; statements of a source shown to be false are not used. That a source was told or copied lowers no grade by itself.',
        )}
      </p>
      <h2 id="ranges">{say('Ranges')}</h2>
      <p>
        {say(
          'Each event has a beginning and an end, each trace one moment. Every statement bounds one or more of these, by days. At each grade the tightest bounds are computed from the statements of that grade or better that are not in dispute, together with those that a better grade already held. So a range never rests on a claim in dispute, and further grades only narrow it. “Nothing ends before it starts” always holds.',
        )}
      </p>
      <p>
        {say(
          'A reason is a chain of statements. Among several chains that give the same bound, the one with the fewest statements is told. Method: simple temporal constraints, Dechter, Meiri and Pearl, {0} 49 (1991).',
          <cite>{say('Artificial Intelligence')}</cite>,
        )}
      </p>
      <p>{say('No date is printed finer than the coarsest date that it rests on; all computing is done in days.')}</p>
      <h2 id="circa">{say('About (circa)')}</h2>
      <p>
        {say(
          'No standard says how wide “about” is. This file counts, either side: {0}{1}. Ten years either side of a year is what the Object ID guide suggests.',
          Object.entries(circa).map(([unit, width], i) => (
            <>
              {i > 0 ? ', ' : ''}
              {unit === 'month' || unit === 'day'
                ? words('{0} {1}s for a {2}', width, unit, unit)
                : words('{0} years for a {1}', width, unit)}
            </>
          )),
          Object.keys(circa).length === 0 ? words('nothing is declared, so such dates are refused') : '',
        )}
      </p>
      <h2 id="calendars">{say('Calendars')}</h2>
      <p>
        {say(
          'Dates are written in the calendar of their document and converted by the program; both are shown. Days of the Islamic and Hebrew calendars begin at sunset, and Islamic months by sighting, so they are widened by {0} day either side. Greece used the Julian calendar until 15 February 1923.',
          file.settings.dates.sunsetDays,
        )}
      </p>
      <h2 id="references">{say('Reference dates')}</h2>
      <p class="caution">{term(cautions.find((one) => one.subject === 'legal')?.text ?? '')}</p>
      {references.length === 0 ? (
        <p>{say('None were chosen for this file.')}</p>
      ) : (
        <Scroll label={words('Reference dates')}>
          <table>
            <caption>{say('Chosen for this file; order of dates only')}</caption>
            <thead>
              <tr>
                <th scope="col">{say('Date')}</th>
                <th scope="col">{say('In force')}</th>
                <th scope="col">{say('Tested on')}</th>
                <th scope="col">{say('Source')}</th>
                <th scope="col">{say('Standing')}</th>
                <th scope="col">{say('How sure')}</th>
              </tr>
            </thead>
            <tbody>
              {references.map(({ row, title, madeOnly }) => (
                <tr>
                  <th scope="row">{title}</th>
                  <td>
                    {madeOnly ? words('made {0}; in force: not in the table', row.made) : row.inForceFrom}
                    {row.inForceTo === '' ? '' : words(' to {0}', row.inForceTo)}
                  </td>
                  <td>{row.tests.replaceAll(';', ', ')}</td>
                  <td>{row.source}</td>
                  <td>{term(row.standing)}</td>
                  <td>{row.howSure}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {declined.length === 0 ? null : (
        <>
          <p>{say('Declined:')}</p>
          <ul>
            {declined.map((one) => (
              <li>
                {one.id}: {one.declined}
              </li>
            ))}
          </ul>
        </>
      )}
      <h2 id="materials">{say('Dated materials')}</h2>
      <p>
        {say(
          'A material that was made with a layer bounds that layer by the first year in which it is known. The table below is a research aid; its grade cap is the worse of standing and certainty.',
        )}
      </p>
      <details>
        <summary>{say('The table of dated materials ({0} rows)', DATED_MATERIALS.length)}</summary>
        <Scroll label={words('Dated materials')}>
          <table>
            <caption>{say('First known and first in trade')}</caption>
            <thead>
              <tr>
                <th scope="col">{say('Material')}</th>
                <th scope="col">{say('Known')}</th>
                <th scope="col">{say('In trade')}</th>
                <th scope="col">{say('Needs')}</th>
                <th scope="col">{say('Natural or ancient')}</th>
                <th scope="col">{say('Source')}</th>
                <th scope="col">{say('Standing')}</th>
                <th scope="col">{say('How sure')}</th>
              </tr>
            </thead>
            <tbody>
              {DATED_MATERIALS.map((row) => (
                <tr>
                  <th scope="row">{row.material}</th>
                  <td>{row.firstKnownText}</td>
                  <td>{row.firstCommercialText}</td>
                  <td>{row.needs}</td>
                  <td>{row.naturalOrAncient ? words('yes') : words('no')}</td>
                  <td>{row.source}</td>
                  <td>{term(row.standing)}</td>
                  <td>{row.howSure}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
      <h2 id="densities">{say('Densities')}</h2>
      <p>{say('Under density a trace names one of these materials, or a value of its own with its unit.')}</p>
      <Scroll label={words('Densities')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say('Material')}</th>
              <th scope="col">{say('kg/m³')}</th>
              <th scope="col">{say('Source')}</th>
              <th scope="col">{say('Standing')}</th>
            </tr>
          </thead>
          <tbody>
            {densities.map((row) => (
              <tr>
                <th scope="row">{row.material}</th>
                <td>
                  {row.kgPerM3Min === null
                    ? words('no value: state your own')
                    : words('{0} to {1}', row.kgPerM3Min, row.kgPerM3Max)}
                </td>
                <td>{row.source}</td>
                <td>{term(row.standing)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <h2 id="cautions">{say('Cautions')}</h2>
      <ul>
        {cautions.map((one) => (
          <li>
            <strong>{say('{0}:', term(one.subject))}</strong> {term(one.text)}{' '}
            <span class="aside">
              ({one.source}; {term(one.standing)}, {term(one.howSure)})
            </span>
          </li>
        ))}
      </ul>
      <h2 id="version">{say('Version')}</h2>
      <p>
        {say(
          'Kerfmark {0}; built on {1} for the audience {2}.',
          page.version,
          page.built,
          term(file.catalogue.audience),
        )}
      </p>
    </Layout>
  );
}
