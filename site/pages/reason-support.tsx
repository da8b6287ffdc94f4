import type { JSX } from 'preact';
import { rankOf } from '../../src/base/grade.ts';
import { type Company, supportOf } from '../../src/findings/company.ts';
import { countRoots, sayRootCount } from '../../src/findings/independence.ts';
import type { MomentRange } from '../../src/findings/printed-range.ts';
import { sayBoundWithout } from '../../src/findings/worth-in-words.ts';
import type { FileStatement, Moment } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { said, say, words } from '../say.ts';
import { EntryLink, Joined, StatementLink } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly moment: Moment;
  readonly range: MomentRange;
  readonly side: 'earliest' | 'latest';
}

/** What a bound hangs on: which statements hold it alone, which have company, and on how many roots. */
export function ReasonSupport({ page, moment, range, side }: Props): JSX.Element {
  const { file } = page;
  const rank = rankOf(range.grade);
  // What a reason rests on is tied together, so one of its statements tells of all.
  const [first] = range[side]?.because ?? [];
  if (first && !file.isSmall(file.placeOf(first)))
    return <BriefSupport page={page} moment={moment} range={range} side={side} />;
  const { sole, company, roots } = supportOf(file, moment, rank, side);
  return (
    <div class="support">
      {sole.length > 0 ? (
        <ul class="plain">
          {sole.map((one) => (
            <li>
              {say(
                'Without {0}: {1}.',
                <StatementLink page={page} statement={one} />,
                said(sayBoundWithout(file, moment, rank, side, [one])),
              )}
            </li>
          ))}
        </ul>
      ) : null}
      {company.map((one) => (
        <CompanyLine page={page} company={one} />
      ))}
      <p>{said(sayRootCount(roots))}.</p>
    </div>
  );
}

/** Where very much is tied together: only which statements the bound gives way without, and the roots. */
function BriefSupport({ page, moment, range, side }: Props): JSX.Element {
  const { file } = page;
  const rank = rankOf(range.grade);
  const because = range[side]?.because ?? [];
  const isSole = (index: number): boolean =>
    file.worth.isQuick(index) &&
    file.worth
      .of(index)
      .bounds.some((change) => change.rank === rank && change.moment === moment.index && change.side === side);
  const sole = because.filter((one) => isSole(file.placeOf(one)));
  return (
    <div class="support">
      {sole.length > 0 ? (
        <p>
          {say(
            'Moves without any one of {0}.',
            <Joined items={sole.map((one) => <StatementLink page={page} statement={one} />)} />,
          )}
        </p>
      ) : null}
      <p>{said(sayRootCount(countRoots(file.catalogue, because)))}.</p>
    </div>
  );
}

function CompanyLine({ page, company }: { readonly page: PageContext; readonly company: Company }): JSX.Element {
  const { spared, instead, freed, oneRoot, perhapsOneRoot } = company;
  const links = (list: readonly FileStatement[]): JSX.Element => (
    <Joined items={list.map((one) => <StatementLink page={page} statement={one} />)} />
  );
  if (freed)
    return (
      <p>
        {say(
          'Without {0} it would be the same day, by {1}, of which some is set aside now.',
          links(spared),
          links(instead),
        )}
      </p>
    );
  return (
    <p>
      {say(
        'It holds without {0} too{1}{2}{3}.',
        links(spared),
        instead.length > 0 ? <>{say(', by {0}', links(instead))}</> : null,
        oneRoot.length > 0 ? (
          <>
            {say(
              ': held twice, by one independent origin, {0}',
              <Joined items={oneRoot.map((id) => <EntryLink page={page} id={id} />)} />,
            )}
          </>
        ) : null,
        perhapsOneRoot ? words('; perhaps by one origin, since the parentage of a source is not known') : '',
      )}
    </p>
  );
}
