import type { JSX } from 'preact';
import { GRADES, type Grade } from '../../src/base/grade.ts';
import { chosenReferences } from '../../src/findings/reference-dates.ts';
import cautions from '../../src/reference/cautions.json' with { type: 'json' };
import densities from '../../src/reference/densities.json' with { type: 'json' };
import { DATED_MATERIALS } from '../../src/statements/dated-material.ts';
import type { PageContext } from '../context.ts';
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
    <Layout page={page} title="Method" standing="What the words, marks and numbers of this site mean.">
      <h1>Method</h1>
      <h2 id="grades">Grades</h2>
      <p>
        A grade is set by a person, with a reason. Grades are an order only; they are never averaged, multiplied or
        turned into per cent.
      </p>
      <dl class="facts">
        {GRADES.map((grade) => (
          <>
            <dt>
              {grade} <GradeMark grade={grade} />
            </dt>
            <dd>{keys?.['grade-words']?.[grade] ?? USUAL_WORDS[grade]}</dd>
          </>
        ))}
      </dl>
      <p>
        A question mark in a date lowers its statement by one grade. A source of questioned authenticity lets nothing
        count as better than possible; statements of a source shown to be false are not used. That a source was told or
        copied lowers no grade by itself.
      </p>
      <h2 id="ranges">Ranges</h2>
      <p>
        Each event has a beginning and an end, each trace one moment. Every statement bounds one or more of these, by
        days. At each grade the tightest bounds are computed from the statements of that grade or better that are not in
        dispute, together with those that a better grade already held. So a range never rests on a claim in dispute, and
        further grades only narrow it. “Nothing ends before it starts” always holds.
      </p>
      <p>
        A reason is a chain of statements. Among several chains that give the same bound, the one with the fewest
        statements is told. Method: simple temporal constraints, Dechter, Meiri and Pearl,{' '}
        <cite>Artificial Intelligence</cite> 49 (1991).
      </p>
      <p>No date is printed finer than the coarsest date that it rests on; all computing is done in days.</p>
      <h2 id="circa">About (circa)</h2>
      <p>
        No standard says how wide “about” is. This file counts, either side:{' '}
        {Object.entries(circa).map(([unit, width], i) => (
          <>
            {i > 0 ? ', ' : ''}
            {unit === 'month' || unit === 'day' ? `${width} ${unit}s for a ${unit}` : `${width} years for a ${unit}`}
          </>
        ))}
        {Object.keys(circa).length === 0 ? 'nothing is declared, so such dates are refused' : ''}. Ten years either side
        of a year is what the Object ID guide suggests.
      </p>
      <h2 id="calendars">Calendars</h2>
      <p>
        Dates are written in the calendar of their document and converted by the program; both are shown. Days of the
        Islamic and Hebrew calendars begin at sunset, and Islamic months by sighting, so they are widened by{' '}
        {file.settings.dates.sunsetDays} day either side. Greece used the Julian calendar until 15 February 1923.
      </p>
      <h2 id="references">Reference dates</h2>
      <p class="caution">{cautions.find((one) => one.subject === 'legal')?.text}</p>
      {references.length === 0 ? (
        <p>None were chosen for this file.</p>
      ) : (
        <Scroll label="Reference dates">
          <table>
            <caption>Chosen for this file; order of dates only</caption>
            <thead>
              <tr>
                <th scope="col">Date</th>
                <th scope="col">In force</th>
                <th scope="col">Tested on</th>
                <th scope="col">Source</th>
                <th scope="col">Standing</th>
                <th scope="col">How sure</th>
              </tr>
            </thead>
            <tbody>
              {references.map(({ row, title, madeOnly }) => (
                <tr>
                  <th scope="row">{title}</th>
                  <td>
                    {madeOnly ? `made ${row.made}; in force: not in the table` : row.inForceFrom}
                    {row.inForceTo === '' ? '' : ` to ${row.inForceTo}`}
                  </td>
                  <td>{row.tests.replaceAll(';', ', ')}</td>
                  <td>{row.source}</td>
                  <td>{row.standing}</td>
                  <td>{row.howSure}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {declined.length === 0 ? null : (
        <>
          <p>Declined:</p>
          <ul>
            {declined.map((one) => (
              <li>
                {one.id}: {one.declined}
              </li>
            ))}
          </ul>
        </>
      )}
      <h2 id="materials">Dated materials</h2>
      <p>
        A material that was made with a layer bounds that layer by the first year in which it is known. The table below
        is a research aid; its grade cap is the worse of standing and certainty.
      </p>
      <details>
        <summary>The table of dated materials ({DATED_MATERIALS.length} rows)</summary>
        <Scroll label="Dated materials">
          <table>
            <caption>First known and first in trade</caption>
            <thead>
              <tr>
                <th scope="col">Material</th>
                <th scope="col">Known</th>
                <th scope="col">In trade</th>
                <th scope="col">Needs</th>
                <th scope="col">Natural or ancient</th>
                <th scope="col">Source</th>
                <th scope="col">Standing</th>
                <th scope="col">How sure</th>
              </tr>
            </thead>
            <tbody>
              {DATED_MATERIALS.map((row) => (
                <tr>
                  <th scope="row">{row.material}</th>
                  <td>{row.firstKnownText}</td>
                  <td>{row.firstCommercialText}</td>
                  <td>{row.needs}</td>
                  <td>{row.naturalOrAncient ? 'yes' : 'no'}</td>
                  <td>{row.source}</td>
                  <td>{row.standing}</td>
                  <td>{row.howSure}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
      <h2 id="densities">Densities</h2>
      <p>Under density a trace names one of these materials, or a value of its own with its unit.</p>
      <Scroll label="Densities">
        <table>
          <thead>
            <tr>
              <th scope="col">Material</th>
              <th scope="col">kg/m³</th>
              <th scope="col">Source</th>
              <th scope="col">Standing</th>
            </tr>
          </thead>
          <tbody>
            {densities.map((row) => (
              <tr>
                <th scope="row">{row.material}</th>
                <td>
                  {row.kgPerM3Min === null ? 'no value: state your own' : `${row.kgPerM3Min} to ${row.kgPerM3Max}`}
                </td>
                <td>{row.source}</td>
                <td>{row.standing}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <h2 id="cautions">Cautions</h2>
      <ul>
        {cautions.map((one) => (
          <li>
            <strong>{one.subject}:</strong> {one.text}{' '}
            <span class="aside">
              ({one.source}; {one.standing}, {one.howSure})
            </span>
          </li>
        ))}
      </ul>
      <h2 id="version">Version</h2>
      <p>
        Kerfmark {page.version}; built on {page.built} for the audience {file.catalogue.audience}.
      </p>
    </Layout>
  );
}
