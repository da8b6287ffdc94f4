import { phrase, type Said } from '../base/said.ts';
import { RANKS, type Side, type Step } from '../chronology/chronology.ts';
import { coarsest, type Precision } from '../dates/expression.ts';
import { sayDateOf } from '../language/date-words.ts';
import { titleOf } from '../model/catalogue.ts';
import { sayStatement } from '../statements/say-statement.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';

/** One sentence of an argument. */
export interface Sentence {
  /** The statement that it cites; null for what always holds. */
  readonly statement: FileStatement | null;
  readonly because: Said;
  readonly so: Said;
}

/** Why a bound holds: numbered sentences, and statements that exclude other possibilities. */
export interface Explanation {
  readonly sentences: readonly Sentence[];
  /** Statements that rule out the other members of dates with gaps. */
  readonly excluding: readonly FileStatement[];
}

/** What one link says when it carries an earliest day on, and when it carries a latest day back. */
const BECAUSE: Readonly<Record<string, Readonly<Record<Side, (said: Said, days: number) => Said>>>> = {
  axiom: {
    earliest: () => phrase('Nothing ends before it starts'),
    latest: () => phrase('Nothing starts after it ends'),
  },
  'gap-min': {
    earliest: (said, days) => phrase('{0} (counted as {1} days at least)', said, days),
    latest: (said, days) => phrase('{0} (counted back, {1} days at least)', said, days),
  },
  'gap-max': {
    earliest: (said, days) => phrase('{0} (counted back, {1} days at most)', said, days),
    latest: (said, days) => phrase('{0} (counted as {1} days at most)', said, days),
  },
  'lasts-min': {
    earliest: (said, days) => phrase('{0} ({1} days at least from beginning to end)', said, days),
    latest: (said, days) => phrase('{0} ({1} days at least back from its end)', said, days),
  },
  'lasts-max': {
    earliest: (said, days) => phrase('{0} ({1} days at most back from its end)', said, days),
    latest: (said, days) => phrase('{0} ({1} days at most from its beginning)', said, days),
  },
  'left-by': {
    earliest: (said) => phrase('{0}, so not before it began', said),
    latest: (said) => phrase('{0}, so not after it ended', said),
  },
  'layer-over': {
    earliest: (said) => phrase('{0}, and what lies over came later', said),
    latest: (said) => phrase('{0}, and what lies under came earlier', said),
  },
  'layer-cuts': {
    earliest: (said) => phrase('{0}, and a cut is later than what it cuts', said),
    latest: (said) => phrase('{0}, and what is cut was there before', said),
  },
  'layer-fills': {
    earliest: (said) => phrase('{0}, and a fill is later than what it fills', said),
    latest: (said) => phrase('{0}, and what is filled was there before', said),
  },
  'act-ends': {
    earliest: (said) => phrase('{0}, and it was with the giver until then', said),
    latest: (said) => phrase('{0}, and it was with the giver until then', said),
  },
  'act-begins': {
    earliest: (said) => phrase('{0}, and who got it had it from then on', said),
    latest: (said) => phrase('{0}, and who got it had it from then on', said),
  },
  'act-held': {
    earliest: (said) => phrase('{0}, and it was theirs to give then', said),
    latest: (said) => phrase('{0}, and it was theirs to give then', said),
  },
  'act-passage': {
    earliest: (said) => phrase('{0}, and the one had it when the other ceased to', said),
    latest: (said) => phrase('{0}, and the one had it when the other ceased to', said),
  },
  'life-first': {
    earliest: (said) => phrase('{0}, and who had it was there then', said),
    latest: (said) => phrase('{0}, and who had it was there then', said),
  },
  'life-last': {
    earliest: (said) => phrase('{0}, and who had it was there then', said),
    latest: (said) => phrase('{0}, and who had it was there then', said),
  },
  'passage-inside': {
    earliest: (said) => phrase('{0}, and a possessor had it when it was handed on', said),
    latest: (said) => phrase('{0}, and it was handed on while the possessor had it', said),
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
    const date = sayDateOf({ day: step.day, precision: coarsest(precisions), about });
    const reached = sayMoment(file, file.statements.moments.all[step.moment] as Moment);
    return {
      statement,
      because: becauseOf(step, statement, side),
      so:
        side === 'earliest'
          ? phrase('{0} was not before {1}', reached, date)
          : phrase('{0} was not after {1}', reached, date),
    };
  });
  const cited = new Set(sentences.map((sentence) => sentence.statement?.id));
  return { sentences, excluding: statements.map(used).filter((one) => !cited.has(one.id)) };
}

function becauseOf(step: Step, statement: FileStatement | null, side: Side): Said {
  const said = statement ? sayStatement(statement.says) : '';
  const say = BECAUSE[step.link.role]?.[side];
  return say ? say(said, Math.abs(step.link.days)) : said;
}

/** A moment in words: the beginning of an event, the end of a holding, a trace. */
export function sayMoment(file: CaseFile, moment: Moment): Said {
  const entry = file.catalogue.get(moment.entry);
  const title = entry ? titleOf(entry, file.settings.languages) : moment.entry;
  switch (moment.edge) {
    case 'start':
    case 'begins':
      return phrase('the beginning of “{0}”', title);
    case 'end':
    case 'ends':
      return phrase('the end of “{0}”', title);
    case 'delivery':
      return phrase('the delivery by “{0}”', title);
    case 'moment':
      return phrase('the making of “{0}”', title);
  }
}
