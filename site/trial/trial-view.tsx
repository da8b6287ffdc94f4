import type { JSX } from 'preact';
import type { Said } from '../../src/base/said.ts';
import type { EntryRanges } from '../../src/findings/range-changes.ts';
import { isUnchanged, type TrialFile, type TrialResult, type TrialState } from '../../src/findings/run-trial.ts';
import { changesOf, summaryOf, type TrialChanges } from '../../src/findings/trial-changes.ts';
import { layOutRuling, NARROW, type NamedDay, type Ruling } from '../../src/publish/chronology-drawing.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import { ChronologyFigure } from '../drawings/chronology-figure.tsx';
import { colon, said, say, semicolon, term, words } from '../say.ts';
import { TrialAnswers } from './trial-answers.tsx';
import { alteredByEntry, StatementGroup, type TrialActions } from './trial-statements.tsx';
import { TrialTable } from './trial-table.tsx';

interface Props {
  readonly file: TrialFile;
  readonly state: TrialState;
  readonly standing: TrialResult;
  readonly result: TrialResult;
  readonly ruling: Ruling;
  /** Names in the address that this file does not hold. */
  readonly unknown: readonly string[];
  readonly actions: TrialActions | null;
}

/** The ruling of the file as published; it stays the same in every trial. */
export function rulingOf(file: TrialFile, standing: TrialResult): Ruling {
  const days = file.references
    .filter((one) => one.asks === 'order')
    .map(({ title, from }): NamedDay => ({ day: from.first, name: title }));
  return layOutRuling(eventRows(file, standing), days, NARROW);
}

function eventRows(file: TrialFile, result: TrialResult): readonly EntryRanges[] {
  return result.rows.filter((_, i) => file.entries[i]?.type === 'event');
}

/** The chronology live: what is withdrawn, what that changes, the drawing, the same as a table, and the statements. */
export function TrialView({ file, state, standing, result, ruling, unknown, actions }: Props): JSX.Element {
  const changes = changesOf(standing, result);
  return (
    <>
      <Notice file={file} state={state} unknown={unknown} actions={actions} />
      {actions ? (
        <p role="status" class="hidden">
          {isUnchanged(state) ? '' : words('A reader’s trial. {0}', summaryOf(changes))}
        </p>
      ) : (
        <p class="no-script">
          {say('Trying needs scripts, which do not run here. What stands below is the file as published.')}
        </p>
      )}
      <div class="desk">
        <section aria-labelledby="statements">
          <h2 id="statements" tabIndex={-1}>
            {say('Statements')}
          </h2>
          <p>
            {say(
              'Each stands under what it bears on. {0}',
              actions ? words('Take the tick away to withdraw one, or choose another grade.') : '',
            )}
          </p>
          {(['event', 'holding', 'trace'] as const).map((type) => (
            <StatementGroup
              file={file}
              state={state}
              type={type}
              altered={alteredByEntry(file, state, type)}
              actions={actions}
            />
          ))}
        </section>
        <figure class="drawing">
          <ChronologyFigure
            events={eventRows(file, result)}
            ruling={ruling}
            printedGrade={file.printedGrade}
            hrefOf={reasonPath}
          />
          <figcaption>
            {say(
              'The marks are those of the {0}. Reference dates mark the order of dates only; they do not say that an act was lawful or unlawful.',
              <a href="chronology.html">{say('chronology')}</a>,
            )}
          </figcaption>
        </figure>
      </div>
      <section aria-labelledby="what-changed">
        <h2 id="what-changed" tabIndex={-1}>
          {say('What changed')}
        </h2>
        <Changed changes={changes} untouched={isUnchanged(state)} />
      </section>
      <TrialTable file={file} standing={standing} result={result} />
      <Contradictions file={file} result={result} />
      <TrialAnswers file={file} standing={standing} answers={result.answers} />
      {actions ? <Strip state={state} summary={summaryOf(changes)} actions={actions} /> : null}
    </>
  );
}

