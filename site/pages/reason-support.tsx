import type { JSX } from 'preact';
import { rankOf } from '../../src/base/grade.ts';
import { type Company, supportOf } from '../../src/findings/company.ts';
import { countRoots, sayRootCount } from '../../src/findings/independence.ts';
import type { MomentRange } from '../../src/findings/printed-range.ts';
import { sayBoundWithout } from '../../src/findings/worth-in-words.ts';
import type { FileStatement, Moment } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
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
  if (!file.inDetail) return <BriefSupport page={page} moment={moment} range={range} side={side} />;
  const { sole, company, roots } = supportOf(file, moment, rank, side);
  return (
    <div class="support">
      {sole.length > 0 ? (
        <ul class="plain">
          {sole.map((one) => (
            <li>
              Without <StatementLink page={page} statement={one} />: {sayBoundWithout(file, moment, rank, side, [one])}.
            </li>
          ))}
        </ul>
      ) : null}
      {company.map((one) => (
        <CompanyLine page={page} company={one} />
      ))}
      <p>{sayRootCount(roots)}.</p>
    </div>
  );
}

/** In a large file: only which statements the bound gives way without, and the roots. */
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
          Moves without any one of <Joined items={sole.map((one) => <StatementLink page={page} statement={one} />)} />.
        </p>
      ) : null}
      <p>{sayRootCount(countRoots(file.catalogue, because))}.</p>
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
        Without {links(spared)} it would be the same day, by {links(instead)}, of which some is set aside now.
      </p>
    );
  return (
    <p>
      It holds without {links(spared)} too{instead.length > 0 ? <>, by {links(instead)}</> : null}
      {oneRoot.length > 0 ? (
        <>
          : held twice, by one root, <Joined items={oneRoot.map((id) => <EntryLink page={page} id={id} />)} />
        </>
      ) : null}
      {perhapsOneRoot ? '; perhaps by one root, since the parentage of a source is not known' : ''}.
    </p>
  );
}
