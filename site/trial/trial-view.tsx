import type { JSX } from 'preact';
import { GRADES, type Grade } from '../../src/base/grade.ts';
import { sayRange } from '../../src/findings/printed-range.ts';
import {
  isUnchanged,
  type TrialEntry,
  type TrialFile,
  type TrialResult,
  type TrialRow,
  type TrialState,
  type TrialStatement,
} from '../../src/findings/run-trial.ts';
import { changesOf, summaryOf, type TrialChanges } from '../../src/findings/trial-changes.ts';
import { layOutRuling, NARROW, type NamedDay, type Ruling } from '../../src/publish/chronology-drawing.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import { ChronologyFigure } from '../drawings/chronology-figure.tsx';
import { Still } from '../drawings/still.ts';

/** What a reader can do on the page; absent where no script runs. */
export interface TrialActions {
  withdraw(statement: string, withdrawn: boolean): void;
  regrade(statement: string, grade: Grade): void;
  restoreAll(): void;
}

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

function eventRows(file: TrialFile, result: TrialResult): readonly TrialRow[] {
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
          <h2 id="statements">Statements</h2>
          <p>
            Each stands under what it bears on.{' '}
            {actions ? 'Take the tick away to withdraw one, or choose another grade.' : ''}
          </p>
          {(['event', 'holding', 'trace'] as const).map((type) => (
            <StatementGroup file={file} state={state} type={type} actions={actions} />
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
        <h2 id="what-changed">What changed</h2>
        <Changed changes={changes} untouched={isUnchanged(state)} />
      </section>
      <TrialTable file={file} standing={standing} result={result} />
      <Contradictions file={file} result={result} />
      <Answers file={file} standing={standing} result={result} />
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
          The address names statements that this file does not hold, or no longer holds: {unknown.join(', ')}. They are
          left out of the trial.
        </p>
      ) : null}
      {actions && !isUnchanged(state) ? (
        <p>
          <button type="button" onClick={() => actions.restoreAll()}>
            Put everything back
          </button>
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

function TrialTable({ file, standing, result }: Pick<Props, 'file' | 'standing' | 'result'>): JSX.Element {
  const rows = result.rows.map((row, i) => ({ row, before: standing.rows[i] as TrialRow, entry: file.entries[i] }));
  const [events, others] = [
    rows.filter(({ entry }) => entry?.type === 'event'),
    rows.filter(({ row, before, entry }) => entry?.type !== 'event' && row !== before),
  ];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scroll" tabIndex={0} aria-label="The trial as a table">
      <table class="stacking">
        <caption>
          The same as a table: from the earliest beginning to the latest end; holdings and traces only where they change
        </caption>
        <thead>
          <tr>
            <th scope="col">Event</th>
            {GRADES.map((grade) => (
              <th scope="col">{grade}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...events, ...others].map(({ row, before }) => (
            <TableRow key={row.id} row={row} before={before} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

class TableRow extends Still<{ readonly row: TrialRow; readonly before: TrialRow }> {
  override render({ row, before }: { readonly row: TrialRow; readonly before: TrialRow }): JSX.Element {
    return (
      <tr>
        <th scope="row">
          <a href={reasonPath(row.id)}>{row.title}</a>
        </th>
        {GRADES.map((grade, rank) => (
          <td>
            <span class="cell-label">{grade} </span>
            {rangeAt(row, rank)}
            {isConsistentAt(row, rank) ? null : <span class="disputed"> disputed</span>}
            {rangeAt(row, rank) === rangeAt(before, rank) ? null : (
              <span class="was"> it was {rangeAt(before, rank)}</span>
            )}
          </td>
        ))}
      </tr>
    );
  }
}

function rangeAt(row: TrialRow, rank: number): string {
  return sayRange({ earliest: row.starts[rank]?.earliest ?? null, latest: row.ends[rank]?.latest ?? null });
}

function isConsistentAt(row: TrialRow, rank: number): boolean {
  return (row.starts[rank]?.consistent && row.ends[rank]?.consistent) ?? true;
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

function Answers({ file, standing, result }: Pick<Props, 'file' | 'standing' | 'result'>): JSX.Element | null {
  if (result.answers.length === 0) return null;
  const printed = GRADES.indexOf(file.printedGrade);
  const titleOf = (id: string): string => file.entries.find((one) => one.id === id)?.title ?? id;
  return (
    <section>
      <h2>Reference dates</h2>
      <p>
        The order of dates only, on {file.printedGrade} statements; it does not say that an act was lawful or unlawful.
      </p>
      <details>
        <summary>Every event and holding that is tested</summary>
        <ul>
          {result.answers.map((answer, i) => {
            const [is, was] = [answer.words[printed], standing.answers[i]?.words[printed]];
            return (
              <li>
                {titleOf(answer.entry)}; {answer.reference}: {is}
                {is === was ? '' : <span class="was"> it was {was}</span>}
              </li>
            );
          })}
        </ul>
      </details>
    </section>
  );
}

const GROUP_TITLES: Readonly<Record<TrialEntry['type'], string>> = {
  event: 'Events',
  holding: 'Holdings',
  trace: 'Traces',
};

function StatementGroup({
  file,
  state,
  type,
  actions,
}: Pick<Props, 'file' | 'state' | 'actions'> & { readonly type: TrialEntry['type'] }): JSX.Element | null {
  const entries = file.entries.filter((one) => one.type === type && one.statements.length > 0);
  if (entries.length === 0) return null;
  return (
    <section>
      <h3>{GROUP_TITLES[type]}</h3>
      {entries.map((entry) => {
        const statements = entry.statements.map((i) => file.statements[i] as TrialStatement);
        const touched = statements.filter(
          (one) => state.withdrawn.includes(one.id) || state.grades[one.id] !== undefined,
        ).length;
        return (
          <details key={entry.id} class="bearing" id={`on-${entry.id}`}>
            <summary>
              {entry.title}{' '}
              <span class="aside">
                {statements.length === 1 ? 'one statement' : `${statements.length} statements`}
                {touched > 0 ? `, ${touched} altered` : ''}
              </span>
            </summary>
            <ul class="plain strike-list">
              {statements.map((one) => (
                <StatementLine
                  key={one.id}
                  statement={one}
                  withdrawn={state.withdrawn.includes(one.id)}
                  grade={state.grades[one.id] ?? one.grade}
                  actions={actions}
                />
              ))}
            </ul>
          </details>
        );
      })}
    </section>
  );
}

interface LineProps {
  readonly statement: TrialStatement;
  readonly withdrawn: boolean;
  readonly grade: Grade;
  readonly actions: TrialActions | null;
}

class StatementLine extends Still<LineProps> {
  override render({ statement, withdrawn, grade, actions }: LineProps): JSX.Element {
    const { id, text, source } = statement;
    const words = withdrawn ? <s>{text}</s> : text;
    const told = (
      <>
        {words} <code>{id}</code>
        {source === null ? null : <span class="aside"> Source: {source}.</span>}
      </>
    );
    if (!actions)
      return (
        <li>
          {told} <span class="aside">{grade}</span>
        </li>
      );
    return (
      <li>
        <label>
          <input
            type="checkbox"
            data-statement={id}
            checked={!withdrawn}
            onChange={(event) => actions.withdraw(id, !event.currentTarget.checked)}
          />{' '}
          <span>{told}</span>
        </label>
        <label class="grade-choice">
          <span class="hidden">Grade of {id}</span>
          <select
            data-grade={id}
            value={grade}
            disabled={withdrawn}
            onChange={(event) => actions.regrade(id, event.currentTarget.value as Grade)}
          >
            {GRADES.map((one) => (
              <option value={one} selected={one === grade}>
                {one}
                {one === statement.grade ? ', as in the file' : ''}
              </option>
            ))}
          </select>
        </label>
      </li>
    );
  }
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
        <button
          type="button"
          onClick={() => document.getElementById('what-changed')?.scrollIntoView({ block: 'start' })}
        >
          Show what changed
        </button>{' '}
        <button type="button" onClick={() => actions.restoreAll()}>
          Put everything back
        </button>
      </p>
    </div>
  );
}
