import { Component, type JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import { type Said, sameSaid } from '../../src/base/said.ts';
import type { TrialAnswer, TrialFile, TrialResult } from '../../src/findings/run-trial.ts';
import { Still } from '../drawings/still.ts';
import { colon, said, say, semicolon, term } from '../say.ts';

interface AnswersProps {
  readonly file: TrialFile;
  readonly standing: TrialResult;
  readonly answers: readonly TrialAnswer[];
}

/** How events and holdings lie to the reference dates in the trial. */
export class TrialAnswers extends Component<AnswersProps> {
  override shouldComponentUpdate({ answers }: AnswersProps): boolean {
    return answers.some((one, i) => one !== this.props.answers[i]);
  }

  override render({ file, standing, answers }: AnswersProps): JSX.Element | null {
    if (answers.length === 0) return null;
    const printed = GRADES.indexOf(file.printedGrade);
    return (
      <section>
        <h2>{say('Reference dates')}</h2>
        <p>
          {say(
            'The order of dates only, on {0} statements; it does not say that an act was lawful or unlawful.',
            term(file.printedGrade),
          )}
        </p>
        <details>
          <summary>{say('Every event and holding that is tested')}</summary>
          <ul>
            {answers.map((answer, i) => (
              <AnswerLine
                key={`${answer.reference} ${answer.entry}`}
                answer={answer}
                was={standing.answers[i]?.words[printed] ?? ''}
                printed={printed}
              />
            ))}
          </ul>
        </details>
      </section>
    );
  }
}

interface AnswerProps {
  readonly answer: TrialAnswer;
  readonly was: Said;
  /** Place of the printed grade. */
  readonly printed: number;
}

class AnswerLine extends Still<AnswerProps> {
  override render({ answer, was, printed }: AnswerProps): JSX.Element {
    const is = answer.words[printed] ?? '';
    return (
      <li>
        {answer.title}
        {semicolon()}
        {answer.reference}
        {colon()}
        {said(is)}
        {sameSaid(is, was) ? '' : <span class="was"> {say('it was {0}', said(was))}</span>}
      </li>
    );
  }
}
