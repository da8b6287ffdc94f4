import { Component, type JSX } from 'preact';
import { GRADES, type Grade } from '../../src/base/grade.ts';
import type { TrialEntry, TrialFile, TrialState, TrialStatement } from '../../src/findings/run-trial.ts';
import { Still } from '../drawings/still.ts';
import { say, term, words } from '../say.ts';

/** What a reader can do on the page; absent where no script runs. */
export interface TrialActions {
  withdraw(statement: string, withdrawn: boolean): void;
  regrade(statement: string, grade: Grade): void;
  restoreAll(): void;
}

const GROUP_TITLES: Readonly<Record<TrialEntry['type'], string>> = {
  event: 'Events',
  holding: 'Holdings',
  trace: 'Traces',
};

interface GroupProps {
  readonly file: TrialFile;
  readonly state: TrialState;
  readonly actions: TrialActions | null;
  readonly type: TrialEntry['type'];
  readonly altered: ReadonlyMap<string, string>;
}

/** Entries of one type with their statements; drawn anew only where something under one of them is altered. */
export class StatementGroup extends Component<GroupProps> {
  override shouldComponentUpdate(next: GroupProps): boolean {
    const { file, altered, actions } = this.props;
    const differs = (id: string): boolean => altered.get(id) !== next.altered.get(id);
    const ids = new Set([...altered.keys(), ...next.altered.keys()]);
    return next.file !== file || next.actions !== actions || [...ids].some(differs);
  }

  override render({ file, state, type, altered, actions }: GroupProps): JSX.Element | null {
    const entries = file.entries.filter((one) => one.type === type && one.statements.length > 0);
    if (entries.length === 0) return null;
    return (
      <section>
        <h3>{term(GROUP_TITLES[type])}</h3>
        {entries.map((entry) => (
          <EntryStatements
            key={entry.id}
            file={file}
            entry={entry}
            altered={altered.get(entry.id) ?? ''}
            state={state}
            actions={actions}
          />
        ))}
      </section>
    );
  }
}

/** What is altered under each entry, as a text that is another one when something under the entry changes. */
export function alteredByEntry(
  file: TrialFile,
  state: TrialState,
  type: TrialEntry['type'],
): ReadonlyMap<string, string> {
  const altered = new Map<string, string>();
  const ids = new Set([...state.withdrawn, ...Object.keys(state.grades)]);
  if (ids.size === 0) return altered;
  for (const entry of file.entries) {
    if (entry.type !== type) continue;
    for (const i of entry.statements) {
      const id = file.statements[i]?.id ?? '';
      if (ids.has(id)) altered.set(entry.id, `${altered.get(entry.id) ?? ''} ${id}:${state.grades[id] ?? ''}`);
    }
  }
  return altered;
}

interface EntryStatementsProps {
  readonly file: TrialFile;
  readonly entry: TrialEntry;
  readonly altered: string;
  readonly state: TrialState;
  readonly actions: TrialActions | null;
}

/** The statements that bear on one entry; drawn anew only where one of them is altered or put back. */
class EntryStatements extends Component<EntryStatementsProps> {
  override shouldComponentUpdate(next: EntryStatementsProps): boolean {
    return next.altered !== this.props.altered || next.file !== this.props.file || next.actions !== this.props.actions;
  }

  override render({ file, entry, altered, state, actions }: EntryStatementsProps): JSX.Element {
    const count = entry.statements.length;
    const touched = altered === '' ? 0 : altered.trim().split(' ').length;
    return (
      <details class="bearing" id={`on-${entry.id}`}>
        <summary>
          {entry.title}{' '}
          <span class="aside">
            {words('{0, plural, one {one statement} other {# statements}}', count)}
            {touched > 0 ? words(', {0} altered', touched) : ''}
          </span>
        </summary>
        <ul class="plain strike-list">
          {entry.statements.map((i) => {
            const one = file.statements[i] as TrialStatement;
            return (
              <StatementLine
                key={one.id}
                statement={one}
                withdrawn={state.withdrawn.includes(one.id)}
                grade={state.grades[one.id] ?? one.grade}
                actions={actions}
              />
            );
          })}
        </ul>
      </details>
    );
  }
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
    const shown = withdrawn ? <s>{text}</s> : text;
    const told = (
      <>
        {shown} <code>{id}</code>
        {source === null ? null : <span class="aside"> {say('Source: {0}.', source)}</span>}
      </>
    );
    if (!actions)
      return (
        <li>
          {told} <span class="aside">{term(grade)}</span>
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
          <span class="hidden">{say('Grade of {0}', id)}</span>
          <select
            data-grade={id}
            value={grade}
            disabled={withdrawn}
            onChange={(event) => actions.regrade(id, event.currentTarget.value as Grade)}
          >
            {GRADES.map((one) => (
              <option value={one} selected={one === grade}>
                {one}
                {one === statement.grade ? words(', as in the file') : ''}
              </option>
            ))}
          </select>
        </label>
      </li>
    );
  }
}
