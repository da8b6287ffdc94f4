import type { JSX } from 'preact';
import type { SaidChanges } from '../../src/findings/worth-in-words.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { said, say, term, words } from '../say.ts';
import { Scroll } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly told: SaidChanges;
  /** What the table tells, for those who do not see it. */
  readonly label: string;
  /** False where all changes are of one grade, which the text beside says. */
  readonly grades?: boolean;
}

/** Dates that would be others, each with what it is now and what it would be; each opens its reason. */
export function ChangeTable({ page, told, label, grades = true }: Props): JSX.Element | null {
  const { changes, finer } = told;
  return (
    <>
      {changes.length === 0 ? null : (
        <Scroll label={label}>
          <table class="changes stacking">
            <thead>
              <tr>
                <th scope="col">{say('Date')}</th>
                <th scope="col">{say('now')}</th>
                <th scope="col">{say('without')}</th>
                <th scope="col">{say('effect')}</th>
                {grades ? <th scope="col">{say('on statements that are')}</th> : null}
              </tr>
            </thead>
            <tbody>
              {changes.map((one) => (
                <tr>
                  <th scope="row">
                    <a href={page.href(`${reasonPath(one.entry)}`)}>{one.title}</a>
                    {one.of === 'whole' ? '' : `, ${one.of}`}
                  </th>
                  <td>
                    <span class="cell-label">{say('now')} </span>
                    {said(one.was)}
                  </td>
                  <td>
                    <span class="cell-label">{say('without')} </span>
                    {said(one.is)}
                  </td>
                  <td>
                    <span class="cell-label">{say('effect')} </span>
                    {term(one.effect)}
                  </td>
                  {grades ? (
                    <td>
                      <span class="cell-label">{say('grades')} </span>
                      {one.grades.map(term).join(', ')}
                    </td>
                  ) : null}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {finer === 0 ? null : (
        <p class="aside">
          {say(
            '{0}{1} by less than what is printed.',
            changes.length === 0 ? '' : words('Besides, '),
            words('{0, plural, one {one date moves} other {# dates move}}', finer),
          )}
        </p>
      )}
    </>
  );
}
