import type { JSX } from 'preact';
import { rankOf } from '../../src/base/grade.ts';
import { capital } from '../../src/base/said.ts';
import { explainBound, sayMoment } from '../../src/findings/explain.ts';
import { type MomentRange, sayRange } from '../../src/findings/printed-range.ts';
import { sayDateOf, sayDays } from '../../src/language/date-words.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { Moment } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { colon, said, say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { RangeTable, StatementLink, StatementList } from './parts.tsx';
import { ReasonSupport } from './reason-support.tsx';

/** Why the dates of an entry are what they are: a numbered argument for each bound at each grade. */
export function ReasonPage({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element {
  const { file } = page;
  const title = titleOf(entry, file.settings.languages);
  const moments = file.statements.moments.ofEntry(entry.id);
  const contradictions = file.contradictions.filter((one) => one.moments.some((moment) => moment.entry === entry.id));
  return (
    <Layout
      page={page}
      title={words('Why: {0}', title)}
      standing={
        <>
          {say(
            'Reasons for the dates of {0}, {1}.',
            <a href={page.href(entryPath(entry.id))}>{title}</a>,
            term(entry.type),
          )}
        </>
      }
    >
      <h1>{say('Why these dates: {0}', title)}</h1>
      <RangeTable page={page} entry={entry} caption={words('Ranges, on statements of each grade or better')} />
      {contradictions.length > 0 ? (
        <section>
          <h2>{say('Statements that cannot all be right')}</h2>
          <p>
            {say(
              'The ranges above rest only on statements that are not in dispute at their grade, or that a better grade already held.',
            )}
          </p>
          <ul>
            {contradictions.map((one) => (
              <li>
                <a href={page.href(`contradictions.html#c-${one.number}`)}>{say('Contradiction {0}', one.number)}</a>
                {colon()}
                {one.statements.map((s, i) => (
                  <>
                    {i > 0 ? ', ' : ''}
                    <StatementLink page={page} statement={s} />
                  </>
                ))}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {moments.map((moment) => (
        <section>
          <h2>{said(capital(sayMoment(file, moment)))}</h2>
          {distinctRanges(file.rangesOf(moment)).map(({ range, grades }, i, all) => (
            <GradeReason page={page} moment={moment} range={range} grades={grades} before={all[i - 1]?.range ?? null} />
          ))}
        </section>
      ))}
    </Layout>
  );
}

/** Grades whose range and reasons are the same are told once. */
function distinctRanges(
  ranges: readonly MomentRange[],
): readonly { readonly range: MomentRange; readonly grades: readonly MomentRange[] }[] {
  const groups: { range: MomentRange; grades: MomentRange[] }[] = [];
  for (const range of ranges) {
    const last = groups.at(-1);
    const same =
      last &&
      last.range.earliest?.day === range.earliest?.day &&
      last.range.latest?.day === range.latest?.day &&
      last.range.consistent === range.consistent &&
      last.range.setAside.length === range.setAside.length;
    if (same) last.grades.push(range);
    else groups.push({ range, grades: [range] });
  }
  return groups;
}

interface GradeReasonProps {
  readonly page: PageContext;
  readonly moment: Moment;
  readonly range: MomentRange;
  readonly grades: readonly MomentRange[];
  /** The range told before this one, on better grades. */
  readonly before: MomentRange | null;
}

function GradeReason({ page, moment, range, grades, before }: GradeReasonProps): JSX.Element {
  const same =
    before !== null && before.earliest?.day === range.earliest?.day && before.latest?.day === range.latest?.day;
  return (
    <div class="grade-reason">
      <h3>
        {grades.map((one, i) => (
          <span id={`${moment.edge}-${one.grade}`}>
            {i > 0 ? ', ' : ''}
            {term(one.grade)}
          </span>
        ))}
        {colon()}
        {said(sayRange(range))}
      </h3>
      {same ? (
        <p>{say('The same bounds, for the same reasons as before.')}</p>
      ) : (
        <>
          <Side page={page} moment={moment} range={range} side="earliest" />
          <Side page={page} moment={moment} range={range} side="latest" />
        </>
      )}
      {range.alternatives.length > 1 ? (
        <p>
          {say(
            'A date with gaps leaves separate stretches: {0}. Every day in them is possible for this moment alone, not for all moments together.',
            range.alternatives
              .map((one) => said(sayDays({ first: one.earliest, last: one.latest }, 'day')))
              .reduce((before, one) => words('{0}; or {1}', before, one)),
          )}
        </p>
      ) : null}
      {range.exact ? null : (
        <p>{say('There were too many combinations to try; the range is wider than it might be, never wrong.')}</p>
      )}
      {range.setAside.length > 0 ? (
        <div>
          <p>{say('Set aside at this grade, since in dispute; each alone would narrow or contradict this date:')}</p>
          <StatementList page={page} statements={range.setAside} />
        </div>
      ) : null}
    </div>
  );
}

function Side({
  page,
  moment,
  range,
  side,
}: {
  readonly page: PageContext;
  readonly moment: Moment;
  readonly range: MomentRange;
  readonly side: 'earliest' | 'latest';
}): JSX.Element {
  const bound = range[side];
  const head = side === 'earliest' ? words('Not earlier') : words('Not later');
  if (!bound)
    return (
      <p>{say('{0} nothing in the file bounds it on this side.', <strong>{`${head}${colon().trimEnd()}`}</strong>)}</p>
    );
  const { sentences, excluding } = explainBound(page.file, moment, rankOf(range.grade), side);
  return (
    <div>
      <p>{say('{0}, because:', <strong>{say('{0} than {1}', head, said(sayDateOf(bound)))}</strong>)}</p>
      <ol class="argument">
        {sentences.map(({ statement, because, so }) => (
          <li>
            {say(
              '{0}{1}; so {2}.',
              said(because),
              statement ? (
                <>
                  {' '}
                  <StatementLink page={page} statement={statement} />
                </>
              ) : null,
              said(so),
            )}
          </li>
        ))}
      </ol>
      {excluding.length > 0 ? (
        <>
          <p>{say('The other possibilities are ruled out by:')}</p>
          <StatementList page={page} statements={excluding} />
        </>
      ) : null}
      {bound.about ? (
        <p class="aside">
          {say(
            'Rests on a date with “about”, widened as the {0} says.',
            <a href={page.href('method.html#circa')}>{say('method')}</a>,
          )}
        </p>
      ) : null}
      <ReasonSupport page={page} moment={moment} range={range} side={side} />
    </div>
  );
}
