import type { JSX } from 'preact';
import { GRADES, type Grade } from '../../src/base/grade.ts';
import { phrase, type Said } from '../../src/base/said.ts';
import { chosenReferences, citedFor } from '../../src/findings/reference-dates.ts';
import { testReferences } from '../../src/findings/reference-tests.ts';
import { citationOf } from '../../src/model/row-citation.ts';
import cautions from '../../src/reference/cautions.json' with { type: 'json' };
import densities from '../../src/reference/densities.json' with { type: 'json' };
import { DATED_MATERIALS } from '../../src/statements/dated-material.ts';
import type { PageContext } from '../context.ts';
import { colon, said, say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { EntryLink, GradeMark, Joined, Scroll } from './parts.tsx';
import { Prose } from './prose.tsx';

const USUAL_WORDS: Readonly<Record<Grade, Said>> = {
  established: phrase(
    'no reasonable doubt remains: a dated first-hand document of accepted authenticity, or what the layers show beyond dispute',
  ),
  probable: phrase('good evidence speaks for it and nothing known speaks against it'),
  possible: phrase('some evidence speaks for it; another explanation would do as well'),
  conjectural: phrase('put forward as an idea to be tested'),
};

/** What the words, marks and numbers of this site mean. */
export function MethodPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { file } = page;
  const keys = file.catalogue.workspace?.keys;
  return (
    <Layout
      page={page}
      title={words('Method')}
      standing={words('What the words, marks and numbers of this site mean.')}
    >
      <h1>{say('Method')}</h1>
      <Prose
        name="method"
        values={{ circa: circaWords(keys?.circa ?? {}), sunset: String(file.settings.dates.sunsetDays) }}
        slots={{
          grades: () => <GradeWords own={keys?.['grade-words'] ?? {}} />,
          references: () => <References page={page} />,
          materials: () => <Materials />,
          densities: () => <Densities />,
          cautions: () => <Cautions />,
          version: () => <Version page={page} />,
        }}
      />
    </Layout>
  );
}

/** How wide “about” is in this file, by what is dated. */
function circaWords(circa: Readonly<Record<string, number | undefined>>): string {
  const widths = Object.entries(circa).map(([unit, width]) =>
    words(
      '{1, select, year {{0} years for a year} decade {{0} years for a decade} century {{0} years for a century} month {{0} months for a month} other {{0} days for a day}}',
      width,
      unit,
    ),
  );
  return widths.length === 0 ? words('nothing is declared, so such dates are refused') : widths.join(', ');
}

function GradeWords({ own }: { readonly own: Readonly<Partial<Record<Grade, string>>> }): JSX.Element {
  return (
    <dl class="facts">
      {GRADES.map((grade) => (
        <>
          <dt>
            {term(grade)} <GradeMark grade={grade} />
          </dt>
          <dd>{own[grade] ?? said(USUAL_WORDS[grade])}</dd>
        </>
      ))}
    </dl>
  );
}

function References({ page }: { readonly page: PageContext }): JSX.Element {
  const { catalogue } = page.file;
  const references = chosenReferences(catalogue).filter((one) => !one.adoption);
  const outside = testReferences(page.file).filter((one) => one.outside.length > 0);
  const declined = (catalogue.workspace?.keys['reference-dates'] ?? []).filter((one) => typeof one !== 'string');
  return (
    <>
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
                <th scope="col">{say('How sure')}</th>
              </tr>
            </thead>
            <tbody>
              {references.map((one) => (
                <tr>
                  <th scope="row">{said(one.title)}</th>
                  <td>
                    {one.madeOnly ? words('made {0}; in force: not in the table', one.row.made) : one.row.inForceFrom}
                    {one.row.inForceTo === '' ? '' : words(' to {0}', one.row.inForceTo)}
                  </td>
                  <td>{one.row.tests.split(/;\s*/).map(term).join(', ')}</td>
                  <td>{said(citedFor(one))}</td>
                  <td>{term(one.row.howSure)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      <p>
        {say(
          'A date is tested on an act where the act’s place lay, on every day that is possible, under the power that made it: a removal where it was done, an export where the piece left, an import where it arrived, a purchase or gift where it was made, a holding where it lay. Where that is not settled (a row of a part of a land, a land that came under a power after its law was made, an occupation), a person may write why it applies; else the answer is “undetermined”.',
        )}
      </p>
      {outside.length === 0 ? null : (
        <>
          <p>{say('Acts left out, since their place lay under another power:')}</p>
          <ul>
            {outside.map((one) => (
              <li>
                {said(one.reference.title)}
                {colon()}
                <Joined items={one.outside.map((event) => <EntryLink page={page} id={event.id} />)} />
              </li>
            ))}
          </ul>
        </>
      )}
      {declined.length === 0 ? null : (
        <>
          <p>{say('Declined:')}</p>
          <ul>
            {declined.map((one) => (
              <li>
                {one.id}
                {colon()}
                {one.declined}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function Materials(): JSX.Element {
  return (
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
              <th scope="col">{say('How sure')}</th>
            </tr>
          </thead>
          <tbody>
            {DATED_MATERIALS.map((row) => (
              <tr>
                <th scope="row">{row.material}</th>
                <td>{row.firstKnownText}</td>
                <td>{row.firstCommercialText}</td>
                <td>{term(row.needs)}</td>
                <td>{row.naturalOrAncient ? words('yes') : words('no')}</td>
                <td>{said(citationOf(row))}</td>
                <td>{term(row.howSure)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}

function Densities(): JSX.Element {
  return (
    <Scroll label={words('Densities')}>
      <table>
        <thead>
          <tr>
            <th scope="col">{say('Material')}</th>
            <th scope="col">{say('kg/m³')}</th>
            <th scope="col">{say('Source')}</th>
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
              <td>{said(citationOf(row))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Cautions(): JSX.Element {
  return (
    <ul>
      {cautions.map((one) => (
        <li>
          <strong>{say('{0}:', term(one.subject))}</strong> {term(one.text)}{' '}
          <span class="aside">({said(citationOf(one))})</span>
        </li>
      ))}
    </ul>
  );
}

function Version({ page }: { readonly page: PageContext }): JSX.Element {
  const { file } = page;
  return (
    <p>
      {say('Kerfmark {0}; built on {1} for the audience {2}.', page.version, page.built, term(file.catalogue.audience))}
    </p>
  );
}
