import type { JSX } from 'preact';
import type { EntryRanges } from '../../src/findings/range-changes.ts';
import { isUnchanged, type TrialFile, type TrialResult, type TrialState } from '../../src/findings/run-trial.ts';
import { changesOf, summaryOf, type TrialChanges } from '../../src/findings/trial-changes.ts';
import { layOutRuling, NARROW, type NamedDay, type Ruling } from '../../src/publish/chronology-drawing.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import { ChronologyFigure } from '../drawings/chronology-figure.tsx';
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
          {isUnchanged(state) ? '' : `A reader’s trial. ${summaryOf(changes)}`}
        </p>
      ) : (
        <p class="no-script">
          Trying needs scripts, which do not run here. What stands below is the file as published.
        </p>
      )}
      <div class="desk">
        <section aria-labelledby="statements">
          <h2 id="statements" tabIndex={-1}>
            Statements
          </h2>
          <p>
            Each stands under what it bears on.{' '}
            {actions ? 'Take the tick away to withdraw one, or choose another grade.' : ''}
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
            The marks are those of the <a href="chronology.html">chronology</a>. Reference dates mark the order of dates
            only; they do not say that an act was lawful or unlawful.
          </figcaption>
        </figure>
      </div>
      <section aria-labelledby="what-changed">
        <h2 id="what-changed" tabIndex={-1}>
          What changed
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
    <aside class="trial-notice" aria-label="A reader’s trial">
      <p>
        <strong>A reader’s trial, not the museum’s finding.</strong>{' '}
        {isUnchanged(state)
          ? 'Nothing is withdrawn: the dates below are those of the file as published.'
          : 'The dates below are those of an altered file.'}{' '}
        Nothing is stored or sent; the address of this page holds the trial and can be passed on.
      </p>
      {isUnchanged(state) ? null : (
        <ul>
          {state.withdrawn.map((id) => (
            <li>
              Withdrawn: {textOf(file, id)} <code>{id}</code>
            </li>
          ))}
          {regraded.map(([id, grade]) => (
            <li>
              Taken as {grade}, {gradeOf(file, id)} in the file: {textOf(file, id)} <code>{id}</code>
            </li>
          ))}
        </ul>
      )}
      {unknown.length > 0 ? (
        <p>
          The address names statements that this file does not hold, or no longer holds, or grades that are none:{' '}
          {unknown.join(', ')}. These are left out of the trial.
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
    ['Dates', changes.dates],
    ['Contradictions', changes.contradictions],
    ['Order to reference dates', changes.references],
  ] as const;
  if (untouched) return <p>Nothing: this is the file as published.</p>;
  if (parts.every(([, list]) => list.length === 0)) return <p>No date, contradiction or order is another one.</p>;
  return (
    <div class="changed">
      {parts.map(([head, list]) =>
        list.length === 0 ? null : (
          <>
            <h3>{head}</h3>
            <ul>
              {list.map((text) => (
                <li>{text}</li>
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
      <h2>Statements that cannot all be right</h2>
      {result.contradictions.length === 0 ? <p>None, at any grade.</p> : null}
      <ol>
        {result.contradictions.map((one) => (
          <li>
            {one.kind === 'order' ? 'A loop of order, ' : ''}
            {one.grade}:{' '}
            {one.statements.map((id, i) => (
              <>
                {i > 0 ? '; ' : ''}
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
      Put everything back
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
  readonly summary: string;
  readonly actions: TrialActions;
}): JSX.Element {
  if (isUnchanged(state)) return <></>;
  return (
    <div class="strip">
      <p>A reader’s trial. {summary}</p>
      <p>
        <button type="button" onClick={() => goTo('what-changed')}>
          Show what changed
        </button>{' '}
        <PutBack actions={actions} />
      </p>
    </div>
  );
}
