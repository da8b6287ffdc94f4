import { RANKS, type Side, type Step } from '../chronology/chronology.ts';
import { coarsest, type Precision } from '../dates/expression.ts';
import { formatBound } from '../dates/wording.ts';
import { titleOf } from '../model/catalogue.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';

/** One sentence of an argument. */
export interface Sentence {
  /** The statement that it cites; null for what always holds. */
  readonly statement: FileStatement | null;
  readonly because: string;
  readonly so: string;
}

/** Why a bound holds: numbered sentences, and statements that exclude other possibilities. */
export interface Explanation {
  readonly sentences: readonly Sentence[];
  /** Statements that rule out the other members of dates with gaps. */
  readonly excluding: readonly FileStatement[];
}

/** What one link says when it carries an earliest day on, and when it carries a latest day back. */
const BECAUSE: Readonly<Record<string, Readonly<Record<Side, (said: string, days: number) => string>>>> = {
  axiom: {
    earliest: () => 'Nothing ends before it starts',
    latest: () => 'Nothing starts after it ends',
  },
  'gap-min': {
    earliest: (said, days) => `${said} (counted as ${days} days at least)`,
    latest: (said, days) => `${said} (counted back, ${days} days at least)`,
  },
  'gap-max': {
    earliest: (said, days) => `${said} (counted back, ${days} days at most)`,
    latest: (said, days) => `${said} (counted as ${days} days at most)`,
  },
  'lasts-min': {
    earliest: (said, days) => `${said} (${days} days at least from beginning to end)`,
    latest: (said, days) => `${said} (${days} days at least back from its end)`,
  },
  'lasts-max': {
    earliest: (said, days) => `${said} (${days} days at most back from its end)`,
    latest: (said, days) => `${said} (${days} days at most from its beginning)`,
  },
  'left-by': {
    earliest: (said) => `${said}, so not before it began`,
    latest: (said) => `${said}, so not after it ended`,
  },
  'layer-over': {
    earliest: (said) => `${said}, and what lies over came later`,
    latest: (said) => `${said}, and what lies under came earlier`,
  },
  'layer-cuts': {
    earliest: (said) => `${said}, and a cut is later than what it cuts`,
    latest: (said) => `${said}, and what is cut was there before`,
  },
  'layer-fills': {
    earliest: (said) => `${said}, and a fill is later than what it fills`,
    latest: (said) => `${said}, and what is filled was there before`,
  },
  'passage-inside': {
    earliest: (said) => `${said}, and a possessor had it when it was handed on`,
    latest: (said) => `${said}, and it was handed on while the possessor had it`,
  },
};

/** Explains why a moment is not earlier (or not later) at a grade, as a chain of sentences. */
export function explainBound(file: CaseFile, moment: Moment, rank: number, side: Side): Explanation {
  const { steps, statements } = file.chronology.reason(Math.min(rank, RANKS - 1), moment.index, side);
  const used = (i: number): FileStatement => file.statements.used[i] as FileStatement;
  const precisions: Precision[] = [];
  let about = false;
  const sentences = steps.map((step): Sentence => {
    const statement = step.owner < 0 ? null : used(step.owner);
    if (statement) precisions.push(statement.precision);
    about ||= statement?.about ?? false;
    const date = formatBound({ day: step.day, precision: coarsest(precisions), about });
    const reached = sayMoment(file, file.statements.moments.all[step.moment] as Moment);
    return {
      statement,
      because: becauseOf(step, statement, side),
      so: `${reached} was ${side === 'earliest' ? 'not before' : 'not after'} ${date}`,
    };
  });
  const cited = new Set(sentences.map((sentence) => sentence.statement?.id));
  return { sentences, excluding: statements.map(used).filter((one) => !cited.has(one.id)) };
}

function becauseOf(step: Step, statement: FileStatement | null, side: Side): string {
  const said = statement?.text ?? '';
  const words = BECAUSE[step.link.role]?.[side];
  return words ? words(said, Math.abs(step.link.days)) : said;
}

/** A moment in words: the beginning of an event, the end of a holding, a trace. */
export function sayMoment(file: CaseFile, moment: Moment): string {
  const entry = file.catalogue.get(moment.entry);
  const title = `“${entry ? titleOf(entry, file.settings.languages) : moment.entry}”`;
  switch (moment.edge) {
    case 'start':
    case 'begins':
      return `the beginning of ${title}`;
    case 'end':
    case 'ends':
      return `the end of ${title}`;
    case 'moment':
      return `the making of ${title}`;
  }
}
