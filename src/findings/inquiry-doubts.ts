import type { Access } from '../base/access.ts';
import type { Diagnostic } from '../base/diagnostic.ts';
import { inRow, named, phrase, type Said } from '../base/said.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { forAudience } from '../model/audience.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { type Entry, isOfType, type KeyPath } from '../model/entry.ts';
import { settingsOf } from '../model/settings.ts';
import { missingForAnswer } from './missing-for-answer.ts';

/** States in which an answer is as good as written. */
const WRITTEN: readonly string[] = ['in review', 'approved', 'sent', 'closed'];

/** The audience whose entries an answer may be made from; the public where the inquiry says nothing. */
export function answeredFor(inquiry: Entry<'inquiry'>): Access {
  return inquiry.keys['answered-from'] ?? 'public';
}

/** What an answer to an inquiry would claim without carrying it, or leave out without saying so. */
export function inquiryDoubts(whole: Catalogue, shown: Catalogue): readonly Diagnostic[] {
  const byAudience = new Map<Access, Catalogue>();
  const seenBy = (audience: Access): Catalogue => {
    const known = byAudience.get(audience) ?? forAudience(whole, audience);
    byAudience.set(audience, known);
    return known;
  };
  return shown.ofType('inquiry').flatMap((inquiry) => {
    const forAsker = seenBy(answeredFor(inquiry));
    const signedOff = new Set((inquiry.keys['signed-off'] ?? []).map(({ code }) => code));
    return [
      ...questionDoubts(inquiry, whole, forAsker),
      ...approvalDoubts(inquiry),
      ...readinessDoubts(inquiry, forAsker, whole),
      ...withheldDoubts(inquiry, forAsker),
    ].filter((one) => !signedOff.has(one.code) || NEVER_SIGNED_OFF.includes(one.code));
  });
}

/** What no signature mends. */
const NEVER_SIGNED_OFF: readonly string[] = ['approved-without-name', 'approved-not-ready'];

/** Codes of the doubts about an answer: while one is open, the answer is not kept, and not printed as final. */
export const ANSWER_DOUBTS: readonly string[] = [
  'answer-without-entries',
  'answer-rests-on-hidden',
  'answer-on-nil-searches',
  'withheld-unsaid',
  ...NEVER_SIGNED_OFF,
];

function questionDoubts(inquiry: Entry<'inquiry'>, whole: Catalogue, forAsker: Catalogue): readonly Diagnostic[] {
  return (inquiry.keys.questions ?? []).flatMap((question, i): readonly Diagnostic[] => {
    if (typeof question === 'string' || question.answer === undefined) return [];
    const rests = question['rests-on'] ?? [];
    if (rests.length === 0) {
      return [
        doubt(
          inquiry,
          ['questions', i, 'answer'],
          'answer-without-entries',
          phrase('the answer names no entry that it rests on'),
          phrase(
            'add rests-on: [...] with the ids of the entries; for what is not known, the question or the search that says so',
          ),
        ),
      ];
    }
    const hidden = rests.filter((id) => whole.resolve(id) && !forAsker.resolve(id));
    if (hidden.length === 0) return onNilSearches(inquiry, i, question.answer, rests, whole);
    return [
      doubt(
        inquiry,
        ['questions', i, 'rests-on'],
        'answer-rests-on-hidden',
        phrase(
          'the answer rests on {0}, which the one who asks may not see ({1})',
          hidden.join(', '),
          answeredFor(inquiry),
        ),
        phrase(
          'let the answer rest on entries that may be shown, or say under withheld what it rests on besides; answered-from sets who may see what',
        ),
      ),
    ];
  });
}