function Notice({ file, state, unknown, actions }: Pick<Props, 'file' | 'state' | 'unknown' | 'actions'>): JSX.Element {
  const regraded = Object.entries(state.grades);
  return (
    <aside class="trial-notice" aria-label={words('A reader’s trial')}>
      <p>
        {say(
          '{0} {1} Nothing is stored or sent; the address of this page holds the trial and can be passed on.',
          <strong>{say('A reader’s trial, not the museum’s finding.')}</strong>,
          isUnchanged(state)
            ? words('Nothing is withdrawn: the dates below are those of the file as published.')
            : words('The dates below are those of an altered file.'),
        )}
      </p>
      {isUnchanged(state) ? null : (
        <ul>
          {state.withdrawn.map((id) => (
            <li>{say('Withdrawn: {0} {1}', textOf(file, id), <code>{id}</code>)}</li>
          ))}
          {regraded.map(([id, grade]) => (
            <li>
              {say(
                'Taken as {0}, {1} in the file: {2} {3}',
                term(grade),
                gradeOf(file, id),
                textOf(file, id),
                <code>{id}</code>,
              )}
            </li>
          ))}
        </ul>
      )}
      {unknown.length > 0 ? (
        <p>
          {say(
            'The address names statements that this file does not hold, or no longer holds, or grades that are none: {0}. These are left out of the trial.',
            unknown.join(', '),
          )}
        </p>
      ) : null}
      {actions && !isUnchanged(state) ? (
        <p>
          <PutBack actions={actions} />
        </p>
      ) : null}
    </aside>
  );
}

function textOf(file: TrialFile, id: string): string {
  return file.statements.find((one) => one.id === id)?.text ?? '';
}

function gradeOf(file: TrialFile, id: string): string {
  return file.statements.find((one) => one.id === id)?.grade ?? '';
}

function Changed({ changes, untouched }: { readonly changes: TrialChanges; readonly untouched: boolean }): JSX.Element {
  const parts = [
    [words('Dates'), changes.dates],
    [words('Contradictions'), changes.contradictions],
    [words('Order to reference dates'), changes.references],
  ] as const;
  if (untouched) return <p>{say('Nothing: this is the file as published.')}</p>;
  if (parts.every(([, list]) => list.length === 0))
    return <p>{say('No date, contradiction or order is another one.')}</p>;
  return (
    <div class="changed">
      {parts.map(([head, list]) =>
        list.length === 0 ? null : (
          <>
            <h3>{head}</h3>
            <ul>
              {list.map((text) => (
                <li>{said(text)}</li>
              ))}
            </ul>
          </>
        ),
      )}
    </div>
  );
}

function Contradictions({ file, result }: Pick<Props, 'file' | 'result'>): JSX.Element {
  return (
    <section>
      <h2>{say('Statements that cannot all be right')}</h2>
      {result.contradictions.length === 0 ? <p>{say('None, at any grade.')}</p> : null}
      <ol>
        {result.contradictions.map((one) => (
          <li>
            {one.kind === 'order' ? words('A loop of order, ') : ''}
            {term(one.grade)}
            {colon()}
            {one.statements.map((id, i) => (
              <>
                {i > 0 ? semicolon() : ''}
                {textOf(file, id)} <code>{id}</code>
              </>
            ))}
            .
          </li>
        ))}
      </ol>
    </section>
  );
}

function PutBack({ actions }: { readonly actions: TrialActions }): JSX.Element {
  const putBack = (): void => {
    goTo('statements');
    actions.restoreAll();
  };
  return (
    <button type="button" onClick={putBack}>
      {say('Put everything back')}
    </button>
  );
}

/** Moves to a heading, with the focus. */
function goTo(id: string): void {
  const heading = document.getElementById(id);
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}

/** Stays in sight: how much changed, and the way back. */
function Strip({
  state,
  summary,
  actions,
}: {
  readonly state: TrialState;
  readonly summary: Said;
  readonly actions: TrialActions;
}): JSX.Element {
  if (isUnchanged(state)) return <></>;
  return (
    <div class="strip">
      <p>{say('A reader’s trial. {0}', said(summary))}</p>
      <p>
        <button type="button" onClick={() => goTo('what-changed')}>
          {say('Show what changed')}
        </button>{' '}
        <PutBack actions={actions} />
      </p>
    </div>
  );
}