/** An answer that rests on nil searches alone says no more than that nothing was found. */
function onNilSearches(
  inquiry: Entry<'inquiry'>,
  index: number,
  answer: string,
  rests: readonly string[],
  whole: Catalogue,
): readonly Diagnostic[] {
  const isNil = (id: string): boolean => {
    const entry = whole.resolve(id)?.entry;
    return (
      entry !== undefined &&
      isOfType(entry, 'search') &&
      (entry.keys.outcome === 'not found in what was searched' || entry.keys.outcome === 'no access')
    );
  };
  if (!rests.every(isNil) || /\b(?:found|searched|known|access)\b/i.test(answer)) return [];
  return [
    doubt(
      inquiry,
      ['questions', index, 'answer'],
      'answer-on-nil-searches',
      phrase('the answer rests only on searches that found nothing, and does not say so'),
      phrase('write "not found in the sources searched"; nothing found in what was searched proves no absence'),
    ),
  ];
}

function approvalDoubts(inquiry: Entry<'inquiry'>): readonly Diagnostic[] {
  const { state, 'approved-by': approved } = inquiry.keys;
  if ((state !== 'approved' && state !== 'sent') || approved !== undefined) return [];
  return [
    doubt(
      inquiry,
      ['state'],
      'approved-without-name',
      phrase(
        'the state is "{0}", but nobody is named under approved-by; every page goes on saying that it is a draft',
        state,
      ),
      phrase('write approved-by and approved-on, or set the state back to in review'),
    ),
  ];
}

function readinessDoubts(inquiry: Entry<'inquiry'>, forAsker: Catalogue, whole: Catalogue): readonly Diagnostic[] {
  const { state, 'approved-by': approved, 'sent-file': sent } = inquiry.keys;
  const missing = missingForAnswer(inquiry, forAsker, whole);
  if ((approved === undefined && state !== 'approved') || sent !== undefined || missing.length === 0) return [];
  return [
    doubt(
      inquiry,
      approved === undefined ? ['state'] : ['approved-by'],
      'approved-not-ready',
      phrase('the answer is approved, and cannot be given: {0}', inRow(missing, '; ')),
      phrase(
        'let each question rest on entries that may be shown, or raise answered-from; take the approval back until then',
      ),
    ),
  ];
}

function withheldDoubts(inquiry: Entry<'inquiry'>, forAsker: Catalogue): readonly Diagnostic[] {
  const said = (inquiry.keys.withheld ?? []).length > 0;
  if (said || !forAsker.holdsMore || !WRITTEN.includes(inquiry.keys.state)) return [];
  return [
    doubt(
      inquiry,
      ['state'],
      'withheld-unsaid',
      phrase(
        'the file holds entries that the one who asks may not see, and the answer does not say that anything is withheld',
      ),
      phrase(
        "add withheld: ['{' class: ..., ground: ... '}']: what kind of thing is kept back, and why, without telling what is in it",
      ),
    ),
  ];
}

function doubt(entry: Entry, path: KeyPath, code: string, message: Said, mend: Said): Diagnostic {
  return { code, severity: 'doubt', place: entry.placeOf(path), message, mend, entry: entry.id };
}

/** Inquiries whose answer was due before a day, and that nobody has answered or closed. */
export function overdueInquiries(whole: Catalogue, today: string): readonly Diagnostic[] {
  const now = readDate(today, 'gregorian', settingsOf(whole.workspace).dates);
  if (isDateProblem(now)) return [];
  return whole.ofType('inquiry').flatMap((inquiry): readonly Diagnostic[] => {
    const { due, state } = inquiry.keys;
    if (due === undefined || state === 'sent' || state === 'closed') return [];
    const read = readDate(due, 'gregorian', settingsOf(whole.workspace).dates);
    if (isDateProblem(read) || hullOfExpression(read).last >= hullOfExpression(now).first) return [];
    return [
      {
        code: 'inquiry-overdue',
        severity: 'doubt',
        place: inquiry.placeOf(['due']),
        entry: inquiry.id,
        message: phrase('the answer was due {0}, and the inquiry is still {1}', due, named(state)),
        mend: phrase('send or close it, or write the day that was agreed since'),
      },
    ];
  });
}
